"""The session on the table and the ways its log may grow: rows are only ever added."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime

from cookstove_gui.desk.log import undoing
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Entry, Session, fold


class OpenLog:
    """One session, kept in step with the logbook."""

    def __init__(self, logbook: Logbook, session: Session) -> None:
        self._logbook = logbook
        self.session = session
        self._folded_from: tuple[Entry, ...] | None = None
        self._folded: tuple[Entry, ...] = ()

    @property
    def rows(self) -> tuple[Entry, ...]:
        """The raw log."""
        return self.session.entries

    @property
    def entries(self) -> tuple[Entry, ...]:
        """What holds after corrections, in order of time; folded once for each state of the log."""
        if self._folded_from is not self.rows:
            self._folded_from, self._folded = self.rows, fold(self.rows)
        return self._folded

    @property
    def latest_at(self) -> datetime | None:
        """The latest clock in the log."""
        return max((row.at for row in self.rows), default=None)

    def row(self, number: int) -> Entry:
        """A row that still holds."""
        found = next((row for row in self.entries if row.number == number), None)
        if found is None:
            raise InputProblem(f"Row {number} is not in this session's log, or was taken back already.")
        return found

    def append(self, rows: Sequence[Entry]) -> list[Entry]:
        """Write rows to the disk, then take them up; their numbers are the log's."""
        kept = [
            self._logbook.append(
                self.session.number,
                at=row.at,
                offset_minutes=row.offset_minutes,
                kind=row.kind,
                spot=row.spot,
                value=row.value,
                unit=row.unit,
                note=row.note,
            )
            for row in rows
        ]
        self.session = replace(self.session, entries=(*self.session.entries, *kept))
        return kept

    def undo(self, now: datetime, offset_minutes: int) -> None:
        """Take back the latest thing entered; a correction goes back to what stood before it."""
        self.append(undoing.undo_rows(self.rows, now, offset_minutes))

    def redo(self, now: datetime, offset_minutes: int) -> None:
        """Take back the latest undo, as long as nothing was entered since."""
        self.append(undoing.redo_rows(self.rows, now, offset_minutes))

    def take_back(self, number: int, now: datetime, offset_minutes: int) -> None:
        """Take back one row."""
        self.append([undoing.void(self.row(number).number, now, offset_minutes)])

    def replace(self, old: Entry, new: Entry, now: datetime, offset_minutes: int) -> Entry:
        """Put a row in another's place. The new one is written first, so that a power cut loses neither."""
        return self.append([new, undoing.void(old.number, now, offset_minutes, undoing.CORRECTED)])[0]


def changed_row(
    old: Entry,
    *,
    value: str | None = None,
    unit: str | None = None,
    at: datetime | None = None,
    note: str | None = None,
) -> Entry:
    """A row as it was but for what is named, checked."""
    return check_entry(
        at=at or old.at,
        offset_minutes=old.offset_minutes,
        kind=old.kind,
        spot=old.spot,
        value=old.value if value is None else value,
        unit=old.unit if unit is None else unit,
        note=old.note if note is None else note,
    )
