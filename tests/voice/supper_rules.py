"""The rules of a planned supper: nothing behind the clock, one voice about the fire, chances as they are."""

import re
from collections.abc import Iterator
from datetime import timedelta

from cookstove_gui.cooking.supper.jobs import GRACE_MIN
from cookstove_gui.cooking.supper.plan import FireStep, PlannedStep, StepKind
from tests.voice.moment import Moment

_TENTHS = re.compile(r"(\d+)\s+in\s+10")
_FAILS = re.compile(r"fails (\d+) times in 10")
_AIR = re.compile(r"(?i)set the air to \d+ %|shut the air|open the air")
_COOLS = 0.5  # opening below which air makes the oven cooler

Breaches = Iterator[str]


def _steps(moment: Moment) -> tuple[PlannedStep, ...]:
    return moment.supper.plan.steps if moment.supper is not None else ()


def supper_steps_are_ahead(moment: Moment) -> Breaches:
    """No step of a planned supper that is still to be done lies behind the clock."""
    for step in _steps(moment):
        if not (step.done or step.begun) and step.begin < moment.now - timedelta(minutes=GRACE_MIN):
            yield f"{step.key} at {step.begin:%H:%M}, now is {moment.now:%H:%M}"


def supper_asks_nothing_against_a_caution(moment: Moment) -> Breaches:
    """What a supper wants of the fire now is nothing that a caution speaks against."""
    against = {one for caution in moment.standing.cautions for one in caution.against}
    for step in _steps(moment):
        if not step.helps:
            continue
        way = "wood"
        if step.what == FireStep.AIR:
            way = "shut air" if (step.opening or 0.0) < _COOLS else "open air"
        if way in against:
            yield f"{step.key} beside {[one.title for one in moment.standing.cautions if way in one.against]}"


def supper_names_one_setting_of_the_air(moment: Moment) -> Breaches:
    """Heading and detail of a planned supper name no two settings of the air."""
    for text in moment.at("supper heading"):
        named = {one.casefold() for one in _AIR.findall(text)}
        if len(named) > 1:
            yield f"{sorted(named)} in “{text}”"


def supper_chances_are_the_plans(moment: Moment) -> Breaches:
    """Chances that a supper tells are those of its plan, to a tenth."""
    if moment.supper is None:
        return
    plan = moment.supper.plan
    chances = [step.chance for step in plan.steps if step.chance is not None]
    chances += [plan.chance] if plan.chance is not None else []
    for text in moment.at("supper"):
        told = [int(one) / 10 for one in _TENTHS.findall(text)]
        told += [round(1.0 - int(one) / 10, 1) for one in _FAILS.findall(text)]
        for one in told:
            room = 0.1 if one in (0.1, 0.9) else 0.0501  # the outermost tenths also stand for what is beyond them
            if all(abs(one - chance) > room for chance in chances):
                yield f"{one} in “{text}”, but the chances are {[round(chance, 2) for chance in chances]}"


def supper_wood_has_an_amount(moment: Moment) -> Breaches:
    """Every load of a planned supper says how many splits."""
    for step in _steps(moment):
        if step.kind is StepKind.FIRE and step.what == FireStep.WOOD and not (step.splits and step.wood):
            yield f"{step.key} names no amount"


SUPPER_RULES = (
    supper_steps_are_ahead,
    supper_asks_nothing_against_a_caution,
    supper_names_one_setting_of_the_air,
    supper_chances_are_the_plans,
    supper_wood_has_an_amount,
)
