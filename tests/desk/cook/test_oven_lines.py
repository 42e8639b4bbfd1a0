"""The oven's lines: the share of futures on either side of each line."""

import numpy as np
import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.oven_lines import oven_fan
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
