"""What is unlikely is kept and questioned; what may well be is not."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.doubts import doubt
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import Stove, stove_with_default_spots

NOW = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)


@pytest.fixture
def stove() -> Stove:
    return stove_with_default_spots("Kitchen")


def _entry(kind: str = "reading", minute: float = 0.0, **fields: Any) -> Entry:
    usual = {"spot": "oven_centre", "unit": "F"} if kind.lower() == "reading" else {}
    return check_entry(number=1, at=NOW + timedelta(minutes=minute), offset_minutes=-300, kind=kind, **(usual | fields))


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


def test_a_pan_in_a_file_that_stands_on_no_cooktop_is_questioned(stove: Stove) -> None:
    question = doubt(_entry("pan", spot="room", value="on"), stove)
    assert question is not None
    assert question.sentence == "No pan stands on the room; is the spot right?"
    assert doubt(_entry("pan", spot="top_back_left", value="on"), stove) is None
