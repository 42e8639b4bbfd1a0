"""Arrival, touch and leaving as instants, from straight futures whose crossings a ruler gives."""

from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.forecast.futures.arrival import arrival_of, leaves_upward, leaving_of, touching_of
from cookstove_gui.forecast.futures.outlook import outlook_of
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import SpotKind
from tests.forecast.futures.made import BAND, futures, lines, stove_with
from tests.forecast.logs import BEGAN

STOVE = stove_with(oven_centre=SpotKind.OVEN)


def minutes(moment):
    return None if moment is None else (moment - BEGAN) / timedelta(minutes=1)


def of(paths, band=BAND):
    ahead = futures(oven_centre=paths)
    return outlook_of(ahead, STOVE, band), ahead


def test_a_line_that_rises_through_the_band_leaves_it_upward():
    found, ahead = of(lines(380.0, 1.0))
    arrival = arrival_of(found)
    assert arrival is not None
    assert minutes(arrival.likely) == pytest.approx(20.0)
    assert minutes(leaving_of(found)) == pytest.approx(40.0)
    assert leaves_upward(found, ahead, STOVE)
    assert touching_of(found) is None  # the line enters


def test_a_line_that_falls_through_the_band_leaves_it_downward():
    found, ahead = of(lines(440.0, -1.0))
    assert minutes(leaving_of(found)) == pytest.approx(40.0)
    assert not leaves_upward(found, ahead, STOVE)


def test_of_a_line_that_stays_it_counts_where_it_ends():
    wide = HeatBand(name="wide", low=400.0, high=600.0)
    for slope, upward in ((0.2, False), (0.8, True)):  # 446 and 554 K after three hours; the middle is 500
        found, ahead = of(lines(410.0, slope), wide)
        assert leaving_of(found) is None
        assert leaves_upward(found, ahead, STOVE) is upward


def test_the_band_is_touched_where_half_the_futures_come_in_at_different_times():
    # Each of three futures is in the band for a while, one after another: the middle line never is.
    steps = np.arange(37)
    paths = np.full((3, 37), 380.0)
    for place in range(3):
        paths[place, (steps >= 4 + 8 * place) & (steps < 8 + 8 * place)] = 410.0
    found, _ = of(paths)
    assert arrival_of(found) is None
    assert leaving_of(found) is None
    touched = minutes(touching_of(found))
    assert touched is not None
    assert 55.0 <= touched <= 60.0  # the second of the three comes in between these two steps


def test_what_fewer_than_half_come_to_is_not_touched():
    paths = np.full((5, 37), 380.0)
    paths[:2, 10:14] = 410.0
    found, _ = of(paths)
    assert touching_of(found) is None
