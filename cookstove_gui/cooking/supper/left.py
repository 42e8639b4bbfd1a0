"""What is left of a plan: what still goes into the oven, whether its fire is wanted at all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import timedelta
from typing import TYPE_CHECKING

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Heat, Wait
from cookstove_gui.cooking.supper.moments import part_of_step
from cookstove_gui.cooking.supper.plan import LATE_MIN, FireStep, StepKind
from cookstove_gui.stove.entries import Kind

if TYPE_CHECKING:
    from datetime import datetime

    from cookstove_gui.cooking.supper.plan import Clash, Plan, PlannedStep
    from cookstove_gui.stove.entries import Entry


def oven_steps(plan: Plan) -> Iterator[tuple[PlannedStep, Heat]]:
    """The steps in the oven that are not done, those that have begun among them."""
    for step in plan.steps:
        part = part_of_step(plan, step) if step.dish and not step.done else None
        if isinstance(part, Heat) and part.place is Place.OVEN:
            yield step, part


def is_let_go(rows: Sequence[Entry], plan: Plan | None) -> bool:
    """Whether the fire is wanted no more, and nothing was lit or put on since.

    So it is once the cook said that it is out or let go, or when all of the plan is cooked.
    """
    tended = next((row for row in reversed(rows) if row.kind in (Kind.LIT, Kind.WOOD, Kind.OUT)), None)
    if tended is not None and tended.kind is Kind.OUT:
        return True
    over_at = _over_at(plan) if plan is not None else None
    return over_at is not None and (tended is None or tended.at <= over_at)


def loads_are_planned(plan: Plan, rows: Sequence[Entry], now: datetime, *, something_bakes: bool) -> bool:
    """Whether nobody but the plan says when wood is put on: it steers the fire, or nothing wants the oven's heat.

    Once all is cooked that holds until somebody feeds the fire for something else.
    """
    if plan.holds_wood(now):
        return True
    if not plan.lit or something_bakes or any(oven_steps(plan)):
        return False
    return _over_at(plan) is None or is_let_go(rows, plan)


def clashes_left(plan: Plan) -> tuple[Clash, ...]:
    """What does not fit, of what can still be changed.

    A dish that only cools or rests is ready by itself once its shortest wait is over, however long it is left standing.
    """
    found = []
    for clash in plan.clashes:
        ready = _ready_by_itself(plan, clash.dish)
        if clash.late_min and ready is not None:
            dish = next(one for one in plan.dishes if one.key == clash.dish)
            late = (ready - plan.table_at).total_seconds() / 60.0 - dish.after_table
            clash = replace(clash, late_min=late if late > LATE_MIN else 0.0)
        if clash.late_min or clash.no_heat:
            found.append(clash)
    return tuple(found)


def _ready_by_itself(plan: Plan, key: str) -> datetime | None:
    steps = plan.of_dish(key)
    waits = [step for step in steps if step.kind is StepKind.WAIT and not step.done]
    if not waits or any(step.kind is not StepKind.WAIT and not step.done for step in steps):
        return None
    parts = (part_of_step(plan, step) for step in waits)
    return waits[0].begin + timedelta(minutes=sum(part.shortest for part in parts if isinstance(part, Wait)))


def _over_at(plan: Plan) -> datetime | None:
    let_go = next((step for step in plan.steps if step.what == FireStep.LET_GO and step.done), None)
    if let_go is not None:
        return let_go.begin
    work = [step for step in plan.steps if step.kind in (StepKind.HANDS, StepKind.HEAT)]
    return max((step.end for step in work), default=None) if all(step.done for step in work) else None
