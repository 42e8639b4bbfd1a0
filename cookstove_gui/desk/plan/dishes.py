"""The dishes as the tab lists them, and one as its form shows and changes it: words in, a dish out."""

from dataclasses import dataclass, replace
from typing import Any

from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.baking.doneness import steady_minutes
from cookstove_gui.cooking.checked import key_for
from cookstove_gui.cooking.fit.tasks import Place, catalogue, task_of
from cookstove_gui.cooking.supper.dish_text import dish_of_row, part_row
from cookstove_gui.cooking.supper.dishes import Dish, HandsOn, Heat, Part, Wait
from cookstove_gui.desk.plan.bake import BakeChoice, sized
from cookstove_gui.errors import InputProblem
from cookstove_gui.phrases.edge import duration
from cookstove_gui.units import degrees, parse_number, tidy

PART_KINDS = (("hands", "by hand"), ("wait", "waits"), ("oven", "in the oven"), ("top", "on the cooktop"))


@dataclass(frozen=True, slots=True, kw_only=True)
class DishLine:
    """One dish in the list."""

    key: str
    name: str
    takes: str
    parts: str
    is_own: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PartWords:
    """A part as it stands in the form."""

    kind: str  # of PART_KINDS
    what: str = ""
    minutes: str = ""
    between: str = ""  # of a wait: shortest to longest; of heat: a task's key, or degrees such as 375-425
    turn: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class DishWords:
    """A dish as it stands in the form."""

    name: str = ""
    makes: str = ""
    may_wait: str = "10"
    after_table: str = "0"
    parts: tuple[PartWords, ...] = ()


def dish_line(dish: Dish, is_own: bool) -> DishLine:
    """A dish in the list: what it takes, and its parts."""
    parts = ", ".join(part.what for part in dish.parts)
    return DishLine(key=dish.key, name=dish.name, takes=duration(dish.minutes), parts=parts, is_own=is_own)


def heats_of(kind: str) -> tuple[tuple[str, str], ...]:
    """The heats that a part may name: the tasks of its place."""
    return tuple((task.key, task.name) for task in catalogue() if str(task.place) == kind)


def dish_words(dish: Dish) -> DishWords:
    """A dish in the words of the form."""
    return DishWords(
        name=dish.name,
        makes=dish.makes,
        may_wait=tidy(dish.may_wait),
        after_table=tidy(dish.after_table),
        parts=tuple(_part_words(part) for part in dish.parts),
    )


def dish_from_words(said: DishWords, before: Dish | None, taken: set[str]) -> Dish:
    """The dish that the form says; what the form does not show stays as it was. Raises InputProblem for a slip."""
    name = said.name.strip()
    if not name:
        raise InputProblem("Give the dish a name.")
    old = before.parts if before is not None else ()
    row: dict[str, Any] = {
        "key": before.key if before is not None else key_for(name, taken),
        "name": name,
        "makes": said.makes,
        "hot": before.hot if before is not None else True,
        "may_wait": _minutes(said.may_wait, "how long it may wait"),
        "after_table": _minutes(said.after_table, "how long after the table's time it is eaten"),
        "parts": [
            _row(words, old[place] if place < len(old) else None) for place, words in enumerate(said.parts)
        ],
    }  # fmt: skip
    return dish_of_row(row, name)


def weighed(dish: Dish, mass: float, pressure: float) -> Dish:
    """The dish with a bake of this mass [kg] each: its minutes in the oven follow.

    Raises
    ------
    InputProblem
        If the mass is out of range, or it would not be done within twelve hours.
    """
    return replace(dish, parts=tuple(_weighed(part, mass, pressure) for part in dish.parts))


def bake_in(dish: Dish) -> str:
    """Key of the bake that a dish is; empty for none."""
    return next((part.bake for part in dish.parts if isinstance(part, Heat) and part.bake), "")


def _weighed(part: Part, mass: float, pressure: float) -> Part:
    if not isinstance(part, Heat) or not part.bake:
        return part
    bake = sized(BakeChoice(key=part.bake, mass=mass))
    task = task_of(part.task) or task_of(bake_of(part.bake).task)
    minutes = None if task is None else steady_minutes(bake, task.middle, pressure)
    if minutes is None:
        raise InputProblem(f"The {bake.name} would not be done within twelve hours; choose a smaller one.")
    return replace(part, minutes=float(round(minutes)))


def _part_words(part: Part) -> PartWords:
    minutes = tidy(part.minutes)
    if isinstance(part, HandsOn):
        return PartWords(kind="hands", what=part.what, minutes=minutes)
    if isinstance(part, Wait):
        between = f"{tidy(part.shortest)}-{tidy(part.longest)}"
        return PartWords(kind="wait", what=part.what, minutes=minutes, between=between)
    kind = "oven" if part.place is Place.OVEN else "top"
    heat = part.task
    if part.low is not None and part.high is not None:
        heat = f"{tidy(degrees(part.low, 'F'), 0)}-{tidy(degrees(part.high, 'F'), 0)}"
    return PartWords(kind=kind, what=part.what, minutes=minutes, between=heat, turn=part.turn)


def _row(said: PartWords, old: Part | None) -> dict[str, Any]:
    """A part as a row; what the form does not show is taken over from the part that stood there, if it is of a kind."""
    row: dict[str, Any] = part_row(old) if old is not None and said.kind in part_row(old) else {}
    row[said.kind] = said.what
    row["minutes"] = _minutes(said.minutes, f"how many minutes “{said.what}” takes")
    if said.kind == "wait":
        ends = said.between.replace("–", "-").replace(" to ", "-").split("-")
        first, last = (ends[0], ends[-1]) if said.between.strip() else (said.minutes, said.minutes)
        row["shortest"] = _minutes(first, "the shortest wait")
        row["longest"] = _minutes(last, "the longest wait")
    if said.kind in ("oven", "top"):
        row.pop("task", None), row.pop("band", None)
        known = dict(heats_of(said.kind)) | {name: name for _, name in heats_of(said.kind)}
        by_name = {name: key for key, name in heats_of(said.kind)}
        heat = said.between.strip()
        if heat in known:
            row["task"] = by_name.get(heat, heat)
        else:
            ends = heat.replace("–", "-").replace(" to ", "-").split("-")
            row["band"] = [parse_number(end, "oven heat") for end in ends]
        row["turn"] = said.turn
    return row


def _minutes(text: str, what: str) -> float:
    try:
        return parse_number(text, "number of minutes")
    except InputProblem:
        raise InputProblem(f"“{text.strip()}” isn't a number of minutes; say {what}.") from None
