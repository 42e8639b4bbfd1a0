"""How long a bake takes in an oven that is not at the middle of the heat it wants.

While its surface is wet it stays near the boil, so heat goes into food in proportion to the oven's excess over that.
Published times of one food at several heats follow this within their ranges (`tests/cooking/supper/test_pace.py`).
"""

import numpy as np

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.heats import task_for
from cookstove_gui.forecast.answers import FloatArray

BOIL = 373.15  # K
SHORTEST, LONGEST = 0.6, 2.0  # of a bake's usual minutes; beyond, it is another bake; judgement
_LEAST_EXCESS = 40.0  # K of a heat's middle over the boil; drying and keeping warm are no bakes


def is_paced(heat: Heat) -> bool:
    """Whether its length hangs on the oven's heat."""
    return heat.place is Place.OVEN and not heat.falling and task_for(heat).middle - BOIL >= _LEAST_EXCESS


def paces(oven: FloatArray, heat: Heat) -> FloatArray:
    """Minutes of the usual bake that a minute at each heat of the oven [K] is worth."""
    return np.asarray(np.maximum(oven - BOIL, 0.0) / (task_for(heat).middle - BOIL), dtype=np.float64)


def baked(minutes: FloatArray, oven: FloatArray, heat: Heat) -> FloatArray:
    """Minutes of the usual bake by each of some instants [min], from the first on, with the oven [K] then."""
    pace = paces(oven, heat)
    return np.concatenate(([0.0], np.cumsum(0.5 * np.diff(minutes) * (pace[1:] + pace[:-1]))))


def lengths(minutes: FloatArray, oven: FloatArray, heat: Heat, starts: FloatArray, left: float) -> FloatArray:
    """Minutes that `left` minutes of the usual bake take from each start [min]; after the last instant as at it."""
    done, last = baked(minutes, oven, heat), max(float(paces(oven[-1:], heat)[0]), 1e-3)
    at_start = np.interp(starts, minutes, done) + np.maximum(starts - minutes[-1], 0.0) * last
    goal = at_start + left
    rising = np.maximum.accumulate(done + 1e-9 * np.arange(len(done)))
    inside = np.interp(goal, rising, minutes)
    ends = np.where(goal <= done[-1], inside, minutes[-1] + (goal - done[-1]) / last)
    return np.asarray(np.clip(ends - starts, SHORTEST * left, LONGEST * left), dtype=np.float64)
