"""What was learned of each stove's past, and the sessions that the next study learns from."""

from __future__ import annotations

import zlib
from collections.abc import Iterable
from typing import TYPE_CHECKING

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.learned import Lesson

if TYPE_CHECKING:
    from cookstove_gui.forecast.learning.learn import Lessons
    from cookstove_gui.forecast.model.character import Character
    from cookstove_gui.logbook.logbook import Logbook
    from cookstove_gui.stove.entries import Session
    from cookstove_gui.stove.stove import Stove
    from cookstove_gui.study import Study, StudyInputs

_MADE_BY = "lessons 2"  # raised when what older code kept must no longer be used


def fingerprint(stove: Stove, sessions: Iterable[tuple[int, int]]) -> str:
    """Identifies a past by what its readings mean on this stove, the numbers of its sessions and of their rows."""
    own = [(spot.name, spot.surface, spot.instrument) for spot in stove.spots if spot.surface or spot.instrument]
    meant = (stove.firebox, stove.cooktop_surface, stove.instruments, *own)
    meaning = zlib.crc32(repr(meant).encode())
    return " ".join([f"{meaning:08x}", *(f"{number}:{rows}" for number, rows in sessions)])


class KeptStudies:
    """What is known of the past, kept in the logbook as a cache that can be computed again."""

    def __init__(self, logbook: Logbook) -> None:
        self._logbook = logbook
        self._characters: dict[str, Character] = {}
        self._studies: dict[str, Study] = {}

    def character(self, stove: Stove) -> Character | None:
        """What was learned of a stove, from whatever sessions; none for a stove never studied."""
        if stove.name not in self._characters:
            found = self._lessons(stove, "")
            if found is None:
                return None
            self._characters[stove.name] = found.character
        return self._characters[stove.name]

    def study(self, stove: Stove) -> Study | None:
        """What the latest study found, once there is one."""
        return self._studies.get(stove.name)

    def has_learned_from(self, stove: Stove, made_of: str) -> bool:
        """Whether what is kept of a stove was learned from the past of that fingerprint."""
        lesson = self._logbook.learned.of(stove.name, _MADE_BY)
        return lesson is not None and lesson.made_of == made_of

    def inputs(self, stove: Stove, without: Session | None) -> StudyInputs:
        """A stove's past sessions, but for the one that is still being written."""
        past = self._logbook.past_sessions(stove.name)
        sessions = tuple(session for session in past if without is None or session.number != without.number)
        made_of = fingerprint(stove, ((session.number, len(session.entries)) for session in sessions))
        from cookstove_gui.study import StudyInputs  # likewise

        return StudyInputs(stove=stove, sessions=sessions, fingerprint=made_of, known=self._lessons(stove, made_of))

    def keep(self, found: Study) -> None:
        """Keep what a study found."""
        from cookstove_gui.forecast.learning import kept  # brings all of the learning: not before the first paint

        self._studies[found.stove_name] = found
        self._characters[found.stove_name] = found.character
        lesson = Lesson(made_of=found.fingerprint, content=kept.to_json(found.lessons))
        self._logbook.learned.keep(found.stove_name, _MADE_BY, lesson)

    def _lessons(self, stove: Stove, made_of: str) -> Lessons | None:
        """What is kept of a stove, if its past is the beginning of the one of that fingerprint, or of any."""
        lesson = self._logbook.learned.of(stove.name, _MADE_BY)
        if lesson is None or (made_of and not f"{made_of} ".startswith(f"{lesson.made_of} ")):
            return None
        from cookstove_gui.forecast.learning import kept  # likewise

        try:
            return kept.from_json(lesson.content)
        except (InputProblem, LookupError, TypeError, ValueError, AttributeError, ArithmeticError):
            return None  # a cache that cannot be read is computed again from the log
