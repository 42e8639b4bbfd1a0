"""A row takes what was typed in its place if that has a meaning for its kind, and nothing else about it changes."""

from datetime import UTC, datetime

import pytest

from cookstove_gui.desk.log.correcting import corrected_row, text_of
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Entry, Kind

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
        (NOTED, "calm", "", "", "calm"),
        (row(Kind.AIR, value="1"), "0.5", "0.5", "", ""),
        (row(Kind.OVEN_DOOR, value="open"), "closed", "closed", "", ""),
    ],
)
def test_text_takes_the_place_of_what_stood_there(old: Entry, typed: str, value: str, unit: str, note: str) -> None:
    new = corrected_row(old, typed, "lb")
    assert (new.value, new.unit, new.note) == (value, unit, note)
    assert (new.kind, new.spot, new.at) == (old.kind, old.spot, old.at)


@pytest.mark.parametrize(
    ("old", "typed"),
    [
        (READING, "38x5"),
        (WEIGHED, "0"),
        (NOTED, "  "),
        (row(Kind.LIT), "5"),
        (row(Kind.AIR, value="1"), "7"),
        (row(Kind.OVEN_DOOR, value="open"), "ajar"),
    ],
)
def test_what_has_no_meaning_is_refused(old: Entry, typed: str) -> None:
    with pytest.raises(InputProblem):
        corrected_row(old, typed, "lb")


@pytest.mark.parametrize("old", [READING, WEIGHED, COUNTED, NOTED], ids=lambda old: old.kind)
def test_the_text_shown_for_mending_would_leave_the_row_as_it_is(old: Entry) -> None:
    new = corrected_row(old, text_of(old), "lb")
    assert (new.value, new.unit, new.note) == (old.value, old.unit, old.note)
