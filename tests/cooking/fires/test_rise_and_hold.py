"""Rises and holds are what the log's readings show, and stays without an end are not taken for short ones."""

from dataclasses import replace
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


@pytest.mark.parametrize(("began_at", "counts"), [(320, True), (322, False)])
def test_an_oven_within_54_degrees_of_the_band_was_warm(began_at, counts):
    found = rise_and_hold(STOVE, [firing(1, [(0, began_at), (10, 400), (60, 300)])], BAND)
    assert bool(found.rises) is counts


def test_a_warm_start_does_not_hide_the_firings_after_it():
    sessions = [firing(1, [(0, 360), (10, 400)]), firing(2, [(0, 75), (60, 375)])]
    assert rise_and_hold(STOVE, sessions, BAND).rises == (pytest.approx(60.0),)


def test_an_oven_just_at_the_band_has_arrived_and_has_not_left():
    found = rise_and_hold(STOVE, [firing(1, [(0, 75), (60, 375), (100, 375), (120, 275)])], BAND)
    assert found.rises == (pytest.approx(60.0),)
    assert found.holds == (Hold(minutes=pytest.approx(40.0), ended=True),)


def test_leaving_the_band_upward_is_no_end_of_a_hold():
    found = rise_and_hold(STOVE, [firing(1, [(0, 75), (60, 375), (90, 480), (120, 380)])], BAND)
    assert found.holds == (Hold(minutes=pytest.approx(60.0), ended=False),)


def test_a_stove_without_an_oven_centre_is_read_at_its_first_oven_spot():
    side = replace(STOVE, spots=tuple(spot for spot in STOVE.spots if spot.name != "oven_centre"))
    sessions = [firing(1, [(0, 75), (60, 375)])]
    moved = [
        replace(one, entries=tuple(replace(row, spot=row.spot and "oven_left") for row in one.entries))
        for one in sessions
    ]
    assert rise_and_hold(side, moved, BAND).rises == (pytest.approx(60.0),)
    assert rise_and_hold(side, sessions, BAND).rises == ()


def test_three_firings_give_percentiles():
    # 0.1 and 0.9 of the way along the sorted 60, 70, 100 min: 62 and 94 min
    found = rise_quantiles(RiseAndHold(band=BAND, rises=(100.0, 60.0, 70.0), holds=()))
    assert (found.p10, found.p50, found.p90) == pytest.approx((62.0, 70.0, 94.0))


def test_no_firings_give_none():
    found = rise_quantiles(RiseAndHold(band=BAND, rises=(), holds=()))
    assert (found.p10, found.p50, found.p90) == (None, None, None)


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
        assert typical_hold(found.holds) == (pytest.approx(down[0]) if len(down) else None)
