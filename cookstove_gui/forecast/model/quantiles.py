"""Quantiles of equally likely values by sorting, which is several times faster than numpy's for a few hundred."""

from collections.abc import Sequence
from math import floor

import numpy as np

from cookstove_gui.forecast.answers import FloatArray


def quantiles(values: FloatArray, levels: Sequence[float]) -> tuple[float, ...]:
    """Of finite values (members,), straight between the two nearest in rank, as `numpy.quantile` has it."""
    ordered = np.sort(values)
    found = []
    for level in levels:
        place = level * (len(ordered) - 1)
        low = min(floor(place), len(ordered) - 2)
        found.append(float(ordered[low] + (place - low) * (ordered[low + 1] - ordered[low])))
    return tuple(found)


def middle(values: FloatArray) -> FloatArray:
    """Medians along the last axis (..., members), of finite values."""
    ordered = np.sort(values, axis=-1)
    half = ordered.shape[-1] // 2
    upper = ordered[..., half]
    return np.asarray(upper if ordered.shape[-1] % 2 else 0.5 * (ordered[..., half - 1] + upper), dtype=np.float64)
