"""Dishes as TOML text: the usual ones of `resources/dishes.toml`, and those that a cook writes, in the same words.

A part is a row with one of the keys `hands`, `wait`, `oven` or `top`, whose value says in a word or two what is done.
"""

import tomllib
from collections.abc import Mapping
from typing import Any

from cookstove_gui.cooking import checked
from cookstove_gui.cooking.baking.catalogue import bakes
from cookstove_gui.cooking.fit.tasks import Place, task_of
from cookstove_gui.cooking.supper.dishes import Dish, HandsOn, Heat, Meal, Part, Wait
from cookstove_gui.errors import InputProblem
from cookstove_gui.resource_files import made_of_tables, table
from cookstove_gui.units import degrees, degrees_difference, kelvin, tidy

_DISH_KEYS = {"key", "name", "makes", "hot", "may_wait", "after_table", "source", "parts"}
_PART_KEYS = {
    "hands": {"minutes", "keeps"},
    "wait": {"minutes", "shortest", "longest", "kitchen"},
    "oven": {"minutes", "task", "band", "bake", "vessel", "evenness", "turn", "places", "falling"},
    "top": {"minutes", "task", "band", "vessel", "evenness", "turn"},
}


@made_of_tables  # a heat that they name is a task, which a cook may change
def usual_dishes() -> tuple[Dish, ...]:
    """The dishes of `resources/dishes.toml`, in the order of the file."""
    return tuple(dish_of_row(row, "dishes.toml") for row in table("dishes.toml")["dish"])


def meal_from_text(text: str, where: str) -> Meal:
    """The dishes of a TOML text; `where` names it in a sentence. A dish with only a key is the usual one of that key.

    Raises
    ------
    InputProblem
        Naming the dish, the part and what is wrong with it.
    """
    try:
        read = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise InputProblem(f"{where}: the text is not TOML ({error}); correct that line.") from None
    rows = read.get("dish")
    if not isinstance(rows, list) or not rows or not all(isinstance(row, dict) for row in rows):
        raise InputProblem(f"{where}: no dish is in it; write each as a [[dish]] with its parts.")
    dishes = tuple(dish_of_row(row, where) for row in rows)
    keys = [dish.key for dish in dishes]
    twice = next((key for key in keys if keys.count(key) > 1), None)
    if twice:
        raise InputProblem(f"{where}: two dishes have the key “{twice}”; give one of them another.")
    table_time = read.get("table", "")
    return Meal(dishes=dishes, table=str(table_time))


def dishes_text(dishes: tuple[Dish, ...]) -> str:
    """The text that `meal_from_text` reads back; every number that is not its usual one is written."""
    import tomlkit

    document = tomlkit.document()
    rows = tomlkit.aot()
    for dish in dishes:
        row = tomlkit.table()
        for name, value in _row_of(dish).items():
            row.add(name, value)
        parts = tomlkit.array()
        for part in dish.parts:
            inline = tomlkit.inline_table()
            inline.update(part_row(part))
            parts.append(inline)
        row.add("parts", parts.multiline(True))
        rows.append(row)
    document.add("dish", rows)
    return tomlkit.dumps(document)


def dish_of_row(row: Mapping[str, Any], where: str) -> Dish:
    """The dish of one row; raises InputProblem as `meal_from_text` does."""
    key = checked.key_in(row, "dish", where)
    if set(row) == {"key"}:
        usual = next((dish for dish in usual_dishes() if dish.key == key), None)
        if usual is None:
            raise InputProblem(f"{where}: there is no usual dish “{key}”; give it a name and parts.")
        return usual
    here = f"{where}, dish “{key}”"
    checked.only(row, _DISH_KEYS, here)
    parts = row.get("parts")
    if not isinstance(parts, list) or not parts:
        raise InputProblem(f"{here}: it has no parts; write at least one.")
    return Dish(
        key=key,
        name=checked.text(row, "name", key, here),
        makes=checked.text(row, "makes", "", here),
        hot=bool(row.get("hot", True)),
        may_wait=checked.minutes(row, "may_wait", 10.0, here),
        after_table=checked.minutes(row, "after_table", 0.0, here),
        source=checked.text(row, "source", "common practice, no source", here),
        parts=tuple(_part(part, f"{here}, part {number}") for number, part in enumerate(parts, 1)),
    )


def _part(row: object, here: str) -> Part:
    if not isinstance(row, dict):
        raise InputProblem(f'{here}: write it as {{ hands = "mix", minutes = 15 }}.')
    kinds = [kind for kind in _PART_KEYS if kind in row]
    if len(kinds) != 1:
        raise InputProblem(f"{here}: it needs exactly one of hands, wait, oven and top.")
    (kind,) = kinds
    checked.only(row, {kind, *_PART_KEYS[kind]}, here)
    what = checked.text(row, kind, "", here)
    if not what:
        raise InputProblem(f"{here}: say in a word what is done.")
    minutes = checked.minutes(row, "minutes", None, here)
    if kind == "hands":
        return HandsOn(what=what, minutes=minutes, keeps_min=checked.minutes(row, "keeps", 60.0, here))
    if kind == "wait":
        return _wait(row, what, minutes, here)
    return _heat(row, Place(kind), what, minutes, here)


def _wait(row: Mapping[str, Any], what: str, minutes: float, here: str) -> Wait:
    shortest = checked.minutes(row, "shortest", minutes, here)
    longest = checked.minutes(row, "longest", minutes, here)
    if not shortest <= minutes <= longest:
        raise InputProblem(
            f"{here}: {tidy(minutes)} min isn't between the shortest, {tidy(shortest)}, and the longest, "
            f"{tidy(longest)}."
        )
    kitchen = kelvin(checked.number(row, "kitchen", here), "F") if "kitchen" in row else None
    return Wait(what=what, minutes=minutes, shortest=shortest, longest=longest, kitchen=kitchen)


def _heat(row: Mapping[str, Any], place: Place, what: str, minutes: float, here: str) -> Heat:
    task, bake = checked.text(row, "task", "", here), checked.text(row, "bake", "", here)
    low = high = None
    if "band" in row:
        low, high = checked.heat_band(row, "band", (60.0, 800.0), here)
    known = task_of(task)
    if task and (known is None or known.place is not place):
        raise InputProblem(f"{here}: “{task}” is not a task of the {'oven' if place is Place.OVEN else 'cooktop'}.")
    if not task and low is None:
        raise InputProblem(f"{here}: say what heat it wants, by a task or a band.")
    if bake and bake not in {one.key for one in bakes()}:
        raise InputProblem(f"{here}: “{bake}” is not a known bake.")
    places = row.get("places", 1)
    if not isinstance(places, int) or not 1 <= places <= 9:
        raise InputProblem(f"{here}: it takes 1 to 9 of the oven's places.")
    return Heat(
        what=what,
        place=place,
        minutes=minutes,
        task=task,
        low=low,
        high=high,
        bake=bake,
        vessel=checked.text(row, "vessel", "", here),
        evenness=checked.number(row, "evenness", here) / 1.8 if "evenness" in row else None,
        turn=bool(row.get("turn", False)),
        places=places,
        falling=bool(row.get("falling", False)),
    )


def _row_of(dish: Dish) -> dict[str, Any]:
    row: dict[str, Any] = {"key": dish.key, "name": dish.name}
    if dish.makes:
        row["makes"] = dish.makes
    return row | {
        "hot": dish.hot,
        "may_wait": _short(dish.may_wait),
        "after_table": _short(dish.after_table),
        "source": dish.source,
    }


def part_row(part: Part) -> dict[str, Any]:
    """A part as the row that it is written as."""
    if isinstance(part, HandsOn):
        return {"hands": part.what, "minutes": _short(part.minutes), "keeps": _short(part.keeps_min)}
    if isinstance(part, Wait):
        row: dict[str, Any] = {"wait": part.what, "minutes": _short(part.minutes)}
        row |= {"shortest": _short(part.shortest), "longest": _short(part.longest)}
        return row if part.kitchen is None else row | {"kitchen": _short(degrees(part.kitchen, "F"))}
    row = {str(part.place): part.what, "minutes": _short(part.minutes)}
    given = {"task": part.task, "bake": part.bake, "vessel": part.vessel, "turn": part.turn, "falling": part.falling}
    row |= {name: value for name, value in given.items() if value}
    if part.low is not None and part.high is not None:
        row["band"] = [_short(degrees(part.low, "F")), _short(degrees(part.high, "F"))]
    if part.evenness is not None:
        row["evenness"] = _short(degrees_difference(part.evenness, "F"))
    return row if part.places == 1 else row | {"places": part.places}


def _short(number: float) -> int | float:
    near = round(number, 6)
    return int(near) if near == int(near) else near
