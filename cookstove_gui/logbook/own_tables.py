"""Two cooks' own tables made one: what one of them lacks comes in, what both have stays as the first has it."""

from collections.abc import Mapping
from typing import Any, NamedTuple

from cookstove_gui.errors import InputProblem

_NAMED_BY = ("key", "name")  # of a row


class Merged(NamedTuple):
    """The first table with what it lacked."""

    text: str  # TOML
    added: int  # rows and words that it lacked
    staying: tuple[str, ...]  # names of those that both have, in different forms


def merged(mine: str, theirs: str) -> Merged:
    """One table of both; one that lacks nothing stays to the letter.

    Raises
    ------
    InputProblem
        If one of them is not TOML.
    """
    import tomlkit
    from tomlkit.exceptions import ParseError

    try:
        whole, other = tomlkit.parse(mine), tomlkit.parse(theirs).unwrap()
    except ParseError as error:
        raise InputProblem(f"it isn't a TOML file that can be read ({error}).") from None
    staying: list[str] = []
    added = _fill(whole, other, "", staying)
    if not mine.strip():
        return Merged(theirs, added, ())
    return Merged(tomlkit.dumps(whole) if added else mine, added, tuple(staying))


def _fill(mine: Any, theirs: Mapping[str, Any], path: str, staying: list[str]) -> int:
    """Put what is lacking into a table; how much that is."""
    import tomlkit

    added = 0
    for name, value in theirs.items():
        if isinstance(value, dict):
            if name not in mine:
                mine[name] = tomlkit.table()
            if hasattr(mine[name], "keys"):
                added += _fill(mine[name], value, f"{path}{name}.", staying)
        elif _is_rows(value):
            added += _add_rows(mine, name, value, staying)
        elif name not in mine:
            mine[name] = value
            added += 1
        elif mine[name] != value:
            staying.append(f"{path}{name}")
    return added


def _is_rows(value: Any) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(row, dict) for row in value)


def _add_rows(mine: Any, name: str, theirs: list[dict[str, Any]], staying: list[str]) -> int:
    import tomlkit

    if name not in mine:
        mine.add(name, tomlkit.aot())
    elif not _is_rows(mine[name].unwrap()):
        return 0
    rows = mine[name]
    here = {_called(row): row for row in rows.unwrap()}
    new = [row for row in theirs if _called(row) not in here]
    staying += [_called(row) for row in theirs if here.get(_called(row), row) != row]
    for row in new:
        made = tomlkit.table()
        made.update(row)
        rows.append(made)
    return len(new)


def _called(row: Mapping[str, Any]) -> str:
    return next((str(row[name]) for name in _NAMED_BY if name in row), "")
