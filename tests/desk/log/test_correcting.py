"""A row takes what was typed in its place if that has a meaning for its kind, and nothing else about it changes."""

from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.desk.log.correcting import Correction, corrected_row, text_of
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.wood_text import typed_wood

AT = datetime(2026, 1, 5, 12, 2, tzinfo=UTC)


def row(kind: Kind, *, spot: str = "", value: str = "", unit: str = "", note: str = "") -> Entry:
    return Entry(number=3, at=AT, offset_minutes=-300, kind=kind, spot=spot, value=value, unit=unit, note=note)


READING = row(Kind.READING, spot="oven_centre", value="385", unit="F")
WEIGHED = row(Kind.WOOD, value="4.5", unit="lb")
COUNTED = row(Kind.WOOD, note="two splits")
NOTED = row(Kind.NOTE, note="windy")


@pytest.mark.parametrize(
    ("old", "typed", "value", "unit", "note"),
    [
        (READING, "358", "358", "F", ""),
        (READING, "196c", "196", "C", ""),
        (WEIGHED, "5", "5", "lb", ""),
        (WEIGHED, "2,5 KG", "2.5", "kg", ""),
        (WEIGHED, "three splits", "", "", "three splits"),
        (COUNTED, "3", "", "", "3 splits"),
        (COUNTED, "1", "", "", "1 split"),
        (COUNTED, "4 lb", "4", "lb", ""),
        (NOTED, "  ", "", "", "windy"),
        (NOTED, "calm", "", "", "calm"),
        (row(Kind.AIR, value="1"), "0.5", "0.5", "", ""),
        (row(Kind.PROBE, value="96", unit="F"), "35c", "35", "C", ""),
        (row(Kind.OVEN_IN, note="fruit pie"), "2.5", "2.5", "lb", "fruit pie"),
        (row(Kind.OVEN_IN, value="2", unit="kg", note="fruit pie"), "3", "3", "kg", "fruit pie"),
        (row(Kind.OVEN_IN, value="2", unit="kg", note="fruit pie"), "custard", "2", "kg", "custard"),
        (row(Kind.DUE, value="20", unit="min"), "25", "25", "min", ""),
        (row(Kind.OVEN_DOOR, value="open"), "closed", "closed", "", ""),
    ],
)
def test_text_takes_the_place_of_what_stood_there(old: Entry, typed: str, value: str, unit: str, note: str) -> None:
    new = corrected_row(old, Correction(text=typed), "lb")
    assert (new.value, new.unit, new.note) == (value, unit, note)
    assert (new.kind, new.spot, new.at) == (old.kind, old.spot, old.at)


def test_value_spot_and_clock_change_in_one_step() -> None:
    later = AT + timedelta(minutes=9)
    new = corrected_row(READING, Correction(text="410", spot="flue", at=later), "lb")
    assert (new.value, new.spot, new.at, new.number) == ("410", "flue", later, READING.number)


def test_what_has_no_spot_takes_none() -> None:
    with pytest.raises(InputProblem, match="Only a reading or a pan has a spot"):
        corrected_row(COUNTED, Correction(spot="flue"), "lb")


@pytest.mark.parametrize(
    ("typed", "wood"),
    [
        ("4.5", ("4.5", "lb", "")),
        ("2,5 kg", ("2.5", "kg", "")),
        ("3 lbs", ("3", "lb", "")),
        ("5 splits", ("", "", "5 splits")),
        ("half a split", ("", "", "half a split")),
        ("an armful of birch", ("", "", "an armful of birch")),
    ],
)
def test_any_amount_of_wood_is_taken(typed: str, wood: tuple[str, str, str]) -> None:
    assert typed_wood(typed, "lb") == wood


@pytest.mark.parametrize("typed", ["", "4.5.3", "4 5", "7 %"])
def test_what_is_no_amount_of_wood_is_refused(typed: str) -> None:
    with pytest.raises(InputProblem, match="amount of wood"):
        typed_wood(typed, "kg")


@pytest.mark.parametrize(
    ("old", "typed"),
    [
        (READING, "38x5"),
        (WEIGHED, "0"),
        (WEIGHED, "4.5.3"),
        (row(Kind.OUT), "5"),
        (row(Kind.LIT), "5"),
        (row(Kind.AIR, value="1"), "7"),
        (row(Kind.OVEN_DOOR, value="open"), "ajar"),
    ],
)
def test_what_has_no_meaning_is_refused(old: Entry, typed: str) -> None:
    with pytest.raises(InputProblem):
        corrected_row(old, Correction(text=typed), "lb")


def test_what_has_no_number_says_how_to_correct_it() -> None:
    with pytest.raises(InputProblem) as refused:
        corrected_row(row(Kind.LIT), Correction(text="5"), "lb")
    assert refused.value.sentence == (
        "This row has no number to correct; change its time, or take it back with Delete."
    )


@pytest.mark.parametrize("old", [READING, WEIGHED, COUNTED, NOTED], ids=lambda old: old.kind)
def test_the_text_shown_for_mending_would_leave_the_row_as_it_is(old: Entry) -> None:
    new = corrected_row(old, Correction(text=text_of(old)), "lb")
    assert (new.value, new.unit, new.note) == (old.value, old.unit, old.note)
