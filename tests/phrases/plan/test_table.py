"""Back from the table in words: clocks of the day, never one that has passed spoken of as still to come."""

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.baking.table_time import TableTime, work_back
from cookstove_gui.cooking.baking.whole_bake import WholeBake
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.table import table_headline, table_source, table_steps
from cookstove_gui.stove.stove import stove_with_default_spots
from tests.phrases.facts import EDGE, NOW, ahead, edges, is_plain, of, quantiles

PLAN = work_back(stove_with_default_spots("range"), bake_of("bread_loaf"), NOW, 60.0, ())


def at(minutes: float) -> TableTime:
    """The same day with the bread on the table some minutes from now."""
    later = timedelta(minutes=minutes)
    return replace(
        PLAN,
        table_at=PLAN.table_at + later,
        out_at=PLAN.out_at + later,
        goes_in_at=PLAN.goes_in_at + later,
        light_likely_at=PLAN.light_likely_at + later,
        light_surely_at=PLAN.light_surely_at + later,
    )


def goes_in(minutes: float) -> TableTime:
    """The same with the bread going in some minutes from now."""
    return at(minutes + (NOW - PLAN.goes_in_at) / timedelta(minutes=1))


def test_lighting_tomorrow_names_the_day() -> None:
    assert table_headline(at(60 * 27), EDGE).startswith("Light the fire on Sunday by ")


def test_a_fire_that_burns_now_need_not_be_lit_for_a_later_bake() -> None:
    plan = replace(at(600), burns_now=True)
    assert table_headline(plan, EDGE).startswith(
        "Keep the fire until then, or let it go out and light the fire today by "
    )


def test_planned_clocks_are_told_to_the_five_minutes_before() -> None:
    for clock, _ in table_steps(at(607), EDGE):
        assert clock[-1] in "05"


@pytest.mark.parametrize(
    ("arrival", "said"),
    [
        (of(600, 650, 700), "too late."),
        (of(10, 20, 30), ", in time."),
        (of(10, 20, None), ", likely in time."),
        (of(0, 0, 0), "The oven is hot enough now."),
        (of(None, None, None), "it needs more wood."),
    ],
)
def test_a_fire_that_burns_is_held_against_the_clock_it_is_needed(arrival: Quantiles, said: str) -> None:
    assert table_headline(replace(at(600), arrival_min=arrival), EDGE).endswith(said)


@pytest.mark.parametrize(
    ("minutes", "said"),
    [(-20.0, "Too late for"), (-3.0, "Put the loaf of bread in now."), (20.0, "Put the loaf of bread in by 8:20.")],
)
def test_what_is_due_is_due_now(minutes: float, said: str) -> None:
    assert table_headline(replace(goes_in(minutes), arrival_min=of(0, 0, 0)), EDGE).startswith(said)


def test_a_fire_lit_between_surely_and_likely_may_be_late() -> None:
    plan = replace(goes_in(60), light_surely_at=NOW - timedelta(minutes=8), light_likely_at=NOW + timedelta(minutes=7))
    clock = EDGE.clock((plan.table_at - NOW) / timedelta(minutes=1))
    assert table_headline(plan, EDGE) == "Light the fire now; the oven may still be late for " + clock + "."
    assert next(words for _, words in table_steps(plan, EDGE)) == "the latest to light it; then it is even odds"


def test_too_late_to_light_says_by_how_much() -> None:
    plan = replace(goes_in(30), light_likely_at=NOW - timedelta(minutes=40))
    assert table_headline(plan, EDGE).startswith("Even lit now, the oven is likely 40 min too late for ")


@given(st.floats(-5, 1400), st.none() | quantiles(), edges())
def test_no_passed_clock_is_spoken_of_as_to_come(minutes: float, arrival: Quantiles | None, edge: Edge) -> None:
    plan = replace(goes_in(minutes), arrival_min=arrival)
    line = table_headline(plan, edge)
    assert is_plain(line)
    if "Too late" not in line:
        assert all(found < 1435 for found in ahead(line, edge))
    for clock, words in table_steps(plan, edge):
        if "light" in words:
            assert ahead(clock, edge)[0] < 1435


@pytest.mark.parametrize(("firings", "said"), [(0, "no source"), (1, "1 firing of"), (7, "7 firings of")])
def test_what_the_time_was_learned_from(firings: int, said: str) -> None:
    assert said in table_source(firings)


@pytest.mark.parametrize(
    ("oven", "said"),
    [
        (WholeBake(stays=0.5, too_hot=0.5, too_cool=0.0), "The oven is hot enough now."),
        (WholeBake(stays=0.4, too_hot=0.5, too_cool=0.1), "shut the air down in time."),
        (
            WholeBake(stays=0.4, too_hot=0.1, too_cool=0.5),
            "not likely hold its heat that long: build it up again ",
        ),
    ],
    ids=["even chance", "too hot", "too cool"],
)
def test_an_oven_hot_now_is_enough_only_if_it_is_hot_for_the_bake(oven: WholeBake, said: str) -> None:
    plan = replace(goes_in(110), arrival_min=of(0, 0, 0), bake_then=oven, burns_now=True)
    assert said in table_headline(plan, EDGE)


def test_a_fire_to_be_built_up_later_is_told_when_and_one_overdue_now() -> None:
    cool = WholeBake(stays=0.0, too_hot=0.0, too_cool=1.0)
    later, overdue = (replace(goes_in(wait), arrival_min=of(0, 0, 0), bake_then=cool) for wait in (110, 20))
    # lit 75 min before the bread goes in: 35 min from now, or long ago
    assert table_headline(later, EDGE).endswith(f"build it up again from {table_clock(35)} on.")
    assert table_headline(overdue, EDGE).endswith("build it up again now.")


def table_clock(minutes: float) -> str:
    """A clock as the plan rounds it, to the five minutes before."""
    at = NOW + timedelta(minutes=minutes)
    return EDGE.at(at - timedelta(minutes=at.minute % 5))


def test_a_bake_that_is_too_late_has_no_steps_any_more() -> None:
    assert table_steps(goes_in(-6), EDGE) == ()
    assert table_steps(goes_in(-4), EDGE)[0][0] == EDGE.clock(0.0)
