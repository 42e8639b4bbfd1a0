"""A report's sentences: the session's own clock, both units where the trade uses both, and what was left out."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.phrases.habits import Habits
from cookstove_gui.phrases.report import (
    ReportClock,
    chart_words,
    event_words,
    heat_text,
    height_fact,
    reached,
    slip_words,
    thermometer_words,
    wood_fact,
)
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import stove_with_default_spots, unchecked
from cookstove_gui.units import TemperatureUnit, kelvin
from tests.phrases.facts import is_plain

FIRST = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)
CLOCK = ReportClock(FIRST, -300)
STOVE = stove_with_default_spots("Kitchen")


def row(kind: Kind = Kind.READING, after: float = 0.0, **fields: str) -> Entry:
    return Entry(number=1, at=FIRST + timedelta(minutes=after), offset_minutes=-300, kind=kind, **fields)


def oven(value: str, after: float = 0.0, unit: str = "F") -> Entry:
    return row(after=after, spot="oven_centre", value=value, unit=unit)


def test_the_sessions_own_clock() -> None:
    assert (CLOCK.first_date, CLOCK.zone, CLOCK.time(FIRST)) == ("Monday 5 January 2026", "UTC-05:00", "7:00")
    assert CLOCK.time(FIRST + timedelta(hours=17, minutes=10)) == "0:10 on 6 January"


# 2 kg are 4.4 lb (pound of 0.45359237 kg); 300 m are 984 ft (foot of 0.3048 m)
def test_wood_and_height_in_both_units() -> None:
    assert wood_fact(0, ()) == "not logged"
    assert wood_fact(1, ()) == "1 time"
    assert wood_fact(2, (2.0,)) == "2 times, 1 of them weighed, 4.4 lb (2 kg)"
    assert wood_fact(2, (1.0, 1.0)) == "2 times, 4.4 lb (2 kg)"
    assert height_fact(300.0) == "984 ft (300 m)"


def test_readings_in_the_reports_unit() -> None:
    assert heat_text(oven("425"), "C") == "218"  # (425 - 32) / 1.8 = 218.3
    assert reached([oven("95"), oven("300"), oven("110")], "F") == "95–300"
    assert reached([oven("70")], "F") == "70"
    assert reached([], "F") == ""


@pytest.mark.parametrize(
    ("kind", "fields", "said"),
    [
        (Kind.LIT, {}, "fire lit"),
        (Kind.WOOD, {"value": "4", "unit": "lb"}, "wood 4 lb"),
        (Kind.WOOD, {}, "wood"),
        (Kind.AIR, {"value": "0.5"}, "air half open"),
        (Kind.AIR, {"value": "1"}, "air wide open"),
        (Kind.AIR, {"value": "0.8"}, "air three quarters open"),
        (Kind.AIR, {"value": "0"}, "air shut"),
        (Kind.BYPASS, {"value": "0"}, "bypass shut"),
        (Kind.BYPASS, {"value": "1"}, "bypass open"),
        (Kind.OVEN_DOOR, {"value": "open"}, "oven door open"),
        (Kind.PAN, {"value": "on", "spot": "top_back_left"}, "pan on, top back left"),
        (Kind.NOTE, {}, "note"),
    ],
)
def test_what_was_done(kind: Kind, fields: dict[str, str], said: str) -> None:
    assert event_words(row(kind, **fields), STOVE) == said


def test_a_slip_says_what_was_typed_and_what_was_expected() -> None:
    assert slip_words(oven("3900", after=100), kelvin(390.0, "F"), STOVE, "C", CLOCK) == (
        "8:40, oven centre: 3900 °F was typed where about 199 °C was expected; left out of the tables."
    )


def test_thermometers() -> None:
    gun = replace(unchecked("gun", "infrared"), emissivity=0.7)
    assert thermometer_words(gun, Habits()) == "gun (infrared, emissivity set to 0.7): not checked."
    dial = replace(unchecked("dial", "probe"), offset=-2.0, offset_doubt=0.5, gain_doubt=0.0, checked_on="2026-01-02")
    assert thermometer_words(dial, Habits()) == (
        "dial (probe): at 400 °F it reads 3.6 °F too low, give or take 1.2 °F, as checked on 2 January 2026."
    )
    # 400 °F lies 204.4 K above the ice point: 1 % more is 2.04 K, 1.28 times 0.5 % of it 1.31 K
    steep = replace(dial, offset=0.0, offset_doubt=0.0, gain=0.01, gain_doubt=0.005)
    assert "at 400 °F it reads 3.7 °F too high, give or take 2.4 °F" in thermometer_words(steep, Habits())


@given(st.floats(-15, 15), st.floats(0, 5), st.sampled_from(("F", "C")))
def test_an_offset_has_its_side_and_no_sign(offset: float, doubt: float, unit: TemperatureUnit) -> None:
    dial = replace(unchecked("dial", "probe"), offset=offset, offset_doubt=doubt, checked_on="2026-01-02")
    assert is_plain(thermometer_words(dial, Habits(unit=unit)))


def test_the_chart_in_words_tells_nothing_twice() -> None:
    rows = [oven("100"), oven("420", after=60), oven("300", after=120)]
    assert chart_words(STOVE, rows, "F", CLOCK) == (
        "The oven of Kitchen: 100 °F at 7:00, its highest 420 °F at 8:00, 300 °F at 9:00."
    )
    assert chart_words(STOVE, rows[:1], "F", CLOCK) == (
        "The oven of Kitchen: 100 °F at 7:00, its highest 100 °F at 7:00."
    )
    assert chart_words(STOVE, [], "F", CLOCK) == ""
