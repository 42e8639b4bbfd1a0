"""Made-up futures and a belief to go with them, for rules that look at nothing else."""

from dataclasses import replace
from functools import cache

import numpy as np

from cookstove_gui.forecast.answers import Projection
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Spot, SpotKind, Stove
from tests.following import track
from tests.forecast.logs import BEGAN, STOVE, at, usual_morning

MINUTES = np.arange(0.0, 180.5, 5.0)
BAND = HeatBand(name="some", low=400.0, high=420.0)


@cache
def usual_belief() -> Belief:
    """The belief after seventy minutes of a usual morning: lit, fed, read."""
    return track(STOVE, usual_morning(), at(71))


def stove_with(**kinds: SpotKind) -> Stove:
    """A stove with these spots."""
    return replace(STOVE, spots=tuple(Spot(name=name, label=name, kind=kind) for name, kind in kinds.items()))


def futures(**spots: np.ndarray) -> Projection:
    """Futures (members, times) [K] of each spot; one future or one time stands for all."""
    members = max(len(np.atleast_2d(paths)) for paths in spots.values())
    kelvin = [np.broadcast_to(paths, (members, len(MINUTES))) for paths in spots.values()]
    return Projection(now=BEGAN, minutes=MINUTES, spots=tuple(spots), kelvin=np.stack(kelvin, axis=-1))


def lines(start: float | np.ndarray, slope: float | np.ndarray) -> np.ndarray:
    """Straight futures (members, times) of so many kelvin a minute."""
    return np.atleast_1d(start)[:, None] + np.atleast_1d(slope)[:, None] * MINUTES
