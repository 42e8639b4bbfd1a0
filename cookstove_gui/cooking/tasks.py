"""The task catalogue: what a cook wants of a spot or of the oven, and the traditional names of oven heats."""

from dataclasses import dataclass
from enum import StrEnum


class Place(StrEnum):
    """Where a task is done."""

    TOP = "top"
    OVEN = "oven"


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """One thing to cook or to do; the band is of the spot's surface, or of the oven [K]."""

    key: str
    name: str
    place: Place
    low: float  # K
    high: float  # K
    minutes: float  # how long the heat must last
    evenness: float  # K, the greatest difference across the place that it bears
    is_food: bool = True
    source: str = "common practice, no source"
