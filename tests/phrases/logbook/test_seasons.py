"""A season in words."""

from dataclasses import replace
from datetime import date

import pytest

from cookstove_gui.logbook.seasons import Span, Total
from cookstove_gui.phrases.logbook.seasons import (
    caution_words,
    counted_words,
    counting_words,
    fullest_words,
    hottest_words,
    rise_words,
    season_behind,
    season_headline,
    season_name,
)
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import kelvin

BREAD = HeatBand(name="bread", low=458.0, high=491.0)


def total(loads: int = 900, weighed: int = 900, wood: float = 1057.0) -> Total:
    return Total(sessions=151, fires=151, hours=788.4, loads=loads, weighed=weighed, wood=wood)


def test_fires_hours_and_wood() -> None:
    assert season_headline(total(), "F") == "151 fires, 788 hours lit, about 2,330 lb of wood."
    assert season_headline(total(weighed=10), "C") == "151 fires, 788 hours lit, at least 1,057 kg of wood."
    assert season_headline(total(weighed=0), "F") == "151 fires, 788 hours lit."
    none = Total(sessions=0, fires=0, hours=0.0, loads=0, weighed=0, wood=0.0)
    assert season_headline(none, "F") == "No session in this season."
    one = Total(sessions=1, fires=1, hours=1.2, loads=0, weighed=0, wood=0.0)
    assert season_headline(one, "F") == "1 fire, 1 hour lit."
    assert season_headline(replace(one, hours=0.6), "F") == "1 fire, 36 min lit."


def test_the_ends_of_the_colours_are_one_number_where_all_fires_came_to_the_same_heat() -> None:
    assert hottest_words(kelvin(250, "F"), kelvin(520, "F"), "F") == ("hottest oven 250", "520 °F")
    assert hottest_words(kelvin(300.2, "F"), kelvin(300.4, "F"), "F") == ("hottest oven", "300 °F")


def medians(*values: tuple[int, int, float, int]) -> list[tuple[date, float, int]]:
    return [(date(year, month, 1), minutes, count) for year, month, minutes, count in values]


@pytest.mark.parametrize(
    ("told", "years", "said"),
    [
        (
            medians((2026, 10, 106, 6), (2027, 3, 80, 9)), False,
            "It came to bread heat 26 min sooner in March than in October.",
        ),
        (medians((2026, 10, 80, 6), (2027, 3, 83, 9)), False, "It came to bread heat as fast in March as in October."),
        (
            medians((2026, 10, 80, 2), (2027, 3, 99, 9)), False,
            "Too few rises from cold to bread heat to compare the months.",
        ),
        (
            medians((2024, 7, 80, 30), (2026, 7, 97, 40)), True,
            "It came to bread heat 17 min later in 2026–27 than in 2024–25. "
            "Wetter wood, a flue that needs sweeping or a leaking door can slow it.",
        ),
        (
            medians((2024, 7, 80, 30), (2026, 7, 90, 40)), True,
            "It came to bread heat 10 min later in 2026–27 than in 2024–25.",
        ),
    ],
)  # fmt: skip
def test_how_the_rise_has_changed(told: list[tuple[date, float, int]], years: bool, said: str) -> None:
    assert season_behind(total(), told, BREAD, all_years=years) == said


def test_loads_of_an_unknown_amount_are_told() -> None:
    assert season_behind(total(loads=30, weighed=18), [], BREAD, all_years=False).endswith(
        " 12 of 30 loads don’t say how much."
    )


def test_names_and_the_fullest_week() -> None:
    assert (season_name(2026), season_name(1999), season_name(0)) == ("Winter 2026–27", "Winter 1999–00", "All years")
    spans = [
        Span(start=date(2027, 1, 4 + 7 * place), days=7, fires=4, wood=wood) for place, wood in enumerate((9.0, 70.3))
    ]
    assert fullest_words(spans, "F", weeks=True) == "155 lb, the fullest week"
    assert fullest_words(spans, "C", weeks=False) == "70.5 kg, the fullest month"
    assert fullest_words([], "F", weeks=True) == ""
    assert rise_words(medians((2026, 10, 106, 6), (2026, 11, 90, 1), (2027, 3, 80, 9))) == "from 1 h 46 to 1 h 20"


def test_counting_cautions_says_how_far_it_is_and_what_was_found() -> None:
    assert counting_words(0, 30).startswith("Every log is followed once")
    assert counting_words(12, 30) == "Looked through 12 of 30 sessions …"
    assert counted_words(30, []) == "In 30 sessions no caution was due."
    assert counted_words(30, [("Flue too cool", 12)]).endswith("manual decides what to do.")
    assert caution_words(12, 30) == "12 of 30"
