"""Which step of a plan something in the oven is, by the log."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.moments import dish_of, part_of_step

if TYPE_CHECKING:
    from cookstove_gui.cooking.baking.under_way import UnderWay
    from cookstove_gui.cooking.supper.plan import Plan, PlannedStep


def step_of(one: UnderWay, plan: Plan) -> PlannedStep | None:
    """The step that it is, which has begun; none for what was not planned."""
    return next((step for step in plan.steps if step.begun and _is(one, plan, step)), None)


def called_as_planned(one: UnderWay, plan: Plan) -> UnderWay:
    """The same under the name of its dish: the log has that of its bake, by which its core is followed."""
    step = step_of(one, plan)
    dish = None if step is None else dish_of(plan, step)
    return one if dish is None else replace(one, inside=replace(one.inside, name=dish.name))


def _is(one: UnderWay, plan: Plan, step: PlannedStep) -> bool:
    dish, part = dish_of(plan, step), part_of_step(plan, step)
    if dish is None or not isinstance(part, Heat) or part.place is not Place.OVEN:
        return False
    bake = one.inside.bake
    return one.inside.name.casefold() == dish.name.casefold() or (bake is not None and bake.key == part.bake)
