"""Food that is long between 40 and 140 °F is told of: two hours, one on a hot day (USDA FSIS, food_safety.toml)."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.baking.doneness import Doneness, doneness
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge, duration
from cookstove_gui.phrases.plan.bake import danger_words
from tests.cooking.made import fahrenheit, projection

EDGE = Edge(unit="F", now=datetime(2026, 3, 14, 15, 0, tzinfo=UTC), offset_minutes=0)


def answer(key: str, oven: float) -> Doneness:
    return doneness(bake_of(key), projection({"oven_centre": [oven] * 37}))


def test_a_long_slow_roast_is_told_how_long_its_core_stays_where_germs_grow() -> None:
    found = answer("slow_roast", 225.0)
    assert found.danger_min is not None
    minutes = found.danger_min.p50
    assert minutes is not None
    assert minutes > 180.0  # longer than the oven is projected
    told = danger_words(found, EDGE)
    assert f"stays between 40 and 140 °F for {duration(minutes)}: too long" in told
    assert "325 °F or more for meat" in told
    assert told.endswith("The health authority's rules go first; a probe in the core decides, not a clock.")


def test_a_core_that_never_gets_through_is_told_so() -> None:
    found = answer("slow_roast", 135.0)
    assert found.danger_min is not None
    assert found.danger_min.p50 is None
    assert "never gets past 140 °F in this oven" in danger_words(found, EDGE)


def test_what_goes_in_late_is_followed_through() -> None:
    # in the oven the last hour only of what is projected: as long in the danger zone as one that goes in now
    oven = projection({"oven_centre": [250.0] * 37})
    late = doneness(bake_of("beef_roast"), oven, went_in=oven.now + timedelta(minutes=120)).danger_min
    now = answer("beef_roast", 250.0).danger_min
    assert late is not None
    assert now is not None
    assert late.p50 == pytest.approx(now.p50, abs=1.0)


@pytest.mark.parametrize(
    ("minutes", "room", "told"), [(119, 70, False), (121, 70, True), (59, 95, False), (61, 95, True)]
)
def test_two_hours_are_too_long_and_one_on_a_hot_day(minutes: float, room: float, told: bool) -> None:
    found = replace(answer("chicken", 375.0), danger_min=Quantiles(p10=minutes, p50=minutes, p90=minutes))
    assert (danger_words(found, EDGE, room=fahrenheit(room)) != "") is told


def test_a_chicken_in_a_hot_oven_is_not_on_a_cool_day_but_on_a_hot_one() -> None:
    found = answer("chicken", 375.0)
    assert found.danger_min is not None
    minutes = found.danger_min.p50 or 0.0
    assert 60.0 < minutes < 120.0
    assert danger_words(found, EDGE) == ""
    assert "too long" in danger_words(found, EDGE, room=fahrenheit(95.0))


@pytest.mark.parametrize("key", ["bread_loaf", "potatoes"])
def test_what_makes_nobody_ill_is_not_spoken_of(key: str) -> None:
    found = answer(key, 180.0)
    assert found.danger_min is None
    assert danger_words(found, EDGE) == ""


def test_a_hotter_oven_gets_it_through_sooner() -> None:
    minutes = [answer("meat_loaf", oven).danger_min for oven in (200.0, 300.0, 400.0)]
    middles = [found.p50 for found in minutes if found is not None]
    assert middles == sorted(middles, reverse=True)
