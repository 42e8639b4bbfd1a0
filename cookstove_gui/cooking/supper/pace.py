"""How long a bake takes in an oven that is not at the middle of the heat it wants.

While its surface is wet it stays near the boil, so heat goes into food in proportion to the oven's excess over that.
Published times of one food at several heats follow this within their ranges (`tests/cooking/supper/test_pace.py`).
"""

import numpy as np

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.heats import planned_for, task_for
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


def takes_at(oven: float, heat: Heat) -> float:
    """Minutes that a whole bake takes in an oven that stays at one heat [K]."""
    pace = max(float(paces(np.array(oven), heat)), 1e-3)
    return heat.minutes * min(max(1.0 / pace, SHORTEST), LONGEST)


def baked(minutes: FloatArray, oven: FloatArray, heat: Heat) -> FloatArray:
    """Minutes of the usual bake by each of some instants [min], from the first on, with the oven (..., times) [K]."""
    pace = paces(oven, heat)
    gained = np.cumsum(0.5 * np.diff(minutes) * (pace[..., 1:] + pace[..., :-1]), axis=-1)
    return np.concatenate((np.zeros((*pace.shape[:-1], 1)), gained), axis=-1)


def lengths(minutes: FloatArray, oven: FloatArray, heat: Heat, starts: FloatArray, left: float) -> FloatArray:
    """Minutes that `left` minutes of the usual bake take from each start [min]; after the last instant as at it.

    `oven` [K] is one for all starts (times,), or each start's own (starts, times).
    """
    done = np.broadcast_to(baked(minutes, oven, heat), (len(starts), len(minutes)))
    last = np.maximum(paces(oven[..., -1], heat), 1e-3)
    goal = _seen_at(minutes, done, starts) + np.maximum(starts - minutes[-1], 0.0) * last + left
    each, final = np.arange(len(starts)), done[:, -1]
    row = np.clip((done <= goal[:, None]).sum(axis=1) - 1, 0, len(minutes) - 2)
    share = (goal - done[each, row]) / np.maximum(done[each, row + 1] - done[each, row], 1e-9)
    inside = minutes[row] + share * (minutes[row + 1] - minutes[row])
    ends = np.where(goal <= final, inside, minutes[-1] + (goal - final) / last)
    return np.asarray(np.clip(ends - starts, SHORTEST * left, LONGEST * left), dtype=np.float64)


def usable_from(minutes: FloatArray, oven: FloatArray, heat: Heat, starts: FloatArray) -> FloatArray:
    """From when [min] food may go in for each start: once the oven is at the heat that a plan counts on.

    To begin before that gains nothing. Infinite where it will never be; `oven` as for `lengths`.
    """
    ovens, low = np.broadcast_to(oven, (len(starts), len(minutes))), planned_for(task_for(heat)).low
    later = (ovens >= low) & (minutes >= starts[:, None])
    next_there = np.where(later.any(axis=1), minutes[later.argmax(axis=1)], np.inf)
    return np.asarray(np.where(_seen_at(minutes, ovens, starts) >= low, starts, next_there), dtype=np.float64)


def _seen_at(minutes: FloatArray, paths: FloatArray, starts: FloatArray) -> FloatArray:
    """Each path (starts, times) at its start [min], by a straight line between the instants, the ends beyond them."""
    each, row = np.arange(len(starts)), np.clip(np.searchsorted(minutes, starts, "right") - 1, 0, len(minutes) - 2)
    share = np.clip((starts - minutes[row]) / (minutes[row + 1] - minutes[row]), 0.0, 1.0)
    return np.asarray((1.0 - share) * paths[each, row] + share * paths[each, row + 1], dtype=np.float64)
