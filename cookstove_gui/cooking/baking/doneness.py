"""When a bake will be done in this oven, as measured so far and as projected, and how much the oven's sag costs.

A few futures that stand for all of them, ranked by how hot they keep the oven, are baked through one by one.
"""

from dataclasses import dataclass, field, replace
from datetime import datetime

import numpy as np

from cookstove_gui.cooking.baking.catalogue import Bake, body_of, done_temperature, exposure_of
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.safety.food_safety import SafeMinimum, danger_minutes, holding_limits, safe_minimum
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import LEVELS, NORMAL_P90, FloatArray, Projection, Quantiles, Trace
from cookstove_gui.forecast.futures.goal_times import first_reach, late_quantiles
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.physics.warming import warm_through
from cookstove_gui.physics.water import boiling_temperature
from cookstove_gui.stove.stove import OVEN_CENTRE

FUTURES = 15  # that stand for all
STEP = 20.0  # s, between two moments of a bake
SLOWEST, FASTEST = 0.5, 2.0  # times the usual conduction, of what a probe can show; judgement
_A_MINUTE = 3  # steps
NODES = 30  # from its middle to its surface
COLDEST_OVEN, HOTTEST_OVEN = 240.0, 850.0  # K, an unheated shed in winter, and more than an iron oven bears
DANGER_FOLLOWED = 360.0  # min past the projection that a core is followed, in the oven's last heat
LONGEST_MINUTES = 12 * 60.0  # one in longer than this has a wrong clock


@dataclass(frozen=True, slots=True, kw_only=True)
class CoreCourse:
    """The core from going in to the end of the projection; arrays of one length."""

    minutes: FloatArray  # from the projection's now, below 0 before it
    p10: FloatArray  # K
    p50: FloatArray
    p90: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class Doneness:
    """How far a bake is and will be; minutes from the projection's `now` unless said otherwise, below 0 before it."""

    bake: Bake
    done_at: float  # K, core
    core_now: Quantiles | None  # K; None while it is not in yet
    done_min: Quantiles
    chance_done: float  # within the projection
    safe: SafeMinimum | None
    safe_min: Quantiles | None  # when the core reaches the safe minimum, before any rest
    recipe_min: float | None  # from going in, in a steady oven in the middle of the task's band
    core: CoreCourse | None = field(default=None, compare=False)
    late_min: float | None  # how much longer than that it will take; negative if less
    # How long its core is in the danger zone, a quantile None where it never gets through; None without a safe minimum.
    danger_min: Quantiles | None = None


def doneness(
    bake: Bake,
    projection: Projection,
    *,
    oven: str = OVEN_CENTRE,
    went_in: datetime | None = None,
    past: Trace | None = None,
    pressure: float = STANDARD_PRESSURE,
) -> Doneness:
    """When a bake will be done.

    Parameters
    ----------
    bake : Bake
    projection : Projection
    oven : str
        The spot that stands for the oven.
    went_in : datetime, optional
        When it went in, or will go in; now if left out.
    past : Trace, optional
        The belief about the oven up to now; needed when it went in before now.
    pressure : float
        Where the stove stands [Pa].

    Returns
    -------
    Doneness

    Raises
    ------
    InputProblem
        If it went in so long ago, or will go in so late, that nothing can be said.
    """
    ago = 0.0 if went_in is None else (projection.now - went_in).total_seconds() / 60.0
    if ago > LONGEST_MINUTES:
        raise InputProblem(f"By the log the {bake.name} went in {ago / 60:.0f} hours ago; correct that time.")
    if -ago >= projection.minutes[-1]:
        raise InputProblem(f"The {bake.name} goes in later than the oven can be projected; ask again nearer the time.")
    if ago > 0 and (past is None or not past.at):
        raise InputProblem(f"The oven was not followed while the {bake.name} was in it; read the oven.")
    boiling = float(boiling_temperature(pressure))
    goal = done_temperature(bake, boiling)
    seconds, ovens = _ovens(projection.of(oven), projection, past, ago)
    cores: FloatArray = np.stack([core_path(bake, heat, pressure) for heat in ovens])
    never = float(seconds[-1]) / 60.0
    taken = first_reach(seconds, cores, goal) / 60.0
    done = late_quantiles(taken - ago, never - ago)
    safe = safe_minimum(bake.safety) if bake.safety else None
    safe_min = None
    if safe is not None:
        reached = first_reach(seconds, cores, safe.temperature) / 60.0
        safe_min = late_quantiles(reached - ago, never - ago)
    in_danger = None if safe is None else _in_danger(bake, ovens, cores, pressure)
    task = task_of(bake.task)
    recipe = None if task is None else steady_minutes(bake, task.middle, pressure)
    late = None if recipe is None or done.p50 is None else done.p50 + ago - recipe
    return Doneness(
        bake=bake,
        done_at=goal,
        core_now=_core_now(seconds, cores, ago) if ago > 0 else None,
        done_min=done,
        chance_done=float(np.isfinite(taken).mean()),
        safe=safe,
        safe_min=safe_min,
        recipe_min=recipe,
        late_min=late,
        core=_course(seconds, cores, ago),
        danger_min=in_danger,
    )


def steady_minutes(bake: Bake, oven: float, pressure: float = STANDARD_PRESSURE) -> float | None:
    """Minutes until it is done in a steady oven [K]; None if not within `LONGEST_MINUTES`."""
    goal = done_temperature(bake, float(boiling_temperature(pressure)))
    if oven <= goal:
        return None
    steps = int(LONGEST_MINUTES * 60.0 / STEP)
    core = core_path(bake, np.full(steps + 1, oven), pressure)
    seconds = np.arange(steps + 1, dtype=np.float64) * STEP
    reached = float(first_reach(seconds, core[None, :], goal)[0]) / 60.0
    return reached if np.isfinite(reached) else None


def core_path(bake: Bake, oven: FloatArray, pressure: float = STANDARD_PRESSURE) -> FloatArray:
    """Core temperature [K], (steps,), in an oven [K], (steps,), every `STEP` seconds from when it goes in."""
    if len(oven) < 2:
        return np.full(len(oven), bake.start)
    warming = warm_through(body_of(bake), exposure_of(bake, pressure), bake.start, oven, STEP, nodes=NODES)
    return warming.core


def matched_to_core(bake: Bake, oven: FloatArray, measured_core: float, pressure: float = STANDARD_PRESSURE) -> Bake:
    """The bake with its conduction adjusted so that its core is now what a probe shows.

    Parameters
    ----------
    bake : Bake
    oven : array, shape (steps,)
        The oven [K] every `STEP` seconds since it went in.
    measured_core : float
        What the probe shows now [K].
    pressure : float
        [Pa]

    Returns
    -------
    Bake
        With `vapour` between `SLOWEST` and `FASTEST` times the usual: a probe that asks for more is not in the core.
    """
    low, high = SLOWEST * bake.vapour, FASTEST * bake.vapour
    for _ in range(12):
        middle = float(np.sqrt(low * high))
        warmer = core_path(replace(bake, vapour=middle), oven, pressure)[-1] > measured_core
        low, high = (low, middle) if warmer else (middle, high)
    return replace(bake, vapour=float(np.sqrt(low * high)))


def oven_since(projection: Projection, past: Trace, went_in: datetime, until: datetime | None = None) -> FloatArray:
    """The oven as believed [K], every `STEP` seconds from when the bake went in up to some moment, or to now."""
    ago = (projection.now - went_in).total_seconds()
    seconds = np.arange(0.0, ((until or projection.now) - went_in).total_seconds() + 1e-6, STEP)
    return np.asarray(np.interp(seconds - ago, _trace_seconds(projection, past), past.p50))


# --- within ----------------------------------------------------------------------------------------------------------


def _ovens(oven: FloatArray, projection: Projection, past: Trace | None, ago: float) -> tuple[FloatArray, FloatArray]:
    """Seconds since it went in, (steps,), and the oven then in the futures that stand for all, (FUTURES, steps)."""
    soon = projection.minutes <= 60.0
    ranked = np.argsort(oven[:, soon].mean(axis=1), kind="stable")
    chosen = ranked[np.unique(((np.arange(FUTURES) + 0.5) / FUTURES * len(oven)).astype(int))]
    seconds = np.arange(0.0, (ago + projection.minutes[-1]) * 60.0 + 1e-6, STEP)
    after_now = seconds / 60.0 - ago
    heats = np.stack([np.interp(after_now, projection.minutes, oven[future]) for future in chosen])
    if ago > 0 and past is not None:
        before = after_now < 0
        heats[:, before] = _past_heats(projection, past, after_now[before], oven[:, 0], oven[chosen, 0])
    return seconds, heats


def _past_heats(
    projection: Projection, past: Trace, minutes: FloatArray, all_now: FloatArray, now: FloatArray
) -> FloatArray:
    """The past of each future: as many standard deviations from the middle of the belief then as the future is now."""
    spread = float(np.std(all_now))
    place = (now - float(np.mean(all_now))) / spread if spread > 1e-9 else np.zeros(len(now))
    at = _trace_seconds(projection, past)
    middle = np.interp(minutes * 60.0, at, past.p50)
    sd = np.interp(minutes * 60.0, at, (past.p90 - past.p10) / (2 * NORMAL_P90))
    # A belief that is still vague spreads beyond what an oven can be; it is cut off there.
    return np.clip(middle + np.clip(place, -2.5, 2.5)[:, None] * sd, COLDEST_OVEN, HOTTEST_OVEN)


def _trace_seconds(projection: Projection, past: Trace) -> FloatArray:
    return np.array([(at - projection.now).total_seconds() for at in past.at])


def _course(seconds: FloatArray, cores: FloatArray, ago: float) -> CoreCourse:
    """The core a minute apart."""
    p10, p50, p90 = np.quantile(cores[:, ::_A_MINUTE], LEVELS, axis=0)
    return CoreCourse(minutes=seconds[::_A_MINUTE] / 60.0 - ago, p10=p10, p50=p50, p90=p90)


def _core_now(seconds: FloatArray, cores: FloatArray, ago: float) -> Quantiles:
    return Quantiles.of([float(np.interp(ago * 60.0, seconds, core)) for core in cores])


def _in_danger(bake: Bake, ovens: FloatArray, cores: FloatArray, pressure: float) -> Quantiles:
    """How long the core is between cold and hot enough; past the end of the projection the oven stays as it is then."""
    hot_enough = holding_limits().danger_high
    found = []
    for oven, seen in zip(ovens, cores, strict=True):
        through = seen.max() >= hot_enough
        longer = oven if through else np.append(oven, np.full(int(DANGER_FOLLOWED * 60.0 / STEP), oven[-1]))
        core = seen if through else core_path(bake, longer, pressure)
        minutes = np.arange(len(core), dtype=np.float64) * STEP / 60.0
        found.append(danger_minutes(minutes, core) if core.max() >= hot_enough else np.inf)
    return late_quantiles(np.array(found), LONGEST_MINUTES)
