"""Fit: the chance that a spot is in a task's band now and stays there for as long as the task takes.

A future is good for a start when all of this holds, judged at the projection's own times:

- the spot is in the band at the start;
- its mean over the task's duration is in the band;
- it never strays from the band by more than `EXCURSION`; a bake of `LONG_BAKE_MINUTES` or more tolerates the swings of
  a wood fire, up to `RISING_EXCURSION` above the band and, as in a falling oven, `FALLING_EXCURSION` below it, as long
  as the mean holds, but never past the task's own `never_below` and `never_above`;
- the mean difference across the place is no more than the task tolerates.

The chance is the share of such futures. Near the horizon a start is judged by the part of its duration that is still
projected, and only if that is at least `JUDGED_SHARE` of it.

Chances are given for now and for every round `CLOCK_STEP_MIN` of the clock from then on, between the projection's own
times by a straight line. A start named by the clock so stays where it is as time passes, and does not move ahead of the
cook.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.cooking.fit.evenness import differences, oven_spot_names, top_spot_names
from cookstove_gui.cooking.fit.tasks import Place, Task, tasks_for
from cookstove_gui.cooking.fit.windows import Window, WindowedHeat
from cookstove_gui.forecast.answers import EVEN_CHANCE, FloatArray, Projection
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Stove

EXCURSION = 25.0 / 1.8  # K, 25 °F: what a pan or a bake forgives for a while; common practice, no source
FALLING_EXCURSION = 50.0 / 1.8  # K, 50 °F: a long bake in a falling oven; common practice, no source
RISING_EXCURSION = 40.0 / 1.8  # K, 40 °F: a long bake after a load of wood; common practice, no source
LONG_BAKE_MINUTES = 40.0  # common practice, no source
CLOCK_STEP_MIN = 5.0  # min between the starts that chances are given for
# All judgement, no source:
JUDGED_SHARE = 0.5
GOOD_CHANCE = 0.6  # from which a spot is called good, now or later
KEPT_CHANCE = 0.5  # from which a spot that was said to be good by now is still called good
POSSIBLE_CHANCE = 0.4  # of a good start within three hours; with less it is “not with this fire”
WORTH_WAITING = 0.1  # by which a later start that is not good must be likelier than now to be named
WORTH_CHANCE = 0.2  # at the likeliest later start; with less that time is not named


class FitState(StrEnum):
    """Whether a task can be done, at its best spot."""

    NOW = "good now"
    LATER = "good later"
    PERHAPS = "perhaps"  # at some time, though no time to name
    NOT = "not with this fire"
    REFUSED = "first fires not done"  # no food until a new stove's first fires are done or waived


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotFit:
    """One task on one spot."""

    spot: str
    chance_now: float  # that it is good to start now
    in_min: float | None  # when it is best to start; 0 if now, None if not within three hours
    chance_then: float  # that it is good to start then
    chance_ever: float = 0.0  # that there is a good start within three hours
    uneven_now: float = 0.0  # that only the difference across the place keeps it from being good now
    until_min: float | None = None  # when it stops being good; None if it is not good, or good for as long as is known
    chances: tuple[float, ...] = ()  # that it is good to start at each of the task's `starts`

    @property
    def is_good_now(self) -> bool:
        """Whether it is called good now; at its best now, it may still not be."""
        return self.in_min == 0.0 and self.chance_now >= KEPT_CHANCE


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskFit:
    """One task with its best spot first."""

    task: Task
    state: FitState
    spots: tuple[SpotFit, ...]  # best first, never empty
    starts: tuple[datetime, ...] = ()  # now, and every round five minutes from then on, as far as it can be judged


def fits(
    projection: Projection,
    stove: Stove,
    tasks: Iterable[Task] | None = None,
    first_fires_done: bool = True,
) -> tuple[TaskFit, ...]:
    """Every task against every spot it may be done on, in the order of the tasks.

    `tasks` are all that the stove can do if left out; tasks whose place the projection does not know are left out.
    Without the first fires done, food is refused with no chances given.
    """
    wanted = tasks_for(stove) if tasks is None else tuple(tasks)
    answers: dict[str, TaskFit] = {}
    for place, names in (
        (Place.TOP, top_spot_names(stove, projection)),
        (Place.OVEN, oven_spot_names(stove, projection)),
    ):
        of_place = [task for task in wanted if task.place is place]
        if not names or not of_place:
            continue
        heat = WindowedHeat(projection, names, differences(stove, projection, place, names))
        clock = _Clock(projection)
        for task in of_place:
            answers[task.key] = _task_fit(task, names, heat, clock, first_fires_done)
    return tuple(answers[task.key] for task in wanted if task.key in answers)


def _task_fit(
    task: Task, names: tuple[str, ...], heat: WindowedHeat, clock: "_Clock", first_fires_done: bool
) -> TaskFit:
    if task.is_food and not first_fires_done:
        refused = tuple(SpotFit(spot=name, chance_now=0.0, in_min=None, chance_then=0.0) for name in names)
        return TaskFit(task=task, state=FitState.REFUSED, spots=refused)
    window = window_of(task, heat)
    in_band = window.holds(task.low, task.high)
    good = in_band & window.even(task.evenness)
    starts, chances = clock.chances(share_of(good))
    ever = share_of(np.asarray(good.any(axis=0)))  # (spots,)
    uneven = share_of(in_band[0] & ~good[0])  # (spots,)
    spots = tuple(_spot_fits(names, chances, ever, uneven, starts))
    return ranked(TaskFit(task=task, state=FitState.NOT, spots=spots, starts=clock.moments[: len(starts)]))


def ranked(fit: TaskFit) -> TaskFit:
    """The same with its best spot first, and the state that spot gives it."""
    best, *others = sorted(fit.spots, key=_rank)
    if best.in_min is None:
        state = FitState.PERHAPS if best.chance_ever >= POSSIBLE_CHANCE else FitState.NOT
    else:
        state = FitState.NOW if best.is_good_now else FitState.LATER
    return replace(fit, state=state, spots=(best, *others))


def finds_its_heat(found: Iterable[TaskFit], band: HeatBand) -> bool:
    """Whether what a band is for finds its heat at an even chance; a band that is for nothing is asked nothing."""
    ends = (round(band.low, 3), round(band.high, 3))
    chances = [
        max(spot.chance_ever for spot in fit.spots)
        for fit in found
        if fit.task.place is Place.OVEN and (round(fit.task.low, 3), round(fit.task.high, 3)) == ends
    ]
    return not chances or max(chances) >= EVEN_CHANCE


class _Clock:
    """Starts on the clock's own grid, worked out once for all tasks."""

    def __init__(self, projection: Projection) -> None:
        now, self._minutes = projection.now, projection.minutes
        gone = (now.minute + now.second / 60.0 + now.microsecond / 6e7) % CLOCK_STEP_MIN
        later = np.arange(CLOCK_STEP_MIN - gone, self._minutes[-1] + 1e-9, CLOCK_STEP_MIN)
        self._starts = np.concatenate(([0.0], later))
        self.moments = tuple(now + timedelta(minutes=start) for start in self._starts.tolist())

    def chances(self, projected: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Starts [min from now], and the chances (starts, spots) at them, from those at the first projected times."""
        minutes = self._minutes[: len(projected)]
        if len(minutes) == 1:
            return self._starts[:1], projected
        starts = self._starts[self._starts <= minutes[-1] + 1e-9]
        before = np.minimum(np.searchsorted(minutes, starts, side="right") - 1, len(minutes) - 2)
        share = ((starts - minutes[before]) / (minutes[before + 1] - minutes[before]))[:, None]
        return starts, (1.0 - share) * projected[before] + share * projected[before + 1]


def window_of(task: Task, heat: WindowedHeat) -> Window:
    """The windows of a task's duration, with how far its heat may stray."""
    long_bake = task.place is Place.OVEN and task.minutes >= LONG_BAKE_MINUTES
    below, above = (FALLING_EXCURSION, RISING_EXCURSION) if long_bake else (EXCURSION, EXCURSION)
    if task.never_below is not None:
        below = min(below, task.low - task.never_below)
    if task.never_above is not None:
        above = min(above, task.never_above - task.high)
    return heat.window(
        task.minutes,
        below=below,
        above=above,
        judged_share=JUDGED_SHARE,
    )


def share_of(good: NDArray[np.bool_]) -> FloatArray:
    """Share of the futures, along the last axis; summing bytes is many times faster than summing booleans."""
    return np.asarray(good.view(np.uint8).sum(axis=-1, dtype=np.uint32) / good.shape[-1], dtype=np.float64)


def _spot_fits(
    names: tuple[str, ...], chances: FloatArray, ever: FloatArray, uneven: FloatArray, starts: FloatArray
) -> list[SpotFit]:
    """One task on every spot, from its chances (starts, spots) and the other shares (spots,)."""
    likely = chances >= GOOD_CHANCE  # (starts, spots)
    then = likely.argmax(axis=0)
    if len(starts) > 1:
        # only later starts: what is not good enough now is not offered as “in 0 minutes”
        then = np.where(likely.any(axis=0), then, 1 + chances[1:].argmax(axis=0))
    chance_then = np.take_along_axis(chances, then[None, :], axis=0)[0]
    # A later start that is neither good nor better than now would be promised anew at every moment, and never come.
    gets_better = likely.any(axis=0) | (chance_then >= chances[0] + WORTH_WAITING)
    possible = (ever >= POSSIBLE_CHANCE) & (chance_then >= WORTH_CHANCE)
    worth_naming = likely[0] | ((then > 0) & possible & gets_better)
    ends = _ends(likely, then, starts)
    rows = zip(
        names,
        chances[0].tolist(),
        starts[then].tolist(),
        chance_then.tolist(),
        worth_naming.tolist(),
        ever.tolist(),
        uneven.tolist(),
        ends,
        chances.T.tolist(),
        strict=True,
    )
    return [
        SpotFit(
            spot=name,
            chance_now=now,
            in_min=in_min if worth else None,
            chance_then=chance if worth else 0.0,
            chance_ever=at_some_time,
            uneven_now=but_uneven,
            until_min=end,
            chances=tuple(course),
        )
        for name, now, in_min, chance, worth, at_some_time, but_uneven, end, course in rows
    ]


def _ends(likely: NDArray[np.bool_], then: NDArray[np.intp], starts: FloatArray) -> list[float | None]:
    """For each spot the last start [min] of the good stretch that begins at `then`; none if it has no end, or is none.

    `likely` is (starts, spots).
    """
    over = ~likely & (np.arange(len(starts))[:, None] > then)
    last = over.argmax(axis=0) - 1
    has_end = likely[then, np.arange(len(then))] & over.any(axis=0)
    return [float(starts[row]) if ended else None for row, ended in zip(last.tolist(), has_end.tolist(), strict=True)]


def _rank(spot: SpotFit) -> tuple[float, float, float]:
    """Good now, good later, best at some time though never good, not at all; within these likelier or sooner first."""
    if spot.is_good_now:
        return (0.0, -spot.chance_now, 0.0)
    if spot.in_min is None:
        return (3.0, -spot.chance_ever, -spot.chance_now)
    if spot.chance_then >= GOOD_CHANCE:
        return (1.0, spot.in_min, -spot.chance_then)
    return (2.0, -spot.chance_then, spot.in_min)
