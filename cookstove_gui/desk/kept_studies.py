"""The past of each stove at the desk: its sessions for a study, and what earlier studies found."""

from collections.abc import Iterable

from cookstove_gui.forecast import Character
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove
from cookstove_gui.study import Study, StudyInputs

_MADE_BY = "character 1"  # goes up when a kept character of older code must not be used any more


def fingerprint(sessions: Iterable[tuple[int, int]]) -> str:
    """Tells a past by the numbers of its sessions and of their rows."""
    return " ".join(f"{number}:{rows}" for number, rows in sessions)


class KeptStudies:
    """What is known of the past, kept in the logbook as a cache that can be made anew."""

    def __init__(self, logbook: Logbook) -> None:
        self._logbook = logbook
        self._characters: dict[str, Character] = {}
        self._studies: dict[str, Study] = {}

    def character(self, stove: Stove) -> Character | None:
        """What was learned of a stove, from whatever sessions; none for a stove never studied."""
        if stove.name not in self._characters:
            kept = self._logbook.character(stove.name, made_by=_MADE_BY)
            found = Character.from_json(kept) if kept is not None else None
            if found is None:
                return None
            self._characters[stove.name] = found
        return self._characters[stove.name]

    def study(self, stove: Stove) -> Study | None:
        """What the latest study found, once there is one."""
        return self._studies.get(stove.name)

    def has_learned_from(self, stove: Stove, made_of: str) -> bool:
        """Whether what is kept of a stove was learned from the past of that fingerprint."""
        return self._logbook.character(stove.name, made_of, made_by=_MADE_BY) is not None

    def inputs(self, stove: Stove, without: Session | None) -> StudyInputs:
        """A stove's past sessions, but for the one that is still being written."""
        past = self._logbook.past_sessions(stove.name)
        sessions = tuple(session for session in past if without is None or session.number != without.number)
        made_of = fingerprint((session.number, len(session.entries)) for session in sessions)
        kept = self._logbook.character(stove.name, made_of, made_by=_MADE_BY)
        return StudyInputs(
            stove=stove,
            sessions=sessions,
            character=Character.from_json(kept) if kept is not None else None,
            fingerprint=made_of,
        )

    def keep(self, found: Study) -> None:
        """Take up what a study found."""
        self._studies[found.stove_name] = found
        self._characters[found.stove_name] = found.character
        self._logbook.save_character(found.stove_name, found.character.to_json(), found.fingerprint, made_by=_MADE_BY)
