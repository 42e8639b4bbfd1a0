"""What a cook did without a row: wood put in when it was due, the bypass shut once the fire drew."""

import math

import numpy as np

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.habits import KINDLING_WAIT, Habits
from cookstove_gui.forecast.model.normal import share_below

LOADS_SHARE = 0.1  # of loads that nobody writes down; common practice, no source
LEAST_SPREAD = 0.25  # of the logarithm of the wait for a load
JUST_FED = 0.01  # min, the least wait, so that it has a logarithm
BYPASS_MINUTES = 80.0  # min, mean time until an open bypass is shut without a row


def let_pass(
    state: FloatArray, habits: Habits, burning: float, loads: int, minutes: float, random: np.random.Generator
) -> None:
    """Let some members load wood or shut the bypass in place, as cooks do without a row.

    Parameters
    ----------
    state : array (rows, members)
    habits : Habits
        Of the cook, as far as known.
    burning : float
        Minutes since the fire was lit.
    loads : int
        Logged so far; the first follows the kindling sooner.
    minutes : float
        Of this step.
    """
    members = state.shape[1]
    state[heat.BYPASS][random.random(members) < minutes / BYPASS_MINUTES] = 0.0
    usual = habits.interval_log + (0.0 if loads else math.log(KINDLING_WAIT))
    spread = max(habits.interval_deviation, LEAST_SPREAD)
    done = share_below((math.log(max(burning, 1.0)) - habits.tending_log) / habits.tending_deviation)
    waited = np.stack((state[heat.SINCE_FED] + JUST_FED, state[heat.SINCE_FED] + minutes))
    before, after = share_below((usual - np.log(waited)) / spread)
    chance = unlogged_chance(before, after, float(done))
    luck, size = random.random(members), random.standard_normal(members)
    put = luck < chance
    if put.any():
        state[heat.FRESH] += np.where(put, np.exp(habits.mass_log + habits.mass_deviation * size), 0.0)
        state[heat.SINCE_FED][put] = 0.0


def unlogged_chance(before: FloatArray, after: FloatArray, done: float) -> FloatArray:
    """Chance (members,) that a load went in during a step, given that none was logged since the last.

    Parameters
    ----------
    before, after : arrays (members,)
        Chance that a cook who still feeds would have waited until the step's beginning, and until its end.
    done : float
        Chance that the cook feeds no more.

    Notes
    -----
    Bayes: of the firings without a row, a share LOADS_SHARE of those fed by now, all not yet fed, and all done with
    remain. The chance is what those not fed lose of their part in these during the step.
    """
    return np.asarray(1.0 - _not_fed(after, done) / _not_fed(before, done), dtype=np.float64)


def _not_fed(waits: FloatArray, done: float) -> FloatArray:
    """Part of the firings without a row in which nothing was put in."""
    not_yet = np.maximum((1.0 - done) * waits + done, 1e-9)
    return np.asarray(not_yet / (not_yet + LOADS_SHARE * (1.0 - done) * (1.0 - waits)), dtype=np.float64)
