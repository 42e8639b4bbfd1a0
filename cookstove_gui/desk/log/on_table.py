"""The stove in use and the session on the table: what is entered goes to the end of its log."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import datetime, timedelta, tzinfo

from cookstove_gui.desk.changes import Receipt
from cookstove_gui.desk.log.open_log import OpenLog
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.checking import check_entry, check_place
from cookstove_gui.stove.doubts import doubt
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import Stove, stove_with_default_spots, with_spots_named
from cookstove_gui.units import came_twice, clock_text, local_offset_minutes, parse_local_clock

_PASSING = timedelta(minutes=1)
LIVE_FOR = timedelta(hours=6)  # after that long without an entry the next one begins a new session
_OPEN, _OLD = "session on the table", " old"  # setting, and its mark on a session that was over when it was opened
_FIRST_STOVE = "My stove"


class OnTable:
    """One stove with at most one of its sessions: what was open when the program ended, or the latest if still warm."""

    def __init__(self, logbook: Logbook, clock: Callable[[], datetime], zone: tzinfo | None) -> None:
        self._zone = zone
        self._logbook = logbook
        self._clock = clock
        if not logbook.stoves():
            logbook.save_stove(stove_with_default_spots(_FIRST_STOVE))
        names = [stove.name for stove in logbook.stoves()]
        wanted = logbook.setting("stove")
        self.stove: Stove = logbook.stove(wanted if wanted in names else names[0])
        self._log: OpenLog | None = None
        self._take_up_open_session()

    @property
    def session(self) -> Session | None:
        """The session on the table, if one is."""
        return self._log.session if self._log else None

    @property
    def rows(self) -> tuple[Entry, ...]:
        """Its raw log."""
        return self._log.rows if self._log else ()

    @property
    def entries(self) -> tuple[Entry, ...]:
        """What holds of that log after corrections, in order of time."""
        return self._log.entries if self._log else ()

    @property
    def is_live(self) -> bool:
        """Whether the session is still being written."""
        return self._is_lately(self._log.latest_at if self._log else None)

    @property
    def offset_minutes(self) -> int:
        """Offset [min] of the local clock: of the session, or of this computer where none is written."""
        return self.rows[-1].offset_minutes if self.rows else local_offset_minutes(self._clock(), self._zone)

    @property
    def asked_at(self) -> datetime:
        """The moment asked about: now while the session is live, the end of its log when an old one is looked at.

        Where this computer's clock was set back behind the log, it is the end of the log, so that no reading drops out.
        """
        now = self._clock()
        latest = self._log.latest_at if self._log else None
        return now if latest is None else max(now, latest) if self.is_live else latest

    @property
    def latest_at(self) -> datetime | None:
        """The latest clock in the session, if there is one."""
        return self._log.latest_at if self._log else None

    def use_stove(self, name: str) -> None:
        """Use another stove, and its latest session if that is still warm."""
        self._use(name)
        self._log = None
        self._take_up_latest_session()

    def read_stove_again(self) -> bool:
        """Take up the stove as the logbook has it now; whether it is projected otherwise than before."""
        before = self.stove
        self.stove = self._logbook.stove(before.name)
        return _as_projected(self.stove) != _as_projected(before)

    def start_session(self, title: str) -> None:
        """Begin a new session, named for the day if it has no title."""
        day = self._clock().astimezone()
        title = title or f"{day:%A} {day.day} {day:%B %Y}"
        self._put(self._logbook.start_session(self.stove.name, title))

    @property
    def latest(self) -> Session | None:
        """The stove's latest session that holds anything; the one on the table if that does."""
        if self._log is not None and self.is_live and self.rows:
            return self._log.session
        rows = (one for one in self._logbook.sessions(self.stove.name) if one.last_at is not None)
        found = max(rows, key=lambda one: one.last_at or one.number, default=None)
        return None if found is None else self._logbook.session(found.number)

    def open_session(self, number: int) -> None:
        """Put a session of the logbook on the table, of whatever stove."""
        session = self._logbook.session(number)
        if session.stove != self.stove.name:
            self._use(session.stove)
        self._put(session)

    def clear(self) -> None:
        """Take the session off the table."""
        self._log = None
        self._logbook.set_setting(_OPEN, "")

    def rename_session(self, number: int, title: str) -> None:
        """Give a session another title."""
        if not title.strip():
            raise InputProblem("The session has no title; type one, such as Sunday bread.")
        self._logbook.rename_session(number, title.strip())
        if self._log is not None and self._log.session.number == number:
            self._log.session = self._logbook.session(number)

    def checked(self, kind: Kind, *, spot: str, value: str, unit: str, at_text: str, note: str = "") -> Entry:
        """What was typed, as an entry; its clock is now unless another is given."""
        now = self._clock()
        at = parse_local_clock(at_text, now, self._zone) if at_text.strip() else now
        row = check_entry(
            at=at,
            offset_minutes=local_offset_minutes(at, self._zone),
            kind=kind,
            spot=spot,
            value=value,
            unit=unit,
            note=note,
        )
        check_place(row, self.stove)
        return row

    def record(self, row: Entry) -> Receipt:
        """Keep an entry in the open session."""
        now = self._clock()
        asked = doubt(row, self.stove, self.entries, now)
        question = asked.sentence if asked else ""
        if not question and now - row.at > _PASSING and came_twice(row.at, self._zone):
            shown = clock_text(row.at, row.offset_minutes)
            question = f"{shown} came twice as the clocks went back; this is the later one."
        return Receipt(entry=self.append([row]), question=question)

    def replace(self, number: int, changed: Callable[[Entry], Entry]) -> Receipt:
        """Put a changed row in the place of one that still holds."""
        old, now = self._opened().row(number), self._clock()
        new = changed(old)
        if new == old:
            return Receipt(entry=old)
        check_place(new, self.stove)
        asked = doubt(new, self.stove, [row for row in self.entries if row != old], now)
        entry = self._opened().replace(old, new, now, self.offset_minutes)
        return Receipt(entry=entry, question=asked.sentence if asked else "")

    def keep(self, number: int) -> None:
        """Let a questioned row stand as typed."""
        self._opened().keep(number, self._clock(), self.offset_minutes)

    def undo(self) -> None:
        """Undo the latest thing done, whatever it was: a row entered, corrected, taken back or kept."""
        self._opened().undo(self._clock(), self.offset_minutes)

    def redo(self) -> None:
        """Take back the latest undo, as long as nothing was done since."""
        self._opened().redo(self._clock(), self.offset_minutes)

    def take_back(self, number: int) -> None:
        """Take back one row."""
        self._opened().take_back(number, self._clock(), self.offset_minutes)

    def append(self, rows: Sequence[Entry]) -> Entry:
        """Keep rows as they stand, all or none; the last of them comes back with its number."""
        kept = self._opened().append(rows)
        self._know_spots(kept)
        return kept[-1]

    def read_log_again(self) -> bool:
        """Take up the rows that another window has written to the session; whether there were any."""
        if self._log is None or not self._log.read_again():
            return False
        self._know_spots(self._log.rows)
        return True

    def _opened(self) -> OpenLog:
        if self._log is None:
            raise InputProblem("No session is open yet; enter something first.")
        return self._log

    def _use(self, name: str) -> None:
        self.stove = self._logbook.stove(name)
        self._logbook.set_setting("stove", name)

    def _put(self, session: Session) -> None:
        self._log = OpenLog(self._logbook, session)
        self._know_spots(session.entries)
        self._logbook.set_setting(_OPEN, f"{session.number}{'' if self.is_live else _OLD}")

    def _take_up_open_session(self) -> None:
        """Open what was open when the program ended, unless it was being written then and has gone cold since."""
        number, _, how = self._logbook.setting(_OPEN).partition(" ")
        known = {one.number: one for one in self._logbook.sessions(self.stove.name)}
        found = known.get(int(number)) if number.isdecimal() else None
        if found is not None and (self._is_lately(found.last_at) or how == _OLD.strip()):
            self._put(self._logbook.session(found.number))
            return
        self._take_up_latest_session()

    def _take_up_latest_session(self) -> None:
        latest = self.latest
        if latest is not None and self._is_lately(max(row.at for row in latest.entries)):
            self._put(latest)

    def _is_lately(self, latest: datetime | None) -> bool:
        """Whether a log that ends then is still being written; one that ends far ahead of the clock is not."""
        return latest is None or abs(self._clock() - latest) <= LIVE_FOR

    def _know_spots(self, entries: Sequence[Entry]) -> None:
        """Add a spot to the stove for each name that only the log knows."""
        self.stove = with_spots_named(
            self.stove, tuple(row.spot for row in entries if row.kind is Kind.READING and row.spot)
        )


def _as_projected(stove: Stove) -> Stove:
    """What the forecast looks at: how the chimney, the sides and the walk are described changes no projection."""
    return replace(stove, chimney=None, sides="", left_out=())
