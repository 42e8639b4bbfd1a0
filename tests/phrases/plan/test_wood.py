"""Wood in words: pounds and kilograms, splits, kilowatts, and what each number rests on."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.plan.wood import (
    heat_words,
    load_words,
    rate_words,
    spans_rungs,
    wood_headline,
    wood_rungs,
    wood_spans,
)
from cookstove_gui.stove.entries import HeatBand
from tests.phrases.facts import is_plain, numbers, of, quantiles, units

BREAD = HeatBand(name="bread", low=464.0, high=491.0)


def test_wood_in_pounds_and_in_kilograms() -> None:
    mass, splits = of(2.0, 3.0, 4.5), of(1.7, 2.5, 3.75)
    assert wood_headline(mass, splits, "F") == "About 7 lb of wood, 2 splits; between 4 and 10 lb."
    assert wood_headline(mass, splits, "C") == "About 3 kg of wood, 2 splits; between 2 and 4.5 kg."
    assert ", 1 split;" in wood_headline(mass, of(0.1, 0.2, 0.3), "C")


def test_the_shorter_way_to_say_it_keeps_the_range() -> None:
    assert wood_rungs(of(2.0, 3.0, 4.5), of(1.7, 2.5, 3.75), "F")[-1] == "About 7 lb, 2 splits; 4 to 10 lb."
    assert wood_rungs(of(None, None, None), of(None, None, None), "F") == ("",)


def test_the_shorter_line_leaves_out_what_says_so() -> None:
    whole, short = spans_rungs(75.0, "past", 60.0, BREAD)
    assert (whole, short) == (
        wood_spans(75.0, "past", 60.0, BREAD), "For 1 h 15 min of warming up and 1 h at bread heat.",
    )  # fmt: skip
    assert len(spans_rungs(0.0, "outlook", 60.0, BREAD)) == 1


@given(quantiles(0, 60), quantiles(0, 60), units)
def test_no_mass_without_its_range(mass: Quantiles, splits: Quantiles, unit: str) -> None:
    line = wood_headline(mass, splits, unit)
    assert is_plain(line)
    assert (line == "") is (mass.p90 is None or splits.p50 is None)
    if line:
        middle, _, low, high = numbers(line)
        assert low <= middle <= high


@pytest.mark.parametrize(
    ("source", "said"),
    [
        ("outlook", "as the oven is projected now"),
        ("past", "as long as this stove took"),
        ("common practice", "common practice"),
    ],
)
def test_what_the_warming_up_was_taken_from(source: str, said: str) -> None:
    line = wood_spans(75.0, source, 60.0, BREAD)
    assert line.startswith("For 1 h 15 min of warming up (")
    assert said in line
    assert line.endswith("and 1 h at bread heat.")


def test_a_hot_oven_needs_no_warming_up() -> None:
    assert wood_spans(0.0, "outlook", 60.0, BREAD) == "For 1 h at bread heat; the oven is hot enough already."


# 1 kW is 3412.14 BTU/h (international table)
def test_heat_in_both_units() -> None:
    assert heat_words(of(4.0, 6.0, 8.0), of(13_649.0, 20_473.0, 27_297.0)) == (
        "It gives about 6.0 kW (20,000 BTU/h) into stove, pots and room, 4.0 to 8.0 kW."
    )
    assert heat_words(of(None, None, None), of(None, None, None)) == ""


@given(quantiles(1, 300), st.floats(0, 1))
def test_a_load_has_its_time_and_range_or_is_not_told(minutes: Quantiles, air: float) -> None:
    line = load_words(minutes, air)
    assert is_plain(line)
    assert (line == "") is (minutes.p90 is None)


@pytest.mark.parametrize(("fires", "said"), [(0, "cookstoves usually take"), (1, "1 fire of"), (9, "9 fires of")])
def test_what_the_amount_was_learned_from(fires: int, said: str) -> None:
    assert said in rate_words(fires)
