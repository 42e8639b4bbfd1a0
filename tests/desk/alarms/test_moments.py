"""What calls for the cook: the reading, the heat, what is in the oven, and the steps of the plan."""

from dataclasses import replace
from datetime import datetime, timedelta

from cookstove_gui.advice import JUST_READ, Subject, advise
from cookstove_gui.cooking.supper.alarms import Alarm, AlarmKind
from cookstove_gui.cooking.supper.dishes import Dish, HandsOn, Heat, Place, Wait
from cookstove_gui.cooking.supper.plan import FireStep, Margin, Plan, PlannedStep, StepKind
from cookstove_gui.desk import Desk
from cookstove_gui.desk.alarms.moments import LEAVING_LEAD, alarms_of
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import Kind
from tests.desk.conftest import stand
from tests.held_clock import HeldClock

PIE = Dish(
    key="pie",
    name="Apple pie",
    parts=(
        HandsOn(what="roll", minutes=20),
        Heat(what="bake", place=Place.OVEN, minutes=40, bake="fruit_pie"),
        Wait(what="cool", minutes=30, shortest=10, longest=90),
    ),
)
STEW = Dish(key="stew", name="Stew", parts=(Heat(what="simmer", place=Place.TOP, minutes=60, task="simmer"),))


def standing_of(desk: Desk) -> Standing:
    found = stand(desk).standing
    assert found is not None
    return found


def kinds(alarms: tuple[Alarm, ...]) -> list[AlarmKind]:
    return [one.kind for one in alarms]


def only(alarms: tuple[Alarm, ...], kind: AlarmKind) -> Alarm:
    (found,) = [one for one in alarms if one.kind is kind]
    return found


def planned(now: datetime, *steps: PlannedStep) -> Plan:
    return Plan(
        table_at=now + timedelta(hours=2),
        made_at=now,
        margin=Margin.USUAL,
        dishes=(PIE, STEW),
        steps=steps,
        chance=None,
    )


def step(now: datetime, key: str, kind: StepKind, what: str, begin: float, end: float, **others: object) -> PlannedStep:
    dish = key.partition("/")[0] if kind is not StepKind.FIRE else ""
    return PlannedStep(
        key=key,
        kind=kind,
        what=what,
        dish=dish,
        begin=now + timedelta(minutes=begin),
        end=now + timedelta(minutes=end),
        **others,  # type: ignore[arg-type]
    )


def test_the_next_reading_is_an_alarm_at_its_time(burning_desk: Desk) -> None:
    standing = standing_of(burning_desk)
    wanted = standing.course.next_reading
    assert wanted is not None
    alarm = only(alarms_of(standing, None), AlarmKind.NEXT_READING)
    assert alarm.about == wanted.spot
    assert alarm.at == max(standing.course.asked_at + timedelta(minutes=wanted.in_min), standing.now + JUST_READ)


def test_the_next_reading_does_not_ring_while_the_walk_is_going_on(burning_desk: Desk) -> None:
    alarm = only(alarms_of(standing_of(burning_desk), None), AlarmKind.NEXT_READING)
    assert alarm.at >= burning_desk.clock() + JUST_READ


def test_the_heat_wanted_calls_once_it_is_likely_there_until_the_oven_is_read(
    burning_desk: Desk, held_clock: HeldClock
) -> None:
    burning_desk.choose_band("330-400")
    coming = only(alarms_of(standing_of(burning_desk), None), AlarmKind.BAND_REACHED)
    assert coming.at > held_clock.now
    held_clock.pass_minutes(12)
    come = only(alarms_of(standing_of(burning_desk), None), AlarmKind.BAND_REACHED)
    assert come.at <= held_clock.now
    burning_desk.read("450", spot="top_front_left")
    assert AlarmKind.BAND_REACHED in kinds(alarms_of(standing_of(burning_desk), None))
    burning_desk.read("345", spot="oven_centre")
    assert AlarmKind.BAND_REACHED not in kinds(alarms_of(standing_of(burning_desk), None))


def test_what_is_in_the_oven_calls_to_be_turned_and_taken_out(burning_desk: Desk) -> None:
    burning_desk.do(Kind.OVEN_IN, note="pan of biscuits")
    standing = standing_of(burning_desk)
    (inside,) = standing.bakes
    assert inside.likely is not None
    found = alarms_of(standing, None)
    assert only(found, AlarmKind.TAKE_OUT).at == inside.likely
    assert AlarmKind.BAND_REACHED not in kinds(found)


def test_the_cooks_own_reminder_rings_until_it_was_looked_at(burning_desk: Desk, held_clock: HeldClock) -> None:
    burning_desk.do(Kind.OVEN_IN, note="casserole of beans")
    burning_desk.do(Kind.DUE, value="20")
    due = held_clock.now + timedelta(minutes=20)
    alarm = only(alarms_of(standing_of(burning_desk), None), AlarmKind.LOOK_AT)
    assert (alarm.at, alarm.about) == (due, "casserole of beans")


def test_while_first_fires_run_only_the_reading_calls(burning_desk: Desk) -> None:
    burning_desk.choose_band("330-400")
    assert AlarmKind.BAND_REACHED in kinds(alarms_of(standing_of(burning_desk), None))
    burning_desk.save_stove(replace(burning_desk.stove, is_new=True))
    assert set(kinds(alarms_of(standing_of(burning_desk), None))) <= {AlarmKind.NEXT_READING}


def test_no_reading_calls_while_a_first_fire_that_counts_goes_cold(burning_desk: Desk) -> None:
    burning_desk.save_stove(replace(burning_desk.stove, is_new=True))
    standing = standing_of(burning_desk)
    fires = standing.first_fires
    assert kinds(alarms_of(standing, None)) == [AlarmKind.NEXT_READING]
    cooling = replace(standing, first_fires=replace(fires, just_done=fires.stages[0]))
    assert advise(cooling).subject is Subject.LET_COOL
    assert not alarms_of(cooling, None)


def test_wood_calls_when_the_advice_says_so(burning_desk: Desk) -> None:
    burning_desk.choose_band("230-420")
    standing = standing_of(burning_desk)
    advice = advise(standing)
    by = advice.by if advice.subject is Subject.WOOD_DUE else advice.wood_by
    assert by is not None
    assert only(alarms_of(standing, None), AlarmKind.RELOAD).at == by.at
    untold = replace(standing, rows=tuple(row for row in standing.rows if row.kind is not Kind.WOOD))
    assert advise(untold) == advice
    assert AlarmKind.RELOAD not in kinds(alarms_of(untold, None))  # who tells of no load may have put one on just now


def test_an_oven_that_cools_out_of_its_heat_during_a_bake_calls_ten_minutes_before(burning_desk: Desk) -> None:
    burning_desk.choose_band("290-320")
    burning_desk.do(Kind.OVEN_IN, note="large roast, long and slow")
    standing = standing_of(burning_desk)
    leaves = standing.outlook.band.line_leaves_min
    assert leaves is not None
    alarm = only(alarms_of(standing, None), AlarmKind.LEAVING_BAND)
    assert alarm.at == standing.now + timedelta(minutes=leaves) - LEAVING_LEAD


def test_an_oven_that_leaves_its_heat_after_the_bake_does_not_call(burning_desk: Desk) -> None:
    burning_desk.choose_band("290-320")
    burning_desk.do(Kind.OVEN_IN, note="pan of biscuits")
    standing = standing_of(burning_desk)
    (inside,) = standing.bakes
    assert inside.likely is not None
    done_min = (inside.likely - standing.now).total_seconds() / 60.0
    for leaves, calls in ((done_min - 1.0, True), (done_min + 1.0, False)):
        band = replace(standing.outlook.band, line_leaves_min=leaves)
        moved = replace(standing, outlook=replace(standing.outlook, band=band))
        assert (AlarmKind.LEAVING_BAND in kinds(alarms_of(moved, None))) is calls


def test_each_step_of_a_plan_has_its_alarm(held_clock: HeldClock) -> None:
    now = held_clock.now
    plan = planned(
        now,
        step(now, "fire/light", StepKind.FIRE, FireStep.LIGHT, 0, 0),
        step(now, "pie/0", StepKind.HANDS, "roll", 10, 30),
        step(now, "fire/wood/1", StepKind.FIRE, FireStep.WOOD, 35, 35),
        step(now, "pie/1", StepKind.HEAT, "bake", 40, 80, turn_at=now + timedelta(minutes=60)),
        step(now, "stew/0", StepKind.HEAT, "simmer", 50, 110, spot="top_back_right"),
    )
    found = [
        (one.kind, round((one.at - now).total_seconds() / 60), one.about, one.spot) for one in alarms_of(None, plan)
    ]
    assert found == [
        (AlarmKind.STEP, 0, "", ""),
        (AlarmKind.STEP, 10, "Apple pie", ""),
        (AlarmKind.RELOAD, 35, "", ""),
        (AlarmKind.PUT_IN, 40, "Apple pie", ""),
        (AlarmKind.PUT_IN, 50, "Stew", "top_back_right"),
        (AlarmKind.TURN, 60, "Apple pie", ""),
        (AlarmKind.TAKE_OUT, 80, "Apple pie", ""),
        (AlarmKind.TAKE_OUT, 110, "Stew", "top_back_right"),
    ]


def test_done_steps_and_waits_are_silent_and_begun_ones_are_not_put_in_again(held_clock: HeldClock) -> None:
    now = held_clock.now
    plan = planned(
        now,
        step(now, "pie/0", StepKind.HANDS, "roll", -30, -10, done=True),
        step(now, "pie/2", StepKind.WAIT, "cool", 40, 80),
        step(now, "pie/1", StepKind.HEAT, "bake", -5, 35, begun=True),
    )
    assert kinds(alarms_of(None, plan)) == [AlarmKind.TAKE_OUT]


def test_a_bake_in_the_log_is_followed_by_its_own_heat_not_by_the_plan(burning_desk: Desk) -> None:
    burning_desk.do(Kind.OVEN_IN, note="Apple pie")
    standing = standing_of(burning_desk)
    now = standing.now
    plan = planned(now, step(now, "pie/1", StepKind.HEAT, "bake", 0, 40, begun=True, turn_at=now))
    assert not [one for one in alarms_of(standing, plan) if one.is_planned]


def test_a_second_one_that_is_still_to_go_in_keeps_its_alarms(burning_desk: Desk) -> None:
    burning_desk.do(Kind.OVEN_IN, note="Apple pie")
    standing = standing_of(burning_desk)
    plan = planned(standing.now, step(standing.now, "pie/1", StepKind.HEAT, "bake", 50, 90))
    assert [one.kind for one in alarms_of(standing, plan) if one.is_planned] == [AlarmKind.PUT_IN, AlarmKind.TAKE_OUT]
