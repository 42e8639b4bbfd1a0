"""The sentences of the Plan page say clocks, windows and what is not known; a safe minimum is never softened."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.baking.doneness import BakeAnswer
from cookstove_gui.cooking.baking.table_time import work_back
from cookstove_gui.cooking.baking.turning import TurnReminder
from cookstove_gui.cooking.fires.burn_times import BurnSummary
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.instruments.thermometers import Drift
from cookstove_gui.cooking.pans.boiling_time import Goal, WaterAnswer
from cookstove_gui.cooking.safety.food_safety import safe_minimum
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge, air_words, span
from cookstove_gui.phrases.my_stove.checks import drifted, instrument_words
from cookstove_gui.phrases.my_stove.fire import burns_words, rise_words
from cookstove_gui.phrases.plan.bake import bake_against_steady, bake_headline, safe_words, turn_words
from cookstove_gui.phrases.plan.table import table_headline, table_steps
from cookstove_gui.phrases.plan.water import water_headline
from cookstove_gui.phrases.plan.wood import wood_headline
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Instrument, stove_with_default_spots
from cookstove_gui.units import kelvin

NOW = datetime(2026, 3, 14, 12, 0, tzinfo=UTC)  # 8:00 on a clock four hours behind
EDGE = Edge(unit="F", now=NOW, offset_minutes=-240)
BREAD = HeatBand(name="bread", low=kelvin(375.0, "F"), high=kelvin(425.0, "F"))


def quantiles(p10: float | None, p50: float | None, p90: float | None) -> Quantiles:
    return Quantiles(p10=p10, p50=p50, p90=p90)


def bake_answer(done: Quantiles, *, key: str = "chicken", late: float | None = 12.0) -> BakeAnswer:
    bake = bake_of(key)
    return BakeAnswer(
        bake=bake,
        done_at=bake.done,
        core_now=None,
        done_min=done,
        chance_done=1.0,
        safe=safe_minimum(bake.safety) if bake.safety else None,
        safe_min=quantiles(50, 60, 75) if bake.safety else None,
        recipe_min=80.0,
        late_min=late,
    )


@pytest.mark.parametrize(
    ("minutes", "said"),
    [
        (quantiles(20, 30, 45), "between 8:20 and 8:45"),
        (quantiles(20, 20, 20), "at 8:20"),
        (quantiles(20, 90, None), "8:20 at the soonest, perhaps not at all"),
        (quantiles(None, None, None), "not within three hours"),
    ],
)
def test_windows(minutes, said):
    assert span(minutes, EDGE) == said


def test_water_that_is_not_likely_to_boil_is_not_given_a_clock():
    answer = WaterAnswer(goal=Goal.BOIL, temperature=373.15, minutes=quantiles(100, None, None), chance_reached=0.3)
    sentence = water_headline("top back left", answer, EDGE)
    assert "not likely" in sentence
    assert "9:40" not in sentence


def test_a_bake_put_in_now():
    sentence = bake_headline("whole chicken", bake_answer(quantiles(70, 90, 110)), 0.0, EDGE)
    assert sentence == "Put in now, the whole chicken is done about 9:30; between 9:10 and 9:50."


def test_a_bake_that_goes_in_later_says_when():
    sentence = bake_headline("loaf of bread", bake_answer(quantiles(70, 90, 110)), 20.0, EDGE)
    assert sentence.startswith("Put in at 8:20, the loaf of bread")


@pytest.mark.parametrize(
    ("late", "said"), [(12.0, "12 min longer"), (-12.0, "12 min less"), (1.0, "this oven does the same")]
)
def test_against_a_steady_oven(late, said):
    answer = bake_answer(quantiles(70, 90, 110), late=late)
    assert said in bake_against_steady(answer, task_of("roast_meat"), EDGE)


def test_the_safe_minimum_is_quoted_with_its_source_and_the_thermometer_decides():
    words = safe_words(bake_answer(quantiles(70, 90, 110)), EDGE)
    # 165 °F for poultry: USDA FSIS, as quoted in resources/food_safety.toml.
    assert "165 °F" in words
    assert "USDA" in words
    assert "the thermometer decides" in words


def test_bread_has_no_safe_minimum_to_quote():
    assert safe_words(bake_answer(quantiles(70, 90, 110), key="bread_loaf"), EDGE) == ""


def test_wood_in_pounds_and_in_kilograms():
    mass, splits = quantiles(2.0, 3.0, 4.5), quantiles(1.7, 2.5, 3.75)
    assert wood_headline(mass, splits, "F") == "About 7 lb of wood, 2 splits; between 4 lb and 10 lb."
    assert wood_headline(mass, splits, "C") == "About 3 kg of wood, 2 splits; between 2 kg and 4.5 kg."


@pytest.mark.parametrize(
    ("air", "said"), [(0.0, "shut"), (0.3, "a quarter open"), (0.5, "half open"), (1.0, "wide open")]
)
def test_air(air, said):
    assert air_words(air) == said


def table_time(minutes: float):
    stove = stove_with_default_spots("Kitchen stove")
    return work_back(stove, bake_of("bread_loaf"), NOW + timedelta(minutes=minutes), 60.0, ())


def test_lighting_tomorrow_names_the_day():
    sentence = table_headline(table_time(60 * 27), EDGE)
    assert sentence.startswith("Light the fire on Sunday by ")


def test_a_fire_that_burns_now_need_not_be_lit_for_a_later_bake():
    plan = replace(table_time(600), burns_now=True)
    assert table_headline(plan, EDGE).startswith("Keep the fire until then, or let it go out and light")


def test_planned_clocks_are_told_to_the_five_minutes_before():
    for clock, _ in table_steps(table_time(607), EDGE):
        assert clock[-1] in "05"


def test_a_fire_that_burns_is_held_against_the_clock_it_is_needed():
    plan = table_time(600)
    late = replace(plan, arrival_min=quantiles(600, 650, 700))
    assert "too late" in table_headline(late, EDGE)
    early = replace(plan, arrival_min=quantiles(10, 20, 30))
    assert table_headline(early, EDGE).endswith("in time.")
    never = replace(plan, arrival_min=quantiles(None, None, None))
    assert "more wood" in table_headline(never, EDGE)


def test_rise_with_and_without_a_range():
    assert rise_words(BREAD, quantiles(50, 65, 90), 7) == (
        "From lighting to bread heat: about 1 h 5 min, usually 50 min to 1 h 30 min (7 firings)."
    )
    assert rise_words(BREAD, quantiles(None, 65, None), 1).endswith("about 1 h 5 min (1 firing).")


def test_burns_that_were_not_seen_to_end_claim_no_typical_time():
    words = burns_words(BurnSummary(burns=0, typical_min=None, longest_min=90.0), "F", 50 / 1.8)
    assert "fallen 50 °F" in words
    assert "longest seen so far lasted 1 h 30 min" in words


def test_instrument_words():
    checked = Instrument(name="dial", kind="probe", offset=-4.0, offset_doubt=0.7, checked_on="2026-03-02")
    assert instrument_words(checked, "F") == ("It reads about 7 °F too low, give or take 1; checked on 2 March 2026.")
    assert "Never checked" in instrument_words(replace(checked, checked_on=""), "F")


def test_drift_says_since_when():
    found = Drift(instrument="dial", change=3.0, since=datetime(2025, 11, 2, tzinfo=UTC).date())
    assert "5 °F higher than it did on 2 November 2025" in drifted(found, "F")


@pytest.mark.parametrize(
    ("least", "most", "said"),
    [
        (52.0, 131.0, "the_left runs 50 to 130 °F hotter than the_right."),
        (78.0, 82.0, "the_left runs about 80 °F hotter than the_right."),
        (-20.0, 96.0, "the_left probably runs hotter than the_right, by up to 100 °F."),
    ],
)
def test_turning_a_loaf_claims_no_more_than_the_walls_readings_can_say(least: float, most: float, said: str) -> None:
    reminder = TurnReminder(
        hotter="oven_left",
        cooler="oven_right",
        difference=45.0,
        least=least / 1.8,
        most=most / 1.8,
        chance=0.9,
        in_min=0,
    )
    stove = stove_with_default_spots("range")
    labels = {name: spot.label for name in ("oven_left", "oven_right") if (spot := stove.spot(name))}
    expected = said.replace("the_left", labels["oven_left"]).replace("the_right", labels["oven_right"])
    assert turn_words(reminder, stove, EDGE) == f"Turn it now: {expected}"
