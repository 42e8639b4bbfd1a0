"""The task catalogue: what a cook wants of a spot on the cooktop or of the oven."""

from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Any

from cookstove_gui.resource_files import table
from cookstove_gui.units import kelvin


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
    never_below: float | None = None  # K, that the heat may not pass even for a while
    never_above: float | None = None  # K
    is_food: bool = True
    in_a_pan: bool = False  # with a handle, and not in a pot
    source: str = "common practice, no source"

    @property
    def middle(self) -> float:
        """Middle of the band [K]."""
        return 0.5 * (self.low + self.high)


@cache
def catalogue() -> tuple[Task, ...]:
    """All tasks of `resources/tasks.toml`, in the order of the file."""
    return tuple(
        Task(
            key=row["key"],
            name=row["name"],
            place=Place(row["place"]),
            low=kelvin(float(row["band"][0]), "F"),
            high=kelvin(float(row["band"][1]), "F"),
            minutes=float(row["minutes"]),
            evenness=row["evenness"] / 1.8,
            never_below=_kelvin_or_none(row, "never_below"),
            never_above=_kelvin_or_none(row, "never_above"),
            is_food=row.get("food", True),
            in_a_pan=row.get("pan", False),
            source=row["source"],
        )
        for row in table("tasks.toml")["task"]
    )


def task_of(key: str) -> Task | None:
    """The task with that key, or none."""
    return next((task for task in catalogue() if task.key == key), None)


def _kelvin_or_none(row: dict[str, Any], key: str) -> float | None:
    return kelvin(float(row[key]), "F") if key in row else None
