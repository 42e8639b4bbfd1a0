"""Food that is long between 40 and 140 °F is told of: two hours, one on a hot day (USDA FSIS, food_safety.toml)."""

from datetime import UTC, datetime

import pytest

from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.baking.doneness import Doneness, doneness
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.bake import danger_words
from tests.cooking.made import fahrenheit, projection

EDGE = Edge(unit="F", now=datetime(2026, 3, 14, 15, 0, tzinfo=UTC), offset_minutes=0)


def answer(key: str, oven: float) -> Doneness:
    return doneness(bake_of(key), projection({"oven_centre": [oven] * 37}))


def test_a_roast_in_a_slow_oven_is_warned_of() -> None:
    found = answer("beef_roast", 180.0)
    assert found.danger_min is not None
    assert (found.danger_min.p50 or 0.0) > 120.0
    told = danger_words(found, EDGE)
    assert "between 40 to 140" not in told
    assert "40 and 140 °F: too long" in told
    assert told.endswith("The health authority's rules go first; a probe in the core decides, not a clock.")


def test_a_chicken_in_a_hot_oven_is_not_on_a_cool_day_but_perhaps_on_a_hot_one() -> None:
    found = answer("chicken", 375.0)
    assert found.danger_min is not None
    minutes = found.danger_min.p50 or 0.0
    assert 30.0 < minutes < 120.0
    assert danger_words(found, EDGE) == ""
    assert (danger_words(found, EDGE, room=fahrenheit(95.0)) != "") is (minutes > 60.0)


@pytest.mark.parametrize("key", ["bread_loaf", "potatoes"])
def test_what_makes_nobody_ill_is_not_spoken_of(key: str) -> None:
    found = answer(key, 180.0)
    assert found.danger_min is None
    assert danger_words(found, EDGE) == ""


def test_a_hotter_oven_gets_it_through_sooner() -> None:
    minutes = [answer("meat_loaf", oven).danger_min for oven in (200.0, 300.0, 400.0)]
    middles = [found.p50 for found in minutes if found is not None]
    assert middles == sorted(middles, reverse=True)
