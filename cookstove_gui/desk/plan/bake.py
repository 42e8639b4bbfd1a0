"""In the oven: when a bake will be done in this oven, as read and as projected."""

from dataclasses import dataclass, replace
from datetime import datetime

import numpy as np

from cookstove_gui.cooking.baking.catalogue import LARGEST, SMALLEST, Bake, bake_of, bakes, mass_of, scaled
from cookstove_gui.cooking.baking.doneness import (
    COLDEST_OVEN,
    HOTTEST_OVEN,
    Doneness,
    doneness,
    matched_to_core,
    oven_since,
)
from cookstove_gui.cooking.baking.turning import TurnReminder, turn_reminder
from cookstove_gui.cooking.fit.tasks import Task, task_of
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import Projection
from cookstove_gui.situation import Standing
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import KILOGRAMS_PER_POUND

_LEAST_IN_MIN = 2.0  # a probe says nothing about a bake that has only just gone in


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeChoice:
    """What goes in, how heavy one is, when, and how warm."""

    key: str
    mass: float | None = None  # kg of one; the usual one if left out
    start: float | None = None  # K
    went_in: datetime | None = None  # or will go in; now if left out
    core: float | None = None  # K, what a probe shows now


@dataclass(frozen=True, slots=True, kw_only=True)
class BakePlan:
    """When it will be done, and when to turn it."""

    choice: BakeChoice
    task: Task | None
    goes_in_min: float  # from now; below 0 it is in already
    answer: Doneness
    turn: TurnReminder | None


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeInputs:
    """What goes in, and the stove as it stands."""

    standing: Standing
    stove: Stove
    pressure: float  # Pa, of the air at the stove
    choice: BakeChoice


def bake_options() -> tuple[tuple[str, str], ...]:
    """Key and name of everything that can be baked."""
    return tuple((bake.key, bake.name) for bake in bakes())


def usual_mass(key: str) -> float:
    """Mass [kg] of one of the usual size."""
    return mass_of(bake_of(key))


def usual_start(key: str) -> float:
    """Temperature [K] at which it usually goes in."""
    return bake_of(key).start


def sized(choice: BakeChoice) -> Bake:
    """The bake as chosen; raises InputProblem for an implausible weight."""
    bake = bake_of(choice.key)
    if choice.mass is not None:
        usual = mass_of(bake)
        if not SMALLEST <= choice.mass / usual <= LARGEST:
            least, most = SMALLEST * usual, LARGEST * usual
            raise InputProblem(
                f"{choice.mass:.3g} kg ({choice.mass / KILOGRAMS_PER_POUND:.3g} lb) is not a plausible weight for one "
                f"{bake.name}; type {least:.2g} to {most:.2g} kg "
                f"({least / KILOGRAMS_PER_POUND:.2g} to {most / KILOGRAMS_PER_POUND:.2g} lb)."
            )
        bake = scaled(bake, choice.mass / usual)
    return bake if choice.start is None else replace(bake, start=choice.start)


def plan_bake(inputs: BakeInputs) -> BakePlan:
    """When it will be done."""
    choice, standing = inputs.choice, inputs.standing
    projection = _possible(standing.projection)
    bake = sized(choice)
    went_in = choice.went_in or standing.now
    ago = (standing.now - went_in).total_seconds() / 60
    if choice.core is not None:
        if ago < _LEAST_IN_MIN:
            raise InputProblem(
                f"The {bake.name} must be in the oven before a probe tells anything; type when it went in."
            )
        bake = matched_to_core(bake, oven_since(projection, standing.trace, went_in), choice.core, inputs.pressure)
    answer = doneness(
        bake, projection, oven=inputs.stove.oven_spot, went_in=went_in, past=standing.trace, pressure=inputs.pressure
    )
    whole = None if answer.done_min.p50 is None else answer.done_min.p50 + ago
    turn = None if whole is None else turn_reminder(projection, inputs.stove, ago, whole)
    return BakePlan(choice=choice, task=task_of(bake.task), goes_in_min=-ago, answer=answer, turn=turn)


def _possible(projection: Projection) -> Projection:
    return replace(projection, kelvin=np.clip(projection.kelvin, COLDEST_OVEN, HOTTEST_OVEN))
