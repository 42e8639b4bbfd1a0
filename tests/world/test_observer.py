"""The observer who knows all but the plan: its update is Kalman's, and it knows the oven better than the log does."""

import numpy as np
import pytest

from tests.world.firing import Firing, copy
from tests.world.observer import _update, observed
from tests.world.parts import NODE
from tests.world.sessions import make_session
from tests.world.stoves import make_stove


def test_a_reading_moves_the_ensemble_as_the_closed_form_says():
    # Kalman 1960, scalar update: mean + K (z - mean) and (1 - K) P with K = P / (P + R)
    stove = make_stove(4)
    firing = copy(Firing.cold(stove.parts, np.full(1, 290.0)), times=400)
    random = np.random.default_rng(2)
    firing.thermometer = 400.0 + 12.0 * random.standard_normal(400)
    firing.nodes[:, NODE["oven_air"]] = 405.0 + 0.8 * (firing.thermometer - 400.0) + random.standard_normal(400)
    before, spread = firing.thermometer.mean(), firing.thermometer.var(ddof=1)
    air, slope = firing.nodes[:, NODE["oven_air"]].mean(), 0.8
    _update(firing, firing.thermometer.copy(), 430.0, 25.0)
    gain = spread / (spread + 25.0)
    assert firing.thermometer.mean() == pytest.approx(before + gain * (430.0 - before), abs=1e-6)
    assert firing.thermometer.var(ddof=1) == pytest.approx((1.0 - gain) * spread, rel=1e-6)
    moved = firing.nodes[:, NODE["oven_air"]].mean() - air
    assert moved == pytest.approx(slope * gain * (430.0 - before), rel=0.02)


def test_futures_start_near_the_truth_and_part():
    session = make_session(make_stove(12), 3, purpose="bake")
    minutes = [40.5, 60.0, 80.0]
    paths = observed(session, minutes, 24)
    assert paths.shape == (3, 24, 181)
    true = session.true_oven(np.array(minutes))
    assert np.abs(np.median(paths[:, :, 0], axis=1) - true).max() < 20.0
    assert (paths[:, :, 60].std(axis=1) > 1.0).all()


def test_the_same_log_gives_the_same_futures():
    session = make_session(make_stove(12), 3, purpose="top", hours=0.6)
    assert np.array_equal(observed(session, [25.0], 8), observed(session, [25.0], 8))
