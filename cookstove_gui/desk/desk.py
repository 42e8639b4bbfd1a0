"""The desk: the only door through which the log changes.

An entry is on disk before anybody is told of it. Listeners learn which kinds of thing changed, and ask for the rest.
Raises InputProblem for what cannot be understood or is not there.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta

from cookstove_gui.advice import advise
from cookstove_gui.cooking.fires.first_fires import FirstFires, progress
from cookstove_gui.desk.changes import Changed, Receipt
from cookstove_gui.desk.kept_studies import KeptStudies
from cookstove_gui.desk.log.correcting import corrected_row
from cookstove_gui.desk.log.open_log import OpenLog
from cookstove_gui.desk.log.walk import Walk, walk_of
from cookstove_gui.desk.wanted_band import keep_band, kept_band, named_bands
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import LEAVE, Action
from cookstove_gui.logbook.logbook import Logbook, SessionSummary
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.situation import Inputs, Standing
from cookstove_gui.stove.checking import check_entry, doubt
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.stove.stove import Stove, stove_with_default_spots, with_spots_named
from cookstove_gui.study import Study, StudyInputs
from cookstove_gui.units import (
    MassUnit,
    TemperatureUnit,
    local_offset_minutes,
    mass_unit_beside,
    parse_temperature,
    parse_wall_clock,
    tidy,
)

LIVE_FOR = timedelta(hours=6)  # after that long without an entry the next one begins a new session
_FIRST_STOVE = "My stove"


def utc_now() -> datetime:
    """This computer's clock."""
    return datetime.now(UTC)


class Desk:
    """The live session of one stove, and the way to all the others."""

    def __init__(self, logbook: Logbook, clock: Callable[[], datetime] = utc_now) -> None:
        self.logbook = logbook
        self.clock = clock
        self._listeners: list[Callable[[Changed], None]] = []
        self._serial = 0
        self._standing: Standing | None = None
        self._action = LEAVE
        self._past = KeptStudies(logbook)
        if not logbook.stoves():
            logbook.save_stove(stove_with_default_spots(_FIRST_STOVE))
        names = [stove.name for stove in logbook.stoves()]
        wanted = logbook.setting("stove")
        self._stove = logbook.stove(wanted if wanted in names else names[0])
        self._log: OpenLog | None = None
        self._walk: Walk = walk_of(self._stove)
        self._walk_is_held = False  # the cook chose the spot that is lit up, or has begun to type its number
        self._band = kept_band(logbook)
        self._take_up_latest_session()

    # --- telling -----------------------------------------------------------------------------------------------

    def subscribe(self, listener: Callable[[Changed], None]) -> Callable[[], None]:
        """Be told of changes; returns the function that ends it."""
        self._listeners.append(listener)
        return lambda: self._listeners.remove(listener) if listener in self._listeners else None

    def announce(self, changed: Changed) -> None:
        """Tell every listener what kinds of thing changed."""
        for listener in tuple(self._listeners):
            listener(changed)

    # --- settings ----------------------------------------------------------------------------------------------

    @property
    def unit(self) -> TemperatureUnit:
        """Unit of temperature on the screen."""
        return "C" if self.logbook.setting("unit") == "C" else "F"

    def set_unit(self, unit: TemperatureUnit) -> None:
        """Show and type temperatures in this unit from now on."""
        self.set_setting("unit", unit)

    @property
    def mass_unit(self) -> MassUnit:
        """Unit of mass on the screen; it goes with the unit of temperature."""
        return mass_unit_beside(self.unit)

    def setting(self, key: str, default: str = "") -> str:
        """A setting kept in the logbook."""
        return self.logbook.setting(key, default)

    def set_setting(self, key: str, value: str) -> None:
        """Keep a setting."""
        self.logbook.set_setting(key, value)
        self.announce(Changed(settings=True))

    # --- stoves ------------------------------------------------------------------------------------------------

    @property
    def stove(self) -> Stove:
        """The stove being used."""
        return self._stove

    @property
    def stoves(self) -> tuple[Stove, ...]:
        """All stoves in the logbook."""
        return self.logbook.stoves()

    def choose_stove(self, name: str) -> None:
        """Use another stove; its latest session is taken up if it is still warm."""
        self._stove = self.logbook.stove(name)
        self.logbook.set_setting("stove", name)
        self._walk = walk_of(self._stove)
        self._log = None
        self._forget_results()
        self._take_up_latest_session()
        self.announce(Changed(stove=True, session=True, log=True, walk=True, study=True))

    def save_stove(self, stove: Stove) -> None:
        """Keep a changed or a new stove and use it."""
        self.logbook.save_stove(stove)
        if stove.name == self._stove.name:
            self.read_stove_again()
        else:
            self.choose_stove(stove.name)

    def read_stove_again(self) -> None:
        """Take up the stove in use as the logbook has it now; the lit spot stays lit if it is still there."""
        before, lit = self._stove, self._walk.spot.name
        self._stove = self.logbook.stove(before.name)
        self._walk = walk_of(self._stove)
        if self._stove.spot(lit) is not None:
            self._walk = self._walk.at(lit)
        if _as_projected(self._stove) != _as_projected(before):
            self._forget_results()
        self.announce(Changed(stove=True, walk=True, study=True))

    # --- sessions ----------------------------------------------------------------------------------------------

    @property
    def session(self) -> Session | None:
        """The session on the table, if one is."""
        return self._log.session if self._log else None

    @property
    def sessions(self) -> tuple[SessionSummary, ...]:
        """All sessions of this stove."""
        return self.logbook.sessions(self._stove.name)

    @property
    def is_live(self) -> bool:
        """Whether the session on the table is still being written."""
        latest = self._log.latest_at if self._log else None
        return latest is None or self.clock() - latest <= LIVE_FOR

    @property
    def rows(self) -> tuple[Entry, ...]:
        """The raw log of the session on the table."""
        return self._log.rows if self._log else ()

    @property
    def entries(self) -> tuple[Entry, ...]:
        """What holds of that log after corrections, in order of time."""
        return self._log.entries if self._log else ()

    @property
    def offset_minutes(self) -> int:
        """Offset [min] of the local clock: of the session on the table, or of this computer where none is written."""
        return self.rows[-1].offset_minutes if self.rows else local_offset_minutes(self.clock())

    def start_session(self, title: str = "") -> None:
        """Begin a new session."""
        day = self.clock().astimezone()
        title = title or f"{day:%A} {day.day} {day:%B %Y}"
        self._log = OpenLog(self.logbook, self.logbook.start_session(self._stove.name, title))
        self._walk = walk_of(self._stove)
        self._forget_results()
        self.announce(Changed(session=True, log=True, walk=True))

    def open_session(self, number: int) -> None:
        """Put a session of the logbook on the table."""
        session = self.logbook.session(number)
        if session.stove != self._stove.name:
            self._stove = self.logbook.stove(session.stove)
            self.logbook.set_setting("stove", session.stove)
        self._log = OpenLog(self.logbook, session)
        self._know_spots(session.entries)
        self._walk = walk_of(self._stove)
        self._forget_results()
        self.announce(Changed(stove=True, session=True, log=True, walk=True))

    def rename_session(self, number: int, title: str) -> None:
        """Give a session another title."""
        if not title.strip():
            raise InputProblem("The session has no title; type one, such as Sunday bread.")
        self.logbook.rename_session(number, title.strip())
        if self._log is not None and self._log.session.number == number:
            self._log.session = self.logbook.session(number)
        self.announce(Changed(session=True))

    # --- entering ----------------------------------------------------------------------------------------------

    @property
    def walk(self) -> Walk:
        """The walk round the stove, with the spot lit up for the next number."""
        return self._walk

    def light(self, walk: Walk) -> None:
        """Light up another spot, as the cook chose."""
        self._walk = walk
        self._walk_is_held = True
        self.announce(Changed(walk=True))

    def hold_walk(self) -> None:
        """A number is being typed: the spot it is meant for stays lit."""
        self._walk_is_held = True

    def read(self, text: str, spot: str = "", at_text: str = "") -> Receipt:
        """Enter a temperature at the lit spot (or at `spot`) and light up the next one."""
        value, unit = parse_temperature(text, self.unit)
        where = spot or self._walk.spot.name
        receipt = self._record(Kind.READING, spot=where, value=tidy(value, 2), unit=unit, at_text=at_text)
        if where == self._walk.spot.name:
            self._walk = self._walk.moved_on()
        self._walk_is_held = False
        self.announce(Changed(log=True, walk=True))
        return receipt

    def do(
        self, kind: Kind, value: str = "", unit: str = "", spot: str = "", note: str = "", at_text: str = ""
    ) -> Receipt:
        """Enter something done at the stove."""
        receipt = self._record(kind, spot=spot, value=value, unit=unit, note=note, at_text=at_text)
        self.announce(Changed(log=True))
        return receipt

    def undo(self) -> None:
        """Take back the latest thing entered; a correction goes back to what stood before it."""
        self._opened().undo(self.clock(), self.offset_minutes)
        self.announce(Changed(log=True))

    def redo(self) -> None:
        """Take back the latest undo, as long as nothing was entered since."""
        self._opened().redo(self.clock(), self.offset_minutes)
        self.announce(Changed(log=True))

    def correct(self, number: int, text: str) -> Receipt:
        """Give a row another value; wood takes a mass or words, a note takes words."""
        old = self._opened().row(number)
        return self._replace(old, corrected_row(old, text, self.mass_unit))

    def move(self, number: int, at_text: str) -> Receipt:
        """Give a row another clock time."""
        old = self._opened().row(number)
        at = parse_wall_clock(at_text, self.clock(), old.offset_minutes)
        return self._replace(old, replace(old, at=at))

    def take_back(self, number: int) -> None:
        """Take back one row."""
        self._opened().take_back(number, self.clock(), self.offset_minutes)
        self.announce(Changed(log=True))

    def play(self, entries: tuple[Entry, ...]) -> None:
        """Enter rows of a sample session as they stand."""
        if not entries:
            return
        if self._log is None:
            self.start_session("Practice")
        self._append(entries)
        self.announce(Changed(log=True))

    # --- band, belief, study -----------------------------------------------------------------------------------

    @property
    def bands(self) -> tuple[HeatBand, ...]:
        """The bands that have a name."""
        return named_bands(self.logbook)

    @property
    def band(self) -> HeatBand:
        """The band the oven is wanted in."""
        return self._band

    def choose_band(self, text: str) -> None:
        """Choose the band by its name or by typing: `bread`, `425-475`, `425`."""
        self._band = keep_band(self.logbook, text, self.unit)
        self.announce(Changed(band=True))

    def choose_action(self, action: Action) -> None:
        """Ask what one step would bring; LEAVE asks no more."""
        self._action = action
        self.announce(Changed(band=True))

    @property
    def action(self) -> Action:
        """The step being asked about."""
        return self._action

    def inputs(self) -> Inputs:
        """Everything the next computation needs; makes every earlier one stale."""
        self._serial += 1
        asked = self.inputs_about(self._stove, self.session, self._asked_at())
        return replace(asked, serial=self._serial, action=self._action)

    def inputs_about(self, stove: Stove, session: Session | None, now: datetime) -> Inputs:
        """What is asked about a session of any stove at a moment, with the present band and what was learned."""
        return Inputs(
            stove=stove,
            rows=session.entries if session else (),
            now=now,
            band=self._band,
            character=self._past.character(stove),
            earlier=self._earlier(stove, session),
        )

    def show(self, standing: Standing) -> bool:
        """Take a computation's result; a stale one is dropped and False comes back."""
        if standing.serial != self._serial:
            return False
        self._standing = standing
        lit = self._light_what_is_wanted(standing)
        self.announce(Changed(standing=True, walk=lit))
        return True

    def _light_what_is_wanted(self, standing: Standing) -> bool:
        """Light up the spot that is worth reading next, unless the cook chose one or has begun to type."""
        wanted = advise(standing).reading
        if wanted is None or self._walk_is_held or wanted.spot == self._walk.spot.name:
            return False
        if all(spot.name != wanted.spot for spot in self._walk.spots):
            return False
        self._walk = self._walk.at(wanted.spot)
        return True

    @property
    def standing(self) -> Standing | None:
        """How the stove stands, once it has been worked out."""
        return self._standing

    def study_inputs(self) -> StudyInputs:
        """This stove's past for a study of it."""
        return self._past.inputs(self._stove, without=self.session if self.is_live else None)

    def show_study(self, found: Study) -> None:
        """Take a study's result and keep what it learned."""
        self._past.keep(found)
        self.announce(Changed(study=True))

    @property
    def study(self) -> Study | None:
        """What the past says about this stove, once it has been studied."""
        return self._past.study(self._stove)

    @property
    def first_fires(self) -> FirstFires:
        """How far a new stove is through its first fires."""
        if not self._stove.is_new or self._stove.first_fires_waived:
            return progress(self._stove, ())
        past = self.logbook.past_sessions(self._stove.name)
        return progress(self._stove, past)

    @property
    def edge(self) -> Edge:
        """How numbers about the standing leave: in the unit on the screen, by the session's clock."""
        now = self._standing.now if self._standing else self._asked_at()
        return Edge(unit=self.unit, now=now, offset_minutes=self.offset_minutes)

    # --- within ------------------------------------------------------------------------------------------------

    def _take_up_latest_session(self) -> None:
        latest = max(self.sessions, key=lambda row: row.number, default=None)
        if latest is None:
            return
        session = self.logbook.session(latest.number)
        if session.entries and self.clock() - max(row.at for row in session.entries) <= LIVE_FOR:
            self._log = OpenLog(self.logbook, session)
            self._know_spots(session.entries)

    def _earlier(self, stove: Stove, session: Session | None) -> tuple[Session, ...]:
        """The sessions before one, for the first fires of a new stove; a stove fired before needs none."""
        if not stove.is_new or stove.first_fires_waived:
            return ()
        number = session.number if session else None
        began = min((row.at for row in session.entries), default=None) if session else None
        return tuple(
            one
            for one in self.logbook.past_sessions(stove.name)
            if one.number != number and (began is None or min(row.at for row in one.entries) < began)
        )

    def _know_spots(self, entries: Sequence[Entry]) -> None:
        self._stove = with_spots_named(
            self._stove, tuple(row.spot for row in entries if row.kind is Kind.READING and row.spot)
        )

    def _forget_results(self) -> None:
        self._serial += 1
        self._standing = None
        self._action = LEAVE

    def _asked_at(self) -> datetime:
        """Now while the session is live; the end of its log when an old one is looked at."""
        now = self.clock()
        latest = self._log.latest_at if self._log else None
        return now if self.is_live or latest is None else latest

    def _record(
        self, kind: Kind, *, spot: str = "", value: str = "", unit: str = "", note: str = "", at_text: str = ""
    ) -> Receipt:
        now, offset = self.clock(), local_offset_minutes(self.clock())
        at = parse_wall_clock(at_text, now, offset) if at_text.strip() else now
        row = check_entry(at=at, offset_minutes=offset, kind=kind, spot=spot, value=value, unit=unit, note=note)
        if not self.is_live or self._log is None:
            self.start_session()
        asked = doubt(row, self._stove, self.entries, now)
        return Receipt(entry=self._append([row]), question=asked.sentence if asked else "")

    def _opened(self) -> OpenLog:
        if self._log is None:
            raise InputProblem("No session is open yet; enter something first.")
        return self._log

    def _append(self, rows: Sequence[Entry]) -> Entry:
        kept = self._opened().append(rows)
        self._know_spots(kept)
        return kept[-1]

    def _replace(self, old: Entry, new: Entry) -> Receipt:
        now = self.clock()
        asked = doubt(new, self._stove, [row for row in self.entries if row != old], now)
        entry = self._opened().replace(old, new, now, self.offset_minutes)
        self.announce(Changed(log=True))
        return Receipt(entry=entry, question=asked.sentence if asked else "")


def _as_projected(stove: Stove) -> Stove:
    """What the forecast looks at: how the chimney and the sides are described changes no projection."""
    return replace(stove, chimney=None, sides="")
