"""The moments of a plan at which the cook does something: begin, put in, turn, take out, tend the fire."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Dish, Heat, Part
from cookstove_gui.cooking.supper.marks import part_of
from cookstove_gui.cooking.supper.plan import Plan, PlannedStep, StepKind

DUE_WITHIN = timedelta(minutes=2)  # a moment this near is the thing to do now


class MomentKind(StrEnum):
    """What is done at a moment."""

    BEGIN = "begin"  # work for the hands
    PUT_IN = "put in"  # into the oven
    PUT_ON = "put on"  # onto the cooktop
    TURN = "turn"
    TAKE_OUT = "take out"
    TAKE_OFF = "take off"
    FIRE = "fire"


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """One thing to do at one time."""

    at: datetime
    kind: MomentKind
    step: PlannedStep


def dish_of(plan: Plan, step: PlannedStep) -> Dish | None:
    """The dish that a step belongs to; none for the fire."""
    return next((dish for dish in plan.dishes if dish.key == step.dish), None)


def part_of_step(plan: Plan, step: PlannedStep) -> Part | None:
    """The part of its dish that a step is; none for the fire."""
    dish = dish_of(plan, step)
    return None if dish is None else dish.parts[part_of(step.key)]


def moments(plan: Plan) -> tuple[Moment, ...]:
    """What is still to be done, in order of time; what is overdue stands first."""
    found = [moment for step in plan.steps if not step.done for moment in _of(plan, step)]
    return tuple(sorted(found, key=lambda moment: (moment.at, moment.step.key)))


def due(plan: Plan, now: datetime) -> Moment | None:
    """The one thing of the plan to do now; none while nothing is due.

    A fire that burns speaks for itself, but for what the meal wants of it.
    """
    told = [one for one in moments(plan) if not (plan.lit and one.kind is MomentKind.FIRE) or one.step.helps]

    # What comes while work is under way goes before it; once its minutes are over, it is asked for first again, for the
    # cook to say that it is done.
    def under_way(one: Moment) -> bool:
        return one.step.begun and one.kind is MomentKind.BEGIN and one.step.end > now

    first = min(told, key=lambda one: (one.at > now + DUE_WITHIN, under_way(one)), default=None)
    return first if first is not None and first.at <= now + DUE_WITHIN else None


def _of(plan: Plan, step: PlannedStep) -> list[Moment]:
    if step.kind is StepKind.FIRE:
        return [Moment(at=step.begin, kind=MomentKind.FIRE, step=step)]
    if step.kind is StepKind.HANDS:
        return [Moment(at=step.begin, kind=MomentKind.BEGIN, step=step)]
    part, dish = part_of_step(plan, step), dish_of(plan, step)
    if step.kind is StepKind.WAIT or not isinstance(part, Heat) or dish is None:
        return []
    in_oven = part.place is Place.OVEN
    found = []
    if not step.begun:
        found.append(Moment(at=step.begin, kind=MomentKind.PUT_IN if in_oven else MomentKind.PUT_ON, step=step))
    if step.turn_at is not None:
        found.append(Moment(at=step.turn_at, kind=MomentKind.TURN, step=step))
    following = dish.parts[part_of(step.key) + 1 : part_of(step.key) + 2]
    goes_on = any(isinstance(one, Heat) and one.place is part.place for one in following)
    if not goes_on:
        found.append(Moment(at=step.end, kind=MomentKind.TAKE_OUT if in_oven else MomentKind.TAKE_OFF, step=step))
    return found
