"""A stove of each world lived through minute by minute, so that somebody can cook a supper on it and change the fire.

The world's own cook goes on by habit toward the heat that the supper wants, without bakes of another purpose, until the
fire is let go. Whoever cooks the supper may do more, or keep the cook from the wood and the air.
"""

from abc import ABC, abstractmethod
from dataclasses import replace

import numpy as np

from cookstove_gui.stove.stove import Firebox, Stove, stove_with_default_spots
from tests.world import other, third
from tests.world.cooks import DRAWS, Event, MinuteOfOne, Tending
from tests.world.firing import STEP, Firing, advance, put_in_oven
from tests.world.habits import make_plan
from tests.world.parts import FloatArray, stack
from tests.world.sessions import SPOTS, crew_of, spot_temperatures
from tests.world.stoves import FAMILIES, make_stove

DOOR_S = 30.0  # that the oven's door is open to put something in or take it out
FOOD_KG = 1.5
_NEVER = 1e9
Band = tuple[float, float]  # K


class Kitchen(ABC):
    """One fire on one stove; `minute` counts from lighting."""

    stove: Stove
    spots: tuple[str, ...]

    def __init__(self, band: Band, seed: list[int]) -> None:
        self.band = band
        self.random = np.random.default_rng(seed)
        self.minute = 0
        self.loaded_at = 0  # minute of the latest wood
        self.leaves_wood = self.leaves_air = False  # whether the cook keeps from the wood, or the air, by habit
        self.dial_off = float(self.random.normal(0.0, 4.0))  # K, of this thermometer
        self.happened: list[Event] = []

    def live(self) -> None:
        """One minute: what the cook does by habit, then the fire."""
        self._work()
        self._burn()
        self.minute += 1

    def dial(self) -> float:
        """What the oven's thermometer is at [K]."""
        return self._dial() + self.dial_off

    def spot(self, name: str) -> float:
        """True heat of a spot [K]."""
        return float(self._spots()[self.spots.index(name)])

    def say(self, kind: str, value: float) -> None:
        """Something truly happened."""
        if kind in ("wood", "lit"):
            self.loaded_at = self.minute
        self.happened.append(Event(minute=float(self.minute), kind=kind, value=value))

    @abstractmethod
    def oven(self) -> float:
        """True air of the oven [K]."""

    @abstractmethod
    def usual_load(self) -> float:
        """What this cook puts on at a time [kg]."""

    @abstractmethod
    def load(self, mass: float) -> None:
        """Put wood on [kg]."""

    @abstractmethod
    def set_air(self, opening: float) -> None:
        """Set the air (0 to 1)."""

    @abstractmethod
    def shut_bypass(self) -> None:
        """Send the gas round the oven."""

    @abstractmethod
    def open_oven(self, minutes: float) -> None:
        """The oven's door stands open for so long."""

    @abstractmethod
    def food(self, *, goes_in: bool) -> None:
        """Open the door; put the food in, or take it out."""

    @abstractmethod
    def _work(self) -> None: ...

    @abstractmethod
    def _burn(self) -> None: ...

    @abstractmethod
    def _dial(self) -> float: ...

    @abstractmethod
    def _spots(self) -> FloatArray: ...


class _ByHabit(MinuteOfOne):
    """The first world's cook, with no bakes of an own purpose, kept from wood or air where the kitchen says so."""

    __slots__ = ("kitchen",)
    kitchen: "MainKitchen"

    def load(self, mass: float) -> None:
        if not self.kitchen.leaves_wood:
            super().load(mass)

    def set_air(self, fraction: float) -> None:
        if not self.kitchen.leaves_air or self.minute < 1:
            super().set_air(fraction)

    def set_bypass(self, fraction: float) -> None:
        if fraction != self.firing.bypass[self.row]:
            super().set_bypass(fraction)

    def mind_oven(self, stage: float) -> None:
        """The supper is minded by whoever cooks it."""


class MainKitchen(Kitchen):
    """The first world."""

    spots = SPOTS

    def __init__(self, seed: int, firing: int, band: Band) -> None:
        super().__init__(band, [71, seed, firing])
        self.world = make_stove(seed, FAMILIES[seed % len(FAMILIES)])
        self.stove = self.world.stove
        drawn = make_plan(self.random, self.world.cook, "bake")
        plan = replace(drawn, low=band[0], high=band[1], until=_NEVER, batches=0)
        self._crew = crew_of([self.world], [plan])
        self._parts = stack([self.world.parts])
        self._firing = Firing.cold(self._parts, np.array([self.random.uniform(286.0, 296.0)]))
        self._tending = Tending.start([0])
        self._log: list[list[Event]] = [[]]
        self._next_look = 0.0

    def _by_habit(self) -> _ByHabit:
        draws = self.random.random(DRAWS)
        cook, plan = self._crew.cooks[0], self._crew.plans[0]
        one = _ByHabit(
            self._crew, cook, plan, self._tending, self._firing, 0, float(self.minute), draws, self._log
        )  # fmt: skip
        one.kitchen = self
        return one

    def _told(self) -> None:
        for event in self._log[0]:
            self.say(event.kind, event.value)
        self._log[0].clear()

    def _work(self) -> None:
        if self.minute >= self._next_look:
            self._tending.seen[0] = self.dial()
            self._next_look = self.minute + self.random.gamma(3.0, self.world.hands.interval / 3.0)
        self._tending.since_wood += 1
        wood, top = float(self._firing.bed.wood.sum()), float(self._firing.nodes[0, :18].max())
        self._by_habit().act(wood, top)
        self._told()

    def _burn(self) -> None:
        kick = 0.05 * self.random.standard_normal()
        self._firing.gust = np.clip(1.0 + 0.93 * (self._firing.gust - 1.0) + kick, 0.4, 1.8)
        for _ in range(round(60 / STEP)):
            advance(self._firing, self._parts)

    def usual_load(self) -> float:
        return self.world.cook.charge * self._crew.plans[0].charge_factor

    def load(self, mass: float) -> None:
        MinuteOfOne.load(self._by_habit(), mass)
        self._told()

    def set_air(self, opening: float) -> None:
        MinuteOfOne.set_air(self._by_habit(), opening)
        self._told()

    def shut_bypass(self) -> None:
        self._by_habit().set_bypass(0.0)
        self._told()

    def food(self, *, goes_in: bool) -> None:
        kg = FOOD_KG if goes_in else 0.0
        warm = 298.0 if goes_in else self.oven()
        put_in_oven(self._firing, 0, 0.45 * kg, (0.55 * 1800.0 * kg + 500.0) if goes_in else 0.0, warm)
        self.open_oven(DOOR_S / 60.0)

    def open_oven(self, minutes: float) -> None:
        self._by_habit().open_door(60.0 * minutes)
        self._told()

    def oven(self) -> float:
        return float(spot_temperatures(self._firing.nodes)[0, 0])

    def _dial(self) -> float:
        return float(self._firing.thermometer[0])

    def _spots(self) -> FloatArray:
        return np.asarray(spot_temperatures(self._firing.nodes)[0])


class OtherKitchen(Kitchen):
    """The second world."""

    spots = other.SPOTS

    def __init__(self, seed: int, firing: int, band: Band) -> None:
        super().__init__(band, [72, seed, firing])
        self._build, kind, side = other.make_build(seed)
        self.stove = replace(stove_with_default_spots(f"other {kind} {seed}", Firebox(side)), note="invented")
        self._state = other.cold(self._build, np.array([self.random.uniform(287, 295)]))

    def _work(self) -> None:
        draws = self.random.random((1, other.DRAWS))
        draws[0, 5], draws[0, 6] = 1.0, 1.0  # no bake and no look inside by habit
        if self.leaves_air:
            draws[0, 4] = 1.0
        if self.leaves_wood and self.minute >= 1:
            self._state.next_reload = np.maximum(self._state.next_reload, self.minute + 2.0)
        self._do(draws)

    def _do(self, draws: FloatArray) -> None:
        log: list[list[tuple[float, str, float]]] = [[]]
        clock, band = np.array([float(self.minute)]), np.array([self.band])
        other.work(self._state, self._build, clock, draws, band, np.array([_NEVER]), log)
        for _, kind, value in log[0]:
            self.say(kind, value)

    def _burn(self) -> None:
        other.heat(self._state, self._build)

    def usual_load(self) -> float:
        return float(self._build.reload_mass[0])

    def load(self, mass: float) -> None:
        place = int(self._state.used[0])
        if place < other.CHARGES:
            self._state.mass[0, place], self._state.age[0, place] = mass, 0.0
            self._state.used += 1
            pause = self._build.reload_every * self.random.uniform(0.8, 1.2)
            self._state.next_reload = self.minute + pause
            self.say("wood", mass)

    def set_air(self, opening: float) -> None:
        self._state.damper[0] = opening
        self.say("air", opening)

    def shut_bypass(self) -> None:
        if self._state.bypass[0] > 0.0:
            self._state.bypass[0] = 0.0
            self.say("bypass", 0.0)

    def food(self, *, goes_in: bool) -> None:
        self._state.load[0] = float(goes_in)
        self.open_oven(DOOR_S / 60.0)

    def open_oven(self, minutes: float) -> None:
        self._state.door[0] = max(float(self._state.door[0]), minutes)
        self.say("oven_door", 60.0 * minutes)

    def oven(self) -> float:
        return float(self._state.air[0])

    def _dial(self) -> float:
        return float(self._state.thermometer[0])

    def _spots(self) -> FloatArray:
        return np.asarray(other.spots(self._state, self._build)[0])


class ThirdKitchen(Kitchen):
    """The third world."""

    spots = third.SPOTS

    def __init__(self, seed: int, firing: int, band: Band) -> None:
        super().__init__(band, [73, seed, firing])
        make, kind, side = third.make_stove(seed)
        self._make = third.of_today(make, [self.random])
        self.stove = replace(stove_with_default_spots(f"third {kind} {seed}", Firebox(side)), note="invented")
        self._state = third.cold(self._make, np.array([self.random.uniform(284, 297)]))
        self._draws = self.random.random((1, third.DRAWS))

    def _work(self) -> None:
        self._draws = draws = self.random.random((1, third.DRAWS))
        draws[0, 7] = 0.5  # no bake and no look inside by habit
        if self.leaves_air:
            draws[0, 4] = 1.0
        make = self._make
        if self.leaves_wood and self.minute >= 1:
            make = replace(make, eye=np.zeros(1))
        log: list[list[tuple[float, str, float]]] = [[]]
        clock, band = np.array([float(self.minute)]), np.array([self.band])
        third.work(self._state, make, clock, draws, band, np.array([_NEVER]), log)
        for _, kind, value in log[0]:
            self.say(kind, value)

    def _burn(self) -> None:
        third.heat(self._state, self._make, self._draws)

    def usual_load(self) -> float:
        return float(self._make.splits[0] * self._make.mass[0])

    def load(self, mass: float) -> None:
        put = 0.0
        for _ in range(max(1, round(mass / float(self._make.mass[0])))):
            place = int(self._state.used[0])
            if place < third.PIECES:
                piece = float(self._make.mass[0]) * self.random.uniform(0.7, 1.3)
                self._state.core[0, place] = self._state.whole[0, place] = piece
                self._state.used += 1
                put += piece
        self.say("wood", put)

    def set_air(self, opening: float) -> None:
        self._state.opening[0] = opening
        self.say("air", opening)

    def shut_bypass(self) -> None:
        if self._state.bypass[0] > 0.0:
            self._state.bypass[0] = 0.0
            self.say("bypass", 0.0)

    def food(self, *, goes_in: bool) -> None:
        self._state.dough[0] = 0.8 if goes_in else 0.0
        self.open_oven(DOOR_S / 60.0)

    def open_oven(self, minutes: float) -> None:
        self._state.door[0] = max(float(self._state.door[0]), minutes)
        self.say("oven_door", 60.0 * minutes)

    def oven(self) -> float:
        return float(self._state.air[0])

    def _dial(self) -> float:
        return float(self._state.bulb[0, 1])

    def _spots(self) -> FloatArray:
        return np.asarray(third.spots(self._state, self._make)[0])


KITCHENS: dict[str, type[MainKitchen] | type[OtherKitchen] | type[ThirdKitchen]] = {
    "main": MainKitchen,
    "other": OtherKitchen,
    "third": ThirdKitchen,
}
