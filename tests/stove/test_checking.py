"""What has no meaning is refused with a sentence; what is unlikely is kept and questioned."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.stove.checking import FieldProblem, check_entry, doubt
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import Stove, stove_with_default_spots

NOW = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)


@pytest.fixture
def stove() -> Stove:
    return stove_with_default_spots("Kitchen")


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


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"value": "415", "unit": "C"}, "415 °C at oven centre is 779 °F, more than a stove reaches; was 415 °F meant"),
        ({"value": "3850"}, "more than a stove reaches there; is the number right"),
        ({"value": "150", "spot": "room"}, "at room is more than"),
        ({"value": "1800", "spot": "flue"}, "at flue pipe"),
        ({"value": "-80"}, "colder than any kitchen"),
        ({"value": "900", "spot": "oven_shelf"}, "at oven shelf"),
    ],
)
def test_number_no_stove_reaches_is_questioned(stove: Stove, fields: dict[str, str], words: str) -> None:
    question = doubt(_entry(**fields), stove)
    assert question is not None
    assert words in question.sentence


@pytest.mark.parametrize(
    "fields",
    [
        {"value": "385"},
        {"value": "196", "unit": "C"},
        {"value": "640", "spot": "top_back_left"},
        {"value": "12", "spot": "room"},
        {"value": "900", "spot": "flue"},
        {"value": "190", "spot": "wall_left"},
    ],
)
def test_likely_number_is_not_questioned(stove: Stove, fields: dict[str, str]) -> None:
    assert doubt(_entry(**fields), stove, (_entry(value="385", minute=-60),), NOW) is None


@pytest.mark.parametrize(
    ("value", "unit", "meant"), [("196", "F", "196 °C"), ("380", "C", "380 °F")], ids=["forgot C", "forgot F"]
)
def test_unit_that_does_not_fit_the_last_reading_is_questioned(stove: Stove, value: str, unit: str, meant: str) -> None:
    question = doubt(_entry(value=value, unit=unit, minute=10), stove, (_entry(value="385"),))
    assert question is not None
    assert question.field == "unit"
    assert meant in question.sentence


@pytest.mark.parametrize(("value", "asked"), [("20", True), ("66", False)])
def test_unit_of_a_small_jump_is_left_alone(stove: Stove, value: str, asked: bool) -> None:
    before = _entry(spot="room", value="20", unit="C")
    assert (doubt(_entry(spot="room", value=value, minute=10), stove, (before,)) is not None) == asked


def test_number_near_both_units_is_not_questioned(stove: Stove) -> None:
    # -40 is the same in both, and near it a unit makes little difference.
    before = _entry(spot="room", value="-30", unit="C")
    assert doubt(_entry(spot="room", value="-31", unit="F", minute=10), stove, (before,)) is None


def test_fire_may_warm_an_oven_quickly_without_a_question(stove: Stove) -> None:
    assert doubt(_entry(value="390", minute=10), stove, (_entry(value="190"),)) is None


@pytest.mark.parametrize(
    ("minute", "words"),
    [(10, "10 minutes ahead"), (150, "2 hours ahead"), (5000, "3 days ahead"), (-1000, "before this session began")],
)
def test_clock_ahead_or_long_before_is_questioned(stove: Stove, minute: float, words: str) -> None:
    question = doubt(_entry(value="385", minute=minute), stove, (_entry(value="385"),), NOW)
    assert question is not None
    assert question.field == "clock"
    assert words in question.sentence


def test_entry_dated_back_a_little_is_not_questioned(stove: Stove) -> None:
    assert doubt(_entry(value="385", minute=-30), stove, (_entry(value="385"),), NOW) is None


def test_more_wood_than_a_firebox_holds_is_questioned(stove: Stove) -> None:
    question = doubt(_entry("wood", value="80", unit="lb"), stove)
    assert question is not None
    assert "more wood" in question.sentence
    assert doubt(_entry("wood", value="8", unit="lb"), stove) is None
    assert doubt(_entry("wood", note="two splits"), stove) is None
