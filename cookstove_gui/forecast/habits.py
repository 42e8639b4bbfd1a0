"""How this cook feeds the fire: how often, how much, and how likely another load comes at all."""

import math
from dataclasses import asdict, dataclass, replace
from typing import Any

import numpy as np

from cookstove_gui.forecast.answers import FloatArray

_HORIZON_LOADS = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Habits:
    """Loads as learned: logarithms of the interval [min] and mass [kg], and what stands behind them."""

    interval_log: float = math.log(32.0)
    interval_deviation: float = 0.55
    intervals_seen: float = 2.0  # weight of what was believed before the first load
    mass_log: float = math.log(1.6)
    mass_deviation: float = 0.5
    masses_seen: float = 2.0
    goes_on: float = 0.8  # chance that another load follows one
    firings_seen: float = 2.0

    def to_json(self) -> dict[str, Any]:
        """As a plain dict."""
        return asdict(self)

    @staticmethod
    def from_json(table: dict[str, Any]) -> "Habits":
        """From a plain dict; unknown fields are refused by the constructor."""
        return Habits(**{key: float(value) for key, value in table.items()})

    def after_interval(self, minutes: float) -> "Habits":
        """With one more interval between loads seen."""
        if not 2.0 <= minutes <= 300.0:
            return self
        weight = self.intervals_seen
        miss = math.log(minutes) - self.interval_log
        variance = (weight * self.interval_deviation**2 + miss**2 * weight / (weight + 1.0)) / (weight + 1.0)
        return replace(
            self,
            interval_log=self.interval_log + miss / (weight + 1.0),
            interval_deviation=min(max(math.sqrt(variance), 0.25), 0.9),
            intervals_seen=min(weight + 1.0, 60.0),
        )

    def after_mass(self, kilograms: float) -> "Habits":
        """With one more load's mass seen."""
        if not 0.05 <= kilograms <= 15.0:
            return self
        weight = self.masses_seen
        miss = math.log(kilograms) - self.mass_log
        variance = (weight * self.mass_deviation**2 + miss**2 * weight / (weight + 1.0)) / (weight + 1.0)
        return replace(
            self,
            mass_log=self.mass_log + miss / (weight + 1.0),
            mass_deviation=min(max(math.sqrt(variance), 0.15), 0.8),
            masses_seen=min(weight + 1.0, 60.0),
        )

    def after_firing(self, loads: int) -> "Habits":
        """With one more whole firing seen: `loads` followed by another is a chance of going on."""
        weight = 3.0 * self.firings_seen
        followed = max(loads - 1, 0)
        return replace(
            self,
            goes_on=min(max((self.goes_on * weight + followed) / (weight + max(loads, 1)), 0.3), 0.97),
            firings_seen=min(self.firings_seen + 1.0, 30.0),
        )

    def future_loads(
        self, since_last: float | None, members: int, random: np.random.Generator
    ) -> tuple[FloatArray, FloatArray]:
        """Minutes from now (members, loads) and masses [kg] of loads to come; never coming is infinity.

        Parameters
        ----------
        since_last : float or None
            Minutes since the last load, none if the fire is not being fed.
        """
        shape = (members, _HORIZON_LOADS)
        doubt = self.interval_deviation / math.sqrt(self.intervals_seen)
        centre = self.interval_log + doubt * random.standard_normal((members, 1))
        gaps = np.exp(centre + self.interval_deviation * random.standard_normal(shape))
        masses = np.exp(self.mass_log + self.mass_deviation * random.standard_normal(shape))
        goes_on = random.random(shape) < self.goes_on
        if since_last is None:
            return np.full(shape, np.inf), masses
        # Of the first gap, only what is longer than the time already gone can still be: drawn again by its tail.
        spread = self.interval_deviation
        gone = math.log(max(since_last, 0.5))
        tail = 0.5 * _erfc((gone - centre[:, 0]) / (spread * math.sqrt(2.0)))
        gaps[:, 0] = np.exp(centre[:, 0] + spread * normal_quantile(1.0 - tail * random.random(members)))
        first = np.maximum(gaps[:, 0] - since_last, 0.5)
        # The longer nothing has come, the likelier it is that nothing will.
        alive = tail * self.goes_on
        goes_on[:, 0] = random.random(members) < alive / (alive + 1.0 - self.goes_on)
        times = np.cumsum(np.concatenate([first[:, None], gaps[:, 1:]], axis=1), axis=1)
        stopped = np.cumsum(~goes_on, axis=1) > 0
        return np.where(stopped, np.inf, times), masses


def _erfc(x: FloatArray) -> FloatArray:
    """Complementary error function; Abramowitz and Stegun 7.1.26 (1964), error below 1.5e-7; from memory."""
    t = 1.0 / (1.0 + 0.3275911 * np.abs(x))
    series = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))))
    tail = series * np.exp(-x * x)
    return np.where(x >= 0.0, tail, 2.0 - tail)


def normal_quantile(chance: FloatArray) -> FloatArray:
    """Standard normal quantile; Abramowitz and Stegun 26.2.23 (1964), error below 4.5e-4; from memory."""
    lower = np.minimum(chance, 1.0 - chance)
    t = np.sqrt(-2.0 * np.log(np.maximum(lower, 1e-12)))
    top = 2.515517 + t * (0.802853 + t * 0.010328)
    bottom = 1.0 + t * (1.432788 + t * (0.189269 + t * 0.001308))
    deviate = t - top / bottom
    return np.where(chance < 0.5, -deviate, deviate)
