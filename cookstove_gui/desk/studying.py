"""When a stove's past is to be studied again, and its reading off the screen's thread."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from cookstove_gui.desk.kept_studies import KeptStudies, fingerprint

if TYPE_CHECKING:
    from cookstove_gui.desk.desk import Desk
    from cookstove_gui.stove.entries import Session
    from cookstove_gui.study import StudyInputs


def study_is_due(desk: Desk) -> bool:
    """Whether sessions were added or went on since the latest study, the live one left aside."""
    made_of = _past_of(desk)
    return made_of is not None and (desk.study is None or desk.study.fingerprint != made_of)


def learning_is_due(desk: Desk) -> bool:
    """Whether what was learned of the stove lacks a session: the part of a study that the forecast needs."""
    made_of = _past_of(desk)
    return made_of is not None and not KeptStudies(desk.logbook).has_learned_from(desk.stove, made_of)


def has_past(desk: Desk) -> bool:
    """Whether the stove has a session besides the live one."""
    return _past_of(desk) is not None


def _past_of(desk: Desk) -> str | None:
    """Fingerprint of the stove's sessions but the live one; none without any."""
    live = desk.session.number if desk.session is not None and desk.is_live else None
    rows = [row for row in desk.sessions if row.first_at is not None and row.number != live]
    rows.sort(key=lambda row: (row.first_at, row.number))
    return fingerprint(desk.stove, ((row.number, row.entry_count) for row in rows)) if rows else None


def study_reader(desk: Desk) -> Callable[[], StudyInputs]:
    """Reads the past of the desk's stove when it is called, in whatever thread."""
    stove, live = desk.stove, desk.session if desk.is_live else None
    return lambda: KeptStudies(desk.logbook).inputs(stove, without=live)


class PastSessions:
    """A stove's sessions, read again only when there are more of them or they have grown; may be called in a thread."""

    def __init__(self, desk: Desk) -> None:
        self._logbook = desk.logbook
        # One value, so that two threads never see the mark of one past with the sessions of another.
        self._read: tuple[str, tuple[Session, ...]] = ("", ())

    def __call__(self, stove: str) -> tuple[Session, ...]:
        """All sessions with entries, oldest first."""
        mark = f"{stove}: {[(row.number, row.entry_count) for row in self._logbook.sessions(stove)]}"
        read = self._read
        if read[0] != mark:
            read = self._read = (mark, self._logbook.past_sessions(stove))
        return read[1]
