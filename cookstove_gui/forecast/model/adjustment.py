"""What one scalar reading does to an ensemble: to what it reads, and to all that goes with it, now and in the past."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.forecast.answers import FloatArray


@dataclass(frozen=True, slots=True)
class Adjustment:
    """One reading's deterministic move of every member."""

    apart: FloatArray  # (members,) what each expected, about their mean
    variance: float  # of what they expected, above 0
    moves: FloatArray  # (members,) by which what each expected is moved

    @classmethod
    def of(cls, seen: FloatArray, reading: float, against: float) -> "Adjustment":
        """Of a reading where the members expected `seen` (members,), with noise of variance `against`.

        Source
        ------
        Anderson 2003 (Monthly Weather Review 131, 634).
        """
        mean, variance = float(seen.mean()), float(seen.var())
        apart = seen - mean
        total = variance + against
        shrunk = math.sqrt(against / total) - 1.0
        return cls(apart, variance, (variance / total) * (reading - mean) + shrunk * apart)

    def gain(self, rows: NDArray[np.floating]) -> FloatArray:
        """Regression (rows,) of every row (rows, members) on what was expected of the reading."""
        return np.asarray((rows @ self.apart) / (len(self.apart) * self.variance), dtype=np.float64)

    def of_past(self, past: NDArray[np.float32]) -> NDArray[np.float32]:
        """What the members were at earlier moments (moments, members), as it is known after the reading.

        Earlier moments are moved as any other row is. In a linear normal model this gives the fixed-interval smoother
        of Rauch, Tung and Striebel 1965.

        Source
        ------
        The ensemble Kalman smoother, Evensen and van Leeuwen 2000 (Monthly Weather Review 128, 1852).
        """
        return past + np.outer(self.gain(past), self.moves).astype(np.float32)
