"""A fire kept for a meal: fed for as long as the meal needs, to one heat after the other, and then let go."""

import numpy as np

from cookstove_gui.forecast.answers import KeptFire, Projection
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import kelvin
from tests.following import track
from tests.forecast.logs import STOVE, at, usual_morning

BELIEF = track(STOVE, usual_morning(), at(75))


def _band(low: float, high: float) -> HeatBand:
    return HeatBand(name="some", low=kelvin(low, "F"), high=kelvin(high, "F"))


WARM, HOT = _band(325, 375), _band(425, 475)


def _oven(*heats: tuple[float, HeatBand], horizon: float = 300.0) -> Projection:
    return project(BELIEF, kept=KeptFire(heats=heats), horizon=horizon)


def _at(projection: Projection, minute: float) -> float:
    return float(np.median(projection.of("oven_centre")[:, int(minute // 5)]))


def test_it_looks_as_far_ahead_as_it_is_asked_to():
    assert _oven((60.0, WARM), horizon=300.0).minutes[-1] == 300.0


def test_a_fire_let_go_early_leaves_a_cooler_oven_than_one_that_is_fed_on():
    early, late = _oven((60.0, WARM)), _oven((240.0, WARM))
    assert abs(_at(early, 30) - _at(late, 30)) < 2.0
    assert _at(early, 240) < _at(late, 240) - 30.0


def test_it_is_fed_longer_than_the_habit_would():
    by_habit = project(BELIEF, band=WARM, horizon=300.0)
    assert _at(_oven((300.0, WARM)), 300) > _at(by_habit, 300) + 30.0


def test_the_second_heat_is_sought_from_its_own_time_on():
    warm, then_hot = _oven((280.0, WARM)), _oven((90.0, WARM), (280.0, HOT))
    assert abs(_at(warm, 80) - _at(then_hot, 80)) < 2.0
    assert _at(then_hot, 240) > _at(warm, 240) + 10.0


def test_the_heat_wanted_by_the_clock():
    kept = KeptFire(heats=((30.0, HOT), (90.0, WARM)))
    assert [kept.at(minute) for minute in (0.0, 29.9, 30.0, 89.0, 200.0)] == [HOT, HOT, WARM, WARM, WARM]
    assert kept.until == 90.0
