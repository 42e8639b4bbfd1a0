"""The step to take with the fire now, so that the oven has the heat that the meal wants of it next."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime

import numpy as np

from cookstove_gui.cooking.fires.steps import AIR_DOWN
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.fire import Fire, OnHeat
from cookstove_gui.cooking.supper.heats import heat_fits, task_for
from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind, KeptFire
from cookstove_gui.forecast.futures.projection import GRID_MINUTES, project
from cookstove_gui.forecast.model.heat import USUAL_INLET
from cookstove_gui.stove.stove import SpotKind

SOON_MIN = 75.0  # a heat wanted later than this is not steered to yet; judgement
LEAST_GAIN = 0.1  # of the chance that the heat is there; a step that brings less is not asked for
SURE_ENOUGH = 0.75  # chance of the heat from which no step is looked for; judgement
_ALIKE = 0.08  # of the air's opening; a change that small is none
_LEAST_LEFT_MIN = 5.0  # of a bake, in which a fire can still be heard of


@dataclass(frozen=True, slots=True, kw_only=True)
class Help:
    """One step, and what it does to the chance of the next heat."""

    action: Action
    before: float
    after: float


def helping_step(fire: Fire, parts: Sequence[OnHeat], kept: KeptFire | None, now: datetime) -> Help | None:
    """The step that helps the next heat wanted of the oven most; none where none helps, or none is needed.

    `parts` are those on heat as they are placed.
    """
    wanted = next_in_oven(parts, now)
    if wanted is None or kept is None or not fire.lit:
        return None
    lean, before = _outcome(fire, wanted, kept, LEAVE, now)
    if before >= SURE_ENOUGH:
        return None
    tried = [(action, _outcome(fire, wanted, kept, action, now)[1]) for action in _steps(fire, lean)]
    best = max(tried, key=lambda one: one[1], default=None)
    if best is None or best[1] < before + LEAST_GAIN:
        return None
    return Help(action=best[0], before=before, after=best[1])


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


def _outcome(fire: Fire, wanted: OnHeat, kept: KeptFire, action: Action, now: datetime) -> tuple[float, float]:
    """How far the oven will be off the heat's middle [K], and the chance that the heat serves, if this is done now."""
    begin = max((wanted.begin - now).total_seconds() / 60.0, 0.0)
    end = (wanted.end - now).total_seconds() / 60.0
    horizon = GRID_MINUTES * math.ceil(end / GRID_MINUTES)
    stove = fire.belief.stove
    ahead = project(
        fire.belief, action, fire.band, kept=kept, horizon=horizon, spots=tuple(stove.spots_of(SpotKind.OVEN))
    )
    left = replace(wanted.heat, minutes=end - begin)
    (fit,) = heat_fits(ahead, stove, (left,))
    chance = 0.0 if fit is None else float(fit.chances(np.array([begin])).max())
    seen = (ahead.minutes >= begin - 1e-9) & (ahead.minutes <= end + 1e-9)
    heats = ahead.of(stove.oven_spot) if stove.oven_spot in ahead.spots else ahead.kelvin[:, :, 0]
    return float(np.median(heats[:, seen]) - task_for(wanted.heat).middle), chance


def _steps(fire: Fire, lean: float) -> list[Action]:
    """What may be done against an oven that will be too hot, or too cool."""
    air, against = fire.air, fire.against
    if lean > 0.0:
        openings, step = [AIR_DOWN], "shut air"
    else:
        openings, step = [USUAL_INLET, 1.0], "open air"
    found = []
    for opening in openings if step not in against else []:
        is_change = air is None or (opening < air - _ALIKE if lean > 0.0 else opening > air + _ALIKE)
        if is_change:
            found.append(Action(kind=ActionKind.AIR, value=opening))
    if lean <= 0.0 and "wood" not in against:
        found.append(Action(kind=ActionKind.WOOD, value=math.exp(fire.belief.habits.mass_log)))
    return found
