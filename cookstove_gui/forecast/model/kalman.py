"""The Kalman recursion for the linear part of the belief, the field of the spots, and how a passing part fades.

A state may be one vector (states,) or one column a member (states, members); the covariance is shared, because in a
linear model it does not depend on what was read.
"""

import math
from dataclasses import dataclass

import numpy as np

from cookstove_gui.forecast.answers import FloatArray


@dataclass(frozen=True, slots=True)
class Gaussian:
    """A normal belief: mean (states,) or (states, members), covariance (states, states)."""

    mean: FloatArray
    covariance: FloatArray


def relaxation(minutes: float, time_constant: float) -> tuple[float, float]:
    """What a stationary first-order (Ornstein-Uhlenbeck) process keeps over a time, and what is drawn afresh.

    Parameters
    ----------
    minutes : float
        Time that passes, at least 0.
    time_constant : float
        Of the decay [min].

    Returns
    -------
    kept, fresh : float
        x' = kept x + fresh s z, with s the stationary standard deviation and z standard normal.

    Notes
    -----
    Exact for any gap: e^(-dt/tau) and sqrt(1 - e^(-2 dt/tau)).

    Source
    ------
    Closed form; checked against the rows `11.irregular` to `11.gaps` in tests/reference.
    """
    kept = math.exp(-minutes / time_constant)
    return kept, math.sqrt(1.0 - kept * kept)


def update(belief: Gaussian, row: FloatArray, reading: FloatArray | float, noise_variance: float) -> Gaussian:
    """The belief after one scalar reading of row . x.

    Parameters
    ----------
    row : array (states,)
        What the reading sees of the state.
    reading : float or array (members,)
        The reading; one per member when the rest of the model has its own members.
    noise_variance : float
        Of the reading, above 0 unless the state itself leaves doubt.

    Source
    ------
    Kalman 1960; checked against Durbin and Koopman's Nile level, statsmodels and scikit-learn's Gaussian process.
    """
    seen = belief.covariance @ row
    gain = seen / (float(row @ seen) + noise_variance)
    innovation = np.asarray(reading - row @ belief.mean, dtype=np.float64)
    mean = belief.mean + (np.multiply.outer(gain, innovation) if belief.mean.ndim == 2 else gain * innovation)
    covariance = belief.covariance - np.outer(gain, seen)
    return Gaussian(mean, 0.5 * (covariance + covariance.T))
