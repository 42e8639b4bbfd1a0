"""In which of the futures a bake is done in time, the cook having the plan to steer by.

In each future the food goes in once its oven is at a heat that a plan counts on, and is done when that oven's heat has
made it so. Futures are fed by habit. Who follows a plan corrects most of what a wrong heat would make a bake longer or
shorter, by air, wood and door; what is not corrected is `UNSTEERED` of it. Food that goes in late is baked at the top
of its heat, and food that would be done too soon at the bottom of it; an oven that was at its heat before the food goes
in is held there. One that comes later than all this makes up for is late.
"""

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.heats import task_for
from cookstove_gui.cooking.supper.pace import lengths, takes_at, usable_from
from cookstove_gui.forecast.answers import FloatArray

ON_TIME_MIN = 10.0  # either way of its time, within which food is on time
# What fits suppers of invented stoves best; what comes of it on others: tests/benchmarks/RESULTS.md.
UNSTEERED = 0.2
UNFORESEEN_MIN = 6.0  # standard deviation of when a bake is done by what no future knows: hands, doors, the food

# Chance above which none is told: of invented suppers told surer some eight in ten came, however sure the futures were.
SUREST = 0.85
HELD_WITHIN = 10.0  # K below the hottest that an oven was, to which it is held until the food goes in; judgement


def is_in_time(
    minutes: FloatArray, oven: FloatArray, heat: Heat, begin: float, least: float, most: float, number: int = 0
) -> NDArray[np.bool_]:
    """Which futures (futures,) have a meal's bake of this number done between two moments [min], within `ON_TIME_MIN`.

    `oven` (futures, times) is its heat [K] at `minutes`; the food goes in from `begin` on. A future that passes a heat
    that the food may never pass while it bakes is none of them.
    """
    held = np.maximum(oven, np.maximum.accumulate(oven, axis=1) - HELD_WITHIN)
    first = min(max(int(np.searchsorted(minutes, begin, "right")) - 1, 0), len(minutes) - 2)
    minutes, oven, held = (
        minutes[first:],
        oven[:, first:],
        held[:, first:],
    )  # what was before does not count, and costs time
    goes_in = usable_from(minutes, held, heat, np.full(len(oven), begin))
    finds = np.isfinite(goes_in)
    goes_in = np.where(finds, goes_in, minutes[-1])
    takes = lengths(minutes, oven, heat, goes_in, heat.minutes)
    done = goes_in + heat.minutes + UNSTEERED * (takes - heat.minutes) + _unforeseen(len(oven), number)
    task = task_for(heat)
    quicker, slower = (heat.minutes - takes_at(edge, heat) for edge in (task.high, task.low))
    in_time = finds & (done - quicker <= most + ON_TIME_MIN) & (done - slower >= least - ON_TIME_MIN)
    return np.asarray(in_time & _is_allowed(minutes, oven, heat, goes_in, done), dtype=np.bool_)


def _unforeseen(futures: int, number: int) -> FloatArray:
    """What each future (futures,) does not know of [min]; the same in every plan, so that no plan differs by it."""
    return np.asarray(UNFORESEEN_MIN * np.random.default_rng(number).standard_normal(futures), dtype=np.float64)


def _is_allowed(
    minutes: FloatArray, oven: FloatArray, heat: Heat, goes_in: FloatArray, done: FloatArray
) -> NDArray[np.bool_] | np.bool_:
    task = task_for(heat)
    if task.never_below is None and task.never_above is None:
        return np.True_
    bakes = (minutes >= goes_in[:, None]) & (minutes <= done[:, None])
    low = -np.inf if task.never_below is None else task.never_below
    high = np.inf if task.never_above is None else task.never_above
    return ~np.asarray((bakes & ((oven < low) | (oven > high))).any(axis=1))
