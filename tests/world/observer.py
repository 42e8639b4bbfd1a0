"""What could be foretold by someone who knows the true stove, its cook and their instruments, but only a firing's log.

An ensemble of the true physics is run along with the log. Each member's cook acts by this cook's true rules, with a
plan and luck of its own; a member whose cook does something that would have been written down, where the log has no
row, gives way to a copy of another. Readings move heat, fuel and air by an ensemble Kalman update. No program can know
so much: what this observer misses is not in the log.
"""

from collections.abc import Sequence
from dataclasses import fields, replace

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.stove.entries import (
    Entry,
    Kind,
    door_is_open,
    fraction_open,
    reading_kelvin,
    stated_mass,
    wood_count,
)
from tests.world.cooks import (
    DRAWS,
    MinuteOfOne,
    Tending,
    copy_tending,
)
from tests.world.firing import STEP, Firing, advance, copy, put_on_top
from tests.world.habits import Plan, make_plan
from tests.world.hands import TOPS, Hands
from tests.world.parts import NODE, FloatArray, repeat, stack
from tests.world.sessions import WorldSession, crew_of, run_on, spot_temperatures

PANS_UNWRITTEN = 0.2
MASS_SPREAD = 0.1  # of the logarithm of a mass that was written down
LEAST_NOISE = 1.0  # K2
DOUBTED, REFUSED = 2.5, 5.0  # standard deviations from which a reading counts less, and for nothing


class _Unwritten(MinuteOfOne):
    """A cook in a minute of which the log has no row: what is done all the same was not written, or cannot be."""

    __slots__ = ("door", "hands", "luck", "ruled_out")

    def beside_log(self, hands: Hands, luck: np.random.Generator, door: float | None) -> None:
        """What the log tells of this minute: for how many seconds the door was opened, if it was."""
        self.hands, self.luck, self.door = hands, luck, door
        self.ruled_out = False

    def _goes_unwritten(self, written: float) -> bool:
        if self.minute < 1 or self.luck.random() >= written:
            return True
        self.ruled_out = True
        return False

    def load(self, mass: float) -> None:
        if self._goes_unwritten(self.hands.logs_wood):
            super().load(mass)

    def set_air(self, fraction: float) -> None:
        if fraction != self.firing.air[self.row] and self._goes_unwritten(self.hands.logs_air):
            super().set_air(fraction)

    def set_bypass(self, fraction: float) -> None:
        if self._goes_unwritten(self.hands.logs_air):
            super().set_bypass(fraction)

    def open_door(self, seconds: float) -> None:
        if self.door is not None:
            super().open_door(self.door)
        elif self._goes_unwritten(self.hands.logs_door):
            super().open_door(seconds)

    def mind_pans(self, top: float) -> None:
        if self.luck.random() < PANS_UNWRITTEN:
            super().mind_pans(top)


class _Watch:
    """The ensemble along one session."""

    def __init__(self, session: WorldSession, members: int) -> None:
        self.session, self.members = session, members
        world = session.world
        self.random = np.random.default_rng([6113, world.seed, session.seed])
        self.parts = repeat(stack([world.parts]), members)
        self.plans = self._plans()
        self.crew = crew_of([world] * members, self.plans)
        self.firing = Firing.cold(self.parts, np.full(members, session.truth[0, session.spots.index("room")]))
        self.tending = Tending.start([plan.batches for plan in self.plans])
        self.rows: dict[int, list[Entry]] = {}
        for entry in session.entries:
            self.rows.setdefault(int(session.minute_of(entry.at)), []).append(entry)
        self.doors = _door_seconds(session)

    def _plans(self) -> list[Plan]:
        """What this cook might be about, given the heat that is wanted."""
        plans: list[Plan] = []
        low, _ = self.session.band
        while len(plans) < self.members:
            plan = make_plan(self.random, self.session.world.cook)
            if abs(plan.low - low) < 0.1:
                plans.append(plan)
        return plans

    def minute(self, minute: int) -> None:
        """Live through one minute: cooks, rows, physics, readings."""
        door = self.doors.get(minute)
        self._cooks(minute, door)
        if door is not None:
            self.firing.door_seconds = np.maximum(self.firing.door_seconds, door)
        rows = self.rows.get(minute, [])
        for row in rows:
            self._deed(row, minute)
        blown = 1.0 + 0.93 * (self.firing.gust - 1.0) + 0.05 * self.random.standard_normal(self.members)
        self.firing.gust = np.clip(blown, 0.4, 1.8)
        for _ in range(round(60 / STEP)):
            advance(self.firing, self.parts)
        for row in rows:
            if row.kind is Kind.READING:
                self._read(row)

    def _cooks(self, minute: int, door: float | None) -> None:
        draws = self.random.random((self.members, DRAWS))
        if door is not None:
            draws[:, 6] = 0.0  # whatever this cook opens the door for is done now
        wood, top = self.firing.bed.wood.sum(1), self.firing.nodes[:, :18].max(1)
        self.tending.since_wood += 1
        self.tending.remaining = np.maximum(self.tending.remaining - 1, 0)
        cook, hands = self.session.world.cook, self.session.world.hands
        ruled_out = np.zeros(self.members, dtype=bool)
        for row, plan in enumerate(self.plans):
            one = _Unwritten(self.crew, cook, plan, self.tending, self.firing, row, float(minute), draws[row], None)
            one.beside_log(hands, self.random, door)
            one.act(wood[row], top[row])
            ruled_out[row] = one.ruled_out
        if ruled_out.any() and not ruled_out.all():
            self._become(np.flatnonzero(ruled_out), self.random.choice(np.flatnonzero(~ruled_out), ruled_out.sum()))

    def _become(self, those: NDArray[np.intp], others: NDArray[np.intp]) -> None:
        """Let some members become copies of others, in place."""
        for part in (self.firing.bed, self.firing, self.tending):
            for field in fields(part):
                if field.name != "bed":
                    values = getattr(part, field.name)
                    values[those] = values[others]
        for this, other in zip(those, others, strict=True):
            self.plans[this] = self.plans[other]

    def _deed(self, row: Entry, minute: int) -> None:
        """What the log says was done, in every member, however each one's plan had it."""
        done = minute - 0.001
        if row.kind is Kind.WOOD:
            for member in range(self.members):
                self._load(row, member)
            self.tending.since_wood[:] = 0
            self.plans[:] = [replace(plan, first_splits=min(plan.first_splits, done)) for plan in self.plans]
        elif row.kind is Kind.AIR:
            self.firing.air[:] = fraction_open(row)
            if minute > 3:
                self.plans[:] = [replace(plan, air_minute=min(plan.air_minute, done)) for plan in self.plans]
        elif row.kind is Kind.BYPASS:
            self.firing.bypass[:] = fraction_open(row)
            if minute > 3:
                self.plans[:] = [replace(plan, bypass_minute=min(plan.bypass_minute, done)) for plan in self.plans]
        elif row.kind is Kind.PAN:
            for member in range(self.members):
                self._pan(row, member)

    def _load(self, row: Entry, member: int) -> None:
        world, random = self.session.world, self.random
        written = stated_mass(row)
        if written is None:
            mass = (wood_count(row) or 1.0) * world.split_mass * (0.8 + 0.4 * random.random())
        else:
            mass = written * float(np.exp(MASS_SPREAD * random.standard_normal()))
        pieces = max(1, round(mass / world.split_mass))
        self.firing.bed.add(member, min(mass, 6.0), world.moisture, world.thickness, pieces)

    def _pan(self, row: Entry, member: int) -> None:
        firing, random, where = self.firing, self.random, TOPS.index(row.spot)
        if row.value == "on":
            taken = 0 if firing.pan_cell[member, 0] < 0 else 1
            metal, contact = 500.0 + 1200.0 * random.random(), 4.0 + 8.0 * random.random()
            put_on_top(firing, member, taken, where, float(row.note.split()[1]), metal, contact, 288.0)
            return
        for pan in range(2):
            if firing.pan_cell[member, pan] == where:
                put_on_top(firing, member, pan, -1, 0.0, 0.0, 0.0, float(firing.nodes[member, NODE["room"]]))

    def _read(self, row: Entry) -> None:
        hands, value = self.session.world.hands, reading_kelvin(row)
        if row.spot == "oven_centre":
            seen = self.firing.thermometer + hands.oven_offset
            noise, step = hands.oven_noise, hands.oven_rounding / 1.8
        else:
            true = spot_temperatures(self.firing.nodes)[:, self.session.spots.index(row.spot)]
            seen = true + hands.infrared_bias * (true - 255.4)  # a share of the number on a scale from 0 °F
            noise = 0.3 if row.spot == "room" else max(value - 255.4, 22.0) * hands.infrared_noise
            step = hands.infrared_rounding / 1.8
        variance = noise**2 + step**2 / 12.0 + LEAST_NOISE
        far = abs(value - seen.mean()) / np.sqrt(seen.var() + variance)
        if far <= REFUSED:
            _update(self.firing, seen, value, variance * (1.0 + max(far - DOUBTED, 0.0)))
        if row.spot == "oven_centre":
            self.tending.seen[:] = value

    def snapshot(self) -> tuple[Firing, Tending, list[Plan]]:
        """Where the ensemble stands."""
        return copy(self.firing), copy_tending(self.tending), list(self.plans)


def observed(session: WorldSession, minutes: Sequence[float], members: int) -> FloatArray:
    """Futures (minutes, members, 181) [K] of the oven as this observer would draw them from the log so far."""
    watch = _Watch(session, members)
    wanted = {int(minute) for minute in minutes}
    moments = {}
    for minute in range(max(wanted) + 1):
        watch.minute(minute)
        if minute in wanted:
            moments[minute] = watch.snapshot()
    paths = np.array([_ahead(watch, int(minute), *moments[int(minute)]) for minute in minutes])
    # the ensemble stands at the end of the minute in which it was asked
    early = np.array([1.0 - (minute - int(minute)) for minute in minutes])[:, None, None]
    paths[..., 1:] = early * paths[..., :-1] + (1.0 - early) * paths[..., 1:]
    return paths


def _ahead(watch: _Watch, minute: int, firing: Firing, tending: Tending, plans: list[Plan]) -> FloatArray:
    worlds = [watch.session.world] * watch.members
    random = np.random.default_rng([6114, watch.session.world.seed, minute])
    clock = np.full(watch.members, minute + 1.0)
    return run_on(worlds, plans, firing, tending, clock, 180, random)


def _update(firing: Firing, seen: FloatArray, value: float, variance: float) -> None:
    """Move the ensemble by one reading, in place."""
    bed, nodes = firing.bed, firing.nodes.shape[1]
    wood = bed.wood.sum(1)
    columns = (firing.thermometer, firing.flue_gas, bed.flame, np.log(wood + 0.05), np.log(bed.char + 0.02), firing.air)
    state = moved(np.column_stack([firing.nodes, *columns]), seen, value, variance)
    firing.nodes[:] = np.clip(state[:, :nodes], 250.0, 1600.0)
    firing.thermometer[:] = state[:, nodes]
    firing.flue_gas[:] = np.clip(state[:, nodes + 1], 255.0, 1400.0)
    bed.flame[:] = np.clip(state[:, nodes + 2], 255.0, 1900.0)
    more = np.clip((np.exp(state[:, nodes + 3]) - 0.05) / np.maximum(wood, 1e-6), 0.3, 3.0)
    more[wood < 1e-4] = 1.0
    bed.wood[:] = np.minimum(bed.wood * more[:, None], bed.fresh)
    bed.water *= more[:, None]
    bed.char[:] = np.clip(np.exp(state[:, nodes + 4]) - 0.02, 0.0, 4.0)
    firing.air[:] = np.clip(state[:, nodes + 5], 0.05, 1.0)


def moved(state: FloatArray, seen: FloatArray, value: float, variance: float) -> FloatArray:
    """Members (members, rows) after one reading that each expected as `seen`: a square-root ensemble Kalman update."""
    apart, count = seen - seen.mean(), len(seen)
    spread = float(apart @ apart) / (count - 1)
    if spread < 1e-8:
        return state
    gain = (state - state.mean(0)).T @ apart / ((count - 1) * spread)
    total = spread + variance
    moves = spread / total * (value - seen.mean()) + (np.sqrt(variance / total) - 1.0) * apart
    return np.asarray(state + np.outer(moves, gain))


def _door_seconds(session: WorldSession) -> dict[int, float]:
    """For how long the door was opened, by the minute in which it was, as far as that was written down."""
    found: dict[int, float] = {}
    opened: float | None = None
    for entry in session.entries:
        if entry.kind is not Kind.OVEN_DOOR:
            continue
        minute = session.minute_of(entry.at)
        if door_is_open(entry):
            opened = minute
        elif opened is not None:
            found[int(opened)] = 60.0 * (minute - opened)
            opened = None
    return found
