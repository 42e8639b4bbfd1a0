"""The picture of a planned supper: where its axis runs, what each step says, and which heats are still wanted."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.supper.alarms import AlarmKind
from cookstove_gui.cooking.supper.dishes import Dish, HandsOn, Heat, Place, Wait
from cookstove_gui.cooking.supper.marks import Mark
from cookstove_gui.cooking.supper.plan import Clash, FireStep, Margin, Move, OvenAhead, Plan, PlannedStep, StepKind
from cookstove_gui.desk import Desk
from cookstove_gui.desk.alarms.kept import choose_kind, turn_sound
from cookstove_gui.desk.plan.supper_next import NextStep
from cookstove_gui.desk.plan.supper_shown import Block, SupperShown, supper_shown
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import clock_text, kelvin
from tests.desk.conftest import stand
from tests.held_clock import HeldClock

LOW, HIGH = float(kelvin(365.0, "F")), float(kelvin(405.0, "F"))
BREAD = Dish(
    key="bread",
    name="Bread",
    makes="2 loaves",
    parts=(
        HandsOn(what="shape", minutes=20),
        Heat(what="bake", place=Place.OVEN, minutes=40, low=LOW, high=HIGH),
        Wait(what="cool", minutes=30, shortest=10, longest=90),
    ),
)
STEW = Dish(key="stew", name="Stew", parts=(Heat(what="simmer", place=Place.TOP, minutes=60, task="simmer"),))
Shown = Callable[..., SupperShown]


def step(key: str, kind: StepKind, what: str, begin: float, end: float, **others: object) -> dict[str, object]:
    dish = key.partition("/")[0] if kind is not StepKind.FIRE else ""
    return {"key": key, "kind": kind, "what": what, "dish": dish, "begin": begin, "end": end, **others}


def put_in(begin: float = 40, end: float = 80, **others: object) -> dict[str, object]:
    return step("bread/1", StepKind.HEAT, "bake", begin, end, **others)


def plan_on(desk: Desk, *steps: dict[str, object], table: float = 120, **others: object) -> None:
    """Bring a plan into force; its minutes count from now."""
    now = desk.clock()

    def at(minutes: object) -> datetime:
        assert isinstance(minutes, int | float)
        return now + timedelta(minutes=minutes)

    desk.supper.set_table(at(table))
    supper = desk.supper.supper
    assert supper is not None
    made = tuple(
        PlannedStep(
            **{name: at(value) if name in ("begin", "end", "turn_at") else value for name, value in one.items()}
        )  # type: ignore[arg-type]
        for one in steps
    )
    plan = Plan(
        table_at=at(table), made_at=now, margin=Margin.USUAL, dishes=(BREAD, STEW), steps=made, chance=None,
    )  # fmt: skip
    assert desk.supper.take(supper, replace(plan, **others))  # type: ignore[arg-type]


def shown(desk: Desk, *steps: dict[str, object], **others: object) -> SupperShown:
    plan_on(desk, *steps, **others)  # type: ignore[arg-type]
    found = supper_shown(desk)
    assert found is not None
    return found


def block(desk: Desk, one: dict[str, object], **others: object) -> Block:
    (found,) = [each for row in shown(desk, one, **others).rows for each in row.blocks]
    return found


def told(steps: tuple[NextStep, ...]) -> tuple[tuple[str, str], ...]:
    return tuple((one.clock, one.words) for one in steps)


def clock(desk: Desk, minutes: float) -> str:
    return clock_text(desk.clock() + timedelta(minutes=minutes), desk.offset_minutes)


def ahead(since: datetime) -> OvenAhead:
    rising = np.array([400.0, 450.0])
    return OvenAhead(
        since=since, minutes=np.array([0.0, 60.0]),
        p10=rising - 20, p25=rising - 10, p50=rising, p75=rising + 10, p90=rising + 20,
    )  # fmt: skip


def test_without_a_plan_nothing_is_drawn(held_desk: Desk) -> None:
    assert supper_shown(held_desk) is None


@pytest.mark.parametrize(("begin", "start"), [(40, -10), (150, -10), (151, 141), (-60, -70), (-90, -98)])
def test_the_axis_begins_ten_minutes_before_now_or_before_a_first_step_that_is_far_off(
    held_desk: Desk, begin: float, start: float
) -> None:
    assert shown(held_desk, put_in(begin, 400), table=420).start == pytest.approx(start)


@pytest.mark.parametrize(("lit_since", "start"), [(39, -49), (80, -90), (200, -98)])
def test_while_a_fire_burns_the_axis_shows_it_from_the_match_but_no_more_than_98_minutes(
    held_desk: Desk, held_clock: HeldClock, lit_since: float, start: float
) -> None:
    held_desk.do(Kind.LIT)
    held_clock.pass_minutes(lit_since)
    assert shown(held_desk, put_in()).start == pytest.approx(start)


@pytest.mark.parametrize(("end", "table", "last"), [(80, 120, 140), (135, 120, 155)])
def test_the_axis_ends_twenty_minutes_after_the_table_or_the_last_step(
    held_desk: Desk, end: float, table: float, last: float
) -> None:
    found = shown(held_desk, put_in(40, end), table=table)
    assert (found.table, found.end) == (pytest.approx(table), pytest.approx(last))


def test_a_plan_without_steps_is_drawn_around_its_table(held_desk: Desk) -> None:
    found = shown(held_desk)
    assert (found.start, found.end) == (pytest.approx(-10), pytest.approx(140))
    assert found.next == ()


def test_each_dish_has_a_row_with_its_own_steps(held_desk: Desk) -> None:
    found = shown(
        held_desk,
        step("bread/0", StepKind.HANDS, "shape", 10, 30),
        put_in(),
        step("stew/0", StepKind.HEAT, "simmer", 50, 110, spot="top_back_right"),
        step("fire/wood/1", StepKind.FIRE, FireStep.WOOD, 5, 5),
    )
    assert [(row.key, row.name, [one.step for one in row.blocks]) for row in found.rows] == [
        ("bread", "Bread", ["bread/0", "bread/1"]),
        ("stew", "Stew", ["stew/0"]),
    ]
    assert [row.under for row in found.rows] == ["2 loaves", "top back right"]


def test_a_bake_to_come_shows_its_heat_and_both_clocks(held_desk: Desk) -> None:
    found = block(held_desk, put_in(turn_at=60, chance=0.7, spot="oven_centre"))
    assert (found.words, found.kind) == ("bake", StepKind.HEAT)
    assert (found.begin, found.end, found.turn) == (pytest.approx(40), pytest.approx(80), pytest.approx(60))
    assert found.heat == pytest.approx(kelvin(385.0, "F"))
    assert (found.clock, found.out) == (clock(held_desk, 40), clock(held_desk, 80))
    assert (found.past, found.is_own, found.is_short) == (False, False, False)
    assert found.said == (
        f"bread: bake, {clock(held_desk, 40)} to {clock(held_desk, 80)}, oven centre; fails 3 times in 10"
    )


def test_a_bake_that_is_in_shows_when_it_comes_out_and_one_that_is_done_neither(held_desk: Desk) -> None:
    inside = block(held_desk, put_in(-5, 35, begun=True))
    assert (inside.clock, inside.out, inside.past) == ("", clock(held_desk, 35), False)
    done = block(held_desk, put_in(-60, -20, done=True, is_own=True))
    assert (done.clock, done.out, done.past, done.is_own) == ("", "", True, True)
    assert done.heat is not None


def test_a_pot_on_the_cooktop_has_no_clock_at_its_end_and_work_for_the_hands_has_none_at_all(held_desk: Desk) -> None:
    pot = block(held_desk, step("stew/0", StepKind.HEAT, "simmer", 50, 110))
    assert (pot.clock, pot.out) == (clock(held_desk, 50), "")
    assert pot.heat is not None
    for one in (step("bread/0", StepKind.HANDS, "shape", 10, 30), step("bread/2", StepKind.WAIT, "cool", 10, 30)):
        plain = block(held_desk, one)
        assert (plain.heat, plain.clock, plain.out, plain.turn) == (None, "", "", None)
        assert plain.said == f"bread: {one['what']}, {clock(held_desk, 10)} to {clock(held_desk, 30)}"


def test_only_the_step_that_finds_no_heat_is_short_of_it(held_desk: Desk) -> None:
    clash = Clash(dish="bread", late_min=0.0, no_heat="bread/1")
    found = shown(held_desk, step("bread/0", StepKind.HANDS, "shape", 10, 30), put_in(), clashes=(clash,))
    assert [one.is_short for one in found.rows[0].blocks] == [False, True]
    assert [one.is_short for one in found.wanted] == [True]
    assert found.does_not_fit
    assert found.fits[0] == "Too little heat;"
    fitting = shown(held_desk, put_in(chance=0.9))
    assert not fitting.does_not_fit
    assert not fitting.wanted[0].is_short
    assert fitting.fits[0] == "Everything fits;"


@pytest.mark.parametrize(("unit", "words"), [("F", "bake 365–405"), ("C", "bake 185–207")])
def test_a_heat_wanted_of_the_oven_is_a_box_in_time_and_degrees(held_desk: Desk, unit: str, words: str) -> None:
    held_desk.set_unit("C" if unit == "C" else "F")
    (found,) = shown(held_desk, put_in()).wanted
    assert (found.begin, found.end) == (pytest.approx(40), pytest.approx(80))
    assert (found.low, found.high, found.words) == (pytest.approx(LOW), pytest.approx(HIGH), words)


def test_neither_pots_nor_hands_nor_what_is_done_want_the_oven(held_desk: Desk) -> None:
    others = (
        step("stew/0", StepKind.HEAT, "simmer", 50, 110),
        step("bread/0", StepKind.HANDS, "shape", 10, 30),
        step("fire/light", StepKind.FIRE, FireStep.LIGHT, 0, 0),
    )
    assert shown(held_desk, *others, put_in(-60, -20, done=True)).wanted == ()
    assert len(shown(held_desk, *others, put_in()).wanted) == 1


def test_what_is_to_be_done_to_the_fire_has_its_mark(held_desk: Desk) -> None:
    found = shown(
        held_desk,
        step("fire/light", StepKind.FIRE, FireStep.LIGHT, 5, 5),
        step("fire/wood/1", StepKind.FIRE, FireStep.WOOD, 30, 30),
        step("fire/bypass", StepKind.FIRE, FireStep.BYPASS_SHUT, 40, 40),
        put_in(45, 85),
        step("fire/let_go", StepKind.FIRE, FireStep.LET_GO, 60, 60),
    ).fire
    assert [(round(one.minute), one.kind, one.words, one.opening) for one in found] == [
        (5, Kind.LIT, "light", 0.0),
        (30, Kind.WOOD, "wood", 0.0),
        (40, Kind.BYPASS, "bypass shut", 0.0),
        (60, Kind.AIR, "let go", 0.0),
    ]


def test_the_foot_says_what_is_due_now_then_the_next_five_with_their_clocks(held_desk: Desk) -> None:
    wood = [step(f"fire/wood/{one}", StepKind.FIRE, FireStep.WOOD, 60 + one, 60 + one) for one in range(1, 7)]
    found = shown(held_desk, step("bread/0", StepKind.HANDS, "shape", 1, 21), put_in(), *wood).next
    assert told(found[:3]) == (
        ("now", "bread: shape"),
        (clock(held_desk, 40), "bread in, if at 340"),
        (clock(held_desk, 61), "add wood"),
    )
    assert len(found) == 6


def test_a_load_and_a_setting_of_the_air_name_their_amount(held_desk: Desk) -> None:
    found = shown(
        held_desk,
        step("fire/wood/1", StepKind.FIRE, FireStep.WOOD, 30, 30, splits=2, wood=1.2),
        step("fire/air/30", StepKind.FIRE, FireStep.AIR, 40, 40, opening=0.3),
    )
    assert [(one.words, one.count, one.opening) for one in found.fire] == [("2 splits", 2, 0.0), ("air ¼", 1, 0.3)]
    assert [one.words for one in found.next] == ["add 2 splits, 2.6 lb", "set the air to 30 % open"]


def test_a_bell_whose_sound_was_put_off_is_struck(held_desk: Desk) -> None:
    wood = step("fire/wood/1", StepKind.FIRE, FireStep.WOOD, 5, 5)
    bell = shown(held_desk, put_in(), wood).rows[0].blocks[0].bell
    assert bell is not None
    assert not bell.is_silent
    turn_sound(held_desk, bell.key)
    found = shown(held_desk, put_in(), wood)
    (block,) = found.rows[0].blocks
    assert block.bell is not None
    assert block.bell.is_silent
    assert block.out_bell is not None
    assert not block.out_bell.is_silent
    assert found.fire[0].bell is not None
    assert not found.fire[0].bell.is_silent
    assert [one.bell.is_silent for one in found.next if one.bell] == [False, True, False]  # wood, in, out


def test_once_all_is_cooked_it_says_how_it_turned_out_and_not_what_does_not_fit(held_desk: Desk) -> None:
    now = held_desk.clock()
    held_desk.supper.set_table(now + timedelta(minutes=5))
    held_desk.supper.add(BREAD)
    clash = Clash(dish="bread", late_min=15.0)
    for ended, fits, fails in ((None, "Does not fit;", True), (now - timedelta(minutes=5), "All is cooked.", False)):
        held_desk.supper.set_mark(Mark(step="bread/1", began=now - timedelta(minutes=45), ended=ended))
        done = put_in(-45, -5, done=ended is not None)
        cool = step("bread/2", StepKind.WAIT, "cool", -5, 25, begun=True)
        found = shown(held_desk, done, cool, table=5, clashes=(clash,), dishes=(BREAD,))
        assert (found.fits[0], found.does_not_fit, bool(found.source)) == (fits, fails, fails)
    assert found.fits[1] == f"On the table at {clock(held_desk, 5)}, as planned."


def test_what_calls_for_nobody_has_no_bell(held_desk: Desk) -> None:
    wood = step("fire/wood/1", StepKind.FIRE, FireStep.WOOD, 5, 5)
    for kind, without in ((AlarmKind.RELOAD, {"wood"}), (AlarmKind.PUT_IN, {"in"}), (AlarmKind.TAKE_OUT, {"out"})):
        choose_kind(held_desk, kind, False)
        found = shown(held_desk, put_in(), wood)
        (block,) = found.rows[0].blocks
        bells = {"wood": found.fire[0].bell, "in": block.bell, "out": block.out_bell}
        assert {name for name, bell in bells.items() if bell is None} == without
        assert [one.bell is None for one in found.next] == [name in without for name in ("wood", "in", "out")]
        choose_kind(held_desk, kind, True)


def test_work_that_is_under_way_stands_at_now_behind_what_is_due(held_desk: Desk) -> None:
    found = shown(held_desk, step("bread/0", StepKind.HANDS, "shape", -5, 15, begun=True), put_in(0, 40)).next
    assert told(found) == (
        ("now", "bread in, if at 340"),
        ("now", "bread: shape"),
        (clock(held_desk, 40), "bread out, if done"),
    )


def test_where_nothing_is_due_every_line_has_a_clock(held_desk: Desk) -> None:
    found = shown(held_desk, step("bread/0", StepKind.HANDS, "shape", 10, 30)).next
    assert told(found) == ((clock(held_desk, 10), "bread: shape"),)


def test_what_moved_and_what_the_times_rest_on_is_said(held_desk: Desk) -> None:
    now = held_desk.clock()
    move = Move(step="bread/1", was=now + timedelta(minutes=30), now=now + timedelta(minutes=40), why="heat", at=now)
    found = shown(held_desk, put_in(), moved=(move,), firings=3)
    assert found.moved.startswith(f"Bread: bake at {clock(held_desk, 40)}, was {clock(held_desk, 30)}: ")
    assert found.source == "Nothing is lit: planned from this stove's own rises in 3 fires."


def test_before_a_fire_only_the_projection_of_the_oven_is_drawn(held_desk: Desk) -> None:
    assert shown(held_desk, put_in()).oven is None
    found = shown(held_desk, put_in(), oven=ahead(held_desk.clock() + timedelta(minutes=25)))
    assert found.oven is not None
    assert (found.oven.past, found.oven.read, found.oven_now, found.done) == (None, (), None, ())
    assert found.oven.minutes.tolist() == pytest.approx([25.0, 85.0])
    lines = [line[0] for line in (found.oven.p10, found.oven.p25, found.oven.p50, found.oven.p75, found.oven.p90)]
    assert lines == [380.0, 390.0, 400.0, 410.0, 420.0]


def test_while_the_fire_burns_the_oven_was_and_was_read_too(burning_desk: Desk, held_clock: HeldClock) -> None:
    stand(burning_desk)
    held_clock.pass_minutes(4)
    found = shown(burning_desk, put_in(), oven=ahead(burning_desk.clock()))
    standing = burning_desk.standing
    assert standing is not None
    assert found.oven is not None
    assert found.oven.past is not None
    assert [(round(minute), heat) for minute, heat in found.oven.read] == [
        (-30, pytest.approx(kelvin(120.0, "F"))),
        (-17, pytest.approx(kelvin(240.0, "F"))),
        (-4, pytest.approx(kelvin(300.0, "F"))),
    ]
    minutes, heats = found.oven.past
    assert -43.0 <= minutes[0] < -38.0  # since the match
    assert minutes[-1] <= 0.0
    assert abs(np.interp(-4.0, minutes, heats) - kelvin(300.0, "F")) < 15.0
    assert found.oven_now == standing.outlook.oven.p50
    assert [one.kind for one in found.done] == [Kind.LIT, Kind.AIR, Kind.WOOD]


def test_of_a_fire_that_is_over_nothing_is_drawn(burning_desk: Desk, held_clock: HeldClock) -> None:
    stand(burning_desk)
    held_clock.pass_minutes(24 * 60)
    assert not burning_desk.is_live
    assert burning_desk.standing is not None
    found = shown(burning_desk, put_in(), oven=ahead(burning_desk.clock()))
    assert found.oven is not None
    assert (found.oven.past, found.oven.read, found.oven_now, found.done) == (None, (), None, ())
    assert found.start == pytest.approx(-10)
