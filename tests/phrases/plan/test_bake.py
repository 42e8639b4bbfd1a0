"""A bake in words: clocks, windows and what is not known; a safe minimum is never softened."""

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.baking.doneness import Doneness
from cookstove_gui.cooking.baking.doubts import Source
from cookstove_gui.cooking.baking.hangs_on import Hang
from cookstove_gui.cooking.baking.in_oven import InOven
from cookstove_gui.cooking.baking.probing import Probe, ProbeGain
from cookstove_gui.cooking.baking.turning import TurnReminder
from cookstove_gui.cooking.baking.under_way import UnderWay
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.safety.food_safety import safe_minimum
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge, spot_label
from cookstove_gui.phrases.in_oven import apart_words, inside_rows, probe_rows
from cookstove_gui.phrases.plan.bake import (
    bake_against_steady,
    bake_headline,
    bake_rungs,
    core_words,
    gain_words,
    holding_words,
    inside_words,
    learned_words,
    safe_words,
    source_words,
    steady_rungs,
    together_words,
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
    inside = InOven(number=0 if in_min >= 0.0 else 1, name=answer.bake.name, bake=answer.bake, went_in=went_in)
    return UnderWay(inside=inside, asked_at=edge.now, answer=answer, turn=turn)


@pytest.mark.parametrize(
    ("goes_in", "said"),
    [
        (0.0, "If it goes in now, the whole chicken is done about 9:33, between 9:13 and 9:53."),
        (20.0, "If it goes in at 8:23, the whole chicken is done about 9:33, between 9:13 and 9:53."),
        (-0.5, "The whole chicken is done about 9:33, between 9:13 and 9:53."),
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
        (12.0, "in this oven it takes about 1 h 30 min, because it is cooler or sags."),
        (-12.0, "in this oven it takes about 1 h 10 min, because it is hotter."),
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
def test_turning_a_loaf_claims_no_more_than_the_walls_readings_can_say(least: float, most: float, said: str) -> None:
    reminder = TurnReminder(
        hotter="oven_left", cooler="oven_right", difference=45.0, least=least / 1.8, most=most / 1.8, chance=0.9,
        in_min=20.0,
    )  # fmt: skip
    expected = said.replace("LEFT", spot_label(STOVE, "oven_left")).replace("RIGHT", spot_label(STOVE, "oven_right"))
    found = answer(of(70, 90, 110))
    assert apart_words(going_in(found, 0.0, EDGE, reminder), STOVE, EDGE) == expected.rstrip(".")
    assert apart_words(going_in(found, 0.0, EDGE), STOVE, EDGE) == ""


def test_the_shorter_headline_keeps_the_window() -> None:
    found = going_in(answer(of(70, 90, 110)), 20.0, EDGE)
    short = ("Done about 9:33, between 9:13 and 9:53.", "Done about 9:33, 9:13 to 9:53.")
    assert bake_rungs(found, EDGE)[1:] == short
    never = bake_rungs(going_in(answer(of(None, None, None)), 0.0, EDGE), EDGE)
    assert never[-1] == "With this fire the whole chicken will hardly be done within three hours."


def test_the_shorter_line_about_a_steady_oven_leaves_the_reason_out() -> None:
    found = answer(of(70, 90, 110))
    whole, short, shortest = steady_rungs(found, task_of(found.bake.task), EDGE)
    assert shortest == "About 1 h 20 min in a steady oven, 1 h 30 min here."
    assert whole.startswith(short[:-1])
    assert "because" in whole
    assert "because" not in short


@pytest.mark.parametrize(
    ("lengths", "said"),
    [((26.0, 15.0, 8.0), "Together 40 min, for doubts partly cancel."), ((20.0, 5.0), "Together 40 min.")],
)
def test_doubts_are_said_to_cancel_only_where_they_do(lengths: tuple[float, ...], said: str) -> None:
    hangs = tuple(Hang(source=source, window_min=one) for source, one in zip(Source, lengths, strict=False))
    assert together_words(replace(answer(of(70, 90, 110)), hangs_on=hangs)) == said
    assert together_words(replace(answer(of(70, 90, None)), hangs_on=hangs)) == ""


def test_every_source_of_doubt_has_words() -> None:
    assert len({source_words(source) for source in Source}) == len(Source)


def test_what_a_reading_would_do() -> None:
    assert gain_words(ProbeGain(in_min=0.0, window_min=14.2), EDGE) == ("read now", "about 14 min")
    assert gain_words(ProbeGain(in_min=20.0, window_min=0.2), EDGE) == ("read at 8:23", "about 1 min")


@pytest.mark.parametrize(("bakes", "said"), [(0, ""), (1, "One so far"), (6, "6 so far")])
def test_what_the_window_was_learned_from(bakes: int, said: str) -> None:
    assert learned_words(replace(answer(of(70, 90, 110)), learned_from=bakes)).startswith(said)
    assert (learned_words(replace(answer(of(70, 90, 110)), learned_from=bakes)) == "") is (bakes == 0)


def test_what_the_log_says_of_what_is_in_the_oven() -> None:
    found = going_in(answer(of(70, 90, 110), key="bread_loaf"), -13.0, EDGE).inside
    assert inside_words(found, EDGE).startswith("In since 7:50, 13 min ago. ")
    assert inside_words(found, EDGE).endswith(" lb, 80 °F at the start.")
    assert inside_words(replace(found, bake=None), EDGE) == "In since 7:50, 13 min ago."
    probed = replace(
        found,
        probes=(Probe(at=EDGE.now - timedelta(minutes=8), core=309.0),),
        turned_at=EDGE.now - timedelta(minutes=3),
        due_at=EDGE.now + timedelta(minutes=20),
    )
    assert probe_rows(probed, EDGE) == (("7:55", "97 °F"),)
    assert inside_rows(probed, EDGE) == "Turned at 8:00. To be looked at: 8:23."
    assert inside_rows(found, EDGE) == ""


@pytest.mark.parametrize(("rise", "said"), [(5.6, "rises about 10 °F more"), (0.8, ""), (None, "")])
def test_a_roast_is_told_to_rise_as_it_rests(rise, said) -> None:  # type: ignore[no-untyped-def]
    found = Doneness(
        bake=bake_of("beef_roast"), done_at=336.0, core_now=None, done_min=of(1, 2, 3), chance_done=1.0, safe=None,
        safe_min=None, recipe_min=None, late_min=None, rest_rise=rise,
    )  # fmt: skip
    words = core_words(found, EDGE)
    assert words.startswith("Done at a core of about")
    assert (said in words) if said else words.endswith("°F.")
