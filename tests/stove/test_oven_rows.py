"""Rows about what is in the oven, and about heat carried over, mean what they say or are refused with their field."""

from datetime import UTC, datetime

import pytest

from cookstove_gui.stove.checking import FieldProblem, check_entry
from cookstove_gui.stove.doubts import doubt
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import stove_with_default_spots

NOW = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)


def entry(kind: str, **fields: str) -> Entry:
    return check_entry(number=1, at=NOW, offset_minutes=-300, kind=kind, **fields)


@pytest.mark.parametrize(
    ("kind", "fields", "field", "words"),
    [
        ("oven_in", {"note": "  "}, "note", "What went into the oven"),
        ("oven_in", {"note": "pie", "value": "2"}, "unit", "needs its unit"),
        ("oven_in", {"note": "pie", "value": "0", "unit": "kg"}, "value", "mass of food"),
        ("probe", {"unit": "F"}, "value", "A probe needs a number"),
        ("probe", {"value": "140"}, "unit", "A probe needs its unit"),
        ("probe", {"value": "-500", "unit": "F"}, "value", "colder than anything"),
        ("due", {}, "value", "In how many minutes"),
        ("due", {"value": "-1"}, "value", "not within a day"),
        ("due", {"value": "1441"}, "value", "not within a day"),
        ("due", {"value": "soon"}, "value", "number of minutes"),
        ("carried", {"unit": "F"}, "value", "needs a number"),
        ("carried", {"value": "300", "unit": "F", "note": "oven hot"}, "note", "not a part with its heat"),
        ("carried", {"value": "300", "unit": "F", "note": "lid 300 ±5"}, "note", "name one of oven, walls"),
    ],
)
def test_what_has_no_meaning_is_refused(kind: str, fields: dict[str, str], field: str, words: str) -> None:
    with pytest.raises(FieldProblem, match=words) as problem:
        entry(kind, **fields)
    assert problem.value.field == field


@pytest.mark.parametrize(
    ("kind", "fields", "unit"),
    [
        ("oven_in", {"note": "loaf of bread"}, ""),
        ("oven_in", {"note": "loaf of bread", "value": "2.3", "unit": "LBS"}, "lb"),
        ("probe", {"value": "96", "unit": "°f"}, "F"),
        ("turned", {}, ""),
        ("due", {"value": "0"}, "min"),
        ("due", {"value": "1440", "unit": "min"}, "min"),
        ("oven_out", {"note": "loaf of bread"}, ""),
        ("carried", {"value": "300", "unit": "F"}, "F"),
        ("carried", {"value": "300", "unit": "f", "note": "±18; oven 236 ±22; coals 0.4 ±0.3"}, "F"),
    ],
)
def test_what_has_a_meaning_is_kept(kind: str, fields: dict[str, str], unit: str) -> None:
    assert entry(kind, **fields).unit == unit


@pytest.mark.parametrize(
    ("value", "asked"), [("140", False), ("-10", False), ("250", False), ("-11", True), ("251", True)]
)
def test_a_probe_that_no_core_has_is_questioned(value: str, asked: bool) -> None:
    question = doubt(entry("probe", value=value, unit="F"), stove_with_default_spots("Kitchen"))
    assert (question is not None) is asked
