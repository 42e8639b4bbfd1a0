"""What a planned meal calls for: before what is only told of the oven, behind all that needs somebody."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.advice import Subject, advise
from cookstove_gui.cooking.supper.dish_text import usual_dishes
from cookstove_gui.cooking.supper.plan import FireStep, Margin, Plan, PlannedStep, StepKind
from cookstove_gui.forecast.answers import TurnKind
from tests.advice_cases import standing, turn
from tests.test_advice import DANGER
from tests.test_advice_band import STEP


def _plan(minutes: float) -> Plan:
    now = standing(300.0).now
    begin = now + timedelta(minutes=minutes)
    step = PlannedStep(
        key="bread/2", kind=StepKind.HANDS, what="shape", dish="bread", begin=begin, end=begin + timedelta(minutes=10)
    )
    return Plan(
        table_at=now + timedelta(hours=3), made_at=now, margin=Margin.USUAL,
        dishes=tuple(dish for dish in usual_dishes() if dish.key == "bread"), steps=(step,), chance=None,
    )  # fmt: skip


def test_a_step_that_is_due_or_overdue_stands_before_the_oven() -> None:
    for minutes in (-20.0, 0.0, 1.5):
        found = advise(standing(300.0, 1.0), _plan(minutes))
        assert found.subject is Subject.COMING
        assert found.planned is not None
        assert not found.prepares


def test_one_that_is_still_to_come_says_nothing() -> None:
    assert advise(standing(300.0, 1.0), _plan(4.0)).planned is None
    assert advise(standing(300.0, 1.0)).planned is None


def test_danger_fire_and_wood_go_before_the_plan() -> None:
    due = _plan(0.0)
    assert advise(standing(390.0, cautions=(DANGER,)), due).planned is None
    assert advise(standing(390.0, turns=(turn(TurnKind.FIRE_OUT),)), due).planned is None
    assert advise(standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 5),)), due).planned is None


def test_what_was_done_is_not_called_for() -> None:
    plan = _plan(0.0)
    done = replace(plan, steps=tuple(replace(step, done=True) for step in plan.steps))
    assert advise(standing(300.0, 1.0), done).planned is None


def _steering(*loads: float) -> Plan:
    """A plan that says what is done to the fire, its loads so many minutes from now."""
    now = standing(390.0).now
    steps = tuple(
        PlannedStep(
            key=f"fire/wood/{number}", kind=StepKind.FIRE, what=FireStep.WOOD, begin=now + timedelta(minutes=minutes),
            end=now + timedelta(minutes=minutes),
        )
        for number, minutes in enumerate(loads, 1)
    )  # fmt: skip
    return replace(_plan(60.0), steps=steps, steers=True, lit=True)


@pytest.mark.parametrize(("loads", "is_asked"), [((4.0, 40.0), True), ((6.0, 40.0), False), ((), False)])
def test_wood_is_due_by_the_plan_alone_while_it_steers_the_fire(loads: tuple[float, ...], is_asked: bool) -> None:
    wants_wood = standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 5),))
    assert advise(wants_wood).subject is Subject.WOOD_DUE
    found = advise(wants_wood, _steering(*loads))
    assert (found.subject is Subject.WOOD_DUE) is is_asked
    assert is_asked or found.wood_by is None
    assert advise(wants_wood, replace(_steering(*loads), steers=False)).subject is Subject.WOOD_DUE


def test_beside_a_plan_that_steers_no_other_step_is_advised() -> None:
    helped = standing(300.0, step=STEP)
    assert advise(helped).step is not None
    assert advise(helped, _steering(40.0)).step is None
    assert advise(helped, replace(_steering(40.0), steers=False)).step is not None
