"""Where the files beside the program lie: in a wheel inside the package, in a checkout beside it; and the cook's own.

What a cook adds or changes lies in tables of the same names in the data folder. The program's own tables are the
defaults: a row of the cook's with the same key stands in for one, any other comes after them. What is wrong with a
table of the cook's is told in a sentence and left out; the program goes on without it.
"""

import tomllib
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any, ParamSpec, TypeVar, cast

from cookstove_gui.errors import InputProblem, SurroundingsProblem

Asked = ParamSpec("Asked")
Made = TypeVar("Made")
OWN_FILES = ("tasks.toml", "bakes.toml", "foods.toml", "phrases.toml")
_PACKAGE = Path(__file__).resolve().parent


@cache
def folder(name: str) -> Path:
    """The folder `resources` or `sample_sessions`."""
    for place in (_PACKAGE / name, _PACKAGE.parent / name):
        if place.is_dir():
            return place
    raise SurroundingsProblem(
        f"The program's own folder “{name}” is missing beside {_PACKAGE}; install the program again."
    )


def resource(*parts: str) -> Path:
    """Path of one file in `resources`."""
    path = folder("resources").joinpath(*parts)
    if not path.exists():
        raise SurroundingsProblem(f"The program's own file {path} is missing; install the program again.")
    return path


@cache
def table(name: str) -> dict[str, Any]:
    """One TOML table in `resources`, such as `tasks.toml`; do not change what is returned."""
    with resource(name).open("rb") as stream:
        return tomllib.load(stream)


# --- the cook's own ---------------------------------------------------------------------------------------------------


@dataclass(slots=True)
class _Own:
    """Where the cook's tables lie, what was made of them, and what is wrong with them."""

    place: Path | None = None  # none: there are none
    problems: dict[str, str] = field(default_factory=dict)  # of each file the first
    caches: list[Callable[[], None]] = field(default_factory=list)


_OWN = _Own()


def use_own_tables(place: Path | None) -> None:
    """The cook's tables lie in this folder from now on, or are read again; none: there are none."""
    _OWN.place = place
    _OWN.problems = {}
    for forget in _OWN.caches:
        forget()


def own_place(name: str) -> Path | None:
    """Where the cook's table of that name lies, or would lie; none where there are none."""
    return None if _OWN.place is None else _OWN.place / name


def has_own_folder() -> bool:
    """Whether there is a place for the cook's tables."""
    return _OWN.place is not None


def has_own_tables() -> bool:
    """Whether the cook added or changed anything."""
    return _OWN.place is not None and any((_OWN.place / name).exists() for name in OWN_FILES)


def own_texts() -> dict[str, str]:
    """The cook's tables as they stand in their files, by name; one that cannot be read is left out."""
    found = {}
    for name in OWN_FILES:
        path = own_place(name)
        try:
            if path is not None and path.exists():
                found[name] = path.read_text(encoding="utf-8")
        except (OSError, UnicodeDecodeError):
            continue
    return found


def own_problems() -> tuple[str, ...]:
    """What is wrong with the cook's tables read so far, one sentence a file."""
    return tuple(_OWN.problems.values())


def made_of_tables(make: Callable[Asked, Made]) -> Callable[Asked, Made]:
    """Keep what a function makes of tables until the cook changes one."""
    kept = cache(make)
    _OWN.caches.append(kept.cache_clear)
    return cast("Callable[Asked, Made]", kept)


@made_of_tables
def own_table(name: str) -> dict[str, Any]:
    """The cook's table of that name, empty where there is none or it cannot be read; do not change what is returned."""
    path = own_place(name)
    if path is None or not path.exists():
        return {}
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        why = "" if isinstance(error, UnicodeDecodeError) else f" ({error})"
        note_problem(name, f"it isn't a TOML file that can be read{why}")
        return {}


def own_rows(name: str, kind: str) -> list[dict[str, Any]]:
    """The rows `[[kind]]` of the cook's table; what is no list of rows is told and left out."""
    rows = own_table(name).get(kind, [])
    if isinstance(rows, list) and all(isinstance(row, dict) for row in rows):
        return rows
    note_problem(name, f"write each row under [[{kind}]]")
    return []


def rows_of(name: str, kind: str, make: Callable[[dict[str, Any]], Made], *, key: str = "key") -> tuple[Made, ...]:
    """What `make` makes of every row of a table, the cook's in place of those of the same key and after the others.

    A row of the cook's for which `make` raises InputProblem is told and left out.
    """
    made: dict[str, Made] = {row[key]: make(row) for row in table(name)[kind]}
    for row in own_rows(name, kind):
        called = row.get(key)
        try:
            if not isinstance(called, str) or not called:
                raise InputProblem(f"a [[{kind}]] has no {key}; give it one.")
            made[called] = make(row)
        except InputProblem as problem:
            note_problem(name, problem.sentence)
    return tuple(made.values())


def own_words(*path: str) -> str:
    """Words from `phrases.toml` by their keys, the cook's before the program's; empty where there are none."""
    for words in (own_table("phrases.toml"), table("phrases.toml")):
        found: Any = words
        for part in path:
            found = found.get(part) if isinstance(found, dict) else None
        if isinstance(found, str):
            return found
        if found is not None:
            note_problem("phrases.toml", f"{'.'.join(path)} isn't words; put them in quotation marks")
    return ""


def note_problem(name: str, what: str) -> None:
    """Remember what is wrong with a table of the cook's; the first of each file is told."""
    told = what.rstrip(".")
    _OWN.problems.setdefault(
        name,
        f"Your own {name}: {told}. That is left out; correct it in {own_place(name)}, or on Plan, Tasks.",
    )
