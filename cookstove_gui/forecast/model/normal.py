"""The standard normal distribution, by approximations that need numpy alone: scipy would slow every start.

Both agree with scipy.stats in the tests.
"""

import numpy as np

from cookstove_gui.forecast.answers import FloatArray

QUARTILE = 0.6745  # standard deviations from the middle to the third quartile
NINETIETH = 1.2816  # standard deviations from the middle to the ninetieth percentile: half an 80 % interval
# Abramowitz and Stegun 1964, Handbook of Mathematical Functions: 7.1.26 (error function, error below 1.5e-7), with t's
# own factor first and then the terms of t, t^2 ...; 26.2.23 (quantile, error below 4.5e-4), numerator and denominator.
ERROR_FACTOR = 0.3275911
ERROR_TERMS = (0.254829592, -0.284496736, 1.421413741, -1.453152027, 1.061405429)
QUANTILE_TOP = (2.515517, 0.802853, 0.010328)
QUANTILE_BOTTOM = (1.0, 1.432788, 0.189269, 0.001308)


def share_below(deviate: FloatArray | float) -> FloatArray:
    """Chance (...) that a standard normal value lies below `deviate`."""
    x = -np.asarray(deviate, dtype=np.float64) / np.sqrt(2.0)
    t = 1.0 / (1.0 + ERROR_FACTOR * np.abs(x))
    tail = t * _polynomial(ERROR_TERMS, t) * np.exp(-x * x)
    return np.asarray(0.5 * np.where(x >= 0.0, tail, 2.0 - tail), dtype=np.float64)


def quantile(chance: FloatArray) -> FloatArray:
    """Deviate (...) below which a standard normal value lies with `chance`, held to 1e-12 from 0."""
    lower = np.minimum(chance, 1.0 - chance)
    t = np.sqrt(-2.0 * np.log(np.maximum(lower, 1e-12)))
    deviate = t - _polynomial(QUANTILE_TOP, t) / _polynomial(QUANTILE_BOTTOM, t)
    return np.asarray(np.where(chance < 0.5, -deviate, deviate), dtype=np.float64)


def _polynomial(terms: tuple[float, ...], t: FloatArray) -> FloatArray:
    """terms[0] + terms[1] t + terms[2] t^2 ..., by Horner's rule."""
    total = terms[-2] + t * terms[-1]
    for term in reversed(terms[:-2]):
        total = term + t * total
    return total
