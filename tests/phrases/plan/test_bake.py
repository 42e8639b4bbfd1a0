"""A bake in words: clocks, windows and what is not known; a safe minimum is never softened."""

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.baking.doneness import Doneness
from cookstove_gui.cooking.baking.in_oven import InOven
from cookstove_gui.cooking.baking.turning import TurnReminder
from cookstove_gui.cooking.baking.under_way import UnderWay
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.safety.food_safety import safe_minimum
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge, spot_label
from cookstove_gui.phrases.plan.bake import (
    bake_against_steady,
    bake_headline,
    core_words,
    holding_words,
    safe_words,
    turn_words,
)
from cookstove_gui.stove.stove import stove_with_default_spots
from tests.phrases.facts import EDGE, HORIZON, ahead, edges, is_plain, of, quantiles

STOVE = stove_with_default_spots("range")


def answer(done: Quantiles, *, key: str = "chicken", late: float | None = 12.0) -> Doneness:
    bake = bake_of(key)
    return Doneness(
        bake=bake,
        done_at=bake.done,
        core_now=None,
        done_min=done,
        chance_done=1.0,
        safe=safe_minimum(bake.safety) if bake.safety else None,
        safe_min=of(50, 60, 75) if bake.safety else None,
        recipe_min=80.0,
        late_min=late,
    )


def going_in(answer: Doneness, in_min: float, edge: Edge, turn: TurnReminder | None = None) -> UnderWay:
    went_in = edge.now + timedelta(minutes=in_min)
    inside = InOven(number=1, name=answer.bake.name, bake=answer.bake, went_in=went_in)
    return UnderWay(inside=inside, asked_at=edge.now, answer=answer, turn=turn)


@pytest.mark.parametrize(
    ("goes_in", "said"),
    [
        (0.0, "If it goes in now, the whole chicken is done about 9:33, between 9:13 and 9:53."),
        (20.0, "If it goes in at 8:23, the whole chicken is done about 9:33, between 9:13 and 9:53."),
        (-30.0, "The whole chicken is done about 9:33, between 9:13 and 9:53."),
    ],
)
def test_when_it_goes_in_and_is_done(goes_in: float, said: str) -> None:
    assert bake_headline(going_in(answer(of(70, 90, 110)), goes_in, EDGE), EDGE) == said


def test_a_bake_that_is_done_is_looked_at_and_measured() -> None:
    said = bake_headline(going_in(answer(of(-9, -4, 0)), -80.0, EDGE), EDGE)
    assert said == "The whole chicken was likely done at 7:59. Look, and measure its core."


@given(quantiles(), st.floats(-120, HORIZON), edges())
def test_no_clock_of_a_bake_has_passed(done: Quantiles, goes_in: float, edge: Edge) -> None:
    said = bake_headline(going_in(answer(done), goes_in, edge), edge)
    assert is_plain(said)
    assert all(found <= HORIZON + 1 for found in ahead(said, edge))
    assert (done.p50 is None) is ("hardly be done" in said)


@pytest.mark.parametrize(
    ("late", "said"),
    [
        (12.0, "this oven takes about 12 min longer, because it is cooler or sags."),
        (-12.0, "this oven takes about 12 min less, because it is hotter."),
        (1.0, "and this oven does the same."),
        (None, "this oven will not do it in three hours."),
    ],
)
def test_against_a_steady_oven(late: float | None, said: str) -> None:
    words = bake_against_steady(answer(of(70, 90, 110), late=late), task_of("roast_meat"), EDGE)
    assert words.endswith(said)
    assert "about 1 h 20 min" in words


@given(quantiles(270, 380), edges())
def test_the_core_is_told_with_its_range_or_only_its_end(core: Quantiles, edge: Edge) -> None:
    found = Doneness(
        bake=bake_of("chicken"), done_at=347.0, core_now=core, done_min=of(1, 2, 3), chance_done=1.0,
        safe=None, safe_min=None, recipe_min=None, late_min=None,
    )  # fmt: skip
    said = core_words(found, edge)
    assert is_plain(said)
    assert ("The core is now" in said) is (core.p90 is not None)


def test_the_safe_minimum_is_quoted_with_its_source_and_the_thermometer_decides() -> None:
    words = safe_words(answer(of(70, 90, 110)), EDGE)
    # 165 °F for poultry: USDA FSIS, as quoted in resources/food_safety.toml.
    assert "165 °F" in words
    assert "USDA" in words
    assert "the thermometer decides" in words
    assert "74 °C" in safe_words(answer(of(70, 90, 110)), Edge(unit="C", now=EDGE.now, offset_minutes=0))


def test_bread_has_no_safe_minimum_to_quote() -> None:
    assert safe_words(answer(of(70, 90, 110), key="bread_loaf"), EDGE) == ""


# 135 °F hot and 41 °F cold: FDA Food Code 3-501.16, as quoted in resources/food_safety.toml
def test_food_is_kept_hot_or_cold() -> None:
    assert holding_words(EDGE).startswith("Until it is eaten: kept hot at 140 °F or more, or cold at 41 °F or less.")


@pytest.mark.parametrize(
    ("least", "most", "said"),
    [
        (52.0, 131.0, "LEFT runs 50 to 130 °F hotter than RIGHT."),
        (78.0, 82.0, "LEFT runs about 80 °F hotter than RIGHT."),
        (-20.0, 96.0, "LEFT probably runs hotter than RIGHT, by up to 100 °F."),
    ],
)
@pytest.mark.parametrize(("in_min", "when"), [(0.0, "now"), (20.0, "at 8:23")])
def test_turning_a_loaf_claims_no_more_than_the_walls_readings_can_say(
    least: float, most: float, said: str, in_min: float, when: str
) -> None:
    reminder = TurnReminder(
        hotter="oven_left", cooler="oven_right", difference=45.0, least=least / 1.8, most=most / 1.8, chance=0.9,
        in_min=in_min,
    )  # fmt: skip
    expected = said.replace("LEFT", spot_label(STOVE, "oven_left")).replace("RIGHT", spot_label(STOVE, "oven_right"))
    found = answer(of(70, 90, 110))
    assert turn_words(going_in(found, 0.0, EDGE, reminder), STOVE, EDGE) == f"Turn it {when}: {expected}"
    assert turn_words(going_in(found, 0.0, EDGE), STOVE, EDGE) == ""
