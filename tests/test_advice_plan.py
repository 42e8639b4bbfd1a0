"""What a planned meal calls for: before what is only told of the oven, behind all that needs somebody."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.advice import Subject, advise
from cookstove_gui.cooking.baking.catalogue import Bake, bakes
from cookstove_gui.cooking.supper.dish_text import usual_dishes
from cookstove_gui.cooking.supper.plan import FireStep, Margin, Plan, PlannedStep, StepKind
from cookstove_gui.forecast.answers import TurnKind
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.heading import rungs
from cookstove_gui.stove.entries import Kind
from tests.advice_cases import standing, turn
from tests.phrases.test_ladder import INSIDE
from tests.test_advice import DANGER
from tests.test_advice_band import STEP


def bread_loaf() -> Bake:
    return next(bake for bake in bakes() if bake.key == "bread_loaf")


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
    return replace(_plan(60.0), steps=(_bake(), *steps), steers=True, lit=True)


def _bake(begin: float = 60.0, **others: bool) -> PlannedStep:
    at = standing(390.0).now + timedelta(minutes=begin)
    return PlannedStep(
        key="bread/4", kind=StepKind.HEAT, what="bake", dish="bread", begin=at, end=at + timedelta(minutes=45), **others
    )


@pytest.mark.parametrize(("loads", "is_asked"), [((4.0, 40.0), True), ((6.0, 40.0), False), ((), False)])
def test_wood_is_due_by_the_plan_alone_while_it_steers_the_fire(loads: tuple[float, ...], is_asked: bool) -> None:
    wants_wood = standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 5),))
    assert advise(wants_wood).subject is Subject.WOOD_DUE
    found = advise(wants_wood, _steering(*loads))
    assert (found.subject is Subject.WOOD_DUE) is is_asked
    assert is_asked or found.wood_by is None
    assert advise(wants_wood, replace(_steering(*loads), steers=False)).subject is Subject.WOOD_DUE


def test_a_plan_that_steers_the_fire_has_its_air_open_without_being_contradicted() -> None:
    wide_open = standing(390.0, turns=(turn(TurnKind.AIR_OPEN),))
    assert advise(wide_open).subject is Subject.AIR_OPEN
    assert advise(wide_open, _steering()).subject is not Subject.AIR_OPEN
    assert advise(wide_open, replace(_steering(), steers=False)).subject is Subject.AIR_OPEN


def test_nobody_is_asked_for_wood_for_an_oven_that_the_plan_wants_no_more() -> None:
    wants_wood = standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 5),))
    simmer = replace(_bake(-20.0, begun=True), key="beef_and_barley/2", dish="beef_and_barley")
    dishes = tuple(dish for dish in usual_dishes() if dish.key in ("bread", "beef_and_barley"))
    plan = replace(_plan(0.0), dishes=dishes, lit=True, steps=(_bake(-60.0, done=True), simmer))
    assert advise(wants_wood, plan).wood_by is None
    assert advise(wants_wood, plan).subject is not Subject.WOOD_DUE
    assert advise(wants_wood, replace(plan, lit=False)).subject is Subject.WOOD_DUE
    still_in = replace(plan, steps=(_bake(-20.0, begun=True), simmer))
    assert advise(wants_wood, still_in).subject is Subject.WOOD_DUE
    bakes_beside = replace(wants_wood, course=replace(wants_wood.course, bakes=(INSIDE,)))
    assert advise(bakes_beside, plan).subject is Subject.WOOD_DUE


@pytest.mark.parametrize(("fed", "asked"), [(-30.0, False), (-5.0, True)])
def test_when_all_is_cooked_wood_is_due_again_once_the_fire_was_fed_for_something_else(fed: float, asked: bool) -> None:
    wants_wood = standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 5),))
    wood = next(row for row in wants_wood.rows if row.kind is Kind.WOOD)
    rows = (replace(wood, at=wants_wood.now + timedelta(minutes=fed)),)
    eaten = replace(_plan(0.0), lit=True, steps=(_bake(-60.0, done=True),))  # out 15 minutes ago
    assert (advise(replace(wants_wood, rows=(*wants_wood.rows, *rows)), eaten).subject is Subject.WOOD_DUE) is asked


def test_what_bakes_of_the_plan_is_called_as_its_dish() -> None:
    loaf = replace(INSIDE, inside=replace(INSIDE.inside, name="loaf of bread", bake=bread_loaf()))
    baking = standing(390.0)
    baking = replace(baking, course=replace(baking.course, bakes=(loaf,)))
    for plan, name in ((None, "loaf of bread"), (replace(_plan(60.0), steps=(_bake(-20.0, begun=True),)), "Bread")):
        found = advise(baking, plan).inside
        assert found is not None
        assert found.inside.name == name


def test_behind_a_dish_the_heading_names_the_heat_it_speaks_of() -> None:
    rising = standing(300.0, 1.0)
    edge = Edge(unit="F", now=rising.now, offset_minutes=0)
    alone, with_dish = rungs(rising, edge), rungs(rising, edge, _plan(0.0))
    assert any("bread heat" not in rung.casefold() for rung in alone)
    said = [rung.removeprefix(with_dish[-1]) for rung in with_dish if rung.startswith("Bread: shape. ")]
    assert len(said) >= 2
    assert all("bread heat" in rung.casefold() for rung in said)


def test_beside_a_plan_that_steers_no_other_step_is_advised() -> None:
    helped = standing(300.0, step=STEP)
    assert advise(helped).step is not None
    assert advise(helped, _steering(40.0)).step is None
    assert advise(helped, replace(_steering(40.0), steers=False)).step is not None
