"""The observer of the second and the third world: what could be foretold by someone who knows the true stove and its
cook, but of the firing only its log.

As in the first world (`observer.py`): an ensemble of the true physics, in which each member's cook acts by this cook's
true rules with luck of its own; one that does what would have been written down, where the log has no row, gives way to
a copy of another; readings move heat and fire by an ensemble Kalman update. The error of the day's thermometer is known
as it is drawn, and no better.
"""

from abc import ABC, abstractmethod
from collections.abc import Callable, Mapping, Sequence
from dataclasses import fields
from typing import Any, ClassVar

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.stove.entries import Entry, Kind, door_is_open, fraction_open, reading_kelvin, stated_mass
from tests.world import other, third, third_hands
from tests.world.batches import joined, rows_of
from tests.world.observer import DOUBTED, LEAST_NOISE, REFUSED, moved
from tests.world.other import OtherSession
from tests.world.parts import FloatArray
from tests.world.third import ThirdSession

AHEAD = 181  # minutes foretold
UNTIL = (110.0, 280.0)  # min; when the cooks of both worlds are done
JUST_FED = 4  # min in which a row of wood tells of what a member has put in already
STRAY = 0.1  # of the logarithm, of a mass that was written down


Log = list[list[tuple[float, str, float]]]  # of each member: minute, what was done, how much


class _Stove(ABC):
    """Members of one true stove, with its cook."""

    written: ClassVar[Mapping[str, float]]  # chance that a deed of each kind gets its row
    offset: ClassVar[float]  # K, of the day's oven thermometer, one standard deviation
    noise: ClassVar[tuple[float, float]]  # of a reading: K in the oven, share of the heat over 250 K elsewhere
    bake_minutes: ClassVar[float]  # the door stands open for something that goes in
    spots: ClassVar[tuple[str, ...]]
    draws: ClassVar[int]  # random numbers that one minute takes
    cold: ClassVar[Callable[[Any, FloatArray], Any]]

    def __init__(self, build: Any, rooms: FloatArray) -> None:
        """`build` is of one stove, `rooms` (members,) [K]."""
        self.build = rows_of(build, slice(None), len(rooms))
        self.state = type(self).cold(self.build, rooms)

    @abstractmethod
    def live(self, clock: FloatArray, draws: FloatArray, band: FloatArray, until: FloatArray, log: Log | None) -> None:
        """What the cooks do in one minute."""

    @abstractmethod
    def heat(self, draws: FloatArray) -> None:
        """One minute of heat."""

    @abstractmethod
    def shown(self) -> FloatArray:
        """What the oven's thermometer stands at (members,) [K]."""

    @abstractmethod
    def true_spots(self) -> FloatArray:
        """(members, spots) [K]."""

    @abstractmethod
    def load(self, member: int, mass: float | None, minute: float, random: np.random.Generator) -> None:
        """Put wood in; its mass [kg] if a row tells it."""

    @abstractmethod
    def set(self, kind: Kind, opening: float) -> None:
        """Set air or bypass."""

    @abstractmethod
    def opened(self, minutes: float, *, bakes: bool) -> None:
        """The oven's door is opened, for something that goes in or only so."""

    @abstractmethod
    def columns(self) -> FloatArray:
        """What readings move (members, rows); fuel as a logarithm."""

    @abstractmethod
    def take(self, columns: FloatArray, before: FloatArray) -> None:
        """Put back what readings have moved, in place."""


class _Second(_Stove):
    """Members of one stove of the second world."""

    written: ClassVar[Mapping[str, float]] = {"wood": 0.9, "air": 0.8, "bypass": 0.8, "oven_door": 0.5}
    offset, noise, bake_minutes = 4.0, (1.7, 0.017), 1.0
    spots, draws, cold = other.SPOTS, other.DRAWS, other.cold

    def live(self, clock: FloatArray, draws: FloatArray, band: FloatArray, until: FloatArray, log: Log | None) -> None:
        other.work(self.state, self.build, clock, draws, band, until, log)

    def heat(self, draws: FloatArray) -> None:
        other.heat(self.state, self.build)

    def shown(self) -> FloatArray:
        return np.asarray(self.state.thermometer)

    def true_spots(self) -> FloatArray:
        return other.spots(self.state, self.build)

    def load(self, member: int, mass: float | None, minute: float, random: np.random.Generator) -> None:
        state, build = self.state, self.build
        place = min(int(state.used[member]), other.CHARGES - 1)
        usual = float(build.reload_mass[member]) * (0.75 + 0.5 * random.random())
        state.mass[member, place] = usual if mass is None else mass * float(np.exp(STRAY * random.standard_normal()))
        state.age[member, place] = 0.0
        state.used[member] += 1
        state.next_reload[member] = minute + build.reload_every[member] * (0.8 + 0.4 * random.random())

    def set(self, kind: Kind, opening: float) -> None:
        (self.state.damper if kind is Kind.AIR else self.state.bypass)[:] = opening

    def opened(self, minutes: float, *, bakes: bool) -> None:
        self.state.door[:] = minutes
        if bakes:
            self.state.load[:] = 1.0

    def columns(self) -> FloatArray:
        state = self.state
        fuel = np.log((state.mass * np.exp(-state.age)).sum(1) + 0.05)
        heats = (state.top, state.wall, state.air, state.stone, state.thermometer)
        return np.column_stack([*heats, state.powers, fuel])

    def take(self, columns: FloatArray, before: FloatArray) -> None:
        state = self.state
        state.top, state.wall, state.air, state.stone = columns[:, :6], columns[:, 6], columns[:, 7], columns[:, 8]
        state.thermometer, state.powers = columns[:, 9], np.maximum(columns[:, 10:-1], 0.0)
        state.mass *= np.clip(np.exp(columns[:, -1] - before[:, -1]), 0.3, 3.0)[:, None]


class _Third(_Stove):
    """Members of one stove of the third world."""

    written: ClassVar[Mapping[str, float]] = {"wood": 0.9, "air": 0.72, "bypass": 0.72, "oven_door": 0.45}
    offset, noise, bake_minutes = 5.0, (1.5, 0.022), 0.8
    spots, draws, cold = third_hands.SPOTS, third.DRAWS, third.cold

    def live(self, clock: FloatArray, draws: FloatArray, band: FloatArray, until: FloatArray, log: Log | None) -> None:
        third.work(self.state, self.build, clock, draws, band, until, log)

    def heat(self, draws: FloatArray) -> None:
        third.heat(self.state, self.build, draws)

    def shown(self) -> FloatArray:
        return np.asarray(self.state.bulb[:, 1])

    def true_spots(self) -> FloatArray:
        return third.spots(self.state, self.build)

    def load(self, member: int, mass: float | None, minute: float, random: np.random.Generator) -> None:
        state, build = self.state, self.build
        split = float(build.mass[member])
        pieces = int(build.splits[member]) if mass is None else max(1, round(mass / split))
        each = split if mass is None else mass * float(np.exp(3.0 * STRAY * random.standard_normal())) / pieces
        for _ in range(pieces):
            place = int(state.used[member])
            if place < third.PIECES:
                state.core[member, place] = state.whole[member, place] = each
                state.warmth[member, place] = 0.0
                state.used[member] += 1

    def set(self, kind: Kind, opening: float) -> None:
        (self.state.opening if kind is Kind.AIR else self.state.bypass)[:] = opening

    def opened(self, minutes: float, *, bakes: bool) -> None:
        self.state.door[:] = minutes
        if bakes:
            self.state.dough[:] = 1.0

    def columns(self) -> FloatArray:
        state = self.state
        fuel = (np.log(state.core.sum(1) + 0.05), np.log(state.char + 0.02))
        return np.column_stack(
            [state.plates, state.shell, state.brick, state.air, state.bulb, state.flue, state.wind, *fuel]
        )

    def take(self, columns: FloatArray, before: FloatArray) -> None:
        state, plates, layers = self.state, third.PLATES, third.LAYERS
        state.plates, state.shell = columns[:, :plates], columns[:, plates]
        state.brick, rest = columns[:, plates + 1 : plates + 1 + layers], columns[:, plates + 1 + layers :]
        state.air, state.bulb, state.flue, state.wind = rest[:, 0], rest[:, 1:3], rest[:, 3], rest[:, 4]
        state.core *= np.clip(np.exp(rest[:, 5] - before[:, -2]), 0.3, 1.0)[:, None]
        state.char = np.clip(np.exp(rest[:, 6]) - 0.02, 0.0, 4.0)


class _Watch:
    """The ensemble along one session."""

    def __init__(self, session: OtherSession | ThirdSession, members: int) -> None:
        self.session, self.members = session, members
        self.random = np.random.default_rng([6115, session.stove_seed, int(session.start.timestamp()) % 100_000])
        rooms = np.full(members, 291.0) + 3.0 * self.random.standard_normal(members)
        self.stove: _Stove = (
            _Second(session.build, rooms) if isinstance(session, OtherSession) else _Third(session.make, rooms)
        )
        self.offset = self.stove.offset * self.random.standard_normal(members)
        self.until = self.random.uniform(*UNTIL, members)
        self.band = np.tile(session.band, (members, 1))
        self.fed = np.full(members, -99.0)
        self.rows: dict[int, list[Entry]] = {}
        for entry in session.entries:
            self.rows.setdefault(int(self._minute(entry)), []).append(entry)

    def minute(self, minute: int) -> None:
        """Live through one minute: cooks, rows, physics, readings."""
        rows = self.rows.get(minute, [])
        told = {row.kind.value for row in rows}
        clock, draws = np.full(self.members, float(minute)), self.random.random((self.members, self.stove.draws))
        log: Log = [[] for _ in range(self.members)]
        self.stove.live(clock, draws, self.band, self.until, log)
        ruled_out = np.zeros(self.members, dtype=bool)
        for member, deeds in enumerate(log):
            for _, kind, _ in deeds:
                if kind == "wood":
                    self.fed[member] = minute
                if minute and kind not in told and self.random.random() < self.stove.written.get(kind, 0.0):
                    ruled_out[member] = True
        if "wood" in told:
            ruled_out |= self.until < minute
        self._give_way(ruled_out)
        for row in rows:
            self._deed(row, minute)
        self.stove.heat(draws)
        for row in rows:
            if row.kind is Kind.READING and row.spot in self.stove.spots:
                self._read(row)

    def _minute(self, entry: Entry) -> float:
        return (entry.at - self.session.start).total_seconds() / 60.0

    def _give_way(self, ruled_out: NDArray[np.bool_]) -> None:
        """Let members that cannot be become copies of others."""
        if not ruled_out.any() or ruled_out.all():
            return
        picked = np.arange(self.members)
        picked[ruled_out] = self.random.choice(np.flatnonzero(~ruled_out), ruled_out.sum())
        for field in fields(self.stove.state):
            setattr(self.stove.state, field.name, getattr(self.stove.state, field.name)[picked])
        self.offset, self.until, self.fed = self.offset[picked], self.until[picked], self.fed[picked]

    def _deed(self, row: Entry, minute: int) -> None:
        if row.kind is Kind.WOOD:
            for member in np.flatnonzero(self.fed < minute - JUST_FED):
                self.stove.load(int(member), stated_mass(row), float(minute), self.random)
            self.fed[:] = minute
        elif row.kind in (Kind.AIR, Kind.BYPASS) and minute:
            self.stove.set(row.kind, fraction_open(row))
        elif row.kind is Kind.OVEN_DOOR and door_is_open(row):
            shut = [one for one in self.session.entries if one.kind is Kind.OVEN_DOOR and one.at > row.at]
            minutes = self._minute(shut[0]) - self._minute(row) if shut else 1.0
            self.stove.opened(minutes, bakes=abs(minutes - self.stove.bake_minutes) < 0.02)

    def _read(self, row: Entry) -> None:
        stove, value = self.stove, reading_kelvin(row)
        if row.spot == "oven_centre":
            seen, noise = stove.shown() + self.offset, stove.noise[0]
        else:
            seen = stove.true_spots()[:, stove.spots.index(row.spot)]
            noise = 0.3 if row.spot == "room" else stove.noise[1] * max(value - 250.0, 20.0)
        variance = noise**2 + LEAST_NOISE
        far = abs(value - seen.mean()) / np.sqrt(seen.var() + variance)
        if far > REFUSED:
            return
        before = np.column_stack([stove.columns(), self.offset])
        after = moved(before, seen, value, variance * (1.0 + max(far - DOUBTED, 0.0)))
        stove.take(after[:, :-1], before[:, :-1])
        self.offset = after[:, -1]


def observed_by_log(session: OtherSession | ThirdSession, minutes: Sequence[float], members: int) -> FloatArray:
    """Futures (minutes, members, 181) [K] of the oven as this observer would draw them from the log so far."""
    watch = _Watch(session, members)
    wanted, moments = {int(minute) for minute in minutes}, {}
    for minute in range(max(wanted) + 1):
        watch.minute(minute)
        if minute in wanted:
            moments[minute] = rows_of(watch.stove.state, slice(None)), watch.until.copy()
    count = len(minutes)
    many = type(watch.stove)(rows_of(watch.stove.build, slice(0, 1)), np.full(count * members, 291.0))
    many.state = joined([moments[int(minute)][0] for minute in minutes])
    clock = np.repeat([float(int(minute) + 1) for minute in minutes], members)
    until = np.concatenate([moments[int(minute)][1] for minute in minutes])
    band = np.tile(session.band, (count * members, 1))
    random = np.random.default_rng([6116, session.stove_seed, count])
    paths = np.zeros((count * members, AHEAD))
    for ahead in range(AHEAD):
        paths[:, ahead] = many.state.air
        draws = random.random((count * members, many.draws))
        many.live(clock + ahead, draws, band, until, None)
        many.heat(draws)
    # the ensemble stands at the end of the minute in which it was asked
    early = np.array([1.0 - minute % 1.0 for minute in minutes]).repeat(members)[:, None]
    paths[:, 1:] = early * paths[:, :-1] + (1.0 - early) * paths[:, 1:]
    return paths.reshape(count, members, AHEAD)
