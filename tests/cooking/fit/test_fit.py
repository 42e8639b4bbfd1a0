"""Fit against closed forms, against a plain loop, and against laws that must hold."""

from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.cooking.fit.fit import FitState, fits
from cookstove_gui.cooking.fit.tasks import Place, Task, task_of, tasks_for
from cookstove_gui.forecast.answers import Projection
from cookstove_gui.stove.stove import SpotKind
from tests.cooking.fit.cases import TIMES, fit_of, random_oven, task
from tests.cooking.made import START, STOVE, projection


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


# 25 °F either way for a short task; from 40 min in the oven 40 °F above and 50 °F below. On the cooktop always 25 °F.
@pytest.mark.parametrize(
    ("place", "minutes", "stray", "good"),
    [
        (Place.OVEN, 30, 24, True),
        (Place.OVEN, 30, 26, False),
        (Place.OVEN, 30, -24, True),
        (Place.OVEN, 30, -26, False),
        (Place.OVEN, 39, 39, False),
        (Place.OVEN, 40, 39, True),
        (Place.OVEN, 40, 41, False),
        (Place.OVEN, 39, -49, False),
        (Place.OVEN, 40, -49, True),
        (Place.OVEN, 40, -51, False),
        (Place.TOP, 60, 24, True),
        (Place.TOP, 60, 26, False),
        (Place.TOP, 60, -26, False),
    ],
)
def test_a_short_stray_is_forgiven_and_a_far_one_is_not(place: Place, minutes: float, stray: float, good: bool) -> None:
    heat = np.full(TIMES, 400.0)
    heat[3] = (425.0 if stray > 0 else 375.0) + stray
    spot = "oven_centre" if place is Place.OVEN else "top_front_left"
    found = fit_of(projection({spot: heat}), task(375, 425, minutes=minutes, place=place))
    assert found.spots[0].chance_now == good


def test_the_mean_must_hold_though_every_stray_is_small() -> None:
    heat = np.full(TIMES, 435.0)  # 10 °F over, all the time but at the start
    heat[0] = 425.0
    assert fit_of(projection({"oven_centre": heat}), task(375, 425)).spots[0].chance_now == 0.0


def test_a_long_bake_bears_the_falling_oven_and_a_short_one_does_not() -> None:
    # a white yeast loaf: 400 °F falling to 375 °F in 60 min (The American Woman's Cook Book, Table I), and some further
    falling = 420 - 90 * np.minimum(np.arange(TIMES) * 5, 60) / 60  # to 330 °F; mean 375 °F
    assert fit_of(projection({"oven_centre": falling}), task(365, 425, minutes=60)).spots[0].chance_now == 1.0
    steep = 420 - 90 * np.minimum(np.arange(TIMES) * 5, 35) / 35
    assert fit_of(projection({"oven_centre": steep}), task(365, 425, minutes=35)).spots[0].chance_now == 0.0


# --- when a chance is enough -----------------------------------------------------------------------------------------


def futures_in_band(*windows: tuple[int, int]) -> Projection:
    """An oven at 400 °F from one time of the grid up to another in each future, and at 300 °F otherwise."""
    heats = np.full((len(windows), TIMES), 300.0)
    for future, (first, end) in enumerate(windows):
        heats[future, first:end] = 400.0
    return projection({"oven_centre": heats})


ALWAYS, NEVER = (0, TIMES), (0, 0)


def test_six_futures_in_ten_are_good_now_and_five_are_not() -> None:
    assert fit_of(futures_in_band(*[ALWAYS] * 6, *[NEVER] * 4), task(375, 425)).state is FitState.NOW
    five = fit_of(futures_in_band(*[ALWAYS] * 5, *[NEVER] * 5), task(375, 425))
    assert five.state is FitState.PERHAPS  # nothing to count on, and nothing gained by waiting
    assert five.spots[0].chance_now == 0.5


def test_a_later_time_that_is_likely_enough_is_named_before_a_likelier_one() -> None:
    # 6 futures in 10 from 30 min on, 9 in 10 from 60 min on
    found = fit_of(futures_in_band(*[(6, TIMES)] * 6, *[(12, TIMES)] * 3, NEVER), task(375, 425))
    assert found.state is FitState.LATER
    assert (found.spots[0].in_min, found.spots[0].chance_then) == (30.0, 0.6)


def test_with_no_likely_time_the_likeliest_later_one_is_named() -> None:
    # three futures good now, 4 in 10 at 60 min: what is not good enough now is never offered in 0 minutes
    found = fit_of(futures_in_band(*[(0, 3)] * 3, *[(12, 20)] * 4, *[NEVER] * 3), task(375, 425, minutes=10))
    assert (found.spots[0].in_min, found.spots[0].chance_then) == (60.0, 0.4)
    assert found.spots[0].chance_ever == 0.7


def test_a_spot_that_only_gets_worse_is_not_promised_for_later() -> None:
    # Good now in half the futures and in ever fewer from then on: five minutes on it would be promised again.
    falling = [(0, 8), (0, 7), (0, 6), (0, 5), (0, 4)]
    found = fit_of(futures_in_band(*falling, *[NEVER] * 5), task(375, 425, minutes=5))
    assert found.spots[0].chance_now == 0.5
    assert found.state is FitState.PERHAPS
    assert found.spots[0].in_min is None


def test_good_at_some_time_in_four_futures_of_ten_is_possible_and_in_three_is_not_with_this_fire() -> None:
    times = [(4, 12), (4, 12), (20, 28), (20, 28)]
    four = fit_of(futures_in_band(*times, *[NEVER] * 6), task(375, 425))
    assert four.state is FitState.LATER
    three = fit_of(futures_in_band(*times[:3], *[NEVER] * 7), task(375, 425))
    assert three.state is FitState.NOT
    assert (three.spots[0].in_min, three.spots[0].chance_then) == (None, 0.0)
    assert three.spots[0].chance_ever == pytest.approx(0.3)


def test_a_time_that_is_good_in_less_than_two_futures_of_ten_is_not_worth_naming() -> None:
    # each of five futures in ten has a time of its own
    own_times = [(1 + 6 * n, 5 + 6 * n) for n in range(5)]
    found = fit_of(futures_in_band(*own_times, *[NEVER] * 5), task(375, 425, minutes=15))
    assert found.spots[0].chance_ever == 0.5
    assert found.state is FitState.PERHAPS
    assert found.spots[0].in_min is None
    shared = [own_times[0], own_times[0], *own_times[2:], *[NEVER] * 5]
    assert fit_of(futures_in_band(*shared), task(375, 425, minutes=15)).state is FitState.LATER


@pytest.mark.parametrize(("enters", "state"), [(30, FitState.LATER), (31, FitState.NOT)])
def test_a_start_near_the_horizon_is_judged_only_if_half_of_it_is_seen(enters: int, state: FitState) -> None:
    # 60 minutes that begin at 150 min are seen half by 180 min; those that begin at 155 min are not
    assert fit_of(futures_in_band((enters, TIMES)), task(375, 425, minutes=60)).state is state


def test_spots_are_ranked_good_now_then_soonest_then_likeliest() -> None:
    now, soon, late, never = "top_front_left", "top_front_middle", "top_front_right", "top_back_left"
    heats = {name: np.full((10, TIMES), 200.0) for name in (never, late, soon, now)}
    heats[now][:7] = 300.0
    heats[soon][:6, 2:] = 300.0
    heats[late][:, 4:] = 300.0
    heats[never][:3] = 300.0
    found = fit_of(projection(heats), task(275, 325, place=Place.TOP))
    assert [spot.spot for spot in found.spots] == [now, soon, late, never]
    heats[late][:8] = 300.0  # good now too, and likelier
    again = fit_of(projection(heats), task(275, 325, place=Place.TOP))
    assert [spot.spot for spot in again.spots][:2] == [late, now]


def test_of_spots_that_will_not_do_the_likeliest_comes_first() -> None:
    heats = {name: np.full((10, TIMES), 200.0) for name in ("top_front_left", "top_front_right")}
    heats["top_front_left"][:1] = 300.0
    heats["top_front_right"][:3] = 300.0
    found = fit_of(projection(heats), task(275, 325, place=Place.TOP))
    assert found.state is FitState.NOT
    assert found.spots[0].spot == "top_front_right"


def test_states_are_called_as_the_fit_command_prints_them() -> None:
    assert [str(state) for state in FitState] == [
        "good now", "good later", "perhaps", "not with this fire", "first fires not done",
    ]  # fmt: skip


# --- difference across the place -------------------------------------------------------------------------------------


def test_a_published_yeast_loaf_oven_is_good_for_bread() -> None:
    falling = np.interp(np.arange(TIMES) * 5, [0, 60, 180], [400, 375, 340])
    bread = task_of("bread")
    assert bread is not None
    assert fit_of(projection({"oven_centre": falling}), bread).state is FitState.NOW


def test_top_tasks_go_to_top_spots_best_first() -> None:
    heats = {"top_front_left": [400.0] * TIMES, "top_front_right": [300.0] * TIMES, "oven_centre": [300.0] * TIMES}
    found = fit_of(projection(heats), task(275, 325, place=Place.TOP))
    assert [spot.spot for spot in found.spots] == ["top_front_right", "top_front_left"]


def test_food_is_refused_before_the_first_fires_and_plates_are_not() -> None:
    projected = projection({spot.name: [300.0] * TIMES for spot in STOVE.spots})
    found = fits(projected, STOVE, first_fires_done=False)
    for fit in found:
        assert (fit.state is FitState.REFUSED) == fit.task.is_food
        if fit.task.is_food:
            assert all(spot.chance_now == 0 and spot.in_min is None for spot in fit.spots)


def test_every_task_of_the_catalogue_is_answered_in_order() -> None:
    projected = projection({spot.name: [300.0] * TIMES for spot in STOVE.spots})
    assert [fit.task for fit in fits(projected, STOVE)] == list(tasks_for(STOVE))
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
    """The documented rule with its numbers, future by future, with nothing clever."""
    minutes = projected.minutes
    below, above = (50 / 1.8, 40 / 1.8) if wanted.minutes >= 40 else (25 / 1.8, 25 / 1.8)
    walls = [s.name for s in STOVE.spots_of(SpotKind.OVEN) if s.name in projected.spots and "floor" not in s.name]
    chances = []
    for first, start in enumerate(minutes):
        if first and start + 0.5 * wanted.minutes > minutes[-1]:
            break
        last = next((i for i, at in enumerate(minutes) if at >= start + wanted.minutes), len(minutes) - 1)
        good = 0
        for future in range(len(projected.kelvin)):
            heat = projected.of(spot)[future, first : last + 1]
            spans = np.diff(minutes[first : last + 1])
            mean = float(np.sum(spans * (heat[1:] + heat[:-1]) / 2) / np.sum(spans))
            wall = np.array([projected.of(name)[future, first : last + 1] for name in walls])
            spread = 0.3 * (wall.max(axis=0) - wall.min(axis=0))
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
    gaps = np.concatenate(([0.0], rng.uniform(5, 20, 12)))
    projected = projection(heats, np.cumsum(gaps))
    wanted = task(360, 430, minutes=minutes, evenness=14)
    expected = loop_chances(projected, wanted, "oven_centre")
    found = fit_of(projected, wanted)
    spot = found.spots[0]
    starts = [(at - projected.now).total_seconds() / 60 for at in found.starts]
    by_clock = np.interp(starts, projected.minutes[: len(expected)], expected)
    assert spot.chances == pytest.approx(list(by_clock))
    assert spot.chance_now == pytest.approx(expected[0])
    if spot.in_min:
        place = starts.index(spot.in_min)
        assert spot.chance_then == pytest.approx(by_clock[place])
        assert spot.chance_then >= 0.6 or spot.chance_then == pytest.approx(max(by_clock[1:]))
        assert all(chance < 0.6 for chance in by_clock[:place])


# --- starts by the clock ----------------------------------------------------------------------------------------------


def rising_and_falling(now: datetime) -> Projection:
    """Futures that come into 350 to 400 °F one after the other and leave it so, seen from a moment of the same day."""
    at = np.arange(0.0, 181.0, 5.0) + (now - START).total_seconds() / 60
    heats = np.array(
        [np.interp(at, [-300, 20 + late, 120 + late, 400], [300, 350, 400, 430]) for late in range(1, 21, 2)]
    )
    return replace(projection({"oven_centre": heats}, np.arange(0.0, 181.0, 5.0)), now=now)


def test_starts_are_now_and_every_round_five_minutes() -> None:
    found = fit_of(rising_and_falling(START + timedelta(minutes=2, seconds=30)), task(350, 400, minutes=1))
    assert [at - START for at in found.starts[:4]] == [timedelta(minutes=m) for m in (2.5, 5, 10, 15)]
    assert found.starts[-1] - START == timedelta(minutes=175)
    assert len(found.spots[0].chances) == len(found.starts)


@pytest.mark.parametrize("gone", [0.0, 1.0, 2.5, 4.0, 4.99, 5.0, 13.0])
def test_a_start_to_come_does_not_move_ahead_of_the_cook(gone: float) -> None:
    now = START + timedelta(minutes=gone)
    found = fit_of(rising_and_falling(now), task(350, 400, minutes=1))
    assert found.state is FitState.LATER
    assert found.spots[0].in_min is not None
    assert now + timedelta(minutes=found.spots[0].in_min) == START + timedelta(minutes=35)


@pytest.mark.parametrize("gone", [0.0, 2.5, 13.0, 60.0])
def test_the_end_of_the_good_stretch_stays_by_the_clock(gone: float) -> None:
    now = START + timedelta(minutes=gone)
    found = fit_of(rising_and_falling(now), task(350, 400, minutes=1))
    assert found.spots[0].until_min is not None
    assert now + timedelta(minutes=found.spots[0].until_min) == START + timedelta(minutes=125)


def test_what_stays_good_as_far_as_is_known_has_no_end() -> None:
    steady = projection({"oven_centre": np.full((4, 37), 380.0)}, np.arange(0.0, 181.0, 5.0))
    assert fit_of(steady, task(350, 400)).spots[0].until_min is None
    assert fit_of(steady, task(350, 370)).spots[0].until_min is None


# --- laws ------------------------------------------------------------------------------------------------------------

seeds = st.integers(0, 10_000)


@given(seeds, st.floats(250, 450), st.floats(5, 100), st.floats(0, 60), st.floats(5, 90))
@settings(max_examples=60)
def test_a_wider_band_is_never_less_likely(seed: int, low: float, width: float, wider: float, minutes: float) -> None:
    oven = random_oven(seed)
    narrow = fit_of(oven, task(low, low + width, minutes=minutes)).spots[0]
    wide = fit_of(oven, task(low - wider, low + width + wider, minutes=minutes)).spots[0]
    assert 0.0 <= narrow.chance_now <= wide.chance_now <= 1.0
    assert narrow.chance_ever <= wide.chance_ever <= 1.0
    assert narrow.chance_now <= narrow.chance_ever


@given(seeds)
@settings(max_examples=40)
def test_the_state_follows_from_the_best_spot(seed: int) -> None:
    found = fit_of(random_oven(seed), task(330, 400))
    best = found.spots[0]
    assert (found.state is FitState.NOW) == (best.in_min == 0.0) == (best.chance_now >= 0.6)
    assert (found.state in (FitState.PERHAPS, FitState.NOT)) == (best.in_min is None)
    assert (found.state is FitState.NOT) == (best.in_min is None and best.chance_ever < 0.4)
    if found.state is FitState.LATER:
        assert best.chance_ever >= 0.4
        assert best.chance_then >= 0.2


@given(seeds)
@settings(max_examples=30)
def test_the_order_of_futures_does_not_matter(seed: int) -> None:
    oven = random_oven(seed)
    shuffled = replace(oven, kelvin=np.random.default_rng(seed).permutation(oven.kelvin, axis=0))
    assert fit_of(oven, task(330, 400)) == fit_of(shuffled, task(330, 400))
