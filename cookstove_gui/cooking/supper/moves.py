"""What a new plan begins at another time than the one before, and why."""

from dataclasses import replace
from datetime import timedelta

from cookstove_gui.cooking.supper.marks import Supper
from cookstove_gui.cooking.supper.plan import Move, Plan, PlannedStep, StepKind

STAYS_TOLD = timedelta(minutes=10)  # for which a move is told, however often is planned again meanwhile; judgement
MATTERS = timedelta(minutes=3)  # a step that moves by no more is not spoken of; judgement


def moves_between(before: Plan | None, after: Plan, supper: Supper) -> tuple[Move, ...]:
    """The steps for hands, heat and fire that begin more than `MATTERS` earlier or later, and those of just before.

    A step that moves twice is told from where it was at first; one that is back there is told no more.
    """
    if before is None:
        return ()
    was = {step.key: step for step in before.steps}
    told = {one.step: one for one in before.moved if after.made_at - one.at <= STAYS_TOLD}
    found = []
    for step in after.steps:
        if step.key not in was or step.kind is StepKind.WAIT or step.helps:
            continue
        if step.done or step.begun or was[step.key].done:
            continue
        earlier, moves = told.get(step.key), abs(step.begin - was[step.key].begin) > MATTERS
        first = was[step.key].begin if earlier is None else earlier.was
        if abs(step.begin - first) <= MATTERS:
            continue
        if moves:
            why = _why(step, before, after, supper)
            found.append(Move(step=step.key, was=first, now=step.begin, why=why, at=after.made_at))
        elif earlier is not None:
            found.append(replace(earlier, now=step.begin))
    return tuple(found)


def _why(step: PlannedStep, before: Plan, after: Plan, supper: Supper) -> str:
    if any(own.step == step.key for own in supper.own):
        return "own"
    keys = [[dish.key for dish in plan.dishes] for plan in (before, after)]
    if before.table_at != after.table_at or keys[0] != keys[1]:
        return "dish"
    if any(_ran_late(one, after, supper) for one in before.steps if one.dish == step.dish and one.key != step.key):
        return "late"
    if step.dish and _ran_late(next(one for one in before.steps if one.key == step.key), after, supper):
        return "late"
    return "heat" if after.lit else "known"


def _ran_late(planned: PlannedStep, after: Plan, supper: Supper) -> bool:
    """Whether a step began or ended later than was planned, or is overdue."""
    mark = supper.mark(planned.key)
    if mark.ended is not None:
        return mark.ended - planned.end > MATTERS
    if mark.began is not None:
        return mark.began - planned.begin > MATTERS
    return not planned.done and planned.kind is not StepKind.WAIT and after.made_at - planned.begin > MATTERS
