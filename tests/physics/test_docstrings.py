"""Every public function of this room says what it takes, gives and refuses, where it comes from, in one vocabulary."""

import importlib
import inspect
import pkgutil
import re
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import cookstove_gui.physics as room

ORDER = ["Parameters", "Returns", "Raises", "Validity", "Notes", "Source"]
NEEDED = {"Parameters", "Returns", "Raises", "Source"}
SHARED = {"quantities"}  # what all files use; no physics in it
pytestmark = pytest.mark.docstring_lint
WORDS = tomllib.loads((Path(__file__).parent / "nomenclature.toml").read_text(encoding="utf-8"))


def _public() -> list[Callable[..., Any]]:
    found = []
    for module in pkgutil.iter_modules(room.__path__):
        if module.name in SHARED:
            continue
        members = importlib.import_module(f"{room.__name__}.{module.name}")
        found += [
            function
            for name, function in inspect.getmembers(members, inspect.isfunction)
            if not name.startswith("_") and function.__module__ == members.__name__
        ]
    return found


def _quantity(name: str) -> str | list[str] | None:
    """Unit of the quantity that an argument's name begins with."""
    known = WORDS["quantities"]
    stems = [name.rsplit("_", drop)[0] for drop in range(name.count("_") + 1)]
    return next((known[stem] for stem in stems if stem in known), None)


FUNCTIONS = pytest.mark.parametrize("function", _public(), ids=lambda function: function.__name__)


def test_there_are_functions() -> None:
    assert len(_public()) > 60


@FUNCTIONS
def test_docstring_has_its_sections_in_order(function: Callable[..., Any]) -> None:
    sections = re.findall(r"^\s*(\w+)\n\s*-{4,}$", function.__doc__ or "", flags=re.MULTILINE)
    assert set(sections) >= NEEDED
    assert sections == [name for name in ORDER if name in sections]


@FUNCTIONS
def test_docstring_names_every_argument(function: Callable[..., Any]) -> None:
    text = (function.__doc__ or "").split("Returns\n")[0]
    listed = [
        name.strip(" *")
        for line in re.findall(r"^ {4}([\w*, ]+) :", text, flags=re.MULTILINE)
        for name in line.split(",")
    ]
    assert sorted(listed) == sorted(inspect.signature(function).parameters)


@FUNCTIONS
def test_arguments_obey_the_nomenclature(function: Callable[..., Any]) -> None:
    for name in inspect.signature(function).parameters:
        assert name in WORDS["words"] or _quantity(name), f"{name} is no word of nomenclature.toml"


@FUNCTIONS
def test_arguments_carry_their_unit(function: Callable[..., Any]) -> None:
    text = re.sub(r"\s+", " ", (function.__doc__ or "").split("Returns\n")[0])
    for name in inspect.signature(function).parameters:
        unit = _quantity(name)
        if name in WORDS["words"] or unit is None:
            continue
        assert any(one in text for one in ([unit] if isinstance(unit, str) else unit)), f"{name} wants {unit}"


@FUNCTIONS
def test_first_line_is_one_sentence(function: Callable[..., Any]) -> None:
    first = (function.__doc__ or "").splitlines()[0]
    assert first.endswith(".")
    assert len(first) > 10


def test_files_stay_readable() -> None:
    for path in Path(room.__path__[0]).glob("*.py"):
        assert len(path.read_text(encoding="utf-8").splitlines()) <= 400, path.name
