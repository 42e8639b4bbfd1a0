"""One supper under way, whoever cooks it, and how it turns out; and the cook who lights by a rule and goes by habit.

Food goes in once the thermometer shows a heat that will do (25 °F off the band is what a bake forgives), and is done
when it has had as much heat as its minutes in the middle of the band give, heat going into food in proportion to the
oven's excess over the boil.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from cookstove_gui.cooking.supper.heats import GIVES
from cookstove_gui.stove.entries import Entry
from tests.world.kitchens import Kitchen

BAKE_MIN, REST_MIN = 45.0, 15.0
BOIL = 373.15  # K
GIVES_UP_MIN = 420  # from lighting
READIES_MIN = 10.0  # before the food is to go in, from when an oven that is far too hot has its door opened
LOOKS_IN = 0.2  # chance a minute that an oven with food in it is looked at


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
    told: Sequence[tuple[float, float]] = ()  # later: minutes before the food was to go in, and the chance told


@dataclass(slots=True, kw_only=True)
class Evening:
    """One supper under way; minutes count from lighting."""

    kitchen: Kitchen
    lead: float  # to when the food was to go in, as it was at first
    random: np.random.Generator
    uses_door: bool = True  # lets an oven far too hot cool by its door
    rows: list[Entry] = field(default_factory=list)
    heard: int = 0  # of what happened, how much is written down or left out
    next_round: float = 3.0
    in_at: float | None = None
    reached: float | None = None
    dose: float = 0.0
    over: list[float] = field(default_factory=list)
    told: list[tuple[float, float]] = field(default_factory=list)
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
        if not self.uses_door:
            return
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
            why=_why(late, reached - self.lead, in_at - self.lead), told=self.told,
        )  # fmt: skip


def _why(late: float, rise_late: float, in_late: float) -> str:
    if abs(late) <= 10.0:
        return ""
    if rise_late > 5.0:
        return "oven late"
    if in_late > 8.0:
        return "oven not right when wanted"
    return "oven too cool while it baked" if late > 0.0 else "oven too hot while it baked"


def by_rule(kitchen: Kitchen, lead: float, seed: int, *, uses_door: bool) -> Cooked:
    """Lit so long before the food is to go in; all else by habit."""
    evening = Evening(kitchen=kitchen, lead=lead, random=np.random.default_rng([81, seed]), uses_door=uses_door)
    done = False
    while not done and kitchen.minute < GIVES_UP_MIN:
        if evening.in_at is None and kitchen.minute >= lead and evening.goes_in(evening.heat_seen()):
            evening.put_in()
        done = evening.minute()
    return evening.result(done)
