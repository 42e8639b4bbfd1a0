"""Done on a step of a planned supper: fire and oven go into the log, the plan gets its mark, and both may be undone."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.cooking.supper.dishes import Dish, HandsOn, Heat, Place
from cookstove_gui.cooking.supper.moments import Moment, MomentKind
from cookstove_gui.cooking.supper.plan import Margin, Plan, PlannedStep, StepKind
from cookstove_gui.desk import Desk
from cookstove_gui.desk.plan.supper_done import do_moment, follow_log, name_in_oven, take_back
from cookstove_gui.stove.entries import Kind
from tests.held_clock import HeldClock

PIE = Dish(
    key="pie",
    name="Sunday pie",
    parts=(HandsOn(what="crust", minutes=20), Heat(what="bake", place=Place.OVEN, minutes=40, bake="fruit_pie")),
)
STEW = Dish(key="stew", name="Stew", parts=(Heat(what="simmer", place=Place.TOP, minutes=60, task="simmer"),))
KEYS = {MomentKind.BEGIN: "pie/0", MomentKind.PUT_ON: "stew/0"}


def moment(desk: Desk, kind: MomentKind) -> Moment:
    """A moment of a plan that is in force."""
    now, key = desk.clock(), KEYS.get(kind, "pie/1")
    dish, part = (PIE, int(key[-1])) if key.startswith("pie") else (STEW, 0)
    step = PlannedStep(
        key=key, kind=StepKind.HEAT, what=dish.parts[part].what, dish=dish.key, begin=now,
        end=now + timedelta(minutes=40),
    )  # fmt: skip
    if desk.supper.supper is None:
        desk.supper.set_table(now + timedelta(hours=2))
        desk.supper.add(PIE)
        desk.supper.add(STEW)
    supper = desk.supper.supper
    assert supper is not None
    plan = Plan(
        table_at=supper.table_at, made_at=now, margin=Margin.USUAL, dishes=(PIE, STEW), steps=(step,), chance=None
    )  # fmt: skip
    assert desk.supper.take(supper, plan)
    return Moment(at=now, kind=kind, step=step)


def oven_rows(desk: Desk) -> list[tuple[Kind, str]]:
    kinds = (Kind.OVEN_IN, Kind.TURNED, Kind.OVEN_OUT)
    return [(row.kind, row.note) for row in desk.entries if row.kind in kinds]


def test_what_goes_in_is_turned_and_comes_out_stands_in_the_log_by_the_name_of_its_bake(
    burning_desk: Desk, held_clock: HeldClock
) -> None:
    for kind in (MomentKind.PUT_IN, MomentKind.TURN, MomentKind.TAKE_OUT):
        do_moment(burning_desk, moment(burning_desk, kind))
        held_clock.pass_minutes(15)
    rows = oven_rows(burning_desk)
    assert [kind for kind, _ in rows] == [Kind.OVEN_IN, Kind.TURNED, Kind.OVEN_OUT]
    (name,) = {note for _, note in rows}
    assert "pie" in name.casefold()
    assert name != "Sunday pie"  # the catalogue's name, so that its core is followed
    assert burning_desk.supper.supper is not None
    baked = burning_desk.supper.supper.mark("pie/1")
    assert None not in (baked.began, baked.turned, baked.ended)


@pytest.mark.parametrize("kind", [MomentKind.TURN, MomentKind.TAKE_OUT])
def test_what_never_went_in_by_the_log_is_neither_turned_nor_taken_out_there(
    burning_desk: Desk, kind: MomentKind
) -> None:
    do_moment(burning_desk, moment(burning_desk, kind))
    assert oven_rows(burning_desk) == []


def test_what_stands_in_the_log_already_does_not_go_in_twice(burning_desk: Desk) -> None:
    do_moment(burning_desk, moment(burning_desk, MomentKind.PUT_IN))
    do_moment(burning_desk, moment(burning_desk, MomentKind.PUT_IN))
    assert len(oven_rows(burning_desk)) == 1


@pytest.mark.parametrize("kind", [MomentKind.BEGIN, MomentKind.PUT_ON])
def test_work_and_pots_are_marked_alone(burning_desk: Desk, kind: MomentKind) -> None:
    rows = burning_desk.entries
    do_moment(burning_desk, moment(burning_desk, kind))
    assert burning_desk.entries == rows
    assert burning_desk.supper.supper is not None
    assert burning_desk.supper.supper.marks


def test_without_a_session_nothing_is_logged(held_desk: Desk) -> None:
    do_moment(held_desk, moment(held_desk, MomentKind.PUT_IN))
    assert held_desk.entries == ()
    assert held_desk.supper.supper is not None
    assert held_desk.supper.supper.mark("pie/1").began == held_desk.clock()


def test_taken_back_the_row_goes_with_the_mark_but_an_older_row_stays(
    burning_desk: Desk, held_clock: HeldClock
) -> None:
    rows = burning_desk.entries
    do_moment(burning_desk, moment(burning_desk, MomentKind.PUT_IN))
    take_back(burning_desk)
    assert burning_desk.entries == rows
    assert burning_desk.supper.supper is not None
    assert not burning_desk.supper.supper.marks
    do_moment(burning_desk, moment(burning_desk, MomentKind.PUT_IN))
    held_clock.pass_minutes(3)
    burning_desk.do(Kind.AIR, value="0.5")
    take_back(burning_desk)
    assert oven_rows(burning_desk)
    assert not burning_desk.supper.supper.marks
    take_back(burning_desk)  # nothing is left to take back


def test_what_the_catalogue_does_not_have_goes_by_its_dish(burning_desk: Desk) -> None:
    found = moment(burning_desk, MomentKind.PUT_IN)
    plan = burning_desk.supper.plan
    supper = burning_desk.supper.supper
    assert plan is not None
    assert supper is not None
    plain = replace(PIE, parts=(PIE.parts[0], Heat(what="bake", place=Place.OVEN, minutes=40)))
    assert burning_desk.supper.take(supper, replace(plan, dishes=(plain, STEW)))
    do_moment(burning_desk, found)
    assert oven_rows(burning_desk) == [(Kind.OVEN_IN, "Sunday pie")]


def typed(desk: Desk, kind: Kind, name: str) -> None:
    desk.do(kind, note=name)
    follow_log(desk)


def pie(desk: Desk) -> tuple[object, object, object]:
    assert desk.supper.supper is not None
    mark = desk.supper.supper.mark("pie/1")
    return mark.began, mark.turned, mark.ended


@pytest.mark.parametrize("name", ["sunday pie", "", "of its bake"])
def test_what_is_typed_of_the_oven_is_done_in_the_plan(burning_desk: Desk, held_clock: HeldClock, name: str) -> None:
    step = moment(burning_desk, MomentKind.PUT_IN).step
    assert burning_desk.supper.plan is not None
    name = name_in_oven(burning_desk.supper.plan, step) if name == "of its bake" else name
    begun = burning_desk.clock()
    typed(burning_desk, Kind.OVEN_IN, name or "Sunday pie")
    assert pie(burning_desk) == (begun, None, None)
    held_clock.pass_minutes(20)
    typed(burning_desk, Kind.TURNED, name)
    held_clock.pass_minutes(20)
    typed(burning_desk, Kind.OVEN_OUT, name)
    assert pie(burning_desk) == (begun, begun + timedelta(minutes=20), begun + timedelta(minutes=40))


def test_what_is_undone_in_the_log_is_not_done_in_the_plan_until_it_is_redone(burning_desk: Desk) -> None:
    moment(burning_desk, MomentKind.PUT_IN)
    typed(burning_desk, Kind.OVEN_IN, "Sunday pie")
    burning_desk.undo()
    follow_log(burning_desk)
    assert pie(burning_desk) == (None, None, None)
    burning_desk.redo()
    follow_log(burning_desk)
    assert pie(burning_desk) == (burning_desk.clock(), None, None)


def test_another_food_or_what_never_went_in_marks_nothing(burning_desk: Desk, held_clock: HeldClock) -> None:
    moment(burning_desk, MomentKind.PUT_IN)
    typed(burning_desk, Kind.OVEN_IN, "custard")
    typed(burning_desk, Kind.OVEN_OUT, "Sunday pie")
    assert pie(burning_desk) == (None, None, None)
    typed(burning_desk, Kind.OVEN_IN, "Sunday pie")
    begun = burning_desk.clock()
    held_clock.pass_minutes(5)
    typed(burning_desk, Kind.OVEN_IN, "Sunday pie")  # a second one of it is none of the plan's
    assert pie(burning_desk) == (begun, None, None)
