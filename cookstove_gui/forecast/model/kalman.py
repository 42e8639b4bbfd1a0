"""The Kalman recursion for linear parts of the belief: spot fields and the oven's local trend.

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


@dataclass(frozen=True, slots=True)
class Surprise:
    """What a reading was against what was expected: innovation (scalar or per member) and its variance."""

    innovation: FloatArray
    variance: float

    @property
    def log_likelihood(self) -> float:
        """Log density of the reading (of a single-vector state)."""
        squared = float(np.asarray(self.innovation) ** 2)
        return -0.5 * (math.log(2.0 * math.pi * self.variance) + squared / self.variance)


def relaxation(minutes: float, time_constant: float, intensity: float) -> tuple[float, float]:
    """Share kept and variance gained by a first-order (Ornstein-Uhlenbeck) process over a time.

    Parameters
    ----------
    minutes : float
        Time that passes, at least 0.
    time_constant : float
        Of the decay [min].
    intensity : float
        Of the driving noise [unit / sqrt(min)].

    Notes
    -----
    Exact for any gap: e^(-dt/tau) and s^2 tau/2 (1 - e^(-2 dt/tau)).

    Source
    ------
    Closed form; checked against table 11 of the project's reference values.
    """
    kept = math.exp(-minutes / time_constant)
    return kept, intensity**2 * time_constant / 2.0 * (1.0 - kept * kept)


def predict(belief: Gaussian, transition: FloatArray, noise: FloatArray, drive: FloatArray | float = 0.0) -> Gaussian:
    """The belief one step later: x' = F x + u, P' = F P F^T + Q."""
    return Gaussian(transition @ belief.mean + drive, transition @ belief.covariance @ transition.T + noise)


def update(
    belief: Gaussian, row: FloatArray, reading: FloatArray | float, noise_variance: float
) -> tuple[Gaussian, Surprise]:
    """The belief after one scalar reading of row . x, with the surprise it was.

    Parameters
    ----------
    row : array (states,)
        What the reading sees of the state.
    reading : float or array (members,)
        The reading; one per member when the rest of the model has its own members.
    noise_variance : float
        Of the reading, above 0.
    """
    seen = belief.covariance @ row
    variance = float(row @ seen) + noise_variance
    gain = seen / variance
    innovation = np.asarray(reading - row @ belief.mean, dtype=np.float64)
    mean = belief.mean + (np.multiply.outer(gain, innovation) if belief.mean.ndim == 2 else gain * innovation)
    covariance = belief.covariance - np.outer(gain, seen)
    return Gaussian(mean, 0.5 * (covariance + covariance.T)), Surprise(innovation, variance)
