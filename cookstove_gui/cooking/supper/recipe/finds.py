"""What can be found in the text of a recipe, each with its place in that text."""

from dataclasses import dataclass
from enum import Enum
from typing import Literal


class HeatOf(Enum):
    """What is said to have a heat."""

    OVEN = "oven"
    CORE = "core"  # the inside of the food
    OTHER = "other"  # water, milk, fat, the room


@dataclass(frozen=True, slots=True)
class Place:
    """Where something stands in the text of a recipe: letters `start` to `end`, the end left out."""

    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatFound:
    """A heat, written as degrees, as a gas mark or by name."""

    place: Place
    of: HeatOf
    low: float | None = None  # K; none for a name that no table knows
    high: float | None = None  # K
    name: str = ""  # of an oven heat without degrees, as written: “moderately hot”
    source: str = ""  # of the degrees that a name stands for
    unit: Literal["F", "C", ""] = ""  # as written; empty where none is, and °F is assumed


@dataclass(frozen=True, slots=True, kw_only=True)
class MinutesFound:
    """A length of time."""

    place: Place
    shortest: float  # min
    longest: float  # min
    each: str = ""  # what it is counted for, as written: “per pound”; such a time is no length of the step


@dataclass(frozen=True, slots=True, kw_only=True)
class VesselFound:
    """What the food stands in on the fire."""

    place: Place
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ActFound:
    """Something done to the food."""

    place: Place
    act: str  # a key of `acts.ACTS`


@dataclass(frozen=True, slots=True, kw_only=True)
class SentenceFound:
    """One sentence of a recipe and what was found in it, each in the order of the text."""

    place: Place
    heats: tuple[HeatFound, ...]
    minutes: tuple[MinutesFound, ...]
    vessels: tuple[VesselFound, ...]
    acts: tuple[ActFound, ...]
