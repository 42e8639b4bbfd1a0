"""The step to take with the fire now, so that the oven has the heat that the meal wants of it next."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.cooking.fires.steps import AIR_DOWN
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.fire import Fire, OnHeat, next_load
from cookstove_gui.cooking.supper.heats import task_for
from cookstove_gui.cooking.supper.pace import BOIL, is_paced
from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind, KeptFire
from cookstove_gui.forecast.futures.cook import Doing
from cookstove_gui.forecast.futures.outlook import oven_of
from cookstove_gui.forecast.futures.projection import GRID_MINUTES, project_each
from cookstove_gui.forecast.futures.turns import LOAD_CATCHES
from cookstove_gui.forecast.model.heat import USUAL_INLET

SOON_MIN = 75.0  # a heat wanted later than this is not steered to yet; judgement
GRANTED = 6.0  # K off the heat wanted that are no miss: some four minutes of a bake of three quarters of an hour
LEAST_MISS = 5.0  # K off beyond that, as is to be expected, from which a step is looked for; judgement
# What goes in takes heat from the oven, and so does the open door. Futures know of neither before a reading shows it;
# so food is given an oven a little hotter, and just after it went in no oven is called too hot. Common practice, no
# source
FOOD_TAKES = 4.0  # K, on average over the bake
SETTLES = timedelta(minutes=12)
ANSWERS = timedelta(minutes=10)  # since the air was set, in which the fire is to answer; common practice, no source
DUE_SOON = timedelta(minutes=10)  # within which the next load is thought about; judgement
LEAST_GAIN = 3.0  # K by which a step must bring the oven nearer; judgement
_ALIKE = 0.08  # of the air's opening; a change that small is none
_LEAST_LEFT_MIN = 5.0  # of a bake, in which a fire can still be heard of


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What the oven is to be expected to be while the next heat is wanted of it."""

    miss: float  # K off the heat beyond what is granted, on average over the futures
    lean: float  # K over the heat wanted


def helping_step(fire: Fire, parts: Sequence[OnHeat], kept: KeptFire | None, now: datetime) -> Action:
    """The step that brings the oven nearest to the next heat wanted of it; LEAVE where none is needed, or none helps.

    `parts` are those on heat as they are placed.
    """
    wanted = next_in_oven(parts, now)
    if wanted is None or kept is None or not fire.lit:
        return LEAVE
    (before,) = _outcomes(fire, wanted, kept, [LEAVE], now)
    is_due = next_load(fire, now) <= now + DUE_SOON
    is_fresh = wanted.began is not None and now - wanted.began < SETTLES
    catches = fire.belief.last_load is not None and now - fire.belief.last_load < timedelta(minutes=LOAD_CATCHES)
    steps = [] if is_fresh and before.lean > 0.0 else _steps(fire, before.lean, is_due)
    answers = fire.air_at is not None and now - fire.air_at < ANSWERS
    steps = [step for step in steps if not (catches and step.kind is ActionKind.WOOD and step.value > 0.0)]
    steps = [step for step in steps if not (answers and step.kind is ActionKind.AIR)]
    if before.miss < LEAST_MISS or not steps:
        return LEAVE
    after = [one.miss for one in _outcomes(fire, wanted, kept, steps, now)]
    best = int(np.argmin(after))
    return steps[best] if after[best] <= before.miss - LEAST_GAIN else LEAVE


def next_in_oven(parts: Sequence[OnHeat], now: datetime) -> OnHeat | None:
    """What is in the oven, or else goes in next and soon, of what is fed for."""
    left = [
        part
        for part in parts
        if part.heat.place is Place.OVEN
        and not part.heat.falling
        and (part.end - now).total_seconds() / 60.0 >= _LEAST_LEFT_MIN
        and (part.begin - now).total_seconds() / 60.0 <= SOON_MIN
    ]
    return min(left, key=lambda part: part.begin, default=None)


def _outcomes(fire: Fire, wanted: OnHeat, kept: KeptFire, actions: Sequence[Action], now: datetime) -> list[Outcome]:
    """What comes of each done now: by each future's mean heat over the time in which it is wanted."""
    begin = max((wanted.begin - now).total_seconds() / 60.0, 0.0)
    end = (wanted.end - now).total_seconds() / 60.0
    stove, goal = fire.belief.stove, heat_wanted(wanted)
    horizon = GRID_MINUTES * math.ceil(end / GRID_MINUTES)
    asked = [(Doing(action=action), oven_of(stove)) for action in actions]
    found = []
    for ahead in project_each(fire.belief, asked, fire.band, kept=kept, horizon=horizon):
        seen = (ahead.minutes >= begin - 1e-9) & (ahead.minutes <= end + 1e-9)
        means = ahead.kelvin[:, seen, 0].mean(axis=1) - (FOOD_TAKES if wanted.began is None else 0.0)
        off = np.maximum(np.abs(means - goal) - GRANTED, 0.0)
        found.append(Outcome(miss=float(off.mean()), lean=float(np.median(means)) - goal))
    return found


def heat_wanted(part: OnHeat) -> float:
    """The heat [K] that is steered to: its middle, or within its band the one that has the bake done in time.

    A bake that has not begun may still begin earlier, so a cooler oven is not steered to for its sake.
    """
    task = task_for(part.heat)
    if part.by is None or not is_paced(part.heat):
        return task.middle
    time = max((part.by - part.begin).total_seconds() / 60.0, _LEAST_LEFT_MIN)
    heat = BOIL + part.left / time * (task.middle - BOIL)
    return min(max(heat, task.middle if part.began is None else task.low), task.high)


def _steps(fire: Fire, lean: float, is_due: bool) -> list[Action]:
    """What may be done against an oven that will be too hot, or too cool; `is_due`: the next load of wood."""
    air, against, load = fire.air, fire.against, math.exp(fire.belief.habits.mass_log)
    if lean > 0.0:
        openings, step = [AIR_DOWN, USUAL_INLET], "shut air"
    else:
        openings, step = [USUAL_INLET, 1.0], "open air"
    found = []
    for opening in openings if step not in against else []:
        is_change = air is None or (opening < air - _ALIKE if lean > 0.0 else opening > air + _ALIKE)
        if is_change:
            found.append(Action(kind=ActionKind.AIR, value=opening))
    if lean > 0.0 and is_due:
        found.append(Action(kind=ActionKind.WOOD, value=0.0))  # none now: the next one an interval later
    shares = (0.5, 1.0) if lean <= 0.0 else (0.5,) if is_due else ()
    return found + [Action(kind=ActionKind.WOOD, value=share * load) for share in shares if "wood" not in against]
