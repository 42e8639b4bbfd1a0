"""Which heats of the oven are needed, by what is in it and by what the plan still puts in, and until when."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING

from cookstove_gui.cooking.fit.bands import minutes_of_bake
from cookstove_gui.cooking.fit.tasks import Place, task_of
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.heats import task_for
from cookstove_gui.cooking.supper.moments import dish_of, part_of_step
from cookstove_gui.cooking.supper.plan import FireStep, Plan, PlannedStep, StepKind
from cookstove_gui.stove.entries import HeatBand, Kind

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
    return (*inside, *(_needed_by(part, step) for step, part in to_go_in(plan)))


def awaits_heat(band: HeatBand, plan: Plan | None) -> bool:
    """Whether somebody waits for the oven to come to the heat wanted: with a plan, only what it still puts in."""
    if plan is None:
        return True
    waiting = [_needed_by(part, step).heat for step, part in to_go_in(plan)]
    if minutes_of_bake(band):
        return any(heat.low == band.low and heat.high == band.high for heat in waiting)
    return any(heat.low <= band.high and band.low <= heat.high for heat in waiting)


def is_let_go(standing: Standing, plan: Plan | None) -> bool:
    """Whether the fire is wanted no more, and nothing was lit or put on since.

    So it is once the cook said that it is out or let go, or when all of the plan is cooked.
    """
    tended = next((row for row in reversed(standing.rows) if row.kind in (Kind.LIT, Kind.WOOD, Kind.OUT)), None)
    if tended is not None and tended.kind is Kind.OUT:
        return True
    over_at = _over_at(plan) if plan is not None else None
    return over_at is not None and (tended is None or tended.at <= over_at)


def _over_at(plan: Plan) -> datetime | None:
    let_go = next((step for step in plan.steps if step.what == FireStep.LET_GO and step.done), None)
    if let_go is not None:
        return let_go.begin
    work = [step for step in plan.steps if step.kind in (StepKind.HANDS, StepKind.HEAT)]
    return max((step.end for step in work), default=None) if all(step.done for step in work) else None


def planned_step(one: UnderWay, plan: Plan | None) -> PlannedStep | None:
    """The step of the plan that something in the oven is."""
    return next((step for step in plan.steps if step.begun and _is_of(one, plan, step)), None) if plan else None


def name_of(one: UnderWay, plan: Plan | None) -> str:
    """What something in the oven is called: as its dish on the plan, else as in the log."""
    step = planned_step(one, plan)
    dish = dish_of(plan, step) if plan is not None and step is not None else None
    return one.inside.name if dish is None else dish.name


def to_go_in(plan: Plan | None) -> Iterator[tuple[PlannedStep, Heat]]:
    """The steps of a plan that still put something into the oven."""
    for step in plan.steps if plan is not None else ():
        part = part_of_step(plan, step) if plan is not None and step.dish else None
        if isinstance(part, Heat) and part.place is Place.OVEN and not (step.begun or step.done):
            yield step, part


def _is_of(one: UnderWay, plan: Plan, step: PlannedStep) -> bool:
    dish, part = dish_of(plan, step), part_of_step(plan, step)
    if dish is None or not isinstance(part, Heat) or part.place is not Place.OVEN:
        return False
    bake = one.inside.bake
    return one.inside.name.casefold() == dish.name.casefold() or (bake is not None and bake.key == part.bake)


def _heat_of(one: UnderWay, standing: Standing, plan: Plan | None) -> HeatBand:
    """The heat that something in the oven wants: its dish's, or its bake's; else what the cook wants of the oven.

    What the cook wants goes before a bake's usual heat where it is named for no bake.
    """
    step = planned_step(one, plan)
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
