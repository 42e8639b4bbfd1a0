"""The open session, whose log only ever grows."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime

from cookstove_gui.desk.log import undoing
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import ChangedElsewhere, Logbook
from cookstove_gui.stove.entries import ABOUT_A_ROW, Entry, Kind, Session, fold


class OpenLog:
    """One session, kept in step with the logbook."""

    def __init__(self, logbook: Logbook, session: Session) -> None:
        self._logbook = logbook
        self.session = session
        self._last = logbook.last_number(session.number)
        self._folded_from: tuple[Entry, ...] | None = None
        self._folded: tuple[Entry, ...] = ()
        self._latest_at: datetime | None = None

    @property
    def rows(self) -> tuple[Entry, ...]:
        """The raw log."""
        return self.session.entries

    @property
    def entries(self) -> tuple[Entry, ...]:
        """What holds after corrections, in order of time; folded once for each state of the log."""
        self._look_at_rows()
        return self._folded

    @property
    def latest_at(self) -> datetime | None:
        """The latest clock in the log."""
        self._look_at_rows()
        return self._latest_at

    def _look_at_rows(self) -> None:
        """Once for each state of the log."""
        if self._folded_from is not self.rows:
            self._folded_from, self._folded = self.rows, fold(self.rows)
            self._latest_at = max((row.at for row in self.rows), default=None)

    def row(self, number: int) -> Entry:
        """A row that still holds."""
        found = next((row for row in self.entries if row.number == number), None)
        if found is None:
            raise InputProblem(f"Row {number} is not in this session's log, or was taken back already.")
        return found

    def append(self, rows: Sequence[Entry]) -> tuple[Entry, ...]:
        """Write rows to the disk, all or none, then take them up; their numbers are the log's.

        Rows about other rows are refused, and the log is read again, if another window has written to it meanwhile.
        """
        is_about_rows = any(row.kind in ABOUT_A_ROW for row in rows)
        try:
            kept = self._logbook.append(self.session.number, rows, after=self._last if is_about_rows else None)
        except ChangedElsewhere:
            self.read_again()
            raise
        if kept[0].number == self._last + 1:
            self.session = replace(self.session, entries=(*self.session.entries, *kept))
            self._last = kept[-1].number
        else:
            self.read_again()
        return kept

    def read_again(self) -> bool:
        """Take up what another window has written; whether there was anything."""
        last = self._logbook.last_number(self.session.number)
        if last == self._last:
            return False
        self._last = last
        self.session = self._logbook.session(self.session.number)
        return True

    def undo(self, now: datetime, offset_minutes: int) -> None:
        """Undo the latest thing done, whatever it was: a row entered, corrected, taken back or kept."""
        self.append(undoing.undo_rows(self.rows, now, offset_minutes))

    def redo(self, now: datetime, offset_minutes: int) -> None:
        """Take back the latest undo, as long as nothing was done since."""
        self.append(undoing.redo_rows(self.rows, now, offset_minutes))

    def take_back(self, number: int, now: datetime, offset_minutes: int) -> None:
        """Take back one row."""
        self.append([undoing.void(self.row(number).number, now, offset_minutes)])

    def keep(self, number: int, now: datetime, offset_minutes: int) -> None:
        """Let one row stand as typed."""
        kept = str(self.row(number).number)
        self.append([Entry(number=0, at=now, offset_minutes=offset_minutes, kind=Kind.KEPT, value=kept)])

    def replace(self, old: Entry, new: Entry, now: datetime, offset_minutes: int) -> Entry:
        """Put a row in another's place, in one transaction, so that a power cut loses neither."""
        return self.append([new, undoing.void(old.number, now, offset_minutes, undoing.CORRECTED)])[0]
