"""Lognormal beliefs about quantities above 0, narrowed by what this stove has shown, and even draws from them."""

from collections.abc import Iterable
from functools import cache
from itertools import repeat
from math import exp, hypot, log, sqrt
from statistics import NormalDist

import numpy as np

from cookstove_gui.forecast.answers import FloatArray

_LEAST_OWN = 0.1  # of the logarithm: what a stove has of its own can always be learned a little; judgement


def updated(
    median: float, log_sd: float, shown: Iterable[float], shown_log_sd: float | Iterable[float]
) -> tuple[float, float]:
    """Median and standard deviation of the logarithm after some independent readings of the same quantity.

    Parameters
    ----------
    median, log_sd : float
        The belief before.
    shown : values above 0
        The readings.
    shown_log_sd : float or values
        Standard deviation of the logarithm of each reading, one for all or one each.

    Source
    ------
    Normal mean with known variance, normal prior, in the logarithm: Gelman et al., Bayesian Data Analysis, 3rd ed.,
    section 2.5 (from memory).
    """
    precision = log_sd**-2
    weighed = log(median) * precision
    each = repeat(shown_log_sd) if isinstance(shown_log_sd, float) else shown_log_sd
    for value, sd in zip(shown, each, strict=False):
        precision += sd**-2
        weighed += log(value) * sd**-2
    return exp(weighed / precision), precision**-0.5


def next_one(
    median: float, log_sd: float, shown: Iterable[float], shown_log_sd: float, unclear: Iterable[float] | None = None
) -> tuple[float, float]:
    """Median and standard deviation of the logarithm of the next one, after some were shown.

    However many were shown, the next still differs from their middle as they do from each other.

    Parameters
    ----------
    median, log_sd : float
        The belief about one before any was shown: what a stove has of its own, and what changes from time to time.
    shown : values above 0
    shown_log_sd : float
        Standard deviation of the logarithm from time to time.
    unclear : values, optional
        By how much the logarithm of each of those shown is unclear besides.

    Source
    ------
    Posterior predictive of the same model: Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.5 (from memory).
    """
    own = sqrt(max(log_sd**2 - shown_log_sd**2, _LEAST_OWN**2))
    each = shown_log_sd if unclear is None else [hypot(shown_log_sd, more) for more in unclear]
    middle, left = updated(median, own, shown, each)
    return middle, hypot(left, shown_log_sd)


@cache
def normal_rows(members: int, columns: int) -> FloatArray:
    """Evenly spread standard normal rows, (members, columns), mean 0, variance 1, no column going with another.

    An additive recurrence on the roots of x^(columns + 1) = x + 1 (Roberts, 2018, from memory), turned into normals.
    """
    root = 1.0
    for _ in range(60):
        root = (1.0 + root) ** (1.0 / (columns + 1))
    steps = root ** -np.arange(1.0, columns + 1.0)
    shares = (0.5 + np.outer(np.arange(1, members + 1), steps)) % 1.0
    # ranks in place of the shares: each column is then spread as evenly as can be
    even = (np.argsort(np.argsort(shares, axis=0), axis=0) + 0.5) / members
    normal = NormalDist()
    rows = np.vectorize(normal.inv_cdf)(even)
    rows = rows - rows.mean(axis=0)
    if members <= columns:
        scaled: FloatArray = rows / rows.std(axis=0)
        return scaled
    # few rows go with one another by chance, and a probe would move what it knows nothing of
    apart = np.linalg.cholesky(rows.T @ rows / members)
    found: FloatArray = np.linalg.solve(apart, rows.T).T
    return found
