"""Back from the table: when a bake must go in, and when the fire must be lit, for it to be eaten at a given time."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from cookstove_gui.cooking.baking.catalogue import Bake
from cookstove_gui.cooking.baking.doneness import steady_minutes
from cookstove_gui.cooking.baking.whole_bake import WholeBake, whole_bake
from cookstove_gui.cooking.fires.rise_and_hold import USUAL_RISE, rise_and_hold, rise_quantiles
from cookstove_gui.cooking.fit.tasks import Task, task_of
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import Projection, Quantiles
from cookstove_gui.forecast.futures.goal_times import first_reach, late_quantiles
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.stove.entries import HeatBand, Session
from cookstove_gui.stove.stove import Stove

# Minutes from the oven to the table, by task; common practice, no source.
_REST = {"bread": 60.0, "roast_meat": 15.0}
_REST_OTHERWISE = 10.0
MORE_FOR_FEW = 1.25  # times a rise seen only once or twice, to be sure; judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class TableTime:
    """The moments of the day for one bake."""

    bake: Bake
    band: HeatBand  # that the oven is wanted in
    table_at: datetime
    rest_min: float
    bake_min: float  # in a steady oven in the middle of the band
    goes_in_at: datetime
    out_at: datetime
    light_likely_at: datetime  # lit then, the oven is as likely there in time as not
    light_surely_at: datetime  # lit then, it is there nine times in ten
    firings: int  # that the rise was learned from
    burns_now: bool  # whether there is a fire, however late the bake
    arrival_min: Quantiles | None  # from now to the band, where this fire may serve the bake
    bake_then: WholeBake | None = None  # what this fire's oven does to the bake from then on, as far as it is seen


def usual_rest(bake: Bake) -> float:
    """Minutes that a bake rests or cools before it is eaten."""
    return _REST.get(bake.task, _REST_OTHERWISE)


def work_back(
    stove: Stove,
    bake: Bake,
    table_at: datetime,
    rest_min: float,
    sessions: Iterable[Session],
    projection: Projection | None = None,
    pressure: float = STANDARD_PRESSURE,
) -> TableTime:
    """The moments of the day for one bake that is to be eaten at `table_at`, after resting `rest_min` minutes.

    `sessions` are the stove's past, which shows how long it takes from lighting; `projection` is given where a fire
    burns now.

    Raises
    ------
    InputProblem
        If it would not be done within twelve hours.
    """
    task = _task(bake)
    band = HeatBand(name=task.name, low=task.low, high=task.high)
    minutes = steady_minutes(bake, task.middle, pressure)
    if minutes is None:
        raise InputProblem(
            f"The {bake.name} would not be done within twelve hours at its usual heat; choose a smaller one."
        )
    out = table_at - timedelta(minutes=rest_min)
    goes_in = out - timedelta(minutes=minutes)
    found = rise_and_hold(stove, sessions, band)
    rise = rise_quantiles(found) if found.rises else USUAL_RISE
    middle = rise.p50 or 0.0
    sure = MORE_FOR_FEW * middle if rise.p90 is None else rise.p90
    return TableTime(
        bake=bake,
        band=band,
        table_at=table_at,
        rest_min=rest_min,
        bake_min=minutes,
        goes_in_at=goes_in,
        out_at=out,
        light_likely_at=goes_in - timedelta(minutes=middle),
        light_surely_at=goes_in - timedelta(minutes=sure),
        firings=len(found.rises),
        burns_now=projection is not None,
        arrival_min=None if projection is None else _arrival(projection, stove.oven_spot, band.low, goes_in),
        bake_then=None if projection is None else _bake_then(projection, stove, band, goes_in, minutes),
    )


def _arrival(projection: Projection, oven: str, low: float, goes_in: datetime) -> Quantiles | None:
    """When the band is reached; None where it is wanted later than the projection sees: that takes another fire."""
    if goes_in > projection.now + timedelta(minutes=float(projection.minutes[-1])):
        return None
    reached = first_reach(projection.minutes, projection.of(oven), low)
    return late_quantiles(reached, float(projection.minutes[-1]))


def _bake_then(
    projection: Projection, stove: Stove, band: HeatBand, goes_in: datetime, minutes: float
) -> WholeBake | None:
    """What the oven does to the bake, to the horizon at most; None where it goes in later than the projection sees."""
    start = max((goes_in - projection.now).total_seconds() / 60.0, 0.0)
    seen = float(projection.minutes[-1]) - start
    return None if seen < 0.0 else whole_bake(projection, stove, band, min(minutes, seen), start)


def _task(bake: Bake) -> Task:
    task = task_of(bake.task)
    if task is None:
        raise InputProblem(f"The task “{bake.task}” of the {bake.name} is not in tasks.toml; correct bakes.toml.")
    return task
