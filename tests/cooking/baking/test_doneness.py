"""Bakes under this oven: the projected window, what it holds, and the laws of the thing."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.baking.bodies import step_of, warmed
from cookstove_gui.cooking.baking.catalogue import bake_of, mass_of, scaled
from cookstove_gui.cooking.baking.doneness import Doneness, doneness, steady_minutes
from cookstove_gui.cooking.baking.doubts import single
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import Trace
from cookstove_gui.physics.air import standard_pressure
from tests.cooking.made import START, fahrenheit, projection

LOAF = bake_of("bread_loaf")
TIMES = 37


def oven_at(heat: float, futures: int = 1):  # type: ignore[no-untyped-def]
    return projection({"oven_centre": [heat] * TIMES}, futures=futures)


def trace(*degrees_f: float, minutes: float = 60, doubt: float = 6.0) -> Trace:
    at = tuple(START - timedelta(minutes=m) for m in np.linspace(minutes, 0, len(degrees_f)))
    heat = np.array([fahrenheit(d) for d in degrees_f])
    return Trace(at=at, p10=heat - doubt, p50=heat, p90=heat + doubt)


def window(found: Doneness) -> float:
    """Minutes from the earliest to the latest."""
    assert found.done_min.p10 is not None
    assert found.done_min.p90 is not None
    return found.done_min.p90 - found.done_min.p10


def likely(found: Doneness) -> float:
    assert found.done_min.p50 is not None
    return found.done_min.p50


# --- done ------------------------------------------------------------------------------------------------------------


def test_height_lowers_the_core_that_the_oven_is_asked_for() -> None:
    """As far below the boil as at sea level: water boils at 94.983 °C at 1500 m, potatoes are done 9 °F below that."""
    high = doneness(bake_of("potatoes"), oven_at(400), pressure=float(standard_pressure(1500.0)))
    assert high.done_at == pytest.approx(94.983 + 273.15 - (211.953 - 203.0) / 1.8, abs=0.01)


def test_an_oven_cooler_than_the_goal_never_gets_it_done() -> None:
    assert steady_minutes(LOAF, fahrenheit(190)) is None
    found = doneness(LOAF, oven_at(190))
    assert found.chance_done == 0.0
    assert found.done_min.p50 is None
    assert found.late_min is None
    assert found.hangs_on == ()


# --- the outlook -----------------------------------------------------------------------------------------------------


def test_a_steady_oven_in_the_middle_of_the_band_takes_about_the_recipe_time() -> None:
    found = doneness(LOAF, oven_at(395))
    assert found.recipe_min is not None
    assert likely(found) == pytest.approx(found.recipe_min, rel=0.05)
    assert found.late_min == pytest.approx(likely(found) - found.recipe_min)
    assert found.chance_done == 1.0
    assert found.core_now is None


def test_a_sure_oven_still_leaves_food_and_oven_unsure() -> None:
    """A recipe says so many minutes, give or take a fifth: no oven, however well known, makes a loaf exact."""
    found = doneness(LOAF, oven_at(395))
    assert 0.2 < window(found) / likely(found) < 0.6


def test_what_was_in_already_needs_that_much_less() -> None:
    fresh = likely(doneness(LOAF, oven_at(395)))
    found = doneness(LOAF, oven_at(395), went_in=START - timedelta(minutes=20), past=trace(395, 395))
    assert likely(found) == pytest.approx(fresh - 20, abs=1.0)
    assert found.core_now is not None
    assert found.core_now.p50 is not None
    assert LOAF.start < found.core_now.p50 < found.done_at


def test_a_sagging_oven_makes_it_later_and_says_by_how_much() -> None:
    sagging = projection({"oven_centre": 395 - 80 * np.minimum(np.arange(TIMES) * 5, 60) / 60})
    steady, found = doneness(LOAF, oven_at(395)), doneness(LOAF, sagging)
    assert found.late_min is not None
    assert steady.late_min is not None
    assert found.late_min > steady.late_min + 2
    assert found.late_min - steady.late_min == pytest.approx(likely(found) - likely(steady))


def test_a_hot_past_makes_it_sooner() -> None:
    in_at = START - timedelta(minutes=30)
    hot = likely(doneness(LOAF, oven_at(395), went_in=in_at, past=trace(450, 450)))
    cool = likely(doneness(LOAF, oven_at(395), went_in=in_at, past=trace(340, 340)))
    assert hot < cool - 5


def test_doubt_of_the_oven_is_doubt_of_the_time() -> None:
    spread = projection({"oven_centre": np.linspace(330, 460, 60)[:, None] + np.zeros(TIMES)})
    unsure, sure = doneness(LOAF, spread), doneness(LOAF, oven_at(395))
    assert window(unsure) > window(sure) + 5
    ovens = {one.source.value: one.window_min for one in unsure.hangs_on}
    # alone, the oven's doubt is the time between its tenth and its ninetieth percentile
    hot, cool = steady_minutes(LOAF, fahrenheit(447)), steady_minutes(LOAF, fahrenheit(343))
    assert hot is not None
    assert cool is not None
    assert ovens["oven"] == pytest.approx(cool - hot, rel=0.25)
    assert {one.source.value: one.window_min for one in sure.hangs_on}["oven"] < 1.0


def test_what_a_window_hangs_on_comes_greatest_first_and_adds_up_in_squares() -> None:
    found = doneness(LOAF, oven_at(395))
    alone = [one.window_min for one in found.hangs_on]
    assert alone == sorted(alone, reverse=True)
    assert np.hypot.reduce(alone) == pytest.approx(window(found), rel=0.25)


def test_the_cost_of_a_sag_counts_what_is_past_too() -> None:
    # 30 minutes at 330 °F and from now on the recipe's 395 °F: the delay is due to the past alone
    in_at = START - timedelta(minutes=30)
    found = doneness(LOAF, oven_at(395), went_in=in_at, past=trace(330, 330, minutes=30))
    assert found.recipe_min is not None
    assert found.late_min == pytest.approx(likely(found) + 30.0 - found.recipe_min)
    assert found.late_min > 2.0


def test_the_chance_is_the_share_of_futures_that_get_it_done() -> None:
    futures = np.full((30, TIMES), 190.0)
    futures[:20] = 395.0
    assert doneness(LOAF, projection({"oven_centre": futures})).chance_done == pytest.approx(2 / 3, abs=0.05)


def test_the_oven_may_be_another_spot_than_its_centre() -> None:
    rear = projection({"oven_rear": [395.0] * TIMES})
    assert doneness(LOAF, rear, oven="oven_rear").done_min == doneness(LOAF, oven_at(395)).done_min


def test_the_order_of_the_futures_does_not_matter() -> None:
    ordered = 340.0 + np.arange(60.0)[:, None] + np.zeros(TIMES)
    mixed = np.random.default_rng(3).permutation(ordered, axis=0)
    found = doneness(LOAF, projection({"oven_centre": mixed})).done_min
    assert found == doneness(LOAF, projection({"oven_centre": ordered})).done_min


def test_a_vague_past_ends_at_what_an_oven_can_be() -> None:
    vague = trace(440, 440, doubt=700.0)
    found = doneness(LOAF, oven_at(395), went_in=START - timedelta(minutes=40), past=vague).core_now
    assert found is not None
    assert found.p10 is not None
    assert found.p90 is not None
    assert 250.0 < found.p10 < found.p90 < 420.0


def test_how_long_the_core_is_in_the_danger_zone() -> None:
    # from 40 to 140 °F (USDA FSIS, food_safety.toml): found here step by step along the core's own path
    chicken = bake_of("chicken")
    found = doneness(chicken, oven_at(350)).danger_min
    step = step_of(chicken)
    path = warmed(chicken, single(), np.full(int(180 * 60 / step), fahrenheit(350)), step).core[:, 0]
    steps = int(np.sum((path >= fahrenheit(40)) & (path < fahrenheit(140))))
    assert found is not None
    assert found.p50 == pytest.approx(steps * step / 60, rel=0.06)
    assert doneness(LOAF, oven_at(350)).danger_min is None


def test_custard_is_safe_before_it_is_set() -> None:
    found = doneness(bake_of("custard"), oven_at(325))
    assert found.safe_min is not None
    assert found.safe_min.p50 is not None
    assert found.safe_min.p50 < likely(found) - 1


def test_what_goes_in_later_is_done_later() -> None:
    now = likely(doneness(LOAF, oven_at(395)))
    later = likely(doneness(LOAF, oven_at(395), went_in=START + timedelta(minutes=45)))
    assert later == pytest.approx(now + 45, abs=0.5)


@pytest.mark.parametrize(("share", "is_promised"), [(0.0, True), (1.0, False)])
def test_what_is_done_after_the_projection_ends_is_not_promised(share: float, is_promised: bool) -> None:
    fresh = doneness(LOAF, oven_at(395)).done_min
    assert fresh.p10 is not None
    assert fresh.p90 is not None
    room = fresh.p90 + 10.0 if share == 0.0 else fresh.p10 - 5.0
    found = doneness(LOAF, oven_at(395), went_in=START + timedelta(minutes=180.0 - room))
    assert (found.done_min.p50 is not None) is is_promised
    assert found.chance_done > 0.9 if is_promised else found.chance_done < 0.1


def test_meat_names_its_safe_minimum_and_when() -> None:
    found = doneness(bake_of("chicken"), oven_at(350))
    assert found.safe is not None
    assert found.safe.key == "poultry"
    assert found.safe_min is not None
    assert found.safe_min.p50 is not None
    assert found.safe_min.p50 <= likely(found)
    assert doneness(LOAF, oven_at(350)).safe is None


def test_no_member_calls_meat_done_before_it_is_safe() -> None:
    for key in ("chicken", "meat_loaf", "beef_roast"):
        found = doneness(bake_of(key), oven_at(350))
        assert found.safe_min is not None
        for safe, done in zip(
            (found.safe_min.p10, found.safe_min.p50), (found.done_min.p10, found.done_min.p50), strict=True
        ):
            assert safe is not None
            assert done is not None
            assert safe <= done


@pytest.mark.parametrize(
    ("went_in", "past", "words"),
    [
        (START - timedelta(hours=20), trace(390, 390), "correct that time"),
        (START - timedelta(hours=12, minutes=1), trace(390, 390), "correct that time"),
        (START + timedelta(hours=3), None, "later than the oven can be projected"),
        (START + timedelta(hours=4), None, "later than the oven can be projected"),
        (START - timedelta(minutes=20), None, "read the oven"),
    ],
)
def test_what_cannot_be_answered_is_told(went_in, past, words: str) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(InputProblem, match=words):
        doneness(LOAF, oven_at(395), went_in=went_in, past=past)


def test_a_larger_loaf_takes_longer() -> None:
    large = scaled(LOAF, 2.0)
    assert mass_of(large) == pytest.approx(2 * mass_of(LOAF))
    assert (steady_minutes(large, fahrenheit(395)) or 0) > (steady_minutes(LOAF, fahrenheit(395)) or 0) + 10
    for share in (0.1, 10.0):
        assert mass_of(scaled(LOAF, share)) == pytest.approx(share * mass_of(LOAF))
    for share in (0.09, 10.5):
        with pytest.raises(InputProblem, match="times the usual weight is out of range"):
            scaled(LOAF, share)


def test_a_colder_start_takes_longer() -> None:
    cold = replace(LOAF, start=LOAF.start - 10.0)
    assert (steady_minutes(cold, fahrenheit(395)) or 0) > (steady_minutes(LOAF, fahrenheit(395)) or 0) + 0.5
