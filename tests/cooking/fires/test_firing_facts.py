"""A session in numbers, by hand-made logs whose sums can be done in the head."""

from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.cooking.fires.firing_facts import firing_facts, sound_curve
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.units import kelvin

STOVE = stove_with_default_spots("Kitchen")
BREAD = HeatBand(name="bread", low=float(kelvin(365.0, "F")), high=float(kelvin(425.0, "F")))
LIT = datetime(2026, 11, 8, 12, 0, tzinfo=UTC)


def entry(minute: float, kind: Kind, value: str = "", unit: str = "", spot: str = "", note: str = "") -> Entry:
    at = LIT + timedelta(minutes=minute)
    return Entry(number=0, at=at, offset_minutes=60, kind=kind, value=value, unit=unit, spot=spot, note=note)


def oven(minute: float, fahrenheit: float) -> Entry:
    return entry(minute, Kind.READING, f"{fahrenheit:g}", "F", "oven_centre")


def session(*rows: Entry) -> Session:
    numbered = tuple(
        Entry(
            number=place, at=row.at, offset_minutes=row.offset_minutes, kind=row.kind, value=row.value, unit=row.unit,
            spot=row.spot, note=row.note,
        )
        for place, row in enumerate(rows, start=1)
    )  # fmt: skip
    return Session(number=3, stove="Kitchen", title="Bread", entries=numbered)


def test_a_firing_in_numbers() -> None:
    found = firing_facts(
        STOVE,
        session(
            oven(-10, 70), entry(0, Kind.LIT), entry(5, Kind.WOOD, "2", "kg"), entry(40, Kind.WOOD, note="an armful"),
            oven(30, 265), oven(80, 365), oven(120, 400), entry(150, Kind.OUT), oven(180, 300),
        ),
        BREAD,
    )  # fmt: skip
    assert found is not None
    assert found.began == LIT
    assert found.lit_minutes == 150.0  # until it went out
    assert (found.loads, found.weighed, found.wood) == (2, 1, 2.0)
    assert found.rise_min == pytest.approx(80.0)
    assert found.hottest == (120.0, pytest.approx(kelvin(400.0, "F")))
    assert found.curve[0][0] == -10.0


def test_without_a_fire_the_first_entry_counts_as_the_beginning() -> None:
    found = firing_facts(STOVE, session(oven(7, 200), oven(20, 220)), BREAD)
    assert found is not None
    assert (found.began, found.lit, found.lit_minutes) == (LIT + timedelta(minutes=7), (), 0.0)
    assert found.rise_min is None


def test_an_empty_session_has_no_facts() -> None:
    assert firing_facts(STOVE, session(), BREAD) is None


@pytest.mark.parametrize("slip", [38.0, 838.0])
def test_a_number_far_from_both_its_neighbours_is_left_out(slip: float) -> None:
    readings = [(0.0, 450.0), (10.0, 455.0), (20.0, float(kelvin(slip, "F"))), (30.0, 460.0)]
    assert sound_curve(readings) == (readings[0], readings[1], readings[3])


def test_a_heat_that_stays_is_no_slip() -> None:
    readings = [(0.0, 300.0), (10.0, 380.0), (20.0, 430.0), (30.0, 400.0)]
    assert sound_curve(readings) == tuple(readings)
