"""When a bake will be done in this oven, as measured so far and as projected, with everything that is in doubt.

The members of an ensemble, each with an oven, a shape, a crust and a mind of its own about what done is, are baked
through at once.
"""

from dataclasses import dataclass, field
from datetime import datetime
from functools import lru_cache

import numpy as np

from cookstove_gui.cooking.baking.bodies import step_of, warmed
from cookstove_gui.cooking.baking.catalogue import Bake, done_temperature, longer_setting, setting_tenfold
from cookstove_gui.cooking.baking.doubts import Doubt, Ensemble, Learned, single, usual_ensemble
from cookstove_gui.cooking.baking.hangs_on import Hang, hangs_on
from cookstove_gui.cooking.baking.oven_course import oven_course
from cookstove_gui.cooking.baking.probing import Probe, ProbeGain, narrowed, probe_gains
from cookstove_gui.cooking.baking.resting import rise_while_resting
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.safety.food_safety import SafeMinimum, danger_minutes, holding_limits, safe_minimum
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import LEVELS, FloatArray, Projection, Quantiles, Trace
from cookstove_gui.forecast.futures.goal_times import first_reach, late_quantiles
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.physics.warming import Warming
from cookstove_gui.physics.water import boiling_temperature
from cookstove_gui.resource_files import table
from cookstove_gui.stove.stove import OVEN_CENTRE

DANGER_FOLLOWED = 360.0  # min past the projection that a core is followed, in the oven's last heat
_HARDLY_COLDER = 5.0  # K
LONGEST_MINUTES = 12 * 60.0  # one in longer than this has a wrong clock
# times its setting, in minutes at the core of done, that make up for a core which stays a little cooler; fitted to
# published times of potatoes at 250 to 300 °F, and more than any oven of the usual heat gives before the core is there
SLOWLY_DONE = 2.5


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
    hangs_on: tuple[Hang, ...] = ()  # what the window hangs on, the widest first
    probe_gains: tuple[ProbeGain, ...] = ()  # what a reading of its core would do
    probe_is_off: int = 0  # 1 where the latest probe showed more than a core can have by then, -1 where less
    rest_rise: float | None = None  # K that a roast's core still rises out of the oven; None for all else
    learned_from: int = 0  # earlier ones of it, in this oven, that narrowed the window


def doneness(
    bake: Bake,
    projection: Projection,
    *,
    oven: str = OVEN_CENTRE,
    went_in: datetime | None = None,
    past: Trace | None = None,
    pressure: float = STANDARD_PRESSURE,
    probes: tuple[Probe, ...] = (),
    learned: Learned | None = None,
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
    probes : tuple of Probe
        What its core was seen to be, in order of time.
    learned : Learned, optional
        What earlier ones of it say.

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
    course = oven_course(projection, oven, past, ago, step_of(bake))
    seen = tuple((ago - (projection.now - one.at).total_seconds() / 60.0, one.core) for one in probes)
    ensemble, is_off = narrowed(bake, usual_ensemble(learned), course, seen, pressure)
    air = course.of(ensemble.of(Doubt.OVEN))
    safe = safe_minimum(bake.safety) if bake.safety else None
    followed = _followed(bake, ensemble, air, course.step, pressure)
    warming = followed.first(len(air))
    seconds, cores = course.seconds, warming.core.T
    boiling = float(boiling_temperature(pressure))
    goal = done_temperature(bake, boiling)
    never = float(seconds[-1]) / 60.0
    taken = minutes_to_done(bake, ensemble, warming, boiling)
    done = late_quantiles(taken - ago, never - ago)
    safe_min = None
    if safe is not None:
        reached = first_reach(seconds, cores, safe.temperature) / 60.0
        safe_min = late_quantiles(reached - ago, never - ago)
    task = task_of(bake.task)
    recipe = None if task is None else steady_minutes(bake, task.middle, pressure)
    return Doneness(
        bake=bake,
        done_at=goal,
        core_now=Quantiles.of([float(np.interp(ago * 60.0, seconds, core)) for core in cores]) if ago > 0 else None,
        done_min=done,
        chance_done=float(np.isfinite(taken).mean()),
        safe=safe,
        safe_min=safe_min,
        recipe_min=recipe,
        late_min=None if recipe is None or done.p50 is None else done.p50 + ago - recipe,
        core=_course(seconds, cores, ago),
        danger_min=None if safe is None else _in_danger(followed),
        hangs_on=hangs_on(ensemble, taken),
        probe_gains=probe_gains(seconds / 60.0, cores, taken, ago),
        probe_is_off=is_off,
        rest_rise=None if safe is None else rise_while_resting(bake, ensemble, air, taken, course.step, pressure),
        learned_from=0 if learned is None else learned.bakes,
    )


def minutes_to_done(bake: Bake, ensemble: Ensemble, warming: Warming, boiling: float) -> FloatArray:
    """When each member is done [min from going in], (members,); infinite where it is not.

    The nearer done is to the boil, the less can be in doubt about it: a cook's doubt is of how far below it. What sets
    and softens with time is also done where an oven too slow for that core has kept it near it for long enough.
    """
    goal, doubt = done_temperature(bake, boiling), float(table("bakes.toml")["doubt"]["done"])
    below = max(boiling - goal, 0.5)
    goals = boiling - below * ensemble.factor(Doubt.DONE, min(doubt / below, 0.3))
    safe = safe_minimum(bake.safety).temperature if bake.safety else 0.0
    goals = np.maximum(goals, safe)
    # one target for all: each member's core measured from its own goal
    short = warming.core.T - goals[:, None]
    setting = bake.setting_min + longer_setting(bake, boiling)
    done = first_reach(warming.time, short, 0.0) / 60.0 + setting - bake.setting_min
    if setting > 0.0:
        pace = np.where(safe <= warming.core.T, 10.0 ** (short / setting_tenfold()), 0.0)
        spent = np.zeros_like(pace)
        spent[:, 1:] = np.cumsum(0.5 * (pace[:, 1:] + pace[:, :-1]) * np.diff(warming.time) / 60.0, axis=1)
        done = np.minimum(done, first_reach(warming.time, spent, SLOWLY_DONE * setting) / 60.0)
    return np.asarray(done)


@lru_cache(maxsize=256)
def steady_minutes(bake: Bake, oven: float, pressure: float = STANDARD_PRESSURE) -> float | None:
    """Minutes until it is likely done in a steady oven [K]; None if not within `LONGEST_MINUTES`."""
    boiling = float(boiling_temperature(pressure))
    if oven <= done_temperature(bake, boiling):
        return None
    step = step_of(bake)
    hours = LONGEST_MINUTES / 6.0
    while hours <= LONGEST_MINUTES:
        air = np.full(int(hours * 60.0 / step) + 1, oven)
        taken = float(minutes_to_done(bake, single(), warmed(bake, single(), air, step, pressure), boiling)[0])
        if np.isfinite(taken):
            return taken
        hours *= 2.0
    return None


# --- within ----------------------------------------------------------------------------------------------------------


def _course(seconds: FloatArray, cores: FloatArray, ago: float) -> CoreCourse:
    p10, p50, p90 = np.quantile(cores, LEVELS, axis=0)
    return CoreCourse(minutes=seconds / 60.0 - ago, p10=p10, p50=p50, p90=p90)


def _followed(bake: Bake, ensemble: Ensemble, oven: FloatArray, step: float, pressure: float) -> Warming:
    """Its warming; what may not be lukewarm for long is followed past the projection's end, the oven as it is then.

    Until every core is hot enough, or for `DANGER_FOLLOWED`.
    """
    if not bake.safety:
        return warmed(bake, ensemble, oven, step, pressure)
    longer = np.concatenate([oven, np.repeat(oven[-1:], int(DANGER_FOLLOWED * 60.0 / step), axis=0)])
    return warmed(bake, ensemble, longer, step, pressure, (holding_limits().danger_high, len(oven) - 1))


def _in_danger(followed: Warming) -> Quantiles:
    """How long the core is between cold and hot enough; what may have gone in a little colder gains no time by it."""
    limits = holding_limits()
    cores = followed.core.T
    cores = np.where(cores > limits.danger_low - _HARDLY_COLDER, np.maximum(cores, limits.danger_low + 1e-6), cores)
    through = cores.max(axis=1) >= limits.danger_high
    taken = danger_minutes(followed.time / 60.0, cores)
    return late_quantiles(np.where(through, taken, np.inf), LONGEST_MINUTES)
