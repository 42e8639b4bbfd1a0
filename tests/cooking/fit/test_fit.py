"""Fit against closed forms, against a plain loop, and against laws that must hold."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.cooking.fit.evenness import FELT_SHARE
from cookstove_gui.cooking.fit.fit import (
    EXCURSION,
    FALLING_EXCURSION,
    GOOD_CHANCE,
    JUDGED_SHARE,
    LONG_BAKE_MINUTES,
    POSSIBLE_CHANCE,
    RISING_EXCURSION,
    WORTH_CHANCE,
    FitState,
    TaskFit,
    fits,
)
from cookstove_gui.cooking.fit.tasks import Place, Task, catalogue, task_of
from cookstove_gui.forecast.answers import Projection
from cookstove_gui.stove.stove import SpotKind
from tests.cooking.made import STOVE, fahrenheit, projection

TIMES = 37


def task(low: float, high: float, *, minutes: float = 30, place: Place = Place.OVEN, evenness: float = 500) -> Task:
    return Task(
        key="made_up",
        name="made up",
        place=place,
        low=fahrenheit(low),
        high=fahrenheit(high),
        minutes=minutes,
        evenness=evenness / 1.8,
    )


def fit_of(projected: Projection, wanted: Task) -> TaskFit:
    (found,) = fits(projected, STOVE, (wanted,))
    return found


def test_a_steady_oven_in_the_band_is_good_now() -> None:
    found = fit_of(projection({"oven_centre": [400.0] * TIMES}), task(375, 425))
    assert found.state is FitState.NOW
    assert found.spots[0].chance_now == 1.0
    assert found.spots[0].in_min == 0.0


@pytest.mark.parametrize("edge", [375.0, 425.0])
def test_both_ends_of_a_band_are_in_it(edge: float) -> None:
    assert fit_of(projection({"oven_centre": [edge] * TIMES}), task(375, 425)).spots[0].chance_now == 1.0


@pytest.mark.parametrize("heat", [374.9, 425.1])
def test_just_outside_is_outside(heat: float) -> None:
    found = fit_of(projection({"oven_centre": [heat] * TIMES}), task(375, 425))
    assert found.state is FitState.NOT
    assert found.spots[0].chance_now == 0.0
    assert found.spots[0].in_min is None


def test_a_straight_rise_is_good_from_when_it_enters_the_band() -> None:
    # 300 °F + 2 °F/min: at 375 °F after 37.5 min, so the first time on the grid of 5 min is 40 min
    rising = 300 + 2.0 * np.minimum(np.arange(TIMES) * 5, 50)
    found = fit_of(projection({"oven_centre": rising}), task(375, 425, minutes=10))
    assert found.state is FitState.LATER
    assert found.spots[0].in_min == 40.0
    assert found.spots[0].chance_then == 1.0


def test_the_chance_is_the_share_of_futures() -> None:
    futures = np.full((10, TIMES), 300.0)
    futures[:7] = 400.0
    spot = fit_of(projection({"oven_centre": futures}), task(375, 425)).spots[0]
    assert spot.chance_now == pytest.approx(0.7)
    assert spot.chance_ever == pytest.approx(0.7)


def test_a_short_stray_is_forgiven_and_a_far_one_is_not() -> None:
    for minutes, stray, chance in ((30, 24.0, 1.0), (30, 26.0, 0.0), (60, 39.0, 1.0), (60, 41.0, 0.0)):
        heat = np.full(TIMES, 420.0)
        heat[3] = 425.0 + stray
        found = fit_of(projection({"oven_centre": heat}), task(375, 425, minutes=minutes))
        assert found.spots[0].chance_now == chance


def test_the_mean_must_hold_though_every_stray_is_small() -> None:
    heat = np.full(TIMES, 435.0)  # 10 °F over, all the time but at the start
    heat[0] = 425.0
    assert fit_of(projection({"oven_centre": heat}), task(375, 425)).spots[0].chance_now == 0.0


def test_a_long_bake_bears_the_falling_oven_and_a_short_one_does_not() -> None:
    # a white yeast loaf: 400 °F falling to 375 °F in 60 min (The American Woman's Cook Book, Table I), and some further
    falling = 420 - 90 * np.minimum(np.arange(TIMES) * 5, 60) / 60  # to 330 °F; mean 375 °F
    oven = projection({"oven_centre": falling})
    assert fit_of(oven, task(365, 425, minutes=60)).spots[0].chance_now == 1.0
    assert fit_of(oven, replace(task(365, 425, minutes=LONG_BAKE_MINUTES - 1))).spots[0].chance_now == 1.0
    steep = 420 - 90 * np.minimum(np.arange(TIMES) * 5, 35) / 35
    assert fit_of(projection({"oven_centre": steep}), task(365, 425, minutes=35)).spots[0].chance_now == 0.0


def test_a_published_yeast_loaf_oven_is_good_for_bread() -> None:
    falling = np.interp(np.arange(TIMES) * 5, [0, 60, 180], [400, 375, 340])
    bread = task_of("bread")
    assert bread is not None
    assert fit_of(projection({"oven_centre": falling}), bread).state is FitState.NOW


def test_an_uneven_oven_is_not_good() -> None:
    # walls 100 °F apart: what is turned in the middle feels 30 °F of it
    uneven = {"oven_centre": [400.0] * TIMES, "oven_left": [350.0] * TIMES, "oven_right": [450.0] * TIMES}
    found = fit_of(projection(uneven), task(375, 425, evenness=29))
    assert found.state is FitState.NOT
    assert found.spots[0].uneven_now == 1.0
    even = fit_of(projection(uneven), task(375, 425, evenness=31))
    assert even.state is FitState.NOW
    assert even.spots[0].uneven_now == 0.0


def test_the_oven_floor_does_not_count_as_a_wall() -> None:
    heats = {"oven_centre": [400.0] * TIMES, "oven_left": [400.0] * TIMES, "oven_floor": [500.0] * TIMES}
    assert fit_of(projection(heats), task(375, 425, evenness=20)).state is FitState.NOW


def test_a_steep_cooktop_is_uneven_under_a_pan() -> None:
    # neighbours 0.30 m apart: 60 °F on one side are 25 °F at the edge of a pan of 0.25 m; as much on both sides, 50 °F
    heats = {"top_front_left": [340.0] * TIMES, "top_front_middle": [400.0] * TIMES}
    griddle = task(390, 410, place=Place.TOP, evenness=24)
    assert fit_of(projection(heats), griddle).state is FitState.NOT
    assert fit_of(projection(heats), replace(griddle, evenness=26 / 1.8)).state is FitState.NOW
    both = projection({**heats, "top_front_right": [460.0] * TIMES})
    assert fit_of(both, replace(griddle, evenness=49 / 1.8)).state is FitState.NOT
    assert fit_of(both, replace(griddle, evenness=51 / 1.8)).state is FitState.NOW


def test_top_tasks_go_to_top_spots_best_first() -> None:
    heats = {"top_front_left": [400.0] * TIMES, "top_front_right": [300.0] * TIMES, "oven_centre": [300.0] * TIMES}
    found = fit_of(projection(heats), task(275, 325, place=Place.TOP))
    assert [spot.spot for spot in found.spots] == ["top_front_right", "top_front_left"]


def test_a_wall_beside_the_stove_is_not_cooked_on() -> None:
    from cookstove_gui.stove.stove import with_spots_named

    stove = with_spots_named(STOVE, ("wall_left",))
    assert fits(projection({"wall_left": [300.0] * TIMES}), stove, (task(275, 325, place=Place.TOP),)) == ()


def test_an_oven_without_a_centre_uses_its_other_spots() -> None:
    found = fit_of(projection({"oven_left": [400.0] * TIMES, "oven_right": [380.0] * TIMES}), task(390, 410))
    assert found.spots[0].spot == "oven_left"


def test_food_is_refused_before_the_first_fires_and_plates_are_not() -> None:
    projected = projection({spot.name: [300.0] * TIMES for spot in STOVE.spots})
    found = fits(projected, STOVE, first_fires_done=False)
    for fit in found:
        assert (fit.state is FitState.REFUSED) == fit.task.is_food
        if fit.task.is_food:
            assert all(spot.chance_now == 0 and spot.in_min is None for spot in fit.spots)


def test_every_task_of_the_catalogue_is_answered_in_order() -> None:
    projected = projection({spot.name: [300.0] * TIMES for spot in STOVE.spots})
    assert [fit.task for fit in fits(projected, STOVE)] == list(catalogue())
    assert all(fit.spots for fit in fits(projected, STOVE))


def test_a_bake_longer_than_the_horizon_is_judged_by_what_is_seen() -> None:
    found = fit_of(projection({"oven_centre": [300.0] * TIMES}), task(275, 325, minutes=400))
    assert found.state is FitState.NOW


def test_a_projection_of_one_moment_is_answered() -> None:
    assert fit_of(projection({"oven_centre": [400.0]}), task(375, 425)).state is FitState.NOW
    assert fit_of(projection({"oven_centre": [300.0]}), task(375, 425)).state is FitState.NOT


def test_unequal_steps_of_time_are_weighed() -> None:
    # 100 min at 400 °F, then one step to 440: the mean of a 100 min window is 400, of 105 min just over
    heats = projection({"oven_centre": [400.0, 400.0, 440.0]}, [0.0, 100.0, 105.0])
    assert fit_of(heats, task(395, 400.5, minutes=100)).spots[0].chance_now == 1.0
    assert fit_of(heats, task(395, 400.5, minutes=105)).spots[0].chance_now == 0.0


# --- a plain loop says the same --------------------------------------------------------------------------------------


def loop_chances(projected: Projection, wanted: Task, spot: str) -> list[float]:
    """The documented rule, future by future, with nothing clever."""
    minutes = projected.minutes
    long_bake = wanted.place is Place.OVEN and wanted.minutes >= LONG_BAKE_MINUTES
    below, above = (FALLING_EXCURSION, RISING_EXCURSION) if long_bake else (EXCURSION, EXCURSION)
    walls = [s.name for s in STOVE.spots_of(SpotKind.OVEN) if s.name in projected.spots and "floor" not in s.name]
    chances = []
    for first, start in enumerate(minutes):
        if first and start + JUDGED_SHARE * wanted.minutes > minutes[-1]:
            break
        last = next((i for i, at in enumerate(minutes) if at >= start + wanted.minutes), len(minutes) - 1)
        good = 0
        for future in range(len(projected.kelvin)):
            heat = projected.of(spot)[future, first : last + 1]
            spans = np.diff(minutes[first : last + 1])
            mean = float(np.sum(spans * (heat[1:] + heat[:-1]) / 2) / np.sum(spans))
            wall = np.array([projected.of(name)[future, first : last + 1] for name in walls])
            spread = FELT_SHARE * (wall.max(axis=0) - wall.min(axis=0))
            mean_spread = float(np.sum(spans * (spread[1:] + spread[:-1]) / 2) / np.sum(spans))
            good += bool(
                wanted.low <= heat[0] <= wanted.high
                and wanted.low <= mean <= wanted.high
                and heat.min() >= wanted.low - below
                and heat.max() <= wanted.high + above
                and (len(walls) < 2 or mean_spread <= wanted.evenness)
            )
        chances.append(good / len(projected.kelvin))
    return chances


@pytest.mark.parametrize("seed", range(6))
@pytest.mark.parametrize("minutes", [7, 30, 60, 120])
def test_agrees_with_a_plain_loop(seed: int, minutes: float) -> None:
    rng = np.random.default_rng(seed)
    heats = {
        name: 380 + 30 * rng.standard_normal((12, 1)) + np.cumsum(6 * rng.standard_normal((12, 13)), axis=1)
        for name in ("oven_centre", "oven_left", "oven_right")
    }
    projected = projection(heats, np.cumsum(rng.uniform(5, 20, 13)) - 5)
    wanted = task(360, 430, minutes=minutes, evenness=14)
    expected = loop_chances(projected, wanted, "oven_centre")
    spot = fit_of(projected, wanted).spots[0]
    assert spot.chance_now == pytest.approx(expected[0])
    if spot.in_min:
        place = list(projected.minutes).index(spot.in_min)
        assert spot.chance_then == pytest.approx(expected[place])
        assert spot.chance_then >= GOOD_CHANCE or spot.chance_then == pytest.approx(max(expected[1:]))
        assert all(chance < GOOD_CHANCE for chance in expected[:place])


# --- laws ------------------------------------------------------------------------------------------------------------

seeds = st.integers(0, 10_000)


def random_oven(seed: int) -> Projection:
    rng = np.random.default_rng(seed)
    heats = {
        name: rng.uniform(250, 480) + 20 * rng.standard_normal((20, 1)) + np.cumsum(rng.normal(0, 5, (20, 19)), axis=1)
        for name in ("oven_centre", "oven_left")
    }
    return projection(heats)


@given(seeds, st.floats(250, 450), st.floats(5, 100), st.floats(0, 60), st.floats(5, 90))
@settings(max_examples=60)
def test_a_wider_band_is_never_less_likely(seed: int, low: float, width: float, wider: float, minutes: float) -> None:
    oven = random_oven(seed)
    narrow = fit_of(oven, task(low, low + width, minutes=minutes)).spots[0]
    wide = fit_of(oven, task(low - wider, low + width + wider, minutes=minutes)).spots[0]
    assert 0.0 <= narrow.chance_now <= wide.chance_now <= 1.0
    assert narrow.chance_ever <= wide.chance_ever <= 1.0
    assert narrow.chance_now <= narrow.chance_ever


@given(seeds, st.floats(5, 100), st.floats(0, 100))
@settings(max_examples=40)
def test_bearing_more_unevenness_is_never_less_likely(seed: int, evenness: float, more: float) -> None:
    oven = random_oven(seed)
    strict = fit_of(oven, task(300, 420, evenness=evenness)).spots[0].chance_now
    lenient = fit_of(oven, task(300, 420, evenness=evenness + more)).spots[0].chance_now
    assert strict <= lenient


@given(seeds)
@settings(max_examples=40)
def test_the_state_follows_from_the_best_spot(seed: int) -> None:
    found = fit_of(random_oven(seed), task(330, 400))
    best = found.spots[0]
    assert (found.state is FitState.NOW) == (best.in_min == 0.0) == (best.chance_now >= GOOD_CHANCE)
    assert (found.state is FitState.NOT) == (best.in_min is None)
    if found.state is FitState.LATER:
        assert best.chance_ever >= POSSIBLE_CHANCE
        assert best.chance_then >= WORTH_CHANCE


@given(seeds)
@settings(max_examples=30)
def test_the_order_of_futures_does_not_matter(seed: int) -> None:
    oven = random_oven(seed)
    shuffled = replace(oven, kelvin=np.random.default_rng(seed).permutation(oven.kelvin, axis=0))
    assert fit_of(oven, task(330, 400)) == fit_of(shuffled, task(330, 400))


def test_spots_drawn_on_one_place_tell_of_no_difference() -> None:
    from cookstove_gui.stove.stove import Spot

    stove = replace(STOVE, spots=tuple(Spot(name=name, label=name, kind=SpotKind.TOP) for name in ("one", "two")))
    heats = projection({"one": [300.0] * TIMES, "two": [500.0] * TIMES})
    (found,) = fits(heats, stove, (task(275, 325, place=Place.TOP, evenness=1),))
    assert found.state is FitState.NOW
