"""The task catalogue: what a cook wants of a spot on the cooktop or of the oven; the usual ones and the cook's own."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cache
from typing import Any

from cookstove_gui.cooking import checked
from cookstove_gui.errors import InputProblem
from cookstove_gui.resource_files import made_of_tables, rows_of, table
from cookstove_gui.stove.stove import Stove, TankPlace
from cookstove_gui.units import degrees, degrees_difference, kelvin, tidy

HEATS = (60.0, 800.0)  # °F, of a band
EVENNESS = (5.0, 600.0)  # °F
_FIELDS = ("key", "name", "place", "band", "minutes", "evenness", "never_below", "never_above", "food", "pan", "source")
_LONGEST_NAME = 40  # letters
_RESERVOIR = "reservoir"  # key of the task with the water of the stove's own tank


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
    def goes_in(self) -> bool:
        """Whether it is put into the oven; the tank's water only hangs on the oven's heat."""
        return self.place is Place.OVEN and self.key != _RESERVOIR

    @property
    def middle(self) -> float:
        """Middle of the band [K]."""
        return 0.5 * (self.low + self.high)


@made_of_tables
def catalogue() -> tuple[Task, ...]:
    """The tasks of `resources/tasks.toml` in the order of the file, changed by the cook or not; then the cook's own."""
    return rows_of("tasks.toml", "task", task_of_row)


def tasks_for(stove: Stove) -> tuple[Task, ...]:
    """The tasks that a stove can do at all: none with the water of a tank that it doesn't have."""
    has_tank = stove.water_tank is not TankPlace.NONE
    return tuple(task for task in catalogue() if has_tank or task.key != _RESERVOIR)


@cache
def usual_tasks() -> tuple[Task, ...]:
    """The tasks of `resources/tasks.toml` as they are before a cook changes any."""
    return tuple(_read(row, f"task “{row['key']}”") for row in table("tasks.toml")["task"])


def task_of(key: str) -> Task | None:
    """The task with that key, or none."""
    return next((task for task in catalogue() if task.key == key), None)


def task_of_row(row: Mapping[str, Any]) -> Task:
    """The task of one row.

    A usual task that a cook changed keeps the heats that it may not pass: they are for safety.

    Raises
    ------
    InputProblem
        Naming the task and what is wrong with it.
    """
    here = f"task “{row.get('key', '')}”"
    made = _read(row, here)
    usual = next((task for task in usual_tasks() if task.key == made.key), None)
    if usual is not None:
        if usual.place is not made.place:
            raise InputProblem(f"{here}: a usual task stays in its place; add a task of your own instead.")
        made = replace(
            made,
            never_below=_strictest(made.never_below, usual.never_below, max),
            never_above=_strictest(made.never_above, usual.never_above, min),
            is_food=usual.is_food,
        )
    if made.never_below is not None and made.low < made.never_below - 1e-9:
        raise InputProblem(
            f"{here}: it is never done below {tidy(degrees(made.never_below, 'F'), 0)} °F; begin its band there."
        )
    if made.never_above is not None and made.high > made.never_above + 1e-9:
        raise InputProblem(
            f"{here}: it is never done above {tidy(degrees(made.never_above, 'F'), 0)} °F; end its band there."
        )
    return made


def row_of_task(task: Task) -> dict[str, Any]:
    """The row that `task_of_row` reads back."""
    row: dict[str, Any] = {
        "key": task.key,
        "name": task.name,
        "place": str(task.place),
        "band": [_fahrenheit(task.low), _fahrenheit(task.high)],
        "minutes": round(task.minutes, 3),
        "evenness": round(degrees_difference(task.evenness, "F"), 3),
        "food": task.is_food,
        "pan": task.in_a_pan,
        "source": task.source,
    }
    limits = {"never_below": task.never_below, "never_above": task.never_above}
    return row | {name: _fahrenheit(heat) for name, heat in limits.items() if heat is not None}


def _read(row: Mapping[str, Any], here: str) -> Task:
    checked.only(row, _FIELDS, here)
    name = checked.text(row, "name", "", here)
    if not 0 < len(name) <= _LONGEST_NAME:
        raise InputProblem(f"{here}: give it a name of up to {_LONGEST_NAME} letters.")
    if row.get("place") not in tuple(Place):
        raise InputProblem(f"{here}: its place is “top” or “oven”.")
    low, high = checked.heat_band(row, "band", HEATS, here)
    return Task(
        key=checked.key_in(row, "task", here),
        name=name,
        place=Place(row["place"]),
        low=low,
        high=high,
        minutes=checked.minutes(row, "minutes", None, here),
        evenness=checked.between(row, "evenness", None, EVENNESS, here) / 1.8,
        never_below=_limit(row, "never_below", here),
        never_above=_limit(row, "never_above", here),
        is_food=checked.flag(row, "food", True, here),
        in_a_pan=checked.flag(row, "pan", False, here),
        source=checked.text(row, "source", "the cook's own", here),
    )


def _limit(row: Mapping[str, Any], name: str, here: str) -> float | None:
    return kelvin(checked.between(row, name, None, HEATS, here), "F") if name in row else None


def _strictest(own: float | None, usual: float | None, strictest: Any) -> float | None:
    given = [limit for limit in (own, usual) if limit is not None]
    return strictest(given) if given else None


def _fahrenheit(heat: float) -> float:
    return round(float(degrees(heat, "F")), 3)
