"""Bakes under this oven: against usual times, published roasting times, and the laws of the thing."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.baking.catalogue import bake_of, mass_of, scaled
from cookstove_gui.cooking.baking.doneness import (
    STEP,
    core_path,
    doneness,
    matched_to_core,
    oven_since,
    steady_minutes,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import Trace
from cookstove_gui.physics.air import standard_pressure
from tests.cooking.made import START, fahrenheit, projection

LOAF = bake_of("bread_loaf")
TIMES = 37


def oven_at(heat: float, futures: int = 1):  # type: ignore[no-untyped-def]
    return projection({"oven_centre": [heat] * TIMES}, futures=futures)


def trace(*degrees_f: float, minutes: float = 60) -> Trace:
    at = tuple(START - timedelta(minutes=m) for m in np.linspace(minutes, 0, len(degrees_f)))
    heat = np.array([fahrenheit(d) for d in degrees_f])
    return Trace(at=at, p10=heat - 6, p50=heat, p90=heat + 6)


# --- the table -------------------------------------------------------------------------------------------------------


# usual times at usual heats, common practice, no source: the row's spread of heat was set by them
@pytest.mark.parametrize(
    ("key", "oven", "low", "high"),
    [
        ("bread_loaf", 390, 40, 60),
        ("bread_round", 400, 40, 65),
        ("biscuits", 450, 10, 16),
        ("muffins", 410, 17, 26),
        ("cake_layer", 350, 28, 42),
        ("fruit_pie", 415, 30, 55),
        ("custard", 325, 35, 60),
        ("casserole", 350, 45, 75),
        ("potatoes", 400, 45, 75),
        ("chicken", 350, 90, 135),
    ],
)
def test_usual_bakes_take_their_usual_time(key: str, oven: float, low: float, high: float) -> None:
    minutes = steady_minutes(bake_of(key), fahrenheit(oven))
    assert minutes is not None
    assert low <= minutes <= high


# reference 9.6: oven 300 °F, beef rare, medium, well at 140, 160, 170 °F: 18-20, 22-25, 27-30 minutes per pound (The
# American Woman's Cook Book, Table III, looked up). History only: its rare is below today's safe minimum.
@pytest.mark.parametrize(("core", "low", "high"), [(140, 18, 20), (160, 22, 25), (170, 27, 30)])
def test_a_beef_roast_takes_what_an_old_table_says(core: float, low: float, high: float) -> None:
    """Row "9.6" of tests/reference."""
    roast = replace(bake_of("beef_roast"), done=fahrenheit(core), safety="")
    minutes = steady_minutes(roast, fahrenheit(300))
    assert minutes is not None
    per_pound = minutes / (mass_of(roast) / 0.45359237)
    assert 0.9 * low <= per_pound <= 1.1 * high


# --- done ------------------------------------------------------------------------------------------------------------


def test_height_lowers_the_core_that_the_oven_is_asked_for() -> None:
    high = doneness(bake_of("potatoes"), oven_at(400), pressure=float(standard_pressure(1500.0)))
    assert high.done_at == pytest.approx(94.983 + 273.15 - 1.0, abs=0.005)


def test_an_oven_cooler_than_the_goal_never_gets_it_done() -> None:
    assert steady_minutes(LOAF, fahrenheit(190)) is None
    found = doneness(LOAF, oven_at(190))
    assert found.chance_done == 0.0
    assert found.done_min.p50 is None
    assert found.late_min is None


# --- the outlook -----------------------------------------------------------------------------------------------------


def test_a_steady_oven_in_the_middle_of_the_band_takes_the_recipe_time() -> None:
    found = doneness(LOAF, oven_at(395))
    assert found.recipe_min is not None
    assert found.done_min.p50 == pytest.approx(found.recipe_min, abs=0.1)
    assert found.late_min == pytest.approx(0.0, abs=0.1)
    assert found.chance_done == 1.0
    assert found.core_now is None


def test_what_was_in_already_needs_that_much_less() -> None:
    fresh = doneness(LOAF, oven_at(395))
    found = doneness(LOAF, oven_at(395), went_in=START - timedelta(minutes=20), past=trace(395, 395))
    assert fresh.done_min.p50 is not None
    assert found.done_min.p50 == pytest.approx(fresh.done_min.p50 - 20, abs=0.5)
    assert found.core_now is not None
    assert found.core_now.p50 is not None
    assert LOAF.start < found.core_now.p50 < found.done_at


def test_a_sagging_oven_makes_it_later_and_says_by_how_much() -> None:
    sagging = projection({"oven_centre": 395 - 80 * np.minimum(np.arange(TIMES) * 5, 60) / 60})
    found = doneness(LOAF, sagging)
    assert found.late_min is not None
    assert found.recipe_min is not None
    assert found.done_min.p50 is not None
    assert found.late_min > 2
    assert found.late_min == pytest.approx(found.done_min.p50 - found.recipe_min)


def test_a_hot_past_makes_it_sooner() -> None:
    in_at = START - timedelta(minutes=30)
    hot = doneness(LOAF, oven_at(395), went_in=in_at, past=trace(450, 450)).done_min.p50
    cool = doneness(LOAF, oven_at(395), went_in=in_at, past=trace(340, 340)).done_min.p50
    assert hot is not None
    assert cool is not None
    assert hot < cool - 5


def test_doubt_of_the_oven_is_doubt_of_the_time() -> None:
    spread = projection({"oven_centre": np.linspace(330, 460, 60)[:, None] + np.zeros(TIMES)})
    found = doneness(LOAF, spread).done_min
    assert found.p10 is not None
    assert found.p50 is not None
    assert found.p90 is not None
    assert found.p10 + 3 < found.p50 < found.p90 - 5
    # the ends are those of the futures themselves
    hot, cool = steady_minutes(LOAF, fahrenheit(447)), steady_minutes(LOAF, fahrenheit(343))
    assert hot is not None
    assert cool is not None
    assert found.p10 == pytest.approx(hot, abs=2)
    assert found.p90 == pytest.approx(cool, abs=3)


def test_a_hotter_oven_than_the_recipes_takes_less_time() -> None:
    found = doneness(LOAF, oven_at(425))
    assert found.late_min is not None
    assert found.late_min < -2.0


def test_the_cost_of_a_sag_counts_what_is_past_too() -> None:
    # 30 minutes at 330 °F and from now on the recipe's 395 °F: the delay is due to the past alone
    in_at = START - timedelta(minutes=30)
    found = doneness(LOAF, oven_at(395), went_in=in_at, past=trace(330, 330, minutes=30))
    assert found.done_min.p50 is not None
    assert found.recipe_min is not None
    assert found.late_min == pytest.approx(found.done_min.p50 + 30.0 - found.recipe_min)
    assert found.late_min > 2.0


def test_the_chance_is_the_share_of_futures_that_get_it_done() -> None:
    futures = np.full((30, TIMES), 190.0)
    futures[:20] = 395.0
    assert doneness(LOAF, projection({"oven_centre": futures})).chance_done == pytest.approx(2 / 3, abs=0.05)


def test_the_oven_may_be_another_spot_than_its_centre() -> None:
    rear = projection({"oven_rear": [395.0] * TIMES})
    assert doneness(LOAF, rear, oven="oven_rear").done_min == doneness(LOAF, oven_at(395)).done_min


def core_after(minutes: float, heat: float) -> float:
    """The loaf's core [K] after some minutes in a steady oven [K]."""
    return float(core_path(LOAF, np.full(round(minutes * 60 / STEP) + 1, heat))[-1])


def test_the_past_is_as_believed_where_the_futures_agree() -> None:
    found = doneness(LOAF, oven_at(395), went_in=START - timedelta(minutes=40), past=trace(360, 360)).core_now
    assert found is not None
    for core in (found.p10, found.p50, found.p90):
        assert core == pytest.approx(core_after(40, fahrenheit(360)), abs=0.1)


def test_a_future_that_is_hot_now_was_hot_before() -> None:
    # Half the futures 10 K below their mean and half 10 K above it, which is one standard deviation. The past's p10 and
    # p90 are 6 K off its middle, so one standard deviation of the past is 6 / 1.2816 = 4.682 K.
    futures = np.full((40, TIMES), 395.0 - 18.0)
    futures[20:] = 395.0 + 18.0
    hot_and_cool = projection({"oven_centre": futures})
    found = doneness(LOAF, hot_and_cool, went_in=START - timedelta(minutes=40), past=trace(360, 360)).core_now
    assert found is not None
    assert found.p10 == pytest.approx(core_after(40, fahrenheit(360) - 4.682), abs=0.1)
    assert found.p90 == pytest.approx(core_after(40, fahrenheit(360) + 4.682), abs=0.1)


def test_a_vague_past_ends_at_what_an_oven_can_be() -> None:
    at = (START - timedelta(minutes=60), START)
    vague = Trace(at=at, p10=np.full(2, -200.0), p50=np.full(2, 500.0), p90=np.full(2, 1200.0))
    futures = np.full((40, TIMES), 395.0 - 18.0)
    futures[20:] = 395.0 + 18.0
    found = doneness(
        LOAF, projection({"oven_centre": futures}), went_in=START - timedelta(minutes=40), past=vague
    ).core_now
    assert found is not None
    assert found.p10 == pytest.approx(core_after(40, 240.0), abs=0.1)
    assert found.p90 == pytest.approx(core_after(40, 850.0), abs=0.1)


def test_a_few_futures_stand_for_all_by_how_hot_they_keep_the_oven() -> None:
    """The middle one is the middle of the crowd, in whatever order they come."""
    ordered = 340.0 + np.arange(60.0)[:, None] + np.zeros(TIMES)
    mixed = np.random.default_rng(3).permutation(ordered, axis=0)
    found = doneness(LOAF, projection({"oven_centre": mixed})).done_min
    assert found == doneness(LOAF, projection({"oven_centre": ordered})).done_min
    assert found.p50 == pytest.approx(steady_minutes(LOAF, fahrenheit(369.5)) or 0.0, abs=0.5)


def test_how_long_the_core_is_in_the_danger_zone() -> None:
    # from 40 to 140 °F (USDA FSIS, food_safety.toml): found here step by step along the core's own path
    chicken = bake_of("chicken")
    found = doneness(chicken, oven_at(350)).danger_min
    path = core_path(chicken, np.full(round(180 * 60 / STEP) + 1, fahrenheit(350)))
    steps = int(np.sum((path > fahrenheit(40)) & (path < fahrenheit(140))))
    assert found is not None
    assert found.p50 == pytest.approx(steps * STEP / 60, abs=0.5)
    assert doneness(LOAF, oven_at(350)).danger_min is None


def test_custard_is_safe_before_it_is_set() -> None:
    found = doneness(bake_of("custard"), oven_at(325))
    assert found.safe_min is not None
    assert found.safe_min.p50 is not None
    assert found.done_min.p50 is not None
    assert found.safe_min.p50 < found.done_min.p50 - 1


def test_what_goes_in_later_is_done_later() -> None:
    now = doneness(LOAF, oven_at(395)).done_min.p50
    later = doneness(LOAF, oven_at(395), went_in=START + timedelta(minutes=45)).done_min.p50
    assert now is not None
    assert later == pytest.approx(now + 45, abs=0.5)


@pytest.mark.parametrize(("beyond_min", "chance"), [(-1.0, 1.0), (1.0, 0.0)])
def test_what_is_done_after_the_projection_ends_is_not_promised(beyond_min: float, chance: float) -> None:
    fresh = doneness(LOAF, oven_at(395)).done_min.p50 or 0.0
    found = doneness(LOAF, oven_at(395), went_in=START + timedelta(minutes=180.0 + beyond_min - fresh))
    assert found.chance_done == chance
    assert (found.done_min.p50 is None) == (chance == 0.0)


def test_meat_names_its_safe_minimum_and_when() -> None:
    found = doneness(bake_of("chicken"), oven_at(350))
    assert found.safe is not None
    assert found.safe.key == "poultry"
    assert found.safe_min is not None
    assert found.safe_min.p50 == found.done_min.p50
    assert doneness(LOAF, oven_at(350)).safe is None


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


def test_a_probe_in_the_core_sets_the_pace() -> None:
    oven = np.full(int(30 * 60 / STEP) + 1, fahrenheit(395))
    quick = replace(LOAF, vapour=LOAF.vapour * 1.3)
    shown = core_path(quick, oven)[-1]
    matched = matched_to_core(LOAF, oven, float(shown))
    assert matched.vapour == pytest.approx(quick.vapour, rel=0.01)


@pytest.mark.parametrize(("core", "factor"), [(400.0, 2.0), (300.0, 0.5)])
def test_a_probe_that_asks_for_more_than_twice_or_half_the_pace_is_not_followed(core: float, factor: float) -> None:
    oven = np.full(int(30 * 60 / STEP) + 1, fahrenheit(395))
    assert matched_to_core(LOAF, oven, core).vapour == pytest.approx(factor * LOAF.vapour, rel=0.01)


def test_oven_since_follows_the_belief() -> None:
    found = oven_since(oven_at(395), trace(300, 400, minutes=50), START - timedelta(minutes=50))
    assert found[0] == pytest.approx(fahrenheit(300))
    assert found[-1] == pytest.approx(fahrenheit(400))
    assert found[len(found) // 2] == pytest.approx(fahrenheit(350), abs=0.5)


def test_a_larger_loaf_takes_longer() -> None:
    large = scaled(LOAF, 2.0)
    assert mass_of(large) == pytest.approx(2 * mass_of(LOAF))
    assert (steady_minutes(large, fahrenheit(395)) or 0) > (steady_minutes(LOAF, fahrenheit(395)) or 0) + 10
    for share in (0.1, 10.0):
        assert mass_of(scaled(LOAF, share)) == pytest.approx(share * mass_of(LOAF))
    for share in (0.09, 10.5):
        with pytest.raises(InputProblem, match="times the usual weight is out of range"):
            scaled(LOAF, share)


# --- turning ---------------------------------------------------------------------------------------------------------


def test_what_went_in_this_moment_is_as_warm_as_it_was() -> None:
    assert core_path(LOAF, np.array([fahrenheit(395)])) == pytest.approx([LOAF.start])
