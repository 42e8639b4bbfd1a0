"""Two who cook the same supper on the same fire: one follows the program, one lights by a rule and goes by habit.

Both read the oven at their rounds, put the food in once the thermometer shows a heat that will do (25 °F off the band
is what a bake forgives), and take it out when it is done: when it has had as much heat as its minutes in the middle of
the band give, heat going into food in proportion to the oven's excess over the boil. Who follows the program knows only
what it shows: the plan's steps with their clock, and what the heading asks for. Everything is written down a little
untrue, and sometimes not at all.
"""

from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from unittest.mock import patch

import numpy as np

from cookstove_gui import one_road
from cookstove_gui.advice import Advice, Subject, advise
from cookstove_gui.cooking.fires.steps import AIR_DOWN, feeds
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.safety.caution import Caution, speak_against
from cookstove_gui.cooking.supper.dishes import Dish, Heat, Wait
from cookstove_gui.cooking.supper.heats import GIVES
from cookstove_gui.cooking.supper.marks import Mark, Supper, with_mark
from cookstove_gui.cooking.supper.plan import FireStep, Margin, Plan
from cookstove_gui.forecast.answers import ActionKind
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.one_road import Memory, work_out
from cookstove_gui.situation import Inputs, Standing
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.supper import SupperInputs, plan_supper
from cookstove_gui.units import degrees, tidy
from tests.world.kitchens import Kitchen

BAKE_MIN, REST_MIN = 45.0, 15.0
BOIL = 373.15  # K
GIVES_UP_MIN = 420  # from lighting
ROUND_MIN, SPREAD = 8.0, 4.0  # between rounds on average; shape of their gamma distribution
NOTICES = 0.5  # chance a minute of doing what is shown
LOOKS_APART_MIN = 4  # the window is looked at so often, at most
KEEPS_OFF_MIN = 12  # after the air was set as shown, it isn't touched by habit
CATCHES = 0.6  # opening of the air at least that is given to wood just put on
SINCE_WOOD_MIN = 10  # wood that was put on so lately answers a call for wood
READIES_MIN = 10.0  # before the food is to go in, from when an oven that is far too hot has its door opened
TOO_SOON_MIN = 7.0  # before its time, from which a bake that the plan sees done is slowed down
LOOKS_IN = 0.2  # chance a minute that an oven with food in it is looked at
HEEDS_MIN = 5.0  # after which a spot is read again that the window calls too hot
WRITES = {"lit": 1.0, "wood": 0.92, "air": 0.8, "bypass": 0.9, "oven_door": 0.6}
_KINDS = {"lit": Kind.LIT, "wood": Kind.WOOD, "air": Kind.AIR, "bypass": Kind.BYPASS}


@dataclass(frozen=True, slots=True, kw_only=True)
class Cooked:
    """What became of one supper."""

    late_min: float  # after the table's time; infinite where it was never done
    food_waits: float  # min that the food waits for the oven, after it was to go in
    oven_waits: float  # min from the oven's coming to heat until the food goes in
    rise_min: float  # from lighting to the heat
    lead_min: float  # from lighting to when the food was to go in
    mean_over: float  # K of the oven over the band's middle while it baked
    chance: float = 1.0  # as it was told when the fire was lit
    why: str = ""  # what made it late or early, in a word


@dataclass(slots=True, kw_only=True)
class Evening:
    """One supper under way; minutes count from lighting."""

    kitchen: Kitchen
    lead: float  # to when the food was to go in, as it was at first
    random: np.random.Generator
    rows: list[Entry] = field(default_factory=list)
    heard: int = 0  # of what happened, how much is written down or left out
    next_round: float = 3.0
    in_at: float | None = None
    reached: float | None = None
    dose: float = 0.0
    over: list[float] = field(default_factory=list)
    is_too_hot: bool = False  # as last seen, so that it is looked at again
    is_too_soon: bool = False  # what is in the oven will be done far too soon, as far as is known

    def heat_seen(self) -> float:
        """The oven's thermometer as it is read [K]."""
        return self.kitchen.dial() + self.random.normal(0.0, 1.5)

    def goes_in(self, seen: float) -> bool:
        """Whether an oven that shows this will do for the food."""
        low, high = self.kitchen.band
        return low - GIVES <= seen <= high + GIVES

    def lets_heat_out(self) -> None:
        """An oven far too hot for what waits, or is in it and looked at: its door is opened until it is at its heat.

        So is that of a bake that is known to be done long before its time, down to the middle of its heat.
        """
        kitchen, waits = self.kitchen, self.in_at is None and self.kitchen.minute >= self.lead - READIES_MIN
        if waits or self.is_too_hot or (self.in_at is not None and self.random.random() < LOOKS_IN):
            low, high = kitchen.band
            enough = 0.5 * (low + high) if self.is_too_soon else high + (0.0 if self.is_too_hot else GIVES)
            self.is_too_hot = self.heat_seen() > enough
            if self.is_too_hot:
                kitchen.open_oven(1.0)

    def put_in(self) -> None:
        """The food goes in now."""
        self.in_at = float(self.kitchen.minute)
        self.kitchen.food(goes_in=True)

    def minute(self) -> bool:
        """One minute of fire; whether the food is done at its end."""
        kitchen = self.kitchen
        self.lets_heat_out()
        kitchen.live()
        oven, (low, high) = kitchen.oven(), kitchen.band
        if self.reached is None and oven >= low:
            self.reached = float(kitchen.minute)
        if self.in_at is None:
            return False
        self.over.append(oven - 0.5 * (low + high))
        self.dose += max(oven - BOIL, 0.0) / (0.5 * (low + high) - BOIL)
        return self.dose >= BAKE_MIN

    def result(self, done: bool, chance: float = 1.0) -> Cooked:
        """What became of it."""
        reached = np.inf if self.reached is None else self.reached
        in_at = np.inf if self.in_at is None else self.in_at
        late = self.kitchen.minute - self.lead - BAKE_MIN if done else np.inf
        mean = float(np.mean(self.over)) if self.over else 0.0
        return Cooked(
            late_min=late, food_waits=max(in_at - self.lead, 0.0), oven_waits=max(in_at - reached, 0.0),
            rise_min=reached, lead_min=self.lead, mean_over=mean, chance=chance,
            why=_why(late, reached - self.lead, in_at - self.lead),
        )  # fmt: skip


def _why(late: float, rise_late: float, in_late: float) -> str:
    if abs(late) <= 10.0:
        return ""
    if rise_late > 5.0:
        return "oven late"
    if in_late > 8.0:
        return "oven not right when wanted"
    return "oven too cool while it baked" if late > 0.0 else "oven too hot while it baked"


def by_rule(kitchen: Kitchen, lead: float, seed: int) -> Cooked:
    """Lit so long before the food is to go in; all else by habit."""
    evening = Evening(kitchen=kitchen, lead=lead, random=np.random.default_rng([81, seed]))
    done = False
    while not done and kitchen.minute < GIVES_UP_MIN:
        if evening.in_at is None and kitchen.minute >= lead and evening.goes_in(evening.heat_seen()):
            evening.put_in()
        done = evening.minute()
    return evening.result(done)


class Follower:
    """Who cooks by the program's plan."""

    def __init__(
        self, kitchen: Kitchen, past: tuple[Session, ...], character: Character, margin: Margin, seed: int
    ) -> None:
        self.kitchen, self.past, self.character = kitchen, past, character
        low, high = kitchen.band
        self.band = HeatBand(name="wanted", low=low, high=high)
        bake = Heat(what="bake", place=Place.OVEN, minutes=BAKE_MIN, low=low, high=high)
        rest = Wait(what="rest", minutes=REST_MIN, shortest=REST_MIN, longest=REST_MIN)
        dish = Dish(key="bake", name="bake", parts=(bake, rest), may_wait=0.0)
        morning = datetime(2026, 2, 1, 9, tzinfo=past[0].entries[0].at.tzinfo)
        self.supper = Supper(table_at=morning + timedelta(hours=9), dishes=(dish,), margin=margin)
        self.plan = self._planned(None, morning)
        lit = next(step.begin for step in self.plan.steps if step.what == FireStep.LIGHT)
        first = self.plan.of_dish("bake")[0]
        self.chance = first.chance or 0.0
        self.lit_at = lit
        lead = (self.supper.table_at - lit).total_seconds() / 60.0 - BAKE_MIN - REST_MIN
        self.evening = Evening(kitchen=kitchen, lead=lead, random=np.random.default_rng([82, seed]))
        self.memory = Memory()
        self.advice: Advice | None = None
        self.cautions: tuple[Caution, ...] = ()
        self.air_set_at = self.looked_at = -99
        self.air_set = 0.0
        self.is_new = False

    @property
    def now(self) -> datetime:
        """The clock."""
        return self.lit_at + timedelta(minutes=self.kitchen.minute)

    def cook(self) -> Cooked:
        """The whole evening."""
        evening, kitchen, done = self.evening, self.kitchen, False
        while not done and kitchen.minute < GIVES_UP_MIN:
            self.is_new = self._writes() or self.is_new
            if self.is_new and kitchen.minute - self.looked_at >= LOOKS_APART_MIN:
                self._look()
                self.is_new = False
            if kitchen.minute > 0:
                self._tend()
                self._mind_food()
            done = evening.minute()
        return evening.result(done, self.chance)

    # --- what is written down, and what the program makes of it

    def _writes(self) -> bool:
        """The rows of this minute; whether there are any."""
        evening, kitchen, before = self.evening, self.kitchen, len(self.evening.rows)
        for event in kitchen.happened[evening.heard :]:
            if event.kind in _KINDS and evening.random.random() < WRITES[event.kind]:
                self._write_event(event.kind, event.value)
        evening.heard = len(kitchen.happened)
        if kitchen.minute >= evening.next_round:
            self._read_round()
        return len(evening.rows) > before

    def _write_event(self, kind: str, value: float) -> None:
        wobble = float(np.exp(0.1 * self.evening.random.standard_normal()))
        match kind:
            case "wood":
                self._row(Kind.WOOD, value=tidy(value * wobble / 0.45359237, 1), unit="lb")
            case "lit":
                self._row(Kind.LIT)
            case _:
                self._row(_KINDS[kind], value=tidy(round(value * 20) / 20, 2))

    def _read_round(self) -> None:
        evening = self.evening
        self._row(Kind.READING, "oven_centre", tidy(round(float(degrees(evening.heat_seen(), "F")) / 5) * 5), "F")
        tops = [spot for spot in self.kitchen.spots if spot.startswith("top")]
        hot = [one.spot for one in self.cautions if one.urgent and one.spot in tops]
        if hot or evening.random.random() < 0.4:
            name = hot[0] if hot else str(evening.random.choice(tops))
            kelvin = self.kitchen.spot(name)
            kelvin += 0.012 * (kelvin - 255.0) * evening.random.standard_normal()
            self._row(Kind.READING, name, tidy(round(float(degrees(kelvin, "F")))), "F")
        pause = max(2.0, evening.random.gamma(SPREAD, ROUND_MIN / SPREAD))
        evening.next_round = self.kitchen.minute + (min(pause, HEEDS_MIN) if hot else pause)

    def _row(self, kind: Kind, spot: str = "", value: str = "", unit: str = "") -> None:
        rows = self.evening.rows
        # the second keeps the rows of one minute apart
        at = self.now + timedelta(seconds=min(len([row for row in rows if row.at >= self.now]), 50))
        rows.append(
            Entry(number=len(rows) + 1, at=at, offset_minutes=0, kind=kind, spot=spot, value=value, unit=unit)
        )  # fmt: skip

    def _planned(self, standing: Standing | None, now: datetime) -> Plan:
        asked = self._asked(now)
        before = None if standing is None else self.plan
        past = self.past
        return plan_supper(
            SupperInputs(supper=self.supper, asked=asked, standing=standing, sessions=lambda: past, before=before)
        )  # fmt: skip

    def _asked(self, now: datetime) -> Inputs:
        rows = tuple(self.evening.rows) if hasattr(self, "evening") else ()
        return Inputs(
            stove=self.kitchen.stove, rows=rows, now=now, band=self.band, character=self.character, earlier=self.past
        )  # fmt: skip

    def _look(self) -> None:
        """The program takes the rows up: how the stove stands, the plan again, the heading.

        What the cook of this study never looks at, the tasks of the cooktop and the reading worth taking, is left out.
        """
        now = max(self.now, self.evening.rows[-1].at)
        self.looked_at = self.kitchen.minute
        with patch.object(one_road, "fits", lambda *_, **__: ()), patch.object(
            one_road, "next_reading", lambda *_: None
        ):  # fmt: skip
            standing = work_out(self._asked(now), self.memory)
        self.plan = self._planned(standing, now)
        self.advice = advise(standing, self.plan)
        bake, wanted = self.plan.of_dish("bake")[0], self.supper.table_at - timedelta(minutes=REST_MIN)
        self.evening.is_too_soon = bake.begun and wanted - bake.end > timedelta(minutes=TOO_SOON_MIN)
        self.cautions = standing.cautions

    # --- what is done

    def _tend(self) -> None:
        """What the plan and the heading call for; the rest is habit."""
        kitchen, advice = self.kitchen, self.advice
        if advice is None:
            return
        step = advice.step.action if advice.step is not None else None
        holds_back = advice.subject in (Subject.TOO_HOT, Subject.COOLING_IN) and not self.plan.steers
        holds_back = holds_back or (step is not None and not feeds(step) and step.kind is not ActionKind.BYPASS)
        let_go = next((one.begin for one in self.plan.steps if one.what == FireStep.LET_GO), None)
        holds_back = holds_back or speak_against(self.cautions, "wood")
        holds_back = holds_back or any(one.helps and (one.opening or 1.0) < 0.5 for one in self.plan.steps)
        keeps_from = holds_back or (let_go is not None and let_go <= self.now)
        kitchen.leaves_wood = keeps_from or self.plan.steers  # then wood is put on as the plan has it
        kitchen.leaves_air = kitchen.minute - self.air_set_at < KEEPS_OFF_MIN
        if self.evening.random.random() >= NOTICES:
            return
        due = {one.what: one for one in self.plan.steps if one.begin <= self.now and not one.done}
        asks = advice.caution.asks if advice.caution is not None else ()
        air = next((one.opening for one in self.plan.steps if one.what == FireStep.AIR), None)
        if "shut air" in asks or advice.subject is Subject.AIR_OPEN:
            air = AIR_DOWN
        elif "open air" in asks:
            air = 1.0
        elif air is None and step is not None and step.kind is ActionKind.AIR:
            air = step.value
        if FireStep.BYPASS_SHUT in due:
            kitchen.shut_bypass()
        wood = FireStep.WOOD in due or (step is not None and step.kind is ActionKind.WOOD)
        wood = wood or (advice.subject is Subject.WOOD_DUE and advice.by is not None and advice.by.at <= self.now)
        if wood and not keeps_from and kitchen.minute - kitchen.loaded_at >= SINCE_WOOD_MIN:
            planned = due.get(FireStep.WOOD)
            kitchen.load((planned.wood if planned else None) or kitchen.usual_load())
            if self.air_now() < CATCHES and not speak_against(self.cautions, "open air"):
                air = max(air or 0.0, CATCHES)
        if step is not None and step.kind is ActionKind.BYPASS:
            kitchen.shut_bypass()
        if air is not None and (air != self.air_set or kitchen.minute - self.air_set_at >= KEEPS_OFF_MIN):
            kitchen.set_air(air)
            self.air_set, self.air_set_at = air, kitchen.minute

    def air_now(self) -> float:
        """As it stands."""
        return next((one.value for one in reversed(self.kitchen.happened) if one.kind == "air"), 1.0)

    def _mind_food(self) -> None:
        """In at its clock once the thermometer shows its heat; it is then read, and put down."""
        evening, step = self.evening, self.plan.of_dish("bake")[0]
        if evening.in_at is not None or self.now < step.begin:
            return
        seen = evening.heat_seen()
        if not evening.goes_in(seen):
            evening.next_round = min(evening.next_round, self.kitchen.minute + 3.0)
            return
        evening.put_in()
        mark = replace(Mark(step="bake/0"), began=self.now)
        self.supper = replace(self.supper, marks=with_mark(self.supper.marks, mark))
