"""The safe minimums and holding limits are those of their sources: a shipped table, guarded."""

import numpy as np
import pytest

from cookstove_gui.cooking.safety.food_safety import (
    danger_minutes,
    danger_minutes_allowed,
    holding_limits,
    safe_minimum,
    safe_minimums,
    water_bath_heights,
    water_baths,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import degrees
from tests.cooking.made import fahrenheit
from tests.reference import check


# reference 9.8: USDA FSIS / foodsafety.gov, Safe Minimum Cooking Temperatures (12 April 2019), looked up as quoted
@pytest.mark.parametrize(
    ("key", "temperature", "celsius", "rest"),
    [
        ("poultry", 165, 73.9, 0),
        ("casseroles and leftovers", 165, 73.9, 0),
        ("ground meat", 160, 71.1, 0),
        ("egg dishes", 160, 71.1, 0),
        ("whole cuts of beef, pork, veal and lamb", 145, 62.8, 3),
        ("fin fish", 145, 62.8, 0),
        ("cooked ham, reheated", 140, 60.0, 0),
    ],
)
def test_published_minimums(key: str, temperature: float, celsius: float, rest: float) -> None:
    found = safe_minimum(key)
    assert degrees(found.temperature, "F") == pytest.approx(temperature)
    assert degrees(found.temperature, "C") == pytest.approx(celsius, abs=0.05)
    assert found.rest_minutes == rest
    assert "USDA" in found.source


def test_there_are_no_others() -> None:
    assert len(safe_minimums()) == 7


def test_holding_limits() -> None:
    # reference 9.11, 9.12: USDA FSIS (140 °F or more, 40 to 140 °F) and FDA Food Code 3-501.16 (5 °C)
    limits = holding_limits()
    assert degrees(limits.hot_at_least, "F") == pytest.approx(140)
    assert limits.hot_at_least == limits.danger_high
    assert degrees(limits.cold_at_most, "C") == pytest.approx(5, abs=0.05)
    assert (degrees(limits.danger_low, "F"), degrees(limits.danger_high, "F")) == pytest.approx((40, 140))
    assert degrees(limits.meat_oven, "F") == pytest.approx(325)  # reference safety rows: USDA FSIS
    assert "authority" in limits.words


def test_two_hours_and_one_on_a_hot_day() -> None:
    assert danger_minutes_allowed(fahrenheit(70)) == 120
    assert danger_minutes_allowed(fahrenheit(91)) == 60


def test_time_in_the_danger_zone_of_a_straight_rise() -> None:
    # 20 °F to 160 °F in 140 min at 1 °F/min: inside from 20 to 120 min
    found = danger_minutes(np.array([0.0, 140.0]), np.array([fahrenheit(20), fahrenheit(160)]))
    assert found == pytest.approx(100, abs=0.02)


def test_food_kept_hot_spends_no_time_there() -> None:
    assert danger_minutes(np.array([0.0, 60.0]), np.array([fahrenheit(150)] * 2)) == 0
    assert danger_minutes(np.array([0.0]), np.array([fahrenheit(100)])) == 0


def test_an_unknown_food_lists_the_known_ones() -> None:
    with pytest.raises(InputProblem, match="poultry"):
        safe_minimum("dragon")


@pytest.mark.parametrize(
    ("row", "food", "pack", "jar"),
    [
        ("9.20-applesauce-hot-pints", "applesauce", "hot", "pints"),
        ("9.20-applesauce-hot-quarts", "applesauce", "hot", "quarts"),
        ("9.20-berries-hot-pints-or-quarts", "berries, whole, no strawberries", "hot", "pints or quarts"),
        ("9.20-berries-raw-quarts", "berries, whole, no strawberries", "raw", "quarts"),
        ("9.20-jelly", "jelly or jam, into sterilised jars", "hot", "half-pints or pints"),
        ("9.20-peaches-raw-quarts", "peaches", "raw", "quarts"),
        ("9.20-peaches-hot-pints", "peaches", "hot", "pints"),
        ("9.20-pears-hot-quarts", "pears, halved", "hot", "quarts"),
        ("9.20-tomatoes-hot-or-raw-pints", "tomatoes, whole or halved, in water", "hot or raw", "pints"),
        ("9.20-tomatoes-hot-or-raw-quarts", "tomatoes, whole or halved, in water", "hot or raw", "quarts"),
    ],
)
def test_water_bath_times_are_as_published(row: str, food: str, pack: str, jar: str) -> None:
    (found,) = (one.minutes for one in water_baths() if (one.food, one.pack, one.jar) == (food, pack, jar))
    assert list(found) == check(row).value


def test_every_row_of_the_water_bath_has_a_time_for_every_height_that_does_not_fall() -> None:
    for row in water_baths():
        assert len(row.minutes) == len(water_bath_heights())
        assert list(row.minutes) == sorted(row.minutes)
