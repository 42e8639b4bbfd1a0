"""A lognormal belief about a quantity above 0, narrowed by what this stove has shown."""

from collections.abc import Iterable
from math import exp, log


def updated(median: float, log_sd: float, shown: Iterable[float], shown_log_sd: float) -> tuple[float, float]:
    """Median and standard deviation of the logarithm after some independent readings of the same quantity.

    Parameters
    ----------
    median, log_sd : float
        The belief before.
    shown : values above 0
        The readings.
    shown_log_sd : float
        Standard deviation of the logarithm of each reading.

    Source
    ------
    Normal mean with known variance, normal prior, in the logarithm: Gelman et al., Bayesian Data Analysis, 3rd ed.,
    section 2.5 (from memory).
    """
    precision = log_sd**-2
    weighed = log(median) * precision
    for value in shown:
        precision += shown_log_sd**-2
        weighed += log(value) * shown_log_sd**-2
    return exp(weighed / precision), precision**-0.5
