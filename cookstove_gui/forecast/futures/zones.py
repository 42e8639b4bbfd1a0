"""Every spot's heat now, from its own last reading, its neighbours' and the stove's state."""

import numpy as np

from cookstove_gui.forecast.answers import LEVELS, FloatArray, Zone
from cookstove_gui.forecast.model import heat, normal
from cookstove_gui.forecast.model.ensemble import FIELD, MEMBERS, SMALLEST_EXCESS
from cookstove_gui.forecast.model.observation import truth
from cookstove_gui.forecast.model.quantiles import quantiles
from cookstove_gui.forecast.model.spot_width import BASE_WIDTH, OWN_WIDTH
from cookstove_gui.forecast.model.walls import heat_beside
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.stove.stove import SpotKind

ROOM_WIDTH = 1.8  # by which the room's window is too narrow, fitted on invented stoves


def zones(belief: Belief) -> tuple[Zone, ...]:
    """One zone for every spot of the stove, in its order, read lately or not."""
    return tuple(_zone(belief, index) for index in range(len(belief.stove.spots)))


def spot_members(belief: Belief, index: int) -> FloatArray:
    """Equally likely heats (members,) [K] of one spot now."""
    spots = len(belief.stove.spots)
    spot = belief.stove.spots[index]
    under = truth(belief.ensemble.x, spot)
    if spot.kind is SpotKind.WALL:
        last = belief.last_readings.get(spot.name)
        age = 0.0 if last is None else (belief.now - last.at).total_seconds() / 60.0
        return heat_beside(spot, last, age, under, _DEVIATES)
    if spot.name == "oven_centre":
        return under
    if spot.kind is SpotKind.ROOM:
        return np.asarray(under.mean() + ROOM_WIDTH * (under - under.mean()), dtype=np.float64)
    width = belief.spot_width
    under = under.mean() + width * BASE_WIDTH * (under - under.mean())
    excess = np.maximum(under - belief.ensemble.x[heat.ROOM], SMALLEST_EXCESS)
    row = np.zeros(2 * spots)
    row[index] = row[spots + index] = 1.0
    deviation = np.sqrt(max(float(row @ belief.ensemble.remainder @ row), 0.0))
    mean = belief.ensemble.x[FIELD + index] + belief.ensemble.x[FIELD + spots + index]
    return np.asarray(under + excess * (mean + width * OWN_WIDTH * deviation * _DEVIATES), dtype=np.float64)


def _zone(belief: Belief, index: int) -> Zone:
    spot = belief.stove.spots[index]
    p10, p50, p90 = quantiles(spot_members(belief, index), LEVELS)
    last = belief.last_readings.get(spot.name)
    return Zone(
        spot=spot.name,
        p10=p10,
        p50=p50,
        p90=p90,
        last_reading=None if last is None else last.value,
        last_reading_age_min=None if last is None else (belief.now - last.at).total_seconds() / 60.0,
    )


# Evenly spread standard normal deviates, in an order unrelated to the members'.
_DEVIATES = normal.quantile((np.random.Generator(np.random.Philox(7)).permutation(MEMBERS) + 0.5) / MEMBERS)
