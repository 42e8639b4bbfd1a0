"""When many futures reach a goal, and the quantiles of times of which some are never."""

import numpy as np

from cookstove_gui.forecast.answers import LEVELS, FloatArray, Quantiles


def first_reach(seconds: FloatArray, path: FloatArray, target: float) -> FloatArray:
    """First time [s] at which each path (futures, steps) is at the target, between steps; infinite where never."""
    there = path >= target - 1e-9
    ever = there.any(axis=1)
    index = there.argmax(axis=1)
    before = np.maximum(index - 1, 0)
    rows = np.arange(len(path))
    rise = path[rows, index] - path[rows, before]
    share = np.where(rise > 0, (target - path[rows, before]) / np.where(rise > 0, rise, 1.0), 0.0)
    at = seconds[before] + np.clip(share, 0.0, 1.0) * (seconds[index] - seconds[before])
    return np.where(ever, at, np.inf)


def late_quantiles(minutes: FloatArray, never: float) -> Quantiles:
    """Tenth, fiftieth and ninetieth percentile of times of which some are never (infinite): those give None."""
    ordered = np.sort(minutes)
    found = ordered[np.ceil(np.array(LEVELS) * (len(ordered) - 1)).astype(int)]
    p10, p50, p90 = (float(value) if value <= never else None for value in found)
    return Quantiles(p10=p10, p50=p50, p90=p90)
