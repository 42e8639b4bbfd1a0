"""Differences of heat across an oven or under a pan, and which spots a task may use."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.cooking.fit.fit import FitState, fits
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.stove.stove import SpotKind
from tests.cooking.fit.cases import TIMES, fit_of, random_oven, task
from tests.cooking.made import STOVE, projection


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


def test_a_spot_across_the_corner_is_no_neighbour() -> None:
    # 0.30 m apart along the sides, 0.42 m across the corner: the back middle does not reach the front left
    heats = {name: [400.0] * TIMES for name in ("top_front_left", "top_front_middle")}
    heats["top_back_middle"] = [500.0] * TIMES
    found = fit_of(projection(heats), task(390, 410, place=Place.TOP, evenness=5))
    uneven = {spot.spot: spot.uneven_now for spot in found.spots}
    assert (uneven["top_front_left"], uneven["top_front_middle"]) == (0.0, 1.0)


def test_a_dip_in_the_middle_is_as_uneven_as_a_slope() -> None:
    # 30 °F hotter on both sides: half a pan of 0.25 m over 0.30 m makes both edges 12.5 °F hotter than its middle
    heats = {name: [430.0] * TIMES for name in ("top_front_left", "top_front_right")}
    griddle = task(390, 410, place=Place.TOP, evenness=12)
    projected = projection({**heats, "top_front_middle": [400.0] * TIMES})
    assert fit_of(projected, griddle).state is FitState.NOT
    assert fit_of(projected, replace(griddle, evenness=13 / 1.8)).state is FitState.NOW


def test_a_wall_beside_the_stove_is_not_cooked_on() -> None:
    from cookstove_gui.stove.stove import with_spots_named

    stove = with_spots_named(STOVE, ("wall_left",))
    assert fits(projection({"wall_left": [300.0] * TIMES}), stove, (task(275, 325, place=Place.TOP),)) == ()


def test_an_oven_without_a_centre_uses_its_other_spots() -> None:
    found = fit_of(projection({"oven_left": [400.0] * TIMES, "oven_right": [380.0] * TIMES}), task(390, 410))
    assert found.spots[0].spot == "oven_left"


seeds = st.integers(0, 10_000)


@given(seeds, st.floats(5, 100), st.floats(0, 100))
@settings(max_examples=40)
def test_bearing_more_unevenness_is_never_less_likely(seed: int, evenness: float, more: float) -> None:
    oven = random_oven(seed)
    strict = fit_of(oven, task(300, 420, evenness=evenness)).spots[0].chance_now
    lenient = fit_of(oven, task(300, 420, evenness=evenness + more)).spots[0].chance_now
    assert strict <= lenient


def test_two_spots_drawn_on_one_place_are_no_neighbours_of_each_other() -> None:
    from cookstove_gui.stove.stove import Spot

    places = {"one": 0.2, "same": 0.2, "other": 0.8}
    stove = replace(STOVE, spots=tuple(Spot(name=n, label=n, kind=SpotKind.TOP, x=x) for n, x in places.items()))
    heats = projection({"one": [300.0] * TIMES, "same": [400.0] * TIMES, "other": [300.0] * TIMES})
    (found,) = fits(heats, stove, (task(275, 325, place=Place.TOP, evenness=1),))
    assert {spot.spot: spot.uneven_now for spot in found.spots}["one"] == 0.0


def test_spots_drawn_on_one_place_tell_of_no_difference() -> None:
    from cookstove_gui.stove.stove import Spot

    stove = replace(STOVE, spots=tuple(Spot(name=name, label=name, kind=SpotKind.TOP) for name in ("one", "two")))
    heats = projection({"one": [300.0] * TIMES, "two": [500.0] * TIMES})
    (found,) = fits(heats, stove, (task(275, 325, place=Place.TOP, evenness=1),))
    assert found.state is FitState.NOW
