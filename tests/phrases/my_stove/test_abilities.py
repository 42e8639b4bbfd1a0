"""What a stove can do in words: names, values with their range, the count behind them, and nothing claimed unseen."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from cookstove_gui.cooking.fires.abilities import Ability, Figure, Shown
from cookstove_gui.phrases.my_stove.abilities import (
    ability_name,
    day_words,
    figure_range,
    figure_sentence,
    figure_value,
    how_words,
    rises_words,
    shown_cells,
)
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import kelvin
from tests.cooking.made import START

BREAD = HeatBand(name="bread", low=kelvin(375.0, "F"), high=kelvin(425.0, "F"))
FALL = 50.0 / 1.8


def shown(number: int, *, ended: bool = True, value: float = 90.0) -> tuple[Shown, ...]:
    return tuple(Shown(session=one, at=START, offset_minutes=0, value=value, ended=ended) for one in range(number))


RISE = Figure(ability=Ability.RISE, band=BREAD, shown=shown(7), low=82.0, middle=95.0, high=115.0)


def test_a_rise_with_its_range_and_count() -> None:
    assert ability_name(RISE, "F", FALL) == "cold to bread heat"
    assert figure_value(RISE, "F") == "1 h 35"
    assert figure_range(RISE, "F") == "1 h 22 to 1 h 55, 7 firings"
    assert figure_sentence(RISE, "F", FALL) == "Cold to bread heat: 1 h 35."


def test_two_firings_are_both_told_and_one_claims_no_range() -> None:
    assert figure_range(replace(RISE, shown=shown(2)), "F") == "1 h 22 and 1 h 55, 2 firings"
    assert figure_range(replace(RISE, shown=shown(1), low=None, high=None), "F") == "1 firing"


@pytest.mark.parametrize("ability", Ability)
def test_what_was_never_seen_has_no_number(ability: Ability) -> None:
    figure = Figure(ability=ability, band=BREAD, spot="top_back_left")
    assert figure_value(figure, "F") == "–"
    assert not any(letter.isdigit() for letter in figure_range(figure, "F"))
    assert figure_sentence(figure, "F", FALL, "back left").endswith("not seen yet.")
    assert how_words(figure).endswith(".")


def test_what_was_not_seen_to_its_end_is_the_least_it_can_be() -> None:
    figure = Figure(ability=Ability.HOLD_TWO, band=BREAD, shown=shown(2, ended=False, value=43.0))
    assert figure_value(figure, "F") == "43 min or more"
    assert figure_range(figure, "F") == "2 loads"
    assert figure_range(replace(figure, low=20.0), "F") == "20 min at the least, 2 loads"


def test_a_split_lifts_the_oven_by_so_much_after_so_long() -> None:
    figure = Figure(ability=Ability.LIFT, shown=shown(3), low=8.0, middle=24.0 / 1.8, high=18.0, after_min=20.0)
    assert (figure_value(figure, "F"), figure_range(figure, "F")) == ("24 °F", "after 20 min, 3 loads")
    assert figure_value(replace(figure, middle=-3.0), "F") == "none seen"


def test_a_spot_where_water_does_not_boil_and_one_where_it_does() -> None:
    figure = Figure(ability=Ability.BOIL, spot="top_back_left", low=7.0, middle=9.0, high=12.0, readings=40)
    assert ability_name(figure, "F", FALL, "back left") == "boils 2 quarts, back left"
    assert ability_name(figure, "C", FALL, "back left") == "boils 1.9 litres, back left"
    assert (figure_value(figure, "F"), figure_range(figure, "F")) == ("9 min", "7 min to 12 min, no pan timed")
    cool = replace(figure, low=None, middle=None, high=None)
    assert figure_value(cool, "F") == "not there"


@pytest.mark.parametrize(
    ("ability", "value", "unit", "said"),
    [
        (Ability.HOTTEST_TOP, kelvin(742.0, "F"), "F", "742 °F"),
        (Ability.HOTTEST_OVEN, kelvin(268.0, "C"), "C", "268 °C"),
        (Ability.WOOD_BAKE, 6.8038855, "F", "15 lb"),  # the pound is 0.45359237 kg
        (Ability.WOOD_MONTH, 42.0, "C", "42 kg"),
    ],
)
def test_heats_and_wood(ability: Ability, value: float, unit: str, said: str) -> None:
    assert figure_value(Figure(ability=ability, shown=shown(1), middle=value), unit) == said


def test_a_firing_in_the_list_with_its_wood_and_the_air_outdoors() -> None:
    one = replace(RISE.shown[0], wood=4.5359237, value=101.0)
    cells = shown_cells(RISE, one, kelvin(28.0, "F"), "F", START.date())
    assert cells == ("5 Jan", "1 h 41", "10 lb", "28 °F")
    assert shown_cells(RISE, replace(one, wood=None, ended=False), None, "F", START.date())[1:] == (
        "1 h 41 or more", "", "",
    )  # fmt: skip


def test_a_firing_of_another_year_says_so() -> None:
    assert day_words(RISE.shown[0], START.date() + timedelta(days=400)) == "5 Jan 2026"
    assert day_words(RISE.shown[0], date(2026, 3, 1)) == "5 Jan"


def test_the_picture_of_rises_is_read_out() -> None:
    assert rises_words(8, today=True) == "Every rise so far, from the match: 8 rises, today’s heavy"
    assert rises_words(1, today=False) == "Every rise so far, from the match: 1 rise"
