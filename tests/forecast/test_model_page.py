"""MODEL.md tells what the code does: its rows of the state, its parameters and its numbers are those of the code."""

import ast
import importlib
import math
import re
from collections.abc import Iterator
from dataclasses import fields
from enum import Enum
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import cookstove_gui.forecast as room
from cookstove_gui.forecast.model import ensemble, heat, parameters
from cookstove_gui.forecast.model.habits import Habits

ROOM = Path(room.__path__[0])
PAGE = (ROOM / "MODEL.md").read_text(encoding="utf-8")
INDICES = {"STATE_ROWS", "COUNT", "FIELD", "OFFSET"}  # places in the state, told by its own table
STATE_ROWS = ("PLATE", "WALLS", "AIR", "DIAL", "LINING", "ROOM", "FRESH", "FLAMING", "COALS", "EXTRA", "DRAW", "INLET",
              "BYPASS", "SINCE_FED")  # fmt: skip
# Literals that a function may hold: counts, halves, minutes in an hour, the variance of a rounding, numerical guards.
HARMLESS = {0.0, 0.5, 1.0, 2.0, 3.0, 4.0, 12.0, 60.0, 1e3}
GUARD = 1e-4


def modules() -> Iterator[tuple[str, ast.Module]]:
    """Every module of the room as MODEL.md names it, and its syntax tree."""
    for path in sorted(ROOM.rglob("*.py")):
        if path.name != "__init__.py":
            yield (
                path.relative_to(ROOM).with_suffix("").as_posix(),
                ast.parse(path.read_text(encoding="utf-8")),
            )


def flat(value: Any) -> tuple[float, ...] | None:
    """The numbers that a constant holds, in order, or none if it is no number."""
    if isinstance(value, dict):
        value = tuple(value.values())
    if isinstance(value, tuple):
        parts = [flat(part) for part in value]
        return None if any(part is None for part in parts) else tuple(number for part in parts for number in part or ())
    return (float(value),) if isinstance(value, int | float) and not isinstance(value, bool | Enum) else None


@cache
def constants() -> dict[tuple[str, str], tuple[float, ...]]:
    """Numbers at the top of each module, and the beliefs that habits begin with, by module and name."""
    found = {}
    for module, tree in modules():
        home = importlib.import_module(f"{room.__name__}.{module.replace('/', '.')}")
        for statement in tree.body:
            targets = getattr(statement, "targets", None) or [getattr(statement, "target", statement)]
            targets = targets if isinstance(statement, ast.Assign | ast.AnnAssign) else []
            names = [node.id for target in targets for node in ast.walk(target) if isinstance(node, ast.Name)]
            for name in names:
                numbers = flat(getattr(home, name))
                if numbers and not name.startswith("_") and not (name in INDICES or is_state_row(module, name)):
                    found[module, name] = numbers
    for field in fields(Habits):
        found["model/habits", f"Habits.{field.name}"] = (float(field.default),)  # type: ignore[arg-type]
    return found


def is_state_row(module: str, name: str) -> bool:
    return module == "model/heat" and name in STATE_ROWS


def table_rows(text: str) -> list[list[str]]:
    """Cells of the rows of the Markdown tables in a text, without heads and rules."""
    rows = [[cell.strip() for cell in line.strip("|").split("|")] for line in text.splitlines() if line[:1] == "|"]
    rules = [place for place, row in enumerate(rows) if set("".join(row)) <= set("-: ")]
    return [row for place, row in enumerate(rows) if place not in rules and place + 1 not in rules]


def section(heading: str) -> str:
    """What stands under a heading, up to the next one of its level or above."""
    level = heading.split(" ")[0]
    after = PAGE.split(f"\n{heading}\n", 1)[1]
    return re.split(rf"\n#{{1,{len(level)}}} ", after, maxsplit=1)[0]


def numbers_in(cell: str) -> tuple[float, ...]:
    """Numbers of a table's cell; “log 32” is the logarithm of 32."""
    found = re.findall(r"(log )?(-?\d+(?:\.\d+)?(?:e-?\d+)?)", cell)
    return tuple(math.log(float(number)) if log else float(number) for log, number in found)


@cache
def listed() -> dict[tuple[str, str], list[str]]:
    """Rows of MODEL.md's tables of constants, by module and name: value, unit, meaning, provenance."""
    found: dict[tuple[str, str], list[str]] = {}
    for module in re.findall(r"^### `([\w/]+)\.py`$", PAGE, flags=re.MULTILINE):
        for name, *rest in table_rows(section(f"### `{module}.py`")):
            assert (module, name.strip("`")) not in found, f"{name} stands twice"
            found[module, name.strip("`")] = rest
    return found


def test_every_number_of_the_code_is_on_the_page_and_none_besides() -> None:
    assert len(constants()) > 150
    assert set(listed()) == set(constants())


def test_every_number_has_its_value_unit_and_provenance() -> None:
    wrong = []
    for key, numbers in constants().items():
        value, *told = listed()[key]
        if numbers_in(value) != pytest.approx(numbers, rel=1e-9) or len(told) != 3 or not all(told):
            wrong.append(f"{'-'.join(key)} is {numbers}, the page has {value}, {told}")
    assert not wrong


def test_parameters_have_their_unit_values_and_provenance() -> None:
    rows = {row[0].strip("`"): row for row in table_rows(section("### Parameters"))}
    assert list(rows) == list(parameters.NAMES)
    for parameter in parameters.PARAMETERS:
        _, unit, typical, stoves, firings, meaning, provenance = rows[parameter.name]
        assert unit == parameter.unit
        shown = (float(typical.replace(" ", "")), float(stoves), float(firings))
        assert shown == pytest.approx(
            (parameter.typical, parameter.between_stoves, parameter.between_firings), rel=1e-3
        )
        assert meaning
        assert provenance


def test_rows_of_the_state_are_those_of_the_code() -> None:
    rows = table_rows(section("## 1. State"))
    places = {name.strip("`"): place for place, name, *_ in rows}
    expected = {f"heat.{name}": str(getattr(heat, name)) for name in STATE_ROWS}
    for name in ("FIRING", "LASTING"):
        part = getattr(ensemble, name)
        expected[f"ensemble.{name}"] = f"{part.start} to {part.stop - 1}"
    expected["ensemble.OFFSET"] = str(ensemble.OFFSET)
    expected["ensemble.FIELD"] = f"{ensemble.FIELD} onward"
    assert places == expected
    assert sorted(getattr(heat, name) for name in STATE_ROWS) == list(range(heat.STATE_ROWS))
    assert all(all(row) for row in rows)


def test_names_of_constants_in_the_text_exist() -> None:
    known = {name for _, name in constants()} | set(STATE_ROWS)
    known |= {"USUAL_SPLIT", "FIRING", "LASTING", "OFFSET", "FIELD"}
    assert set(re.findall(r"\b[A-Z]+(?:_[A-Z]+)+\b", PAGE)) <= known


def test_functions_hold_no_number_without_a_name() -> None:
    nameless = [
        f"{module}.py, line {node.lineno}: {node.value}"
        for module, tree in modules()
        for function in ast.walk(tree)
        if isinstance(function, ast.FunctionDef)
        for part in (function.args, *function.body)
        for node in ast.walk(part)
        if isinstance(node, ast.Constant)
        and isinstance(node.value, int | float)
        and not isinstance(node.value, bool)
        and node.value not in HARMLESS
        and node.value > GUARD
    ]
    assert not nameless


def test_numbers_at_the_top_of_a_module_are_floats_that_can_be_compared() -> None:
    assert all(np.isfinite(numbers).all() for numbers in constants().values())
