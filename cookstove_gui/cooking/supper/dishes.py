"""A dish as its parts in order: work for the hands, waits, and heat; temperatures in kelvin, times in minutes."""

from dataclasses import dataclass, field
from typing import TypeAlias

from cookstove_gui.cooking.fit.tasks import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class HandsOn:
    """Work that keeps the cook's two hands busy: mix, shape, cut."""

    what: str
    minutes: float
    keeps_min: float = 60.0  # what was prepared may stand so long before the next part begins


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """Nobody is needed: rise, proof, rest, cool."""

    what: str
    minutes: float
    shortest: float
    longest: float
    kitchen: float | None = None  # K, for which these minutes hold; none: warmth changes nothing


@dataclass(frozen=True, slots=True, kw_only=True)
class Heat:
    """In the oven or on the cooktop."""

    what: str
    place: Place
    minutes: float  # usual; where `bake` is given, what to allow until the core is done
    task: str = ""  # key of the task whose heat it wants
    low: float | None = None  # K; a heat of its own instead of the task's
    high: float | None = None
    bake: str = ""  # key of the bake whose core is waited for; empty: the minutes decide
    vessel: str = ""
    evenness: float | None = None  # K across the place, where it tolerates less or more than the task does
    turn: bool = False  # turned half-way
    places: int = 1  # of the oven's places that it takes
    falling: bool = False  # wants the falling oven, after the fire is let go


Part: TypeAlias = HandsOn | Wait | Heat


@dataclass(frozen=True, slots=True, kw_only=True)
class Dish:
    """One dish of a meal."""

    key: str
    name: str
    parts: tuple[Part, ...]
    makes: str = ""  # such as "2 loaves, 2.3 lb each"
    hot: bool = True  # served hot: it should not stand about
    may_wait: float = 10.0  # min that it may stand ready before the table
    after_table: float = 0.0  # min after the table's time at which it is wanted, as a pudding
    source: str = "common practice, no source"

    @property
    def minutes(self) -> float:
        """From the first part to the last, with the usual waits."""
        return sum(part.minutes for part in self.parts)


@dataclass(frozen=True, slots=True, kw_only=True)
class Meal:
    """What a dishes file holds: dishes, and when they are to be on the table, if it says so."""

    dishes: tuple[Dish, ...] = field(default=())
    table: str = ""  # as written, such as "18:30"
