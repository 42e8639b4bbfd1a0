"""Rises and holds are what the log's readings show, and stays without an end are not taken for short ones."""

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest
from statsmodels.duration.survfunc import SurvfuncRight

from cookstove_gui.cooking.fires.rise_and_hold import Hold, RiseAndHold, rise_and_hold, rise_quantiles, typical_hold
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.units import kelvin

LIT = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)
BAND = HeatBand(name="bread", low=kelvin(375.0, "F"), high=kelvin(425.0, "F"))
STOVE = stove_with_default_spots("Kitchen stove")


def firing(number: int, readings: list[tuple[float, float]]) -> Session:
    """A session lit at LIT + `number` days, with oven readings (minutes, °F)."""
    lit = LIT + timedelta(days=number)
    rows = [Entry(number=1, at=lit, offset_minutes=0, kind=Kind.LIT)]
    for place, (minutes, heat) in enumerate(readings, start=2):
        at = lit + timedelta(minutes=minutes)
        rows.append(
            Entry(
                number=place,
                at=at,
                offset_minutes=0,
                kind=Kind.READING,
                spot="oven_centre",
                value=str(heat),
                unit="F",
            )
        )
    return Session(number=number, stove=STOVE.name, title=str(number), entries=tuple(rows))


def test_rise_and_hold_lie_on_straight_lines_between_readings():
    found = rise_and_hold(STOVE, [firing(1, [(0, 75), (60, 325), (80, 425), (140, 425), (180, 325)])], BAND)
    # 50 of 100 degrees after 325: half of 20 minutes; down: half of the 40 after 140.
    assert found.rises == (pytest.approx(70.0),)
    assert found.holds == (Hold(minutes=pytest.approx(90.0), ended=True),)


def test_a_log_that_ends_at_heat_counts_as_at_least_so_long():
    found = rise_and_hold(STOVE, [firing(1, [(0, 75), (60, 325), (80, 425), (140, 420)])], BAND)
    assert found.holds == (Hold(minutes=pytest.approx(70.0), ended=False),)


def test_an_oven_still_warm_from_before_tells_nothing_of_a_rise():
    found = rise_and_hold(STOVE, [firing(1, [(0, 360), (10, 400), (60, 300)])], BAND)
    assert found.rises == ()


def test_a_firing_that_never_gets_there_is_left_out():
    assert rise_and_hold(STOVE, [firing(1, [(0, 75), (60, 325), (90, 340)])], BAND).rises == ()


def test_two_firings_give_a_middle_and_claim_no_range():
    sessions = [firing(day, [(0, 75), (60 + 10 * day, 425)]) for day in (1, 2)]
    found = rise_quantiles(rise_and_hold(STOVE, sessions, BAND))
    assert found.p50 is not None
    assert (found.p10, found.p90) == (None, None)


def test_typical_hold_against_the_product_limit_estimate_of_statsmodels():
    random = np.random.default_rng(7)
    for _ in range(20):
        minutes = random.integers(10, 200, size=9).astype(float)
        ended = random.random(9) < 0.7
        found = RiseAndHold(
            band=BAND,
            rises=(),
            holds=tuple(Hold(minutes=m, ended=bool(e)) for m, e in zip(minutes, ended, strict=True)),
        )
        reference = SurvfuncRight(minutes, ended.astype(int))
        down = reference.surv_times[reference.surv_prob <= 0.5 + 1e-12]
        assert typical_hold(found) == (pytest.approx(down[0]) if len(down) else None)
