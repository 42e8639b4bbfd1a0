"""Who cooks a supper by what the program shows: the plan's steps with their clock, and what the heading asks for.

The oven is read at rounds; everything is written down a little untrue, and sometimes not at all.
"""

from dataclasses import replace
from datetime import datetime, timedelta
from unittest.mock import patch

import numpy as np

from cookstove_gui import one_road
from cookstove_gui.advice import Advice, Subject, advise
from cookstove_gui.cooking.fires.steps import AIR_DOWN, feeds
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.safety.caution import Caution, speak_against
from cookstove_gui.cooking.supper.dishes import Dish, Heat, Wait
from cookstove_gui.cooking.supper.marks import Mark, Supper, with_mark
from cookstove_gui.cooking.supper.plan import FireStep, Margin, Plan
from cookstove_gui.forecast.answers import ActionKind
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.one_road import Memory, work_out
from cookstove_gui.situation import Inputs, Standing
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.supper import SupperInputs, plan_supper
from cookstove_gui.units import degrees, tidy
from tests.benchmarks.supper_evening import BAKE_MIN, GIVES_UP_MIN, REST_MIN, Cooked, Evening
from tests.world.kitchens import Kitchen

ROUND_MIN, SPREAD = 8.0, 4.0  # between rounds on average; shape of their gamma distribution
NOTICES = 0.5  # chance a minute of doing what is shown
LOOKS_APART_MIN = 4  # the window is looked at so often, at most
KEEPS_OFF_MIN = 12  # after the air was set as shown, it isn't touched by habit
CATCHES = 0.6  # opening of the air at least that is given to wood just put on
SINCE_WOOD_MIN = 10  # wood that was put on so lately answers a call for wood
TOO_SOON_MIN = 7.0  # before its time, from which a bake that the plan sees done is slowed down
HEEDS_MIN = 5.0  # after which a spot is read again that the window calls too hot
WRITES = {"lit": 1.0, "wood": 0.92, "air": 0.8, "bypass": 0.9, "oven_door": 0.6}
_KINDS = {"lit": Kind.LIT, "wood": Kind.WOOD, "air": Kind.AIR, "bypass": Kind.BYPASS}


class Follower:
    """Who cooks by the program's plan."""

    def __init__(
        self,
        kitchen: Kitchen,
        past: tuple[Session, ...],
        character: Character,
        margin: Margin,
        seed: int,
        *,
        sooner: float = 0.0,
        uses_door: bool = True,
    ) -> None:
        """`sooner`: minutes by which the table is wanted sooner than the plan, made in time, would have it."""
        self.kitchen, self.past, self.character = kitchen, past, character
        low, high = kitchen.band
        self.band = HeatBand(name="wanted", low=low, high=high)
        bake = Heat(what="bake", place=Place.OVEN, minutes=BAKE_MIN, low=low, high=high)
        rest = Wait(what="rest", minutes=REST_MIN, shortest=REST_MIN, longest=REST_MIN)
        dish = Dish(key="bake", name="bake", parts=(bake, rest), may_wait=0.0)
        morning = datetime(2026, 2, 1, 9, tzinfo=past[0].entries[0].at.tzinfo)
        self.supper = Supper(table_at=morning + timedelta(hours=9), dishes=(dish,), margin=margin)
        self.plan = self._planned(None, morning)
        if sooner > 0.0:
            late = morning + (self.supper.table_at - self._lighting()) - timedelta(minutes=sooner)
            self.supper = replace(self.supper, table_at=late)
            self.plan = self._planned(None, morning)
        self.chance = self.plan.chance or 0.0
        self.lit_at = self._lighting()
        lead = (self.supper.table_at - self.lit_at).total_seconds() / 60.0 - BAKE_MIN - REST_MIN
        random = np.random.default_rng([82, seed])
        self.evening = Evening(kitchen=kitchen, lead=lead, random=random, uses_door=uses_door)
        self.memory = Memory()
        self.advice: Advice | None = None
        self.cautions: tuple[Caution, ...] = ()
        self.air_set_at = self.looked_at = -99
        self.air_set = 0.0
        self.is_new = False

    def _lighting(self) -> datetime:
        return next(step.begin for step in self.plan.steps if step.what == FireStep.LIGHT)

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
        if not bake.begun and self.plan.chance is not None:
            self.evening.told.append(((bake.begin - self.now).total_seconds() / 60.0, self.plan.chance))
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
