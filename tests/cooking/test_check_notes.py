"""Thermometer checks kept as notes come back as they were."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.check_notes import check_in, check_note, checks_in
from cookstove_gui.cooking.thermometers import Check, CheckPoint, instrument_after
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import Instrument
from tests.cooking.made import START, STOVE, session


def note(text: str, number: int = 1, offset: int = 0) -> Entry:
    return Entry(number=number, at=START, offset_minutes=offset, kind=Kind.NOTE, note=text)


def boil(shown_celsius: float) -> Check:
    return Check(
        instrument="oven dial",
        point=CheckPoint.BOIL,
        shown=shown_celsius + 273.15,
        on=date(2026, 1, 5),
        pressure=98_500.0,
    )


@given(st.integers(900, 1080), st.sampled_from(["F", "C"]))
def test_a_check_comes_back(tenths: int, unit: str) -> None:
    check = boil(tenths / 10)
    found = check_in(note(check_note(check, unit)))  # type: ignore[arg-type]
    assert found is not None
    assert replace(found, shown=check.shown) == check
    assert found.shown == pytest.approx(check.shown, abs=0.051)


def test_the_day_is_that_of_the_cooks_clock() -> None:
    late = note("thermometer check: dial, ice, 33 F, 101325 Pa", offset=13 * 60)
    found = check_in(late)
    assert found is not None
    assert found.on == date(2026, 1, 6)


@pytest.mark.parametrize(
    "text",
    [
        "burnt down",
        "thermometer check: dial, steam, 210 F, 101325 Pa",
        "thermometer check: dial, boil, 500 F, 101325 Pa",
        "thermometer check: dial, boil, 210 F, 3 Pa",
        "thermometer check: dial, boil",
    ],
)
def test_other_notes_are_no_checks(text: str) -> None:
    assert check_in(note(text)) is None


def test_other_rows_are_no_checks() -> None:
    row = replace(note("thermometer check: dial, ice, 33 F, 101325 Pa"), kind=Kind.READING)
    assert check_in(row) is None


def test_a_voided_check_no_longer_counts() -> None:
    rows = (
        note("thermometer check: dial, ice, 36 F, 101325 Pa", 1),
        note("thermometer check: dial, ice, 33 F, 101325 Pa", 2),
        Entry(number=3, at=START, offset_minutes=0, kind=Kind.VOID, value="1"),
    )
    (found,) = checks_in(STOVE, [session(1, rows)])
    assert found.shown == pytest.approx(33.0 / 1.8 + 273.15 - 32 / 1.8)
    dial = instrument_after(Instrument(name="dial", kind="probe"), [found])
    assert dial.offset == pytest.approx(1 / 1.8, abs=0.05)


def test_other_stoves_checks_are_left_out() -> None:
    row = note("thermometer check: dial, ice, 33 F, 101325 Pa")
    assert checks_in(STOVE, [replace(session(1, (row,)), stove="another")]) == ()


@pytest.mark.parametrize("name", ["dial, left", " "])
def test_a_name_that_cannot_be_kept_is_told(name: str) -> None:
    with pytest.raises(InputProblem, match="comma"):
        check_note(replace(boil(100.0), instrument=name), "F")


def test_a_check_too_far_off_is_not_kept() -> None:
    with pytest.raises(InputProblem, match="check again"):
        check_note(boil(60.0), "F")
