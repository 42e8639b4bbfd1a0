"""The oven's lines: the share of futures on either side of each line, and the readings at their time and heat."""

import numpy as np
import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.oven_lines import oven_fan, oven_readings
from cookstove_gui.units import degrees
from tests.desk.conftest import stand


def test_a_tenth_of_the_futures_lies_below_the_low_line_and_above_the_high_one(burning_desk: Desk) -> None:
    standing = stand(burning_desk).standing
    assert standing is not None
    fan = oven_fan(standing.projection, "oven_centre")
    futures = standing.projection.of("oven_centre")
    slack = 1.0 / len(futures)
    assert np.mean(futures < fan.p10, axis=0) == pytest.approx(0.1, abs=slack)
    assert np.mean(futures > fan.p90, axis=0) == pytest.approx(0.1, abs=slack)
    assert np.mean(futures < fan.p50, axis=0) == pytest.approx(0.5, abs=slack)
    assert len(fan.minutes) == futures.shape[1]


def test_a_stove_without_that_spot_shows_the_first_that_is_projected(burning_desk: Desk) -> None:
    standing = stand(burning_desk).standing
    assert standing is not None
    projection = standing.projection
    first = oven_fan(projection, projection.spots[0])
    assert np.array_equal(oven_fan(projection, "no_such_spot").p50, first.p50)


def test_readings_of_the_oven_count_from_the_first_entry(burning_desk: Desk) -> None:
    assert burning_desk.session is not None
    minutes, kelvin = oven_readings(burning_desk.stove, burning_desk.session)
    assert minutes == pytest.approx([13, 26, 39])
    assert degrees(kelvin, "F") == pytest.approx([120, 240, 300])
