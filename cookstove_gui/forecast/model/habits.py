"""How this cook feeds the fire: how often, how much, and how likely another load comes at all."""

import math
from dataclasses import asdict, dataclass, replace
from typing import Any

import numpy as np

from cookstove_gui.forecast.answers import FloatArray

MOST_AIR_MINUTES = 1500.0  # of air settings kept in mind, so that a cook who changes is noticed
HORIZON_LOADS = 10  # more than three hours hold
LEAST_TENDING_SPREAD = 0.45  # of the logarithm; each firing has its own purpose, whatever the last ones were for


@dataclass(frozen=True, slots=True, kw_only=True)
class Habits:
    """Loads as learned: logarithms of the interval [min] and mass [kg], and what stands behind them."""

    interval_log: float = math.log(32.0)
    interval_deviation: float = 0.55
    intervals_seen: float = 2.0  # weight of what was believed before the first load
    mass_log: float = math.log(1.3)
    mass_deviation: float = 0.5
    masses_seen: float = 2.0
    tending_log: float = math.log(185.0)  # min from lighting to the end of feeding
    tending_deviation: float = 0.5
    goes_on: float = 0.8  # chance that another load follows one
    firings_seen: float = 2.0
    air_turns: float = 4.0  # settings of the air, and the minutes of tended fire in which they were logged
    air_minutes: float = 96.0

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

    def after_air(self, minutes: float) -> "Habits":
        """With one more setting of the air seen, so many minutes after the one before."""
        kept = min(1.0, MOST_AIR_MINUTES / (self.air_minutes + minutes))
        return replace(self, air_turns=(self.air_turns + 1.0) * kept, air_minutes=(self.air_minutes + minutes) * kept)

    def after_firing(self, loads: int, tended: float) -> "Habits":
        """With one more whole firing seen: its number of loads, and minutes from lighting until it was let die."""
        weight = 3.0 * self.firings_seen
        followed = max(loads - 1, 0)
        miss = math.log(min(max(tended, 20.0), 900.0)) - self.tending_log
        past = self.firings_seen
        variance = (past * self.tending_deviation**2 + miss**2 * past / (past + 1.0)) / (past + 1.0)
        return replace(
            self,
            tending_log=self.tending_log + miss / (past + 1.0),
            tending_deviation=min(max(math.sqrt(variance), LEAST_TENDING_SPREAD), 0.8),
            goes_on=min(max((self.goes_on * weight + followed) / (weight + max(loads, 1)), 0.3), 0.97),
            firings_seen=min(self.firings_seen + 1.0, 30.0),
        )

    def next_loads(
        self, since_last: float | FloatArray, members: int, random: np.random.Generator
    ) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Gaps [min] before each of the next loads, their masses [kg], and the luck that decides on going on.

        Parameters
        ----------
        since_last : float or array (members,)
            Minutes since the last load: of the first gap, only what is longer than that can still be.

        Returns
        -------
        gaps, masses, luck : arrays (members, loads)
            The first gap counts from now; luck is even between 0 and 1.
        """
        shape = (members, HORIZON_LOADS)
        doubt = self.interval_deviation / math.sqrt(self.intervals_seen)
        centre = self.interval_log + doubt * random.standard_normal((members, 1))
        gaps = np.exp(centre + self.interval_deviation * random.standard_normal(shape))
        masses = np.exp(self.mass_log + self.mass_deviation * random.standard_normal(shape))
        spread = self.interval_deviation
        gone = np.log(np.maximum(since_last, 0.5))
        tail = 0.5 * erfc((gone - centre[:, 0]) / (spread * math.sqrt(2.0)))
        first = np.exp(centre[:, 0] + spread * normal_quantile(1.0 - tail * random.random(members)))
        gaps[:, 0] = np.maximum(first - since_last, 0.5)
        return gaps, masses, random.random(shape)


def erfc(x: FloatArray) -> FloatArray:
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
