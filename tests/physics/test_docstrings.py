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


PUBLIC = _public()


def test_there_are_functions() -> None:
    assert len(PUBLIC) > 60


def test_docstrings_have_their_sections_in_order() -> None:
    wrong = []
    for function in PUBLIC:
        sections = re.findall(r"^\s*(\w+)\n\s*-{4,}$", function.__doc__ or "", flags=re.MULTILINE)
        if not set(sections) >= NEEDED or sections != [name for name in ORDER if name in sections]:
            wrong.append(f"{function.__name__}: {sections}")
    assert not wrong


def test_docstrings_name_every_argument() -> None:
    wrong = []
    for function in PUBLIC:
        text = (function.__doc__ or "").split("Returns\n")[0]
        listed = [
            name.strip(" *")
            for line in re.findall(r"^ {4}([\w*, ]+) :", text, flags=re.MULTILINE)
            for name in line.split(",")
        ]
        if sorted(listed) != sorted(inspect.signature(function).parameters):
            wrong.append(f"{function.__name__} lists {listed}")
    assert not wrong


def test_arguments_obey_the_nomenclature() -> None:
    arguments = {name for function in PUBLIC for name in inspect.signature(function).parameters}
    assert not [name for name in sorted(arguments) if name not in WORDS["words"] and not _quantity(name)]


def test_arguments_carry_their_unit() -> None:
    wrong = []
    for function in PUBLIC:
        text = re.sub(r"\s+", " ", (function.__doc__ or "").split("Returns\n")[0])
        for name in inspect.signature(function).parameters:
            unit = _quantity(name)
            if name in WORDS["words"] or unit is None:
                continue
            if not any(one in text for one in ([unit] if isinstance(unit, str) else unit)):
                wrong.append(f"{function.__name__}: {name} wants {unit}")
    assert not wrong


def test_first_lines_are_one_sentence() -> None:
    first = [(function.__name__, (function.__doc__ or " ").splitlines()[0]) for function in PUBLIC]
    assert not [(name, line) for name, line in first if not line.endswith(".") or len(line) <= 10]


def test_files_stay_readable() -> None:
    for path in Path(room.__path__[0]).glob("*.py"):
        assert len(path.read_text(encoding="utf-8").splitlines()) <= 400, path.name
