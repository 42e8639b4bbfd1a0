"""What was said to be good later stays said until something is read or done.

Asked again each minute, a chance near its limit moves the next good start ahead of the cook for ever. So the times come
from the latest row, and only whether it is good now from this minute. When its time has come, a spot is at its best for
as long as the clock's step names that time, however likely; after that only if it is good.
"""

from collections.abc import Iterable
from dataclasses import replace

from cookstove_gui.cooking.fit.fit import (
    CLOCK_STEP_MIN,
    GOOD_CHANCE,
    KEPT_CHANCE,
    FitState,
    SpotFit,
    TaskFit,
    ranked,
)


def as_told(present: Iterable[TaskFit], told: Iterable[TaskFit], since_min: float) -> tuple[TaskFit, ...]:
    """Each task as it is at present, with the times that were told `since_min` minutes ago, at the latest row."""
    before = {fit.task.key: {spot.spot: spot for spot in fit.spots} for fit in told}
    return tuple(_task(fit, before.get(fit.task.key, {}), since_min) for fit in present)


def _task(fit: TaskFit, before: dict[str, SpotFit], since_min: float) -> TaskFit:
    if fit.state is FitState.REFUSED:
        return fit
    return ranked(replace(fit, spots=tuple(_spot(spot, before.get(spot.spot), since_min) for spot in fit.spots)))


def _spot(spot: SpotFit, told: SpotFit | None, since_min: float) -> SpotFit:
    if spot.chance_now >= GOOD_CHANCE:
        return spot
    left = None if told is None or told.in_min is None else told.in_min - since_min
    if told is None or left is None or (left <= -CLOCK_STEP_MIN and spot.chance_now < KEPT_CHANCE):
        return replace(spot, in_min=None, chance_then=0.0, until_min=None)
    if left > 0.0:
        until = None if told.until_min is None else told.until_min - since_min
        return replace(spot, in_min=left, chance_then=told.chance_then, until_min=until)
    return replace(spot, in_min=0.0, chance_then=told.chance_then, until_min=None)
