"""The chance that the oven stays in its heat for the whole of a bake."""

import numpy as np

from cookstove_gui.forecast.answers import Projection
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Stove


def whole_bake_chance(
    projection: Projection, stove: Stove, band: HeatBand, minutes: float, start_min: float = 0.0
) -> float:
    """Share of the futures whose oven is in the band from `start_min` until `minutes` later."""
    times = projection.minutes
    oven = projection.of(stove.oven_spot)
    inside = (times >= start_min) & (times <= start_min + minutes)
    ends = np.array([start_min, start_min + minutes])
    at_ends = np.array([np.interp(ends, times, future) for future in oven])
    course = np.concatenate([oven[:, inside], at_ends], axis=1)
    return float(np.mean(((course >= band.low) & (course <= band.high)).all(axis=1)))
