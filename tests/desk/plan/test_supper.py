"""The meal that is planned: kept at each change, marked by one key, taken up at the next start."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.cooking.supper.dish_text import usual_dishes
from cookstove_gui.cooking.supper.moments import MomentKind, moments
from cookstove_gui.cooking.supper.plan import Margin, Plan
from cookstove_gui.desk import Changed, Desk
from cookstove_gui.desk.heading import shown_headline, shown_rungs
from cookstove_gui.desk.logbook.opened import asked_about, opened
from cookstove_gui.desk.plan.supper import SupperTable, suppers_between
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.supper import SupperInputs, plan_supper
from tests.desk.conftest import stand
from tests.held_clock import HeldClock

USUAL = {dish.key: dish for dish in usual_dishes()}


def wanted(desk: Desk, *keys: str, hours: float = 4.0) -> SupperTable:
    """A meal of usual dishes."""
    desk.supper.set_table(desk.clock() + timedelta(hours=hours))
    for key in keys:
        desk.supper.add(USUAL[key])
    return desk.supper


def planned(desk: Desk) -> Plan:
    """The plan as the window has it made."""
    supper = desk.supper.supper
    assert supper is not None
    plan = plan_supper(
        SupperInputs(
            supper=supper, asked=desk.inputs(), standing=desk.standing, sessions=tuple, before=desk.supper.plan
        )
    )  # fmt: skip
    assert desk.supper.take(supper, plan)
    return plan


def again(desk: Desk) -> Desk:
    """The program started again on the same logbook."""
    return Desk(desk.logbook, desk.clock)


def test_without_a_time_there_is_no_meal(held_desk: Desk) -> None:
    assert held_desk.supper.kept is None
    with pytest.raises(InputProblem, match="when you want to eat"):
        held_desk.supper.add(USUAL["greens"])


def test_a_meal_its_plan_and_what_was_done_survive_a_restart(burning_desk: Desk) -> None:
    stand(burning_desk)
    table = wanted(burning_desk, "greens", "apple_pie")
    table.choose_margin(Margin.SAFE)
    plan = planned(burning_desk)
    first = next(moment for moment in moments(plan) if moment.kind is MomentKind.BEGIN)
    table.mark(first)
    other = again(burning_desk).supper
    assert other.supper == table.supper
    assert other.plan is not None
    assert other.plan.steps == plan.steps
    assert other.supper is not None
    assert other.supper.margin is Margin.SAFE
    assert other.supper.mark(first.step.key).ended == burning_desk.clock()


def test_marks_follow_what_a_moment_calls_for(burning_desk: Desk, held_clock: HeldClock) -> None:
    stand(burning_desk)
    table = wanted(burning_desk, "apple_pie", hours=1.75)
    for kind in (MomentKind.BEGIN, MomentKind.PUT_IN, MomentKind.TURN, MomentKind.TAKE_OUT):
        plan = planned(burning_desk)
        moment = next(one for one in moments(plan) if one.kind is not MomentKind.FIRE)
        assert moment.kind is kind
        table.mark(moment)
        held_clock.pass_minutes(10)
        stand(burning_desk)
    assert table.supper is not None
    baked = table.supper.mark("apple_pie/1")
    assert baked.began is not None
    assert baked.turned is not None
    assert baked.ended is not None
    assert baked.began < baked.turned < baked.ended
    plan = planned(burning_desk)
    assert [step.done for step in plan.of_dish("apple_pie")] == [True, True, False]
    assert plan.of_dish("apple_pie")[2].begun
    table.take_back()
    assert table.supper.mark("apple_pie/1").ended is None
    table.take_back()
    table.take_back()
    assert table.supper.mark("apple_pie/1").began is None


def test_a_plan_of_a_meal_that_changed_since_is_dropped(burning_desk: Desk) -> None:
    stand(burning_desk)
    table = wanted(burning_desk, "greens")
    supper = table.supper
    assert supper is not None
    plan = planned(burning_desk)
    table.add(USUAL["soup"])
    assert not table.take(supper, plan)


def test_a_step_is_set_and_freed(burning_desk: Desk) -> None:
    table = wanted(burning_desk, "greens")
    begin = burning_desk.clock() + timedelta(hours=1)
    table.set_step("greens/0", begin)
    assert table.supper is not None
    assert [own.begin for own in table.supper.own] == [begin]
    table.free_step("greens/0")
    assert table.supper.own == ()


def test_the_same_dish_twice_has_a_key_of_its_own_and_goes_with_its_marks(burning_desk: Desk) -> None:
    table = wanted(burning_desk, "greens", "greens")
    assert table.supper is not None
    assert [dish.key for dish in table.supper.dishes] == ["greens", "greens_2"]
    table.set_step("greens_2/0", burning_desk.clock())
    table.remove("greens_2")
    assert [dish.key for dish in table.supper.dishes] == ["greens"]
    assert table.supper.own == ()


def test_last_sundays_meal_can_be_had_again(held_desk: Desk, held_clock: HeldClock) -> None:
    table = wanted(held_desk, "greens", "soup", hours=2.0)
    assert table.supper is not None
    sunday = table.supper.table_at
    held_clock.pass_minutes(7 * 24 * 60)
    assert table.kept is None
    ((number, kept),) = table.earlier
    assert [dish.key for dish in kept.supper.dishes] == ["greens", "soup"]
    table.have_again(number)
    assert table.supper.table_at == sunday + timedelta(days=7)
    assert len(table.supper.dishes) == 2
    assert len(table.earlier) == 1  # the meal of a week ago is still there
    with pytest.raises(InputProblem, match="not in the logbook"):
        table.have_again(99)


def test_dishes_of_the_cooks_own_stand_first_and_can_be_forgotten(held_desk: Desk) -> None:
    table = held_desk.supper
    made = table.copy_dish(USUAL["rolls"], "Aunt's rolls")
    assert table.dishes[0] == made
    assert made.key == "aunt_s_rolls"
    assert again(held_desk).supper.dishes[0].name == "Aunt's rolls"
    assert len(table.dishes) == len(usual_dishes()) + 1
    assert table.is_own(made.key)
    table.leave_dish(made.key)
    assert table.dishes == usual_dishes()


def test_a_dish_changed_while_it_is_planned_is_changed_there_too(held_desk: Desk) -> None:
    table = wanted(held_desk, "greens")
    table.keep_dish(replace(USUAL["greens"], name="Kale"))
    assert table.supper is not None
    assert table.supper.dishes[0].name == "Kale"


def test_the_heading_says_what_the_plan_calls_for(burning_desk: Desk) -> None:
    stand(burning_desk)
    alone = shown_headline(burning_desk)
    table = wanted(burning_desk, "greens")
    table.set_step("greens/0", burning_desk.clock())
    planned(burning_desk)
    # What the band alone would have the cook prepare gives way to the plan, which knows better.
    assert shown_headline(burning_desk) == alone.replace("Shape the loaves.", "Greens: wash.")
    assert shown_rungs(burning_desk)[-1] == "Greens now."


def test_while_a_meal_is_planned_it_alone_says_what_the_hands_do(burning_desk: Desk) -> None:
    stand(burning_desk)
    assert shown_headline(burning_desk).startswith("Shape the loaves.")
    wanted(burning_desk, "greens", hours=4.0)
    planned(burning_desk)
    assert burning_desk.supper.due is None
    assert "Shape the loaves" not in shown_headline(burning_desk)


def test_with_no_fire_the_heading_says_when_to_light(held_desk: Desk) -> None:
    wanted(held_desk, "apple_pie", hours=4.0)
    planned(held_desk)
    following = held_desk.supper.next
    assert following is not None
    assert following.step.what == "light"
    clock = held_desk.edge.at(following.at)
    assert shown_headline(held_desk).endswith("light the fire.")
    assert clock in shown_headline(held_desk) or held_desk.supper.due is not None


def test_before_anything_is_read_or_done_an_open_session_does_not_speak_over_the_plan(held_desk: Desk) -> None:
    held_desk.start_session("Today")
    stand(held_desk)
    assert held_desk.is_live
    assert held_desk.standing is not None
    assert shown_headline(held_desk).startswith("Light the fire and note it")
    wanted(held_desk, "apple_pie", hours=4.0)
    planned(held_desk)
    assert shown_headline(held_desk).endswith(": light the fire.")
    assert shown_rungs(held_desk)[0] == shown_headline(held_desk)


def test_a_stove_has_meals_of_its_own(burning_desk: Desk) -> None:
    wanted(burning_desk, "greens")
    burning_desk.save_stove(stove_with_default_spots("Cabin"))
    assert burning_desk.supper.kept is None


def test_the_session_it_was_cooked_in_names_the_meal(burning_desk: Desk) -> None:
    stand(burning_desk)
    wanted(burning_desk, "greens", hours=0.5)
    session = burning_desk.session
    assert session is not None
    asked = asked_about(burning_desk, session.number)
    assert asked is not None
    assert [words for _, words in opened(asked).notes] == ["Supper planned: Greens."]
    wanted(burning_desk, hours=30.0)
    other = asked_about(burning_desk, session.number)
    assert other is not None
    assert other.suppers == ()


@pytest.mark.parametrize(("hours", "is_there"), [(6.0, True), (6.1, False)])
def test_a_meal_is_of_the_past_six_hours_after_its_table(
    held_desk: Desk, held_clock: HeldClock, hours: float, is_there: bool
) -> None:
    table = wanted(held_desk, "greens", hours=1.0)
    held_clock.pass_minutes(60 + 60 * hours)
    assert (table.kept is not None) is is_there
    assert (again(held_desk).supper.kept is not None) is is_there


def test_what_is_changed_after_a_meal_of_the_past_begins_another(held_desk: Desk, held_clock: HeldClock) -> None:
    wanted(held_desk, "greens", hours=1.0)
    held_clock.pass_minutes(24 * 60)
    table = wanted(held_desk, "soup", hours=1.0)
    assert table.supper is not None
    assert [dish.key for dish in table.supper.dishes] == ["soup"]
    assert [[dish.key for dish in kept.supper.dishes] for _, kept in table.earlier] == [["greens"]]


def test_at_most_ten_earlier_meals_are_offered_the_latest_first_and_none_without_dishes(
    held_desk: Desk, held_clock: HeldClock
) -> None:
    for day in range(12):
        wanted(held_desk, *([] if day == 10 else ["greens"]), hours=1.0)
        held_clock.pass_minutes(24 * 60)
    times = [kept.supper.table_at for _, kept in held_desk.supper.earlier]
    assert len(times) == 9  # ten, one of them without dishes
    assert times == sorted(times, reverse=True)
    assert held_clock() - times[0] == timedelta(hours=23)


def test_a_meal_had_again_keeps_its_margin_and_comes_at_the_next_such_time(
    held_desk: Desk, held_clock: HeldClock
) -> None:
    table = wanted(held_desk, "greens", hours=1.0)
    table.choose_margin(Margin.SAFE)
    assert table.supper is not None
    at = table.supper.table_at
    held_clock.pass_minutes(60 + 24 * 60)  # the very minute of the table, a day later
    ((number, _),) = table.earlier
    table.have_again(number)
    assert table.supper.table_at == at + timedelta(days=2)
    assert table.supper.margin is Margin.SAFE


def test_another_time_keeps_the_dishes_and_the_margin_is_nobodys_without_a_meal(held_desk: Desk) -> None:
    held_desk.supper.choose_margin(Margin.SAFE)
    held_desk.supper.remove("greens")
    held_desk.supper.free_step("greens/0")
    held_desk.supper.set_step("greens/0", held_desk.clock())
    held_desk.supper.take_back()
    assert held_desk.supper.kept is None
    table = wanted(held_desk, "greens")
    at = held_desk.clock() + timedelta(hours=5)
    table.set_table(at)
    assert table.supper is not None
    assert (table.supper.table_at, len(table.supper.dishes)) == (at, 1)


def test_a_meal_that_is_given_up_is_gone_after_a_restart_too(held_desk: Desk) -> None:
    table = wanted(held_desk, "greens")
    told: list[Changed] = []
    held_desk.subscribe(told.append)
    table.clear()
    assert table.kept is None
    assert told == [Changed(supper=True)]
    assert again(held_desk).supper.kept is None
    assert again(held_desk).supper.earlier == ()


def test_every_change_is_told_and_freeing_what_is_free_is_none(held_desk: Desk) -> None:
    table = wanted(held_desk, "greens")
    told: list[Changed] = []
    held_desk.subscribe(told.append)
    table.free_step("greens/0")
    assert told == []
    for change in (
        lambda: table.choose_margin(Margin.SAFE),
        lambda: table.set_step("greens/0", held_desk.clock()),
        lambda: table.free_step("greens/0"),
        lambda: table.add(USUAL["soup"]),
        lambda: table.remove("soup"),
    ):
        change()
        assert told == [Changed(supper=True)]
        told.clear()


def test_removing_a_dish_leaves_the_marks_and_times_of_the_others(burning_desk: Desk) -> None:
    table = wanted(burning_desk, "greens", "greens")
    now = burning_desk.clock()
    table.set_step("greens/0", now)
    table.set_step("greens_2/0", now)
    stand(burning_desk)
    plan = planned(burning_desk)
    for moment in [one for one in moments(plan) if one.kind is MomentKind.BEGIN]:
        table.mark(moment)
    table.set_step("greens/1", now)
    table.set_step("greens_2/1", now)
    table.remove("greens")
    assert table.supper is not None
    assert {mark.step.partition("/")[0] for mark in table.supper.marks} == {"greens_2"}
    assert [own.step for own in table.supper.own] == ["greens_2/1"]  # what was done has no time of its own any more


def test_a_step_has_one_time_of_its_own_the_latest_and_another_keeps_its_own(held_desk: Desk) -> None:
    table, now = wanted(held_desk, "greens"), held_desk.clock()
    table.set_step("greens/0", now)
    table.set_step("greens/1", now + timedelta(minutes=30))
    table.set_step("greens/0", now + timedelta(minutes=10))
    assert table.supper is not None
    assert {(own.step, own.begin) for own in table.supper.own} == {
        ("greens/0", now + timedelta(minutes=10)),
        ("greens/1", now + timedelta(minutes=30)),
    }
    table.free_step("greens/0")
    assert [own.step for own in table.supper.own] == ["greens/1"]


def test_what_is_taken_back_is_the_latest_of_all_that_was_done(burning_desk: Desk, held_clock: HeldClock) -> None:
    stand(burning_desk)
    table = wanted(burning_desk, "apple_pie", "greens", hours=1.75)
    done: list[str] = []
    for _ in range(2):
        plan = planned(burning_desk)
        moment = next(one for one in moments(plan) if one.kind is not MomentKind.FIRE and one.step.key not in done)
        table.mark(moment)
        done.append(moment.step.key)
        held_clock.pass_minutes(5)
    assert table.supper is not None
    table.take_back()
    assert {mark.step for mark in table.supper.marks} == {done[0]}
    table.take_back()
    assert table.supper.marks == ()


def test_the_fire_of_a_plan_is_logged_not_marked(held_desk: Desk) -> None:
    table = wanted(held_desk, "apple_pie")
    plan = planned(held_desk)
    before = table.supper
    table.mark(next(one for one in moments(plan) if one.kind is MomentKind.FIRE))
    assert table.supper == before


def test_until_a_new_plan_is_there_the_old_one_stays_but_not_without_dishes(held_desk: Desk) -> None:
    table = wanted(held_desk, "greens")
    plan = planned(held_desk)
    table.add(USUAL["soup"])
    assert table.plan == plan
    table.remove("soup")
    table.remove("greens")
    assert table.plan is None
    assert (table.due, table.next) == (None, None)


def test_own_dishes_stand_by_name_and_one_that_cannot_be_read_is_left_out(held_desk: Desk) -> None:
    table = held_desk.supper
    for name in ("zwieback", "Anise bread", "babka"):
        table.copy_dish(USUAL["rolls"], name)
    held_desk.logbook.suppers.keep_dish("broken", "no dish at all")
    assert [dish.name for dish in table.dishes[:3]] == ["Anise bread", "babka", "zwieback"]
    assert len(table.dishes) == len(usual_dishes()) + 3
    table.keep_dish(replace(USUAL["greens"], name="Kale"))
    assert len(table.dishes) == len(usual_dishes()) + 3  # the changed one stands for the usual one
    assert not table.is_own("soup")


def test_another_windows_change_is_taken_up_once(held_desk: Desk) -> None:
    table = wanted(held_desk, "greens")
    other = again(held_desk)
    assert not other.supper.read_again()
    table.add(USUAL["soup"])
    assert other.supper.read_again()
    assert other.supper.supper == table.supper
    assert not other.supper.read_again()


@pytest.mark.parametrize(("minutes", "is_named"), [(-1, False), (0, True), (38, True), (158, True), (159, False)])
def test_a_session_names_meals_from_its_first_entry_until_two_hours_after_its_last(
    held_desk: Desk, minutes: int, is_named: bool
) -> None:
    first = held_desk.clock()
    wanted(held_desk, "greens")
    held_desk.supper.set_table(first + timedelta(minutes=minutes))
    stove = held_desk.stove.name
    found = suppers_between(held_desk.logbook, stove, first, first + timedelta(minutes=38))
    assert bool(found) is is_named
    assert suppers_between(held_desk.logbook, "Cabin", first, first + timedelta(minutes=38)) == ()
    held_desk.supper.remove("greens")
    assert suppers_between(held_desk.logbook, stove, first, first + timedelta(minutes=38)) == ()
