"""Which heats of the oven are needed, by what is in it and by what the plan still puts in, and until when."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING

from cookstove_gui.cooking.fit.bands import minutes_of_bake
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.followed import step_of
from cookstove_gui.cooking.supper.heats import task_for
from cookstove_gui.cooking.supper.left import oven_steps
from cookstove_gui.cooking.supper.moments import part_of_step
from cookstove_gui.cooking.supper.plan import Plan, PlannedStep
from cookstove_gui.stove.entries import HeatBand

if TYPE_CHECKING:
    from cookstove_gui.cooking.baking.under_way import UnderWay
    from cookstove_gui.cooking.fit.tasks import Task
    from cookstove_gui.situation import Standing


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """A heat of the oven and how long it is needed."""

    heat: HeatBand
    begins: datetime
    ends: datetime | None  # none where nobody knows


def needs(standing: Standing, plan: Plan | None) -> tuple[Need, ...]:
    """Of everything in the oven, then of everything that is still to go in."""
    inside = (Need(heat=_heat_of(one, standing, plan), begins=standing.now, ends=one.likely) for one in standing.bakes)
    return (*inside, *(_needed_by(part, step) for step, part in _to_go_in(plan)))


def awaits_heat(band: HeatBand, plan: Plan | None) -> bool:
    """Whether somebody waits for the oven to come to the heat wanted: with a plan, only what it still puts in."""
    if plan is None:
        return True
    waiting = [_needed_by(part, step).heat for step, part in _to_go_in(plan)]
    if minutes_of_bake(band):
        return any(heat.low == band.low and heat.high == band.high for heat in waiting)
    return any(heat.low <= band.high and band.low <= heat.high for heat in waiting)


def _to_go_in(plan: Plan | None) -> Iterator[tuple[PlannedStep, Heat]]:
    """The steps of a plan that still put something into the oven."""
    return ((step, part) for step, part in oven_steps(plan) if not step.begun) if plan is not None else iter(())


def _heat_of(one: UnderWay, standing: Standing, plan: Plan | None) -> HeatBand:
    """The heat that something in the oven wants: its dish's, or its bake's; else what the cook wants of the oven.

    What the cook wants goes before a bake's usual heat where it is named for no bake.
    """
    step = step_of(one, plan) if plan is not None else None
    part = part_of_step(plan, step) if plan is not None and step is not None else None
    if isinstance(part, Heat):
        return _band(task_for(part))
    bake = one.inside.bake
    task = task_of(bake.task) if bake is not None and minutes_of_bake(standing.band) else None
    return standing.band if task is None else _band(task)


def _needed_by(part: Heat, step: PlannedStep) -> Need:
    return Need(heat=_band(task_for(part)), begins=step.begin, ends=step.end)


def _band(task: Task) -> HeatBand:
    return HeatBand(name=task.name, low=task.low, high=task.high)
