"""The desk: the only door through which the log changes.

An entry is on disk before anybody is told of it. Listeners learn which kinds of thing changed, and ask for the rest.
Raises InputProblem for what cannot be understood or is not there.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, tzinfo
from typing import TYPE_CHECKING

from cookstove_gui.advice import advise
from cookstove_gui.desk.baked import Baked
from cookstove_gui.desk.changes import Changed
from cookstove_gui.desk.earlier import earlier_fires, first_fires
from cookstove_gui.desk.kept_studies import KeptStudies
from cookstove_gui.desk.log.entering import Entering
from cookstove_gui.desk.log.on_table import OnTable
from cookstove_gui.desk.log.questions import Question, Questions
from cookstove_gui.desk.log.sessions import Sessions
from cookstove_gui.desk.log.walk import LitSpot, Walk
from cookstove_gui.desk.plan.supper import SupperTable
from cookstove_gui.desk.settings import Settings
from cookstove_gui.desk.shown import Shown
from cookstove_gui.phrases.clock import clock_words
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.situation import Inputs, Standing
from cookstove_gui.units import (
    MassUnit,
    TemperatureUnit,
    clock_text,
    local_offset_minutes,
    parse_local_clock,
)

if TYPE_CHECKING:
    from cookstove_gui.cooking.fires.first_fires import FirstFires
    from cookstove_gui.cooking.safety.caution import Caution
    from cookstove_gui.desk.warm_start import WarmStart
    from cookstove_gui.forecast.answers import Action
    from cookstove_gui.logbook.logbook import Logbook, SessionSummary
    from cookstove_gui.stove.entries import Entry, HeatBand, Session
    from cookstove_gui.stove.stove import Stove
    from cookstove_gui.study import Study


def utc_now() -> datetime:
    """This computer's clock."""
    return datetime.now(UTC)


class Desk:
    """The live session of one stove, and the way to all the others."""

    def __init__(self, logbook: Logbook, clock: Callable[[], datetime] = utc_now, zone: tzinfo | None = None) -> None:
        """With `zone` the local clock is another one than this computer's."""
        self._zone = zone
        self.logbook = logbook
        self.clock = clock
        self._listeners: list[Callable[[Changed], None]] = []
        self._table = OnTable(logbook, clock, zone)
        self._lit = LitSpot(self.stove)
        self._settings = Settings(logbook)
        self._past = KeptStudies(logbook)
        self.baked = Baked(logbook)
        self._shown = Shown()
        self._questions = Questions()
        self._was_live = False  # when it was last caught up
        self.supper = SupperTable(logbook, clock, lambda: self.stove.name, self.announce)
        self._sessions = Sessions(
            self._table, self._lit, self._shown, self._settings, clock, self.announce, self.inputs_about
        )
        entering = Entering(self._table, self._lit, self._settings, self._sessions, self.announce)
        # What these two do is done through the desk, the one door to the log.
        self.start_session, self.open_session = self._sessions.start_session, self._sessions.open_session
        self.clear_table = self._sessions.clear_table
        self.ask_new_session, self.rename_session = self._sessions.ask_new_session, self._sessions.rename_session
        self.start_warm, self.carry_on = self._sessions.start_warm, self._sessions.carry_on
        self.leave_warm_start = self._sessions.leave_warm_start
        self.read, self.do, self.play = entering.read, entering.do, entering.play
        self.correct, self.keep, self.take_back = entering.correct, entering.keep, entering.take_back
        self.undo, self.redo = entering.undo, entering.redo

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
        return self._settings.unit

    def set_unit(self, unit: TemperatureUnit) -> None:
        """Show and type temperatures in this unit from now on."""
        self.set_setting("unit", unit)

    @property
    def mass_unit(self) -> MassUnit:
        """Unit of mass on the screen."""
        return self._settings.mass_unit

    def setting(self, key: str, default: str = "") -> str:
        """A setting kept in the logbook."""
        return self.logbook.setting(key, default)

    def set_setting(self, key: str, value: str) -> None:
        """Keep a setting."""
        self.logbook.set_setting(key, value)
        self._settings.read_again()
        self.announce(Changed(settings=True))

    def read_tables_again(self) -> None:
        """The cook's own tasks, foods and words are others from now on."""
        self._settings.read_again()
        self.announce(Changed(settings=True, band=True, supper=True))

    @property
    def bands(self) -> tuple[HeatBand, ...]:
        """The bands that have a name."""
        return self._settings.bands

    @property
    def band(self) -> HeatBand:
        """The band the oven is wanted in."""
        return self._settings.band

    def choose_band(self, text: str) -> None:
        """Choose the band by its name or by typing: `bread`, `425-475`, `425`."""
        self._settings.choose_band(text)
        self.announce(Changed(band=True))

    # --- stoves ------------------------------------------------------------------------------------------------

    @property
    def stove(self) -> Stove:
        """The stove being used."""
        return self._table.stove

    @property
    def stoves(self) -> tuple[Stove, ...]:
        """All stoves in the logbook."""
        return self.logbook.stoves()

    def choose_stove(self, name: str) -> None:
        """Use another stove; its latest session is taken up if it is still warm."""
        self._table.use_stove(name)
        self._sessions.begin_again(Changed(stove=True, session=True, log=True, walk=True, study=True))

    def save_stove(self, stove: Stove) -> None:
        """Keep a changed or a new stove and use it."""
        self.logbook.save_stove(stove)
        if stove.name == self.stove.name:
            self.read_stove_again()
        else:
            self.choose_stove(stove.name)

    def read_stove_again(self) -> None:
        """Take up the stove in use as the logbook has it now; the lit spot stays lit if it is still there."""
        if self._table.read_stove_again():
            self._shown.wait()
        self._lit.keep_on(self.stove)
        self.announce(Changed(stove=True, walk=True, study=True))

    # --- sessions ----------------------------------------------------------------------------------------------

    @property
    def session(self) -> Session | None:
        """The session on the table, if one is."""
        return self._table.session

    @property
    def sessions(self) -> tuple[SessionSummary, ...]:
        """All sessions of this stove."""
        return self.logbook.sessions(self.stove.name)

    @property
    def is_live(self) -> bool:
        """Whether the session on the table is still being written."""
        return self._table.is_live

    @property
    def rows(self) -> tuple[Entry, ...]:
        """The raw log of the session on the table."""
        return self._table.rows

    @property
    def entries(self) -> tuple[Entry, ...]:
        """What holds of that log after corrections, in order of time."""
        return self._table.entries

    @property
    def offset_minutes(self) -> int:
        """Offset [min] of the local clock: of the session on the table, or of this computer where none is written."""
        return self._table.offset_minutes

    @property
    def warm_start(self) -> WarmStart | None:
        """What the cook is asked before a new session begins; none where nothing is asked."""
        return self._sessions.warm

    # --- entering ----------------------------------------------------------------------------------------------

    @property
    def walk(self) -> Walk:
        """The walk round the stove, with the spot lit up for the next number."""
        return self._lit.walk

    def light(self, walk: Walk) -> None:
        """Light up another spot, as the cook chose."""
        self._lit.choose(walk)
        self.announce(Changed(walk=True))

    def hold_walk(self) -> None:
        """A number is being typed: the spot it is meant for stays lit."""
        self._lit.hold()

    def clock_meant(self, text: str) -> str:
        """The clock that is meant by what was typed for “when”, as `7:05`; empty for now."""
        if text.strip().casefold() in ("", "now"):
            return ""
        now = self.clock()
        at = parse_local_clock(text, now, self._zone)
        return clock_text(at, local_offset_minutes(at, self._zone))

    def clock_trouble(self) -> str:
        """A sentence where this computer's clock cannot be right, else empty."""
        ends = [one.last_at for one in self.logbook.sessions() if one.last_at is not None]
        return clock_words(self.clock(), self._table.latest_at if self.is_live else None, max(ends, default=None))

    def catch_up(self) -> None:
        """Take up what another window has written to the logbook, and that a session has ended by the clock alone."""
        was_live, self._was_live = self._was_live, self.is_live
        if was_live and not self._was_live:
            self.announce(Changed(session=True))
        if self.logbook.is_changed_elsewhere():
            rows = self._table.read_log_again()
            self._settings.read_again()
            supper = self.supper.read_again()
            self.announce(Changed(log=rows, session=True, settings=True, supper=supper))

    @property
    def questions(self) -> tuple[Question, ...]:
        """The entries in question, in the order in which they were entered."""
        edge = replace(self.edge, now=self._table.asked_at)
        return self._questions.of(self.stove, self.rows, self.entries, self.standing, edge)

    # --- how it stands -----------------------------------------------------------------------------------------

    def choose_action(self, action: Action) -> None:
        """Ask what one step would bring; LEAVE asks no more."""
        self._shown.action = action
        self.announce(Changed(band=True))

    @property
    def action(self) -> Action:
        """The step being asked about."""
        return self._shown.action

    def inputs(self) -> Inputs:
        """Everything the next computation needs; makes every earlier one stale."""
        return self._shown.asked(self.inputs_about(self.stove, self.session, self._table.asked_at))

    def inputs_about(self, stove: Stove, session: Session | None, now: datetime) -> Inputs:
        """What is asked about a session of any stove at a moment, with the present band and what was learned."""
        return Inputs(
            stove=stove,
            rows=session.entries if session else (),
            now=now,
            band=self.band,
            character=self._past.character(stove),
            earlier=earlier_fires(self.logbook, stove, session),
            baked=self.baked.of_inside(stove, session),
        )

    def show(self, standing: Standing) -> bool:
        """Take a computation's result; a stale one is dropped and False comes back."""
        if not self._shown.take(standing):
            return False
        wanted = advise(standing).reading
        lit = wanted is not None and self._lit.suggest(wanted.spot)
        self.announce(Changed(standing=True, walk=lit))
        return True

    @property
    def standing(self) -> Standing | None:
        """How the stove stands, once it has been worked out."""
        return self._shown.standing

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """What the stove is warned of, while it is worked out anew too."""
        return self._shown.cautions

    @property
    def edge(self) -> Edge:
        """How numbers about the standing leave: in the unit on the screen, by the session's clock."""
        now = self.standing.now if self.standing else self._table.asked_at
        return Edge(unit=self.unit, now=now, offset_minutes=self.offset_minutes)

    # --- the past ----------------------------------------------------------------------------------------------

    def show_study(self, found: Study) -> None:
        """Take a study's result and keep what it learned."""
        self._past.keep(found)
        self.announce(Changed(study=True))

    @property
    def study(self) -> Study | None:
        """What the past says about this stove, once it has been studied."""
        return self._past.study(self.stove)

    @property
    def first_fires(self) -> FirstFires:
        """How far a new stove is through its first fires."""
        return first_fires(self.logbook, self.stove)
