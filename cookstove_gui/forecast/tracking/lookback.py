"""The oven's latest past, kept member by member so that later readings still correct it, and settled after a while.

A fixed-lag ensemble smoother: what happened longer ago than `LOOK_BACK_MINUTES` a reading tells next to nothing of, and
chance correlations between members would only make it look too sure.
"""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.forecast.answers import LEVELS
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.ensemble import MEMBERS, Ensemble

LOOK_BACK_MINUTES = 120.0  # min that readings reach back
LEAST_GAP_MINUTES = 2.0  # min between the moments kept
_PLACES = [int(MEMBERS * level) for level in LEVELS]


@dataclass(frozen=True, slots=True)
class TracePoint:
    """The oven's tenth, fiftieth and ninetieth percentile [K] at one instant."""

    at: datetime
    p10: float
    p50: float
    p90: float


def trace_point(at: datetime, air: NDArray[np.floating]) -> TracePoint:
    """Of equally likely heats (members,) [K] of the oven's air."""
    ordered = np.sort(air)
    return TracePoint(at, *(float(ordered[place]) for place in _PLACES))


@dataclass(frozen=True, slots=True)
class LookBack:
    """When the ensemble's past was, and what of it has settled since the checkpoint before."""

    at: tuple[datetime, ...] = ()  # of each row of the ensemble's `past`
    settled: tuple[TracePoint, ...] = ()

    def remember(self, ensemble: Ensemble, at: datetime) -> "LookBack":
        """Keep the oven as it is at this moment, unless one just before is kept; what is too long ago settles."""
        if self.at and at - self.at[-1] < timedelta(minutes=LEAST_GAP_MINUTES):
            return self
        old = bisect_left(self.at, at - timedelta(minutes=LOOK_BACK_MINUTES))
        settled = tuple(trace_point(*row) for row in zip(self.at[:old], ensemble.past[:old], strict=True))
        now = ensemble.x[heat.AIR].astype(np.float32)
        ensemble.past = np.vstack((ensemble.past[old:], now))
        return LookBack((*self.at[old:], at), self.settled + settled)


def smoothed(
    settled: Sequence[TracePoint], at: Sequence[datetime], past: NDArray[np.floating]
) -> tuple[TracePoint, ...]:
    """What is now known of the past: what has settled, then what the members still hold."""
    return (*settled, *(trace_point(*row) for row in zip(at, past, strict=True)))
