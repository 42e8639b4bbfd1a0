"""The cook's own tables on the disk: what is kept and forgotten there holds at once, everywhere.

The files are TOML as the program's own are, so that a cook may also write in them; what stands there beside is left as
it is. A file that cannot be read is put aside under another name before a new one is written.
"""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from cookstove_gui.cooking.baking.catalogue import bake_rows, bakes
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.own_tables import write_own_tables
from cookstove_gui.desk.plan.own.bakes import Bakes
from cookstove_gui.desk.plan.own.canning import Canning
from cookstove_gui.desk.plan.own.foods import Foods
from cookstove_gui.desk.plan.own.sorts import Filled, Sort
from cookstove_gui.desk.plan.own.tasks import Tasks
from cookstove_gui.desk.plan.own.words import Words
from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.resource_files import own_place, table
from cookstove_gui.units import TemperatureUnit

SORTS: tuple[type[Sort], ...] = (Tasks, Bakes, Foods, Words, Canning)


def sort_of(key: str, unit: TemperatureUnit) -> Sort:
    """The sort of that key, shown and typed in this unit."""
    return next(sort for sort in SORTS if sort.key == key)(unit)


def keep(desk: Desk, sort: Sort, filled: Filled) -> str:
    """Keep what the form says; the key of what is kept.

    Raises
    ------
    InputProblem
        For what cannot be; nothing is kept then.
    SurroundingsProblem
        Where the disk refuses.
    """
    row = sort.row(filled)
    place = _place(sort)
    document = _document(place, sort.kind)
    if sort.kind:
        _put_row(document, sort, row)
        kept = str(row[sort.row_key])
    else:
        ((kept, words),) = row.items()
        _put_words(document, kept.split("."), words)
    write_own_tables(desk, {sort.file: document.as_string()})
    return kept


def forget(desk: Desk, sort: Sort, key: str) -> None:
    """Take back what the cook added or changed; a usual one is as it was. Raises as `keep` does."""
    if key not in sort.own_keys():
        raise InputProblem(f"This {sort.one} is as the program has it; only your own can be forgotten.")
    used = used_in(desk, sort, key)
    if used:
        raise InputProblem(f"{used} needs it; change that first.")
    place = _place(sort)
    document = _document(place, sort.kind)
    if sort.kind:
        rows = document.get(sort.kind, [])
        for number in [number for number, row in enumerate(rows) if row.get(sort.row_key) == key][::-1]:
            del rows[number]
    else:
        _take_words(document, key.split("."))
    write_own_tables(desk, {sort.file: document.as_string()})


def used_in(desk: Desk, sort: Sort, key: str) -> str:
    """What would be left without its heat, its bake or its food; empty for nothing, and for a usual one."""
    if key in _usual_keys(sort):
        return ""
    if isinstance(sort, Tasks):
        baked = next((bake.name for bake in bakes() if bake.task == key), "")
        return baked or _dish_with(desk, "task", key)
    if isinstance(sort, Bakes):
        return _dish_with(desk, "bake", key)
    if isinstance(sort, Foods):
        return next((str(row["name"]) for row in bake_rows().values() if row.get("food") == key), "")
    return ""


def _usual_keys(sort: Sort) -> frozenset[str]:
    return frozenset(str(row[sort.row_key]) for row in table(sort.file)[sort.kind]) if sort.kind else frozenset()


def _dish_with(desk: Desk, field: str, key: str) -> str:
    meal = desk.supper.supper
    dishes = (*desk.supper.dishes, *(() if meal is None else meal.dishes))
    return next(
        (
            dish.name
            for dish in dishes
            for part in dish.parts
            if isinstance(part, Heat) and (part.task if field == "task" else part.bake) == key
        ),
        "",
    )


def _place(sort: Sort) -> Path:
    place = own_place(sort.file)
    if place is None:
        raise SurroundingsProblem("There is no data folder to keep it in; open a logbook first.")
    return place


def _document(place: Path, kind: str) -> Any:
    """The file as it stands, to be written in; a new one where there is none or it cannot be read."""
    import tomlkit
    from tomlkit.exceptions import ParseError

    if not place.exists():
        return tomlkit.document()
    try:
        document = tomlkit.parse(place.read_text(encoding="utf-8"))
        if not kind or kind not in document or isinstance(document[kind], tomlkit.items.AoT):
            return document
    except (OSError, UnicodeDecodeError, ParseError):
        pass
    aside = next(
        side for number in range(1, 10_000) if not (side := place.with_name(f"{place.name}.{number}")).exists()
    )
    try:
        place.rename(aside)
    except OSError as error:
        raise SurroundingsProblem(
            f"{place} cannot be read, nor put aside ({error.strerror}); move it away, then keep this again."
        ) from error
    return tomlkit.document()


def _put_row(document: Any, sort: Sort, row: Mapping[str, Any]) -> None:
    import tomlkit

    made = tomlkit.table()
    for name, value in row.items():
        made.add(name, value)
    if sort.kind not in document:
        document.add(sort.kind, tomlkit.aot())
    rows = document[sort.kind]
    for number, old in enumerate(rows):
        if old.get(sort.row_key) == row[sort.row_key]:
            rows[number] = made
            return
    rows.append(made)


def _put_words(document: Any, path: list[str], words: str) -> None:
    import tomlkit

    within = document
    for name in path[:-1]:
        if not hasattr(within.get(name), "keys"):
            within[name] = tomlkit.table()
        within = within[name]
    within[path[-1]] = words


def _take_words(document: Any, path: list[str]) -> None:
    within = document
    for name in path[:-1]:
        within = within[name]
    del within[path[-1]]
