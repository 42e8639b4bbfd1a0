"""Units at the edges: published fixed points, exact conversions, and clocks as people write them."""

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.errors import InputProblem
from cookstove_gui.units import (
    clock_text,
    degrees,
    degrees_difference,
    iso_clock,
    kelvin,
    kilograms,
    local_offset_minutes,
    parse_iso_clock,
    parse_number,
    parse_temperature,
    parse_wall_clock,
    tidy,
)

NOW = datetime(2026, 1, 5, 12, 2, tzinfo=UTC)  # 7:02 in the zone five hours behind


@pytest.mark.parametrize(
    ("number", "unit", "expected"),
    [
        (32.0, "F", 273.15),  # definition of the scales
        (212.0, "F", 373.15),
        (-40.0, "F", 233.15),
        (-40.0, "C", 233.15),
        (-459.67, "F", 0.0),  # absolute zero, NIST SP 811
        (-273.15, "C", 0.0),
        (451.0, "F", 505.9277777777778),  # (451 + 459.67) / 1.8
    ],
)
def test_kelvin_agrees_with_the_fixed_points(number: float, unit: str, expected: float) -> None:
    assert kelvin(number, unit) == pytest.approx(expected, abs=1e-9)
    assert degrees(expected, unit) == pytest.approx(number, abs=1e-9)


@given(st.floats(min_value=-400, max_value=2000), st.sampled_from(["F", "C"]))
def test_temperature_goes_there_and_back(number: float, unit: str) -> None:
    assert degrees(kelvin(number, unit), unit) == pytest.approx(number, abs=1e-9)


def test_arrays_are_converted_whole() -> None:
    assert np.allclose(kelvin(np.array([32.0, 212.0]), "F"), [273.15, 373.15])


@pytest.mark.parametrize("unit", ["K", "", "f"])
def test_other_units_are_refused(unit: str) -> None:
    for convert in (kelvin, degrees):
        with pytest.raises(InputProblem, match="F or C"):
            convert(1.0, unit)


def test_difference_has_no_zero_point() -> None:
    assert degrees_difference(10.0, "F") == 18.0
    assert degrees_difference(10.0, "C") == 10.0


def test_pound_is_the_international_one() -> None:
    assert kilograms(1.0, "lb") == 0.45359237  # exact, NIST SP 811
    assert kilograms(2.5, "kg") == 2.5
    with pytest.raises(InputProblem, match="kg or lb"):
        kilograms(1.0, "stone")


@pytest.mark.parametrize(
    ("text", "number"), [("385", 385.0), (" 385.5 ", 385.5), ("385,5", 385.5), ("-4", -4.0), ("+.5", 0.5), ("7.", 7.0)]
)
def test_numbers_are_read_with_point_or_comma(text: str, number: float) -> None:
    assert parse_number(text) == number


@pytest.mark.parametrize("text", ["", "x", "38x", "1e3", "nan", "inf", "1,2,3", "0x10", "3 85"])
def test_what_is_no_number_is_told(text: str) -> None:
    with pytest.raises(InputProblem, match="not a mass"):
        parse_number(text, "mass")


@pytest.mark.parametrize(
    ("text", "expected"),
    [("385", (385.0, "F")), ("196c", (196.0, "C")), ("385 °F", (385.0, "F")), ("196,5 C", (196.5, "C"))],
)
def test_temperature_may_carry_its_unit(text: str, expected: tuple[float, str]) -> None:
    assert parse_temperature(text, "F") == expected


@pytest.mark.parametrize("text", ["hot", "", "385 K", "385 FF", "38 5"])
def test_what_is_no_temperature_is_told(text: str) -> None:
    with pytest.raises(InputProblem):
        parse_temperature(text, "F")


@pytest.mark.parametrize(
    ("number", "text"), [(385.0, "385"), (0.5, "0.5"), (0.04, "0"), (-0.0, "-0"), (100.0, "100"), (99.96, "100")]
)
def test_number_is_short_text(number: float, text: str) -> None:
    assert tidy(number) == text


def test_tidy_without_places_keeps_round_hundreds() -> None:
    assert tidy(400.0, 0) == "400"


@given(
    st.integers(min_value=0, max_value=2**52).map(
        lambda count: datetime(1970, 1, 1, tzinfo=UTC) + timedelta(microseconds=count)
    ),
    st.integers(min_value=-14 * 60, max_value=14 * 60),
)
def test_iso_clock_goes_there_and_back(at: datetime, offset: int) -> None:
    assert parse_iso_clock(iso_clock(at, offset)) == (at, offset)


@pytest.mark.parametrize(
    ("text", "at", "offset"),
    [  # examples of RFC 3339, section 5.8
        ("1985-04-12T23:20:50.52Z", datetime(1985, 4, 12, 23, 20, 50, 520000, tzinfo=UTC), 0),
        ("1996-12-19T16:39:57-08:00", datetime(1996, 12, 20, 0, 39, 57, tzinfo=UTC), -480),
        ("1937-01-01T12:00:27.87+00:20", datetime(1937, 1, 1, 11, 40, 27, 870000, tzinfo=UTC), 20),
    ],
)
def test_iso_clock_agrees_with_the_standards_examples(text: str, at: datetime, offset: int) -> None:
    assert parse_iso_clock(text) == (at, offset)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("2026-01-05 7:02 PM", "12-hour"),
        ("2026-01-05T07:02 a.m.", "12-hour"),
        ("2026-01-05T07:02:00", "no UTC offset"),
        ("2026-13-05T07:02:00Z", "not a date"),
        ("9999-12-31T23:59:59-05:00", "calendar"),
        ("", "not a date"),
    ],
)
def test_bad_iso_clock_is_told(text: str, words: str) -> None:
    with pytest.raises(InputProblem, match=words):
        parse_iso_clock(text)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("7:02", NOW),
        ("702", NOW),
        ("07.02", NOW),
        ("7h02", NOW),
        ("7", NOW - timedelta(minutes=2)),
        ("7:02:30", NOW + timedelta(seconds=30)),
        ("7:05", NOW + timedelta(minutes=3)),  # a clock that runs a little fast
        ("19:02", NOW - timedelta(hours=12)),
        ("7:02 pm", NOW - timedelta(hours=12)),
        ("12:30 a.m.", NOW - timedelta(hours=6, minutes=32)),
        ("-10", NOW - timedelta(minutes=10)),
        ("- 90 min", NOW - timedelta(minutes=90)),
    ],
)
def test_wall_clock_means_the_latest_such_moment(text: str, expected: datetime) -> None:
    assert parse_wall_clock(text, NOW, -300) == expected


@pytest.mark.parametrize("text", ["", "25:00", "7:60", "13 pm", "0 am", "noon", "-", "7:5"])
def test_bad_wall_clock_is_told(text: str) -> None:
    with pytest.raises(InputProblem, match="not a clock time"):
        parse_wall_clock(text, NOW, -300)


def test_wall_clock_still_to_come_is_told() -> None:
    with pytest.raises(InputProblem, match="still to come"):
        parse_wall_clock("7:08", NOW, -300)


def test_clock_is_written_as_people_write_it() -> None:
    assert clock_text(NOW, -300) == "7:02"


def test_offset_of_this_computer_is_a_few_hours_at_most() -> None:
    assert abs(local_offset_minutes(NOW)) <= 14 * 60
