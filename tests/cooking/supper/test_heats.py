"""In which futures the heat serves a part of a dish, against futures made by hand."""

from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest

from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.cooking.supper.dishes import Heat
from cookstove_gui.cooking.supper.heats import heat_fits, paced_by, task_for
from cookstove_gui.forecast.answers import Projection
from cookstove_gui.stove.stove import Firebox, stove_with_default_spots
from cookstove_gui.units import kelvin
from tests.cooking.supper.made import oven

STOVE = stove_with_default_spots("invented", Firebox.LEFT)
MINUTES = np.arange(0.0, 181.0, 5.0)
TOPS = ("top_front_left", "top_back_left")


def _futures(*rows: np.ndarray, spots: tuple[str, ...] = ("oven_centre",)) -> Projection:
    """Futures in °F, each (times,) or (times, spots)."""
    fahrenheit = np.array([row.reshape(len(MINUTES), len(spots)) for row in rows])
    return Projection(
        now=datetime(2026, 1, 5, tzinfo=UTC), minutes=MINUTES, spots=spots, kelvin=kelvin(fahrenheit, "F")
    )  # fmt: skip


def _flat(heat: float) -> np.ndarray:
    return np.full(len(MINUTES), heat)


def test_a_bake_forgives_twenty_five_degrees_and_no_more():
    futures = _futures(_flat(400), _flat(351), _flat(449), _flat(345), _flat(455))
    (fit,) = heat_fits(futures, STOVE, [oven(30, 375, 425)])
    assert fit is not None
    assert fit.good[0, 0].tolist() == [True, True, True, False, False]
    assert fit.chances(np.array([0.0]))[0, 0] == pytest.approx(0.6)


def _pot(minutes: float, low: float, high: float) -> Heat:
    return Heat(
        what="cook", place=Place.TOP, minutes=minutes, low=kelvin(low, "F"), high=kelvin(high, "F"), evenness=1000.0
    )  # fmt: skip


def test_a_pot_that_cooks_for_long_goes_where_the_heat_is():
    moves = np.stack((np.where(MINUTES <= 60, 540.0, 900.0), np.where(MINUTES < 60, 100.0, 540.0)), axis=1)
    stays = np.stack((np.where(MINUTES <= 60, 540.0, 900.0), np.where(MINUTES < 60, 100.0, 800.0)), axis=1)
    (fit,) = heat_fits(_futures(moves, stays, spots=TOPS), STOVE, [_pot(120.0, 520.0, 560.0)])
    assert fit is not None
    first = fit.spots.index("top_front_left")
    assert fit.good[0, first].tolist() == [True, False]
    assert fit.good[0, 1 - first].tolist() == [False, False]  # nobody begins where it is cold
    assert fit.served(slice(0, 1), (0, 1)).tolist() == [[True, False]]


def test_between_a_spot_too_hot_and_one_too_cool_a_pot_finds_its_heat():
    either = np.stack((_flat(700.0), _flat(300.0)), axis=1)
    hot, cold = (np.stack((_flat(heat), _flat(heat + 10.0)), axis=1) for heat in (700.0, 300.0))
    (fit,) = heat_fits(_futures(either, hot, cold, spots=TOPS), STOVE, [_pot(20.0, 520.0, 560.0)])
    assert fit is not None
    assert not fit.good.any()
    assert fit.served(slice(0, 1), (0, 1)).tolist() == [[True, False, False]]
    assert not fit.served(slice(0, 1), (0,)).any()  # another pot stands on the other
    assert fit.chances(np.array([0.0]))[:, 0] == pytest.approx(0.5 / 3.0)  # half of what a spot of its own counts


def test_a_bake_does_not_slide_from_one_side_of_the_oven_to_the_other():
    either = np.stack((_flat(600.0), _flat(200.0)), axis=1)
    bake = replace(oven(30, 375, 425), evenness=1000.0)
    (fit,) = heat_fits(_futures(either, spots=("oven_left", "oven_right")), STOVE, [bake])
    assert fit is not None
    assert len(fit.spots) == 2
    assert not fit.served(slice(0, 1), (0, 1)).any()


@pytest.mark.parametrize(("high", "gentle"), [(260.0, True), (400.0, False)])
def test_a_gentle_heat_is_had_on_any_warmer_spot_and_a_stronger_one_is_not(high: float, gentle: bool):
    hot, cold = (np.stack((_flat(heat), _flat(heat + 10.0)), axis=1) for heat in (600.0, 150.0))
    (fit,) = heat_fits(_futures(hot, cold, spots=TOPS), STOVE, [_pot(20.0, 220.0, high)])
    assert fit is not None
    assert fit.served(slice(0, 1), (0, 1)).tolist() == [[gentle, False]]


def test_a_place_too_uneven_for_the_dish_is_no_good_place():
    """In the oven a third or so of the difference from side to side is felt; on a spot, from edge to edge of a pan."""
    sides = ("oven_centre", "oven_left", "oven_right")
    even, uneven = (np.stack((_flat(400), _flat(400 - off), _flat(400 + off)), axis=1) for off in (10.0, 100.0))
    bake = replace(oven(30, 375, 425), evenness=30.0 / 1.8)
    careless = replace(bake, evenness=100.0 / 1.8)
    strict, lax = heat_fits(_futures(even, uneven, spots=sides), STOVE, [bake, careless])
    assert strict is not None
    assert lax is not None
    assert strict.good[0, 0].tolist() == [True, False]
    assert lax.good[0, 0].tolist() == [True, True]


@pytest.mark.parametrize("minutes", [20.0, 120.0])
def test_a_pot_stands_where_its_bottom_is_heated_evenly_enough(minutes: float):
    pot = Heat(what="simmer", place=Place.TOP, minutes=minutes, low=kelvin(220, "F"), high=kelvin(260, "F"))
    slope = np.stack((_flat(240.0), _flat(500.0)), axis=1)
    flat = np.stack((_flat(240.0), _flat(240.0)), axis=1)
    wants = replace(pot, evenness=20.0)
    strict, lax = heat_fits(_futures(flat, slope, spots=TOPS), STOVE, [wants, replace(pot, evenness=1000.0)])
    assert strict is not None
    assert lax is not None
    first = strict.spots.index("top_front_left")
    assert strict.good[0, first].tolist() == [True, False]
    assert lax.good[0, first].tolist() == [True, True]


def test_beyond_what_is_projected_the_last_start_that_can_be_judged_counts():
    late = np.where(MINUTES >= 100, 400.0, 100.0)
    (fit,) = heat_fits(_futures(late), STOVE, [oven(30, 375, 425)])
    assert fit is not None
    assert fit.chances(np.array([0.0, 100.0, 175.0, 900.0]))[0].tolist() == [0.0, 1.0, 1.0, 1.0]


def test_a_heat_of_its_own_goes_before_the_tasks():
    bread = Heat(what="bake", place=Place.OVEN, minutes=20.0, task="bread", low=500.0, high=520.0, evenness=10.0)
    task = task_for(bread)
    assert (task.low, task.high, task.minutes, task.evenness) == (500.0, 520.0, 20.0, 10.0)


WANTED = kelvin(370.0, "F")


def _reached(paced: Projection) -> list[float]:
    """When each future is at the heat wanted; infinite where it never is."""
    there = paced.of("oven_centre") >= WANTED - 0.1
    return np.where(there.any(axis=1), MINUTES[there.argmax(axis=1)], np.inf).tolist()


def test_futures_are_paced_by_the_rises_that_are_told():
    rising = _futures(70.0 + 3.0 * MINUTES, 70.0 + 6.0 * MINUTES)  # 370 °F after 100 and after 50 min
    assert _reached(paced_by(rising, "oven_centre", WANTED, np.array([40.0, 40.0, 80.0, 80.0]), 3)) == [80.0, 40.0]


def test_a_future_that_never_gets_there_keeps_its_pace_where_no_fire_of_the_stove_ever_did():
    cool = _futures(_flat(200.0), 70.0 + 6.0 * MINUTES)
    paced = paced_by(cool, "oven_centre", WANTED, np.array([100.0]), 0)
    assert paced.of("oven_centre")[0] == pytest.approx(kelvin(_flat(200.0), "F"))
    assert _reached(paced) == [np.inf, 100.0]


def test_each_fire_that_got_there_speaks_against_the_futures_that_never_do():
    """Of three that fall short one fire leaves one or two, two leave one, the coldest; the hottest comes first."""
    short = _futures(*(70.0 + rise * MINUTES for rise in (1.5, 0.5, 1.0)), 70.0 + 6.0 * MINUTES)
    rises = np.array([60.0, 60.0, 90.0, 90.0, 120.0, 120.0])
    assert _reached(paced_by(short, "oven_centre", WANTED, rises, 2)) == [90.0, np.inf, 120.0, 60.0]
    many = paced_by(short, "oven_centre", WANTED, np.repeat([60.0, 90.0, 120.0, 150.0], 2), 9)
    assert _reached(many) == [90.0, 150.0, 120.0, 60.0]


def test_a_future_that_is_there_already_keeps_its_pace():
    warm = _futures(400.0 + MINUTES, 70.0 + 6.0 * MINUTES)
    paced = paced_by(warm, "oven_centre", WANTED, np.array([100.0]), 3)
    assert paced.of("oven_centre")[0] == pytest.approx(kelvin(400.0 + MINUTES, "F"))
