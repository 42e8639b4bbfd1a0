"""A bake stays in its heat when no minute of it is too hot or too cool."""

import numpy as np
import pytest

from cookstove_gui.cooking.baking.whole_bake import whole_bake
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import SpotKind
from tests.forecast.futures.made import MINUTES, futures, stove_with

BAND = HeatBand(name="x", low=400.0, high=420.0)
STOVE = stove_with(oven_centre=SpotKind.OVEN)


def course(*lines: tuple[float, float]):
    """One future for each straight line: its heat now [K], and kelvin a minute."""
    return futures(oven_centre=np.array([start + slope * MINUTES for start, slope in lines]))


def test_each_future_counts_once_by_how_it_leaves_first():
    # 410 K; 410 K rising 1 K/min is over 420 after 10 min; 410 K falling 0.5 K/min is under 400 after 20 min.
    found = whole_bake(course((410.0, 0.0), (410.0, 1.0), (410.0, -0.5), (410.0, 0.1)), STOVE, BAND, 50.0)
    assert (found.stays, found.too_hot, found.too_cool) == (0.5, 0.25, 0.25)


@pytest.mark.parametrize(("minutes", "stays"), [(9.0, 1.0), (11.0, 0.0)])
def test_a_bake_shorter_than_the_stay_is_whole(minutes, stays):
    assert whole_bake(course((410.0, 1.0)), STOVE, BAND, minutes).stays == stays


@pytest.mark.parametrize(("start", "stays"), [(9.0, 0.0), (11.0, 1.0)])
def test_a_bake_may_begin_later(start, stays):
    # 390 K rising 1 K a minute comes to 400 after 10 min.
    assert whole_bake(course((390.0, 1.0)), STOVE, BAND, 5.0, start).stays == stays


def test_the_ends_of_the_band_belong_to_it():
    assert whole_bake(course((400.0, 0.0), (420.0, 0.0)), STOVE, BAND, 60.0).stays == 1.0
