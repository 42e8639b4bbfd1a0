"""Forecasters without physics: the line, the straight fit, and what this stove did before."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from cookstove_gui.forecast.model.plain import (
    FEW_ALIKE,
    FIT_BEND,
    LINE_BEND,
    MINUTES,
    NEAR_CLOCK,
    NO_RISES,
    Plain,
    Rise,
    Rises,
    climbing,
    continued,
)


def _said(minutes, kelvin, since_lit: float = 60.0, rises: Rises = NO_RISES):
    return continued(np.array(minutes, dtype=float), np.array(kelvin, dtype=float), since_lit, rises)


def _rise(start: float = 300.0, pace: float = 2.0, until: float = 200.0, turn: float = 90.0) -> Rise:
    """An oven that gets hotter by `pace` until it stands still at `turn` min after lighting."""
    clock = np.arange(0.0, until + 1.0, 10.0)
    return Rise(clock, start + pace * np.minimum(clock, turn))


def test_one_reading_says_nothing():
    assert np.isnan(_said([0], [400])).all()


@given(st.floats(-4.0, 4.0), st.floats(300.0, 600.0))
def test_the_line_goes_on_with_the_latest_slope_and_bends_off(slope, level):
    line = _said([0, 10], [level - 10 * slope, level])[Plain.LINE]
    # dT/dt = slope e^(-t/bend), solved: it ends LINE_BEND minutes of slope away
    assert line == pytest.approx(level + slope * LINE_BEND * (1.0 - np.exp(-MINUTES / LINE_BEND)))


def test_the_line_takes_the_latest_reading_that_is_neither_too_near_nor_too_old():
    near = _said([0, 10, 16], [380, 390, 400])
    assert near[Plain.LINE] == pytest.approx(_said([10, 16], [390, 400])[Plain.LINE])
    skipped = _said([0, 10, 15], [380, 390, 400])
    assert skipped[Plain.LINE] == pytest.approx(_said([0, 15], [380, 400])[Plain.LINE])
    assert np.isnan(_said([0, 61], [380, 400])[Plain.LINE]).all()
    assert np.isfinite(_said([0, 60], [380, 400])[Plain.LINE]).all()


def test_the_fit_is_least_squares_through_the_last_half_hour():
    minutes, kelvin = [0, 31, 40, 52, 60], [900, 400, 418, 415, 433]
    known = stats.linregress(minutes[1:], kelvin[1:])
    fitted = known.intercept + known.slope * 60 + known.slope * FIT_BEND * (1 - np.exp(-MINUTES / FIT_BEND))
    assert _said(minutes, kelvin)[Plain.FIT] == pytest.approx(fitted)
    assert np.isnan(_said([0, 20], [400, 410])[Plain.FIT]).all()


def test_a_stove_that_did_just_this_before_does_it_again():
    rises = Rises.of([_rise()] * 5)
    said = _said([0, 20], [360, 400], since_lit=50.0, rises=rises)[Plain.RISES]
    # 60 K in half an hour, then it stood still; moments near this one count too, which were nearer to that
    assert said[MINUTES == 30.0] == pytest.approx(460.0, abs=8.0)
    assert said[MINUTES == 75.0] == pytest.approx(480.0, abs=12.0)


def test_the_time_since_lighting_tells_alike_heats_apart():
    """Two earlier mornings came by 400 K at the same pace, one at 50 min and rising on, one at 150 and done with it."""
    early, late = _rise(turn=500.0), Rise(np.arange(100.0, 400.0, 10.0), 300 + 2 * (np.arange(30) * 10.0).clip(0, 50))
    rises = Rises.of([early, late])
    soon, later = (_said([0, 10], [380, 400], lit, rises)[Plain.RISES] for lit in (50.0, 50.0 + 4 * NEAR_CLOCK))
    assert soon[6] > later[6] + 15.0


def test_what_is_unlike_all_it_did_before_is_not_foretold():
    said = _said([0, 10], [700, 690], 60.0, Rises.of([_rise()] * 3))
    assert np.isnan(said[Plain.RISES]).all()
    assert np.isfinite(said[Plain.LINE]).all()


def test_beyond_the_last_reading_of_a_session_it_tells_nothing():
    rises = Rises.of([_rise(until=80.0)] * 40)
    said = _said([0, 10], [400, 420], 60.0, rises)[Plain.RISES]
    assert np.isfinite(said[MINUTES <= 10.0]).all()
    assert np.isnan(said[-1])


def test_gains_are_averaged_by_how_alike_the_moments_are():
    """By hand: one moment just like this, one a standard deviation off in clock, and FEW_ALIKE of none."""
    rises = Rises(
        since_lit=np.array([60.0, 60.0 + NEAR_CLOCK]),
        kelvin=np.array([400.0, 400.0]),
        slope=np.array([1.0, 1.0]),
        gained=np.vstack([np.full(len(MINUTES), 30.0), np.full(len(MINUTES), 10.0)]),
    )
    off = np.exp(-0.5)
    gained = (30.0 + off * 10.0) / (1.0 + off + FEW_ALIKE)
    assert _said([0, 10], [390, 400], 60.0, rises)[Plain.RISES] == pytest.approx(400.0 + gained)


def test_sessions_of_one_reading_tell_nothing():
    assert len(Rises.of([Rise(np.array([5.0]), np.array([400.0]))]).kelvin) == 0
    assert len(Rises.of([]).kelvin) == 0


@pytest.mark.parametrize(
    ("kelvin", "share"),
    [([380, 400], 1.0), ([395, 400], 0.5), ([400, 400], 0.0), ([410, 400], 0.0), ([400], 0.0)],
)
def test_how_far_an_oven_is_on_a_rise(kelvin, share):
    assert climbing(10.0 * np.arange(len(kelvin)), np.array(kelvin, dtype=float)) == pytest.approx(share)


def test_a_second_rise_below_the_hottest_so_far_is_none():
    minutes = np.array([0.0, 20.0, 40.0])
    assert climbing(minutes, np.array([430.0, 380.0, 420.0])) == 0.0
    assert climbing(minutes, np.array([430.0, 380.0, 431.0])) == 1.0


def test_a_rise_comes_back_from_its_numbers():
    rise = _rise()
    again = Rise.from_json(rise.to_json())
    assert np.array_equal(again.since_lit, rise.since_lit)
    assert np.array_equal(again.kelvin, rise.kelvin)
