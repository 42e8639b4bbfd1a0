"""How this cook feeds the fire: how often, how much, and how likely another load comes at all."""

import math
from dataclasses import asdict, dataclass, replace
from typing import Any

import numpy as np

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.forecast.model import normal

MOST_AIR_MINUTES = 1500.0  # min of air settings kept in mind, so that a cook who changes is noticed
HORIZON_LOADS = 10  # loads drawn ahead, more than fit in three hours
INTERVAL_RANGE = (2.0, 300.0)  # min between loads; anything else teaches nothing of the interval
INTERVAL_SPREAD = (0.25, 0.9)  # of the logarithm, least and most
LOAD_RANGE = (0.05, 15.0)  # kg; anything else teaches nothing of the loads
LOAD_SPREAD = (0.15, 0.8)  # of the logarithm, least and most
TENDED_RANGE = (20.0, 900.0)  # min; values outside are clipped
TENDING_SPREAD = (0.45, 0.8)  # of the logarithm; each firing has its own purpose, whatever the last ones were for
GOES_ON_RANGE = (0.3, 0.97)  # chance
FIRING_WEIGHT = 3.0  # loads that one firing seen stands for in the chance of another load
MOST_LOADS_SEEN = 60.0  # loads remembered, so that a cook who changes is noticed
MOST_FIRINGS_SEEN = 30.0  # firings remembered
KINDLING_WAIT = 0.5  # of a usual interval: the first load follows the kindling so soon


@dataclass(frozen=True, slots=True, kw_only=True)
class Habits:
    """How a cook feeds a fire: lognormal interval [min], mass [kg] and length [min], each with the weight behind it."""

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
        if not INTERVAL_RANGE[0] <= minutes <= INTERVAL_RANGE[1]:
            return self
        seen = self.intervals_seen
        log, deviation = _after(self.interval_log, self.interval_deviation, seen, minutes, INTERVAL_SPREAD)
        seen = min(seen + 1.0, MOST_LOADS_SEEN)
        return replace(self, interval_log=log, interval_deviation=deviation, intervals_seen=seen)

    def after_mass(self, kilograms: float) -> "Habits":
        """With one more load's mass seen."""
        if not LOAD_RANGE[0] <= kilograms <= LOAD_RANGE[1]:
            return self
        seen = self.masses_seen
        log, deviation = _after(self.mass_log, self.mass_deviation, seen, kilograms, LOAD_SPREAD)
        return replace(self, mass_log=log, mass_deviation=deviation, masses_seen=min(seen + 1.0, MOST_LOADS_SEEN))

    def after_air(self, minutes: float) -> "Habits":
        """With one more setting of the air seen, `minutes` after the one before."""
        kept = min(1.0, MOST_AIR_MINUTES / (self.air_minutes + minutes))
        return replace(self, air_turns=(self.air_turns + 1.0) * kept, air_minutes=(self.air_minutes + minutes) * kept)

    def after_firing(self, loads: int, tended: float) -> "Habits":
        """With one more firing seen: its number of loads, and for how many minutes it was tended."""
        weight = FIRING_WEIGHT * self.firings_seen
        followed = max(loads - 1, 0)
        least, most = GOES_ON_RANGE
        tended = min(max(tended, TENDED_RANGE[0]), TENDED_RANGE[1])
        log, deviation = _after(self.tending_log, self.tending_deviation, self.firings_seen, tended, TENDING_SPREAD)
        return replace(
            self,
            tending_log=log,
            tending_deviation=deviation,
            goes_on=min(max((self.goes_on * weight + followed) / (weight + max(loads, 1)), least), most),
            firings_seen=min(self.firings_seen + 1.0, MOST_FIRINGS_SEEN),
        )

    def next_loads(
        self, since_last: float | FloatArray, members: int, random: np.random.Generator
    ) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Gaps [min] before each of the next loads, their masses [kg], and draws that decide whether the cook goes on.

        Parameters
        ----------
        since_last : float or array (members,)
            Minutes since the last load: the first gap is drawn given that it is longer.

        Returns
        -------
        gaps, masses, luck : arrays (members, loads)
            The first gap counts from now; the draws are uniform from 0 to 1.
        """
        shape = (members, HORIZON_LOADS)
        doubt = self.interval_deviation / math.sqrt(self.intervals_seen)
        centre = self.interval_log + doubt * random.standard_normal((members, 1))
        gaps = np.exp(centre + self.interval_deviation * random.standard_normal(shape))
        masses = np.exp(self.mass_log + self.mass_deviation * random.standard_normal(shape))
        spread = self.interval_deviation
        gone = np.log(np.maximum(since_last, 0.5))
        tail = normal.share_below((centre[:, 0] - gone) / spread)
        first = np.exp(centre[:, 0] + spread * normal.quantile(1.0 - tail * random.random(members)))
        gaps[:, 0] = np.maximum(first - since_last, 0.5)
        return gaps, masses, random.random(shape)


def _after(
    log: float, deviation: float, seen: float, value: float, spreads: tuple[float, float]
) -> tuple[float, float]:
    """Mean and deviation of a logarithm after one more value, `seen` values standing behind them before."""
    miss = math.log(value) - log
    variance = (seen * deviation**2 + miss**2 * seen / (seen + 1.0)) / (seen + 1.0)
    return log + miss / (seen + 1.0), min(max(math.sqrt(variance), spreads[0]), spreads[1])
