"""Nothing rings for a heat that nothing needs: neither when what needed it is out, nor before anything is to go in."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.advice import advise
from cookstove_gui.cooking.baking.catalogue import bakes
from cookstove_gui.cooking.baking.doneness import Doneness
from cookstove_gui.cooking.baking.in_oven import InOven
from cookstove_gui.cooking.baking.turning import TurnReminder
from cookstove_gui.cooking.baking.under_way import UnderWay
from cookstove_gui.cooking.supper.alarms import AlarmKind
from cookstove_gui.cooking.supper.dishes import Dish, Heat, Place
from cookstove_gui.cooking.supper.plan import FireStep, Margin, Plan, PlannedStep, StepKind
from cookstove_gui.desk import Desk
from cookstove_gui.desk.alarms.moments import LEAVING_LEAD, alarms_of
from cookstove_gui.desk.alarms.needs import awaits_heat
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import HeatBand, Kind
from cookstove_gui.units import kelvin
from tests.desk.conftest import Going, stand

BREAD = Dish(
    key="bread", name="Bread", parts=(Heat(what="bake", place=Place.OVEN, minutes=45, task="bread", bake="bread_loaf"),)
)
PIE = Dish(
    key="pie", name="Apple pie", parts=(Heat(what="bake", place=Place.OVEN, minutes=45, task="pie", bake="fruit_pie"),)
)
STEW = Dish(key="stew", name="Stew", parts=(Heat(what="simmer", place=Place.TOP, minutes=60, task="simmer"),))
RISES = ((0.0, 400.0), (30.0, 430.0), (180.0, 440.0))  # °F by minutes: above bread heat from 25 on, in pie heat always
FALLS = ((0.0, 400.0), (30.0, 370.0), (180.0, 370.0))  # below pie heat from 15 on, in bread heat always


def inside(standing: Standing, key: str, likely_min: float | None, name: str = "") -> UnderWay:
    bake = next(one for one in bakes() if one.key == key)
    done = Quantiles(p10=likely_min, p50=likely_min, p90=likely_min)
    answer = Doneness(
        bake=bake, done_at=370.0, core_now=None, done_min=done, chance_done=0.9, safe=None, safe_min=None,
        recipe_min=None, late_min=None,
    )  # fmt: skip
    went_in = standing.now - timedelta(minutes=20)
    food = InOven(number=1, name=name or bake.name, bake=bake, went_in=went_in)
    turn = TurnReminder(
        hotter="oven_left", cooler="oven_right", difference=60.0, least=30.0, most=90.0, chance=0.9, in_min=5.0
    )  # fmt: skip
    return UnderWay(inside=food, asked_at=standing.now, answer=answer, turn=turn)


def with_inside(standing: Standing, *found: UnderWay) -> Standing:
    return replace(standing, course=replace(standing.course, bakes=found))


def going_so(going: Going, course: tuple[tuple[float, float], ...], band: str = "bread") -> Standing:
    going(*course).choose_band(band)
    standing = going(*course).standing
    assert standing is not None
    return standing


def plan_of(standing: Standing, *dishes: Dish, begin: float, **others: object) -> Plan:
    now = standing.now
    steps = tuple(
        PlannedStep(
            key=f"{dish.key}/0", kind=StepKind.HEAT, what="bake", dish=dish.key, begin=now + timedelta(minutes=begin),
            end=now + timedelta(minutes=begin + 45), **others,  # type: ignore[arg-type]
        )
        for dish in dishes
    )  # fmt: skip
    return Plan(
        table_at=now + timedelta(hours=2), made_at=now, margin=Margin.USUAL, dishes=dishes, steps=steps, chance=None
    )


def let_go(plan: Plan, standing: Standing, done: bool = True) -> Plan:
    at = standing.now
    step = PlannedStep(key="fire/let_go", kind=StepKind.FIRE, what=FireStep.LET_GO, begin=at, end=at, done=done)
    return replace(plan, steps=(*plan.steps, step))


def leaving(standing: Standing, plan: Plan | None = None) -> list[tuple[str, float]]:
    """The heats that are about to be left, and in how many minutes they are."""
    return [
        (one.about, round((one.at + LEAVING_LEAD - standing.now).total_seconds() / 60.0, 1))
        for one in alarms_of(standing, plan)
        if one.kind is AlarmKind.LEAVING_BAND
    ]


def kinds(standing: Standing, plan: Plan | None = None) -> set[AlarmKind]:
    return {one.kind for one in alarms_of(standing, plan)}


def test_a_heat_is_left_only_while_something_in_the_oven_needs_it(going: Going) -> None:
    standing = going_so(going, RISES)
    loaf, pie = inside(standing, "bread_loaf", 40.0), inside(standing, "fruit_pie", 60.0)
    assert leaving(with_inside(standing, loaf, pie)) == [("bread", 25.0)]
    assert leaving(with_inside(standing, pie)) == []  # the loaf is out
    assert leaving(standing) == []


def test_an_oven_that_is_not_yet_at_its_heat_does_not_leave_it(going: Going) -> None:
    standing = going_so(going, ((0.0, 350.0), (30.0, 380.0), (60.0, 440.0), (180.0, 440.0)))
    assert leaving(with_inside(standing, inside(standing, "bread_loaf", 100.0))) == []


def test_what_is_inside_rings_for_its_own_heat_whatever_heat_was_wanted(going: Going) -> None:
    standing = going_so(going, FALLS)
    assert leaving(with_inside(standing, inside(standing, "fruit_pie", 60.0))) == [("pie", 15.0)]
    assert leaving(with_inside(standing, inside(standing, "fruit_pie", 10.0))) == []  # done before
    assert leaving(with_inside(standing, inside(standing, "bread_loaf", 60.0))) == []


def test_a_heat_that_the_cook_typed_holds_for_whatever_is_inside(going: Going) -> None:
    standing = going_so(going, RISES, "380-410")
    assert leaving(with_inside(standing, inside(standing, "fruit_pie", 60.0))) == [("380–410 °F", 10.0)]


@pytest.mark.parametrize(("begin", "expected"), [(10.0, [("bread", 25.0)]), (26.0, [])])
def test_what_is_still_to_go_in_needs_its_heat_from_then_on(
    going: Going, begin: float, expected: list[tuple[str, float]]
) -> None:
    standing = going_so(going, RISES)
    assert leaving(standing, plan_of(standing, BREAD, begin=begin)) == expected
    assert leaving(standing, plan_of(standing, BREAD, begin=begin, done=True)) == []


def test_a_dish_of_the_plan_wants_its_own_heat_and_is_called_by_its_name(going: Going) -> None:
    standing = going_so(going, RISES)
    gentle = replace(PIE, parts=(replace(PIE.parts[0], low=kelvin(350.0, "F"), high=kelvin(410.0, "F")),))
    pie = with_inside(standing, inside(standing, "fruit_pie", 60.0))
    plan = plan_of(standing, gentle, begin=-20.0, begun=True)
    assert leaving(pie, plan) == [("pie", 10.0)]
    for seen, name in ((plan, "Apple pie"), (None, "fruit pie")):
        calls = {one.kind: one.about for one in alarms_of(pie, seen)}
        assert (calls[AlarmKind.TURN], calls[AlarmKind.TAKE_OUT]) == (name, name)


def test_with_a_plan_the_heat_wanted_calls_only_for_what_is_still_to_go_in(going: Going) -> None:
    standing = going_so(going, ((0.0, 350.0), (30.0, 380.0), (180.0, 400.0)))
    reached = AlarmKind.BAND_REACHED
    assert reached in kinds(standing)
    assert reached in kinds(standing, plan_of(standing, BREAD, begin=40.0))
    assert reached not in kinds(standing, plan_of(standing, BREAD, begin=-50.0, done=True))
    assert reached not in kinds(standing, plan_of(standing, PIE, begin=40.0))
    assert reached not in kinds(standing, plan_of(standing, STEW, begin=40.0))


def test_a_typed_heat_is_awaited_by_what_may_bake_in_it(going: Going) -> None:
    standing = going_so(going, RISES)
    plan = plan_of(standing, PIE, begin=40.0)
    for low, high, awaited in ((330.0, 380.0, False), (330.0, 390.0, True), (455.0, 500.0, False)):
        band = HeatBand(name=f"{low}", low=float(kelvin(low, "F")), high=float(kelvin(high, "F")))
        assert awaits_heat(band, plan) is awaited


def test_once_the_fire_is_let_go_neither_wood_nor_a_reading_is_called_for(burning_desk: Desk) -> None:
    burning_desk.choose_band("230-420")
    standing = stand(burning_desk).standing
    assert standing is not None
    assert advise(standing).wood_by is not None or advise(standing).by is not None
    asked = {AlarmKind.RELOAD, AlarmKind.NEXT_READING}
    stewing = plan_of(standing, STEW, begin=-5.0, begun=True)
    assert asked <= kinds(standing, let_go(stewing, standing, done=False))
    assert not asked & kinds(standing, let_go(stewing, standing))
    still_in = with_inside(standing, inside(standing, "bread_loaf", 30.0))
    assert kinds(still_in, let_go(stewing, standing)) & asked == {AlarmKind.NEXT_READING}


def test_when_all_is_cooked_the_fire_is_asked_for_nothing_until_it_is_fed_again(burning_desk: Desk) -> None:
    burning_desk.choose_band("230-420")
    standing = stand(burning_desk).standing
    assert standing is not None
    eaten = plan_of(standing, STEW, begin=-45.0, done=True)
    assert not {AlarmKind.RELOAD, AlarmKind.NEXT_READING} & kinds(standing, eaten)
    burning_desk.do(Kind.WOOD)
    fed = stand(burning_desk).standing
    assert fed is not None
    before = plan_of(replace(standing, now=fed.now - timedelta(minutes=1)), STEW, begin=-45.0, done=True)
    assert AlarmKind.NEXT_READING in kinds(fed, before)


def test_a_fire_that_the_cook_calls_out_asks_for_nothing_until_it_is_lit_again(burning_desk: Desk) -> None:
    asked = {AlarmKind.RELOAD, AlarmKind.NEXT_READING}
    burning_desk.do(Kind.OUT)
    standing = stand(burning_desk).standing
    assert standing is not None
    assert standing.course.next_reading is not None
    assert not asked & kinds(standing)
    burning_desk.do(Kind.LIT)
    again = stand(burning_desk).standing
    assert again is not None
    assert AlarmKind.NEXT_READING in kinds(again)
