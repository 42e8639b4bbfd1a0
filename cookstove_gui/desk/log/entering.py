"""What the cook enters, corrects and takes back: on disk first, then told."""

from collections.abc import Callable

from cookstove_gui.desk.changes import Changed, Receipt
from cookstove_gui.desk.log.correcting import Correction, corrected_row
from cookstove_gui.desk.log.on_table import OnTable
from cookstove_gui.desk.log.sessions import Sessions
from cookstove_gui.desk.log.walk import LitSpot
from cookstove_gui.desk.settings import Settings
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import parse_temperature, parse_wall_clock, tidy


class Entering:
    """Writes to the session on the table, or begins one."""

    def __init__(
        self,
        table: OnTable,
        lit: LitSpot,
        settings: Settings,
        sessions: Sessions,
        announce: Callable[[Changed], None],
    ) -> None:
        self._table = table
        self._lit = lit
        self._settings = settings
        self._sessions = sessions
        self._announce = announce

    def read(self, text: str, spot: str = "", at_text: str = "") -> Receipt:
        """Enter a temperature at the lit spot (or at `spot`) and light up the next one.

        A walk copied from paper, with a clock of its own, goes on in its order.
        """
        value, unit = parse_temperature(text, self._settings.unit)
        where = spot or self._lit.walk.spot.name
        row = self._table.checked(Kind.READING, spot=where, value=tidy(value, 2), unit=unit, at_text=at_text)
        receipt = self._record(row)
        if not spot:  # the first number begins a session, and the walk goes on from the spot it was for
            self._lit.choose(self._lit.walk.at(where))
        self._lit.was_read(where)
        if at_text.strip():
            self._lit.hold()
        self._announce(Changed(log=True, walk=True))
        return receipt

    def do(
        self, kind: Kind, value: str = "", unit: str = "", spot: str = "", note: str = "", at_text: str = ""
    ) -> Receipt:
        """Enter something done at the stove."""
        row = self._table.checked(kind, spot=spot, value=value, unit=unit, note=note, at_text=at_text)
        return self._told(self._record(row))

    def undo(self) -> None:
        """Undo the latest thing done, whatever it was: a row entered, corrected, taken back or kept."""
        self._table.undo()
        self._announce(Changed(log=True))

    def redo(self) -> None:
        """Take back the latest undo, as long as nothing was done since."""
        self._table.redo()
        self._announce(Changed(log=True))

    def correct(self, number: int, text: str = "", *, spot: str = "", at_text: str = "") -> Receipt:
        """Give a row another value, spot or clock, all in one step; what is left empty stays as it was."""
        at = parse_wall_clock(at_text, self._table.asked_at, self._table.offset_minutes) if at_text.strip() else None
        new = Correction(text=text, spot=spot, at=at)
        return self._told(self._table.replace(number, lambda row: corrected_row(row, new, self._settings.mass_unit)))

    def keep(self, number: int) -> None:
        """Let a questioned entry stand as typed; it is in question no more."""
        self._table.keep(number)
        self._announce(Changed(log=True))

    def take_back(self, number: int) -> None:
        """Take back one row."""
        self._table.take_back(number)
        self._announce(Changed(log=True))

    def play(self, entries: tuple[Entry, ...]) -> None:
        """Enter rows of a sample session as they stand."""
        if not entries:
            return
        if self._table.session is None:
            self._sessions.start_session("Practice")
        self._table.append(entries)
        self._announce(Changed(log=True))

    def _record(self, row: Entry) -> Receipt:
        """Keep what was entered, in a new session if none is being written; it begins as warm as the stove still is."""
        if not self._table.is_live or self._table.session is None:
            self._sessions.start_warm()
        return self._table.record(row)

    def _told(self, receipt: Receipt) -> Receipt:
        """Tell of the changed log once it is on disk."""
        self._announce(Changed(log=True))
        return receipt
