"""The people at the invented stoves at work: minute by minute, what they do, forget and overdo."""

from dataclasses import dataclass, fields

import numpy as np
from numpy.typing import NDArray

from tests.world.fire import PAPER_POWER, PAPER_SECONDS
from tests.world.firing import Firing, put_in_oven, put_on_top
from tests.world.habits import Cook, Plan
from tests.world.parts import NODE, FloatArray

DRAWS = 12  # uniform numbers a cook uses up each minute


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """Something that truly happened; `value` in kg of wood or water, seconds of the door, fraction open."""

    minute: float
    kind: str
    value: float = 0.0
    detail: str = ""


@dataclass(slots=True, kw_only=True)
class Tending:
    """What the cooks of a batch have in mind."""

    stage: FloatArray  # (B,) 0 heating, 1 baking or holding, 2 done
    batches: FloatArray
    remaining: FloatArray  # minutes of this batch
    seen: FloatArray  # K, the oven as last read
    since_wood: FloatArray  # minutes

    @classmethod
    def start(cls, batches: list[int]) -> "Tending":
        """Before lighting."""
        count = len(batches)
        return cls(
            stage=np.zeros(count),
            batches=np.array(batches, dtype=float),
            remaining=np.zeros(count),
            seen=np.full(count, 290.0),
            since_wood=np.zeros(count),
        )


def copy_tending(tending: Tending, times: int = 1) -> Tending:
    """A copy with every row `times` times."""
    return Tending(**{f.name: np.repeat(getattr(tending, f.name), times) for f in fields(Tending)})


def gather_tending(parts: list[Tending]) -> Tending:
    """Several batches as one."""
    return Tending(**{f.name: np.concatenate([getattr(p, f.name) for p in parts]) for f in fields(Tending)})


@dataclass(frozen=True, slots=True, kw_only=True)
class Crew:
    """The cooks, plans and wood of a batch, row by row."""

    cooks: list[Cook]
    plans: list[Plan]
    moisture: FloatArray
    thickness: FloatArray
    split_mass: FloatArray
    limit: FloatArray  # kg that the firebox takes


def tend(
    crew: Crew, tending: Tending, firing: Firing, minute: FloatArray, draws: FloatArray,
    events: list[list[Event]] | None = None, present: NDArray[np.bool_] | None = None,
) -> None:  # fmt: skip
    """Let every cook of the batch do what this minute asks of them.

    `minute` (B,) since lighting, `draws` (B, DRAWS) uniform numbers, `events` a list for each row, or none; `present`
    (B,) says who is in the kitchen, all if none.
    """
    wood = firing.bed.wood.sum(1)
    top = firing.nodes[:, :18].max(1)
    tending.since_wood += 1
    tending.remaining = np.maximum(tending.remaining - 1, 0)
    for row, (cook, plan) in enumerate(zip(crew.cooks, crew.plans, strict=True)):
        if present is not None and not present[row]:
            continue
        MinuteOfOne(crew, cook, plan, tending, firing, row, float(minute[row]), draws[row], events).act(
            wood[row], top[row]
        )


class MinuteOfOne:
    """One cook, one minute."""

    __slots__ = ("cook", "crew", "draws", "events", "firing", "minute", "plan", "row", "tending")

    def __init__(
        self, crew: Crew, cook: Cook, plan: Plan, tending: Tending, firing: Firing, row: int, minute: float,
        draws: FloatArray, events: list[list[Event]] | None,
    ) -> None:  # fmt: skip
        self.crew, self.cook, self.plan, self.tending, self.firing = crew, cook, plan, tending, firing
        self.row, self.minute, self.draws, self.events = row, minute, draws.tolist(), events

    def act(self, wood: float, top: float) -> None:
        row, plan, minute = self.row, self.plan, self.minute
        if minute < 1:
            self.light(plan.kindling)
            self.set_air(1.0)
            self.set_bypass(1.0)
            return
        if plan.first_splits <= minute < plan.first_splits + 1:
            self.load(plan.first_charge * plan.charge_factor)
        if plan.air_minute <= minute < plan.air_minute + 1:
            self.set_air(plan.steady_air)
        if plan.bypass_minute <= minute < plan.bypass_minute + 1:
            self.set_bypass(0.0)
        stage = self.tending.stage[row]
        if stage < 2 and minute > plan.first_splits + 5:
            self.mind_fire(wood)
        self.mind_oven(stage)
        self.mind_pans(top)

    def say(self, kind: str, value: float = 0.0, detail: str = "") -> None:
        if self.events is not None:
            self.events[self.row].append(Event(minute=self.minute, kind=kind, value=value, detail=detail))

    def light(self, mass: float) -> None:
        bed = self.firing.bed
        bed.paper[self.row] = PAPER_POWER * PAPER_SECONDS
        bed.add(self.row, mass, 0.5 * float(self.crew.moisture[self.row]), 0.030, 4)
        self.say("lit", mass)
        self.tending.since_wood[self.row] = 0

    def load(self, mass: float) -> None:
        row, bed = self.row, self.firing.bed
        room = float(self.crew.limit[row] - bed.wood[row].sum() - bed.char[row])
        split = float(self.crew.split_mass[row])
        pieces = max(1, round(min(mass, room) / split))
        mass = pieces * split * (0.8 + 0.4 * self.draws[11])
        if room < 0.3:
            return
        bed.add(row, min(mass, room), float(self.crew.moisture[row]), float(self.crew.thickness[row]), pieces)
        self.tending.since_wood[row] = 0
        self.say("wood", min(mass, room), str(pieces))

    def set_air(self, fraction: float) -> None:
        if fraction == self.firing.air[self.row]:
            return
        self.firing.air[self.row] = fraction
        self.say("air", fraction)

    def set_bypass(self, fraction: float) -> None:
        self.firing.bypass[self.row] = fraction
        self.say("bypass", fraction)

    def open_door(self, seconds: float) -> None:
        self.firing.door_seconds[self.row] = max(float(self.firing.door_seconds[self.row]), seconds)
        self.say("oven_door", seconds)

    def mind_fire(self, wood: float) -> None:
        row, cook, plan, draws = self.row, self.cook, self.plan, self.draws
        out = self.firing.bed.flame[row] < 520.0 and self.firing.bed.char[row] < 0.2
        # an oven that will not come up makes people stand by the stove
        eager = 1.8 if self.minute > 55 and self.tending.seen[row] < plan.low - 15 else 1.0
        if out and draws[0] < cook.notices:
            self.light(0.6)
            self.load(0.8)
            if self.firing.air[row] < 0.5:
                self.set_air(0.8)
        elif (
            wood < cook.reload_below * max(1.0, plan.charge_factor) * eager
            and draws[0] < cook.notices * eager
            and (self.tending.seen[row] < plan.high + 4 or draws[4] < 0.1)
        ):
            factor = 2.0 if draws[1] < cook.overfires else 0.7 + 0.6 * draws[2]
            cold = 1.4 if self.tending.seen[row] < plan.low - 15 else 1.0
            self.load(cook.charge * plan.charge_factor * factor * cold)
        air, seen = float(self.firing.air[row]), float(self.tending.seen[row])
        haste = 2.0 * eager if seen < plan.low - 25 or seen > plan.high + 20 else 1.0
        if self.minute > plan.air_minute and draws[3] < cook.adjusts * haste:
            if seen > plan.high + 6:
                self.set_air(round(max(0.05, air - 0.1 - 0.25 * draws[4]), 2))
            elif seen < plan.low - 8:
                self.set_air(round(min(1.0, air + 0.1 + 0.3 * draws[4]), 2))
            elif draws[4] < 0.25:
                self.set_air(round(float(np.clip(air + 0.3 * (draws[5] - 0.5), 0.05, 1.0)), 2))

    def mind_oven(self, stage: float) -> None:
        row, plan, cook, draws, tending = self.row, self.plan, self.cook, self.draws, self.tending
        seen = float(tending.seen[row])
        if stage == 0 and tending.batches[row] > 0 and plan.low <= seen <= plan.high + 10 and draws[6] < 0.12:
            tending.stage[row], tending.remaining[row] = 1, plan.batch_minutes * (0.85 + 0.3 * draws[7])
            mass = 0.9 + 2.2 * draws[8] if plan.purpose == "bake" else 1.5 + 2.5 * draws[8]
            put_in_oven(self.firing, row, 0.45 * mass, 0.55 * mass * 1800.0 + 500.0, 298.0)
            self.open_door(25 + 60 * draws[9])
        elif stage == 1 and tending.remaining[row] <= 0 and draws[6] < 0.35:
            tending.batches[row] -= 1
            put_in_oven(self.firing, row, 0.0, 0.0, float(self.firing.nodes[row, NODE["oven_air"]]))
            self.open_door(20 + 40 * draws[9])
            tending.stage[row] = 0 if tending.batches[row] > 0 and self.minute < plan.until else 2
        elif stage == 1 and seen > plan.high + 18 and draws[6] < 0.08:
            self.open_door(90 + 200 * draws[9])
        elif stage == 1 and draws[6] < cook.checks_door:
            self.open_door(10 + 30 * draws[9])
        elif stage == 2:
            if self.firing.air[row] > 0.1 and draws[6] < cook.shuts_air:
                self.set_air(0.05)
            elif draws[7] < cook.leaves_door:
                self.open_door(400 + 1500 * draws[9])
        if stage < 2 and self.minute > plan.until and tending.remaining[row] <= 0:
            tending.stage[row] = 2

    def mind_pans(self, top: float) -> None:
        row, draws = self.row, self.draws
        pan = 0 if self.firing.pan_cell[row, 0] < 0 else 1
        if top > 420 and self.firing.pan_cell[row, pan] < 0 and draws[10] < self.cook.uses_pans:
            where = int(draws[8] * 6)
            water, metal, contact = 0.8 + 2.4 * draws[9], 500.0 + 1200.0 * draws[7], 4.0 + 8.0 * draws[5]
            put_on_top(self.firing, row, pan, where, water, metal, contact, 288.0)
            self.say("pan", water, str(where))
        for taken in range(2):
            if self.firing.pan_cell[row, taken] < 0:
                continue
            boils = self.firing.nodes[row, NODE["pan_a"] + taken] > 372.6
            if draws[10] > (0.7 if boils else 0.985):
                self.say("pan", 0.0, f"{int(self.firing.pan_cell[row, taken])}{' boiled' if boils else ''}")
                put_on_top(self.firing, row, taken, -1, 0.0, 0.0, 0.0, float(self.firing.nodes[row, NODE["room"]]))
                break
