"""What is in the oven comes first when it needs the cook, and nothing else is put in beside it."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.advice import Subject, advise
from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.baking.doneness import Doneness
from cookstove_gui.cooking.baking.in_oven import InOven
from cookstove_gui.cooking.baking.probing import Probe
from cookstove_gui.cooking.baking.turning import TurnReminder
from cookstove_gui.cooking.baking.under_way import UnderWay
from cookstove_gui.forecast.answers import (
    Quantiles,
    TurnKind,
)
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.heading import rungs
from cookstove_gui.situation import Standing
from cookstove_gui.units import kelvin
from tests.advice_cases import DANGER, rising, standing, turn, words


def baking(
    done_in: float | None = 40.0,
    turn_in: float | None = None,
    due_in: float | None = None,
    *,
    key: str = "bread_loaf",
    width: float = 8.0,
) -> UnderWay:
    """A bake that went in half an hour before minute 50, done and to be turned so many minutes after it."""
    bake, now = bake_of(key), rising().now
    done = Quantiles(p10=None, p50=None, p90=None)
    if done_in is not None:
        done = Quantiles(p10=done_in - width, p50=done_in, p90=done_in + width)
    answer = Doneness(
        bake=bake, done_at=bake.done, core_now=None, done_min=done, chance_done=1.0, safe=None, safe_min=None,
        recipe_min=None, late_min=None,
    )  # fmt: skip
    walls = TurnReminder(
        hotter="oven_left",
        cooler="oven_right",
        difference=30.0,
        least=25.0,
        most=35.0,
        chance=1.0,
        in_min=turn_in or 0.0,
    )
    due = None if due_in is None else now + timedelta(minutes=due_in)
    inside = InOven(number=9, name=bake.name, bake=bake, went_in=now - timedelta(minutes=30), due_at=due)
    return UnderWay(inside=inside, asked_at=now, answer=answer, turn=None if turn_in is None else walls)


def with_bakes(base: Standing, *bakes: UnderWay) -> Standing:
    return replace(base, course=replace(base.course, bakes=bakes))


def test_nothing_else_is_put_in_while_a_loaf_is_in_the_oven():
    found = with_bakes(standing(390.0), baking(40.0, turn_in=20.0))
    assert advise(found).subject is Subject.BAKING
    said = words(found)
    assert said.startswith("The loaf of bread is done about 8:30, between 8:22 and 8:38. Turn it at 8:10.")
    assert "Put the loaves in" not in said


@pytest.mark.parametrize(
    ("bake", "subject"),
    [
        ({"done_in": 40.0, "turn_in": 10.0}, Subject.TURN),
        ({"done_in": 40.0, "turn_in": 10.1}, Subject.BAKING),
        ({"done_in": 10.0}, Subject.TAKE_OUT),
        ({"done_in": 10.1}, Subject.BAKING),
        ({"done_in": 40.0, "due_in": 10.0}, Subject.LOOK_AT),
        ({"done_in": -60.0}, Subject.TAKE_OUT),
        ({"done_in": -61.0}, Subject.PUT_IN),  # it is out by now, though nobody wrote it down
        ({"done_in": -1.0, "turn_in": -20.0}, Subject.TAKE_OUT),  # turning is no use any more
        ({"done_in": 30.0, "turn_in": 5.0, "due_in": 8.0}, Subject.TURN),  # the first to come
        ({"done_in": 30.0, "turn_in": 8.0, "due_in": 5.0}, Subject.LOOK_AT),
    ],
)
def test_what_in_the_oven_needs_the_cook_within_minutes_comes_first(bake, subject):
    assert advise(with_bakes(standing(390.0), baking(**bake))).subject is subject


def test_the_order_is_danger_then_the_loaf_that_is_done_then_the_fire_then_the_loaf_that_waits():
    out, soon, later = (turn(TurnKind.FIRE_OUT),), baking(5.0), baking(40.0)
    assert advise(with_bakes(standing(390.0, cautions=(DANGER,)), soon)).subject is Subject.DANGER
    assert advise(with_bakes(standing(390.0, turns=out), soon)).subject is Subject.TAKE_OUT
    assert advise(with_bakes(standing(390.0, turns=out), later)).subject is Subject.FIRE_OUT


def test_of_two_in_the_oven_the_one_that_is_done_first_is_told():
    found = advise(with_bakes(standing(390.0), baking(90.0, key="beef_roast"), baking(40.0)))
    assert found.inside is not None
    assert found.inside.inside.name == "loaf of bread"


def test_a_deadline_in_the_oven_that_has_gone_says_so():
    assert words(with_bakes(standing(390.0), baking(40.0, turn_in=-6.0))).startswith(
        "Turn the loaf of bread now; that was due at 7:44: oven left runs 40 to 60 °F hotter than oven right."
    )
    assert words(with_bakes(standing(390.0), baking(-5.0))).startswith("The loaf of bread was likely done at 7:45.")


@pytest.mark.parametrize(
    ("core_f", "ago", "said"),
    [
        (195.0, 1.0, "The loaf of bread is nearly done: its core was 195 °F at 7:49. Measure it again soon."),
        (205.0, 1.0, "The loaf of bread is done: its core was 205 °F at 7:49."),
        (195.0, 9.0, "The loaf of bread was likely done at 7:45. Look, and measure its core."),
    ],
)
def test_what_was_measured_and_not_done_is_not_called_done_by_then(core_f: float, ago: float, said: str) -> None:
    late = baking(-5.0)
    probe = Probe(at=rising().now - timedelta(minutes=ago), core=kelvin(core_f, "F"))
    found = with_bakes(standing(390.0), replace(late, inside=replace(late.inside, probes=(probe,))))
    assert words(found).startswith(said)
    shown = rungs(found, Edge(unit="F", now=found.now, offset_minutes=-300))
    assert all(("7:45" in rung) is ("7:45" in said) for rung in shown[:-1])


def test_a_window_of_the_end_that_has_begun_is_told_by_its_end_in_every_rung() -> None:
    found = with_bakes(standing(390.0), baking(5.0))  # between 7:47 and 8:03
    shown = rungs(found, Edge(unit="F", now=found.now, offset_minutes=-300))
    assert all("8:03" in rung and "7:4" not in rung and "7:50" not in rung for rung in shown)


def test_what_the_fire_will_not_bake_is_told():
    assert "hardly be done within three hours" in words(with_bakes(standing(300.0), baking(None)))
