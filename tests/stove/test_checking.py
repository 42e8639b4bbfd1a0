"""What has no meaning is refused with a sentence; the rest is tidied and kept."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.stove.checking import FieldProblem, check_entry
from cookstove_gui.stove.entries import Entry

NOW = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)


def _entry(kind: str = "reading", minute: float = 0.0, **fields: Any) -> Entry:
    usual = {"spot": "oven_centre", "unit": "F"} if kind.lower() == "reading" else {}
    return check_entry(number=1, at=NOW + timedelta(minutes=minute), offset_minutes=-300, kind=kind, **(usual | fields))


def _entry_or_sentence(**fields: Any) -> Entry | str:
    try:
        return check_entry(**fields)
    except FieldProblem as problem:
        return problem.sentence


@pytest.mark.parametrize(
    ("kind", "fields", "changed"),
    [
        ("Reading", {"value": " 385 ", "unit": "°f"}, {"value": "385", "unit": "F"}),
        ("reading", {"value": "196,5", "unit": "deg C"}, {"value": "196,5", "unit": "C"}),
        ("WOOD", {"value": "4", "unit": "Lbs"}, {"value": "4", "unit": "lb"}),
        ("wood", {"value": "", "unit": "", "note": "two splits"}, {"note": "two splits"}),
        ("oven door", {"value": "Open"}, {"kind": "oven_door", "value": "open"}),
        ("pan", {"value": "ON", "spot": "flue"}, {"value": "on"}),
        ("air", {"value": "0,3"}, {"value": "0,3"}),
        ("void", {"value": "3.0"}, {"value": "3"}),
        ("Kept", {"value": "3.0"}, {"value": "3"}),
        ("note", {"note": "  as typed\n "}, {"note": "  as typed\n "}),
    ],
)
def test_fields_are_tidied_but_the_note_is_kept_to_the_letter(
    kind: str, fields: dict[str, str], changed: dict[str, str]
) -> None:
    entry = _entry(kind, **fields)
    assert {name: getattr(entry, name) for name in changed} == changed


@given(
    kind=st.text(max_size=8) | st.sampled_from(["reading", "wood", "air", "void", "kept", "pan"]),
    spot=st.text(max_size=5),
    value=st.text(max_size=8) | st.floats().map(str),
    unit=st.text(max_size=3) | st.sampled_from(["F", "C", "kg"]),
)
def test_anything_typed_is_an_entry_or_a_sentence(kind: str, spot: str, value: str, unit: str) -> None:
    fields = {"at": NOW, "offset_minutes": 0, "kind": kind, "spot": spot, "value": value, "unit": unit}
    found = _entry_or_sentence(**fields)
    if isinstance(found, Entry):
        tidied = {name: getattr(found, name) for name in ("kind", "spot", "value", "unit")}
        assert _entry_or_sentence(**(fields | tidied)) == found
    else:
        assert found


def test_clock_without_an_offset_is_refused() -> None:
    with pytest.raises(FieldProblem, match="offset"):
        check_entry(at=NOW.replace(tzinfo=None), offset_minutes=0, kind="lit")


def test_offset_of_no_local_clock_is_refused() -> None:
    with pytest.raises(FieldProblem, match="No local clock"):
        check_entry(at=NOW, offset_minutes=1440, kind="lit")


def test_half_a_letter_is_refused() -> None:
    with pytest.raises(FieldProblem, match="half a letter"):
        _entry("note", note="\ud800")
