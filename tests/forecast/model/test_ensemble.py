"""One reading moves the ensemble as the closed form says where everything is linear and normal."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.forecast.model.ensemble import (
    FIELD,
    MEMBERS,
    Ensemble,
    assimilate,
    expectation,
    judge,
    start,
)
from cookstove_gui.forecast.model.habits import Habits
from cookstove_gui.forecast.model.observation import Reading
from tests.forecast.logs import STOVE

_OVEN = [spot.name for spot in STOVE.spots].index("oven_centre")
_TOP = [spot.name for spot in STOVE.spots].index("top_front_left")


def _warm_ensemble() -> Ensemble:
    ensemble = start(STOVE, Character.generic(STOVE), np.random.Generator(np.random.Philox(3)), 0.0)
    random = np.random.Generator(np.random.Philox(4))
    common = random.standard_normal(MEMBERS)
    ensemble.x[heat.PLATE] = 480.0 + 12.0 * common
    ensemble.x[heat.DIAL] = 430.0 + 8.0 * common + 4.0 * random.standard_normal(MEMBERS)
    ensemble.x[heat.ROOM] = 294.0
    return ensemble


def _reading(spot: int, value: float, variance: float) -> Reading:
    return Reading(number=1, spot=spot, typed=value, value=value, variance=variance, possible=True)


def test_mean_and_variance_after_a_reading_are_the_normal_posterior():
    ensemble = _warm_ensemble()
    seen, _ = expectation(ensemble, STOVE, _OVEN)
    mean, variance, noise = float(seen.mean()), float(seen.var()), 9.0
    assimilate(ensemble, STOVE, _reading(_OVEN, mean + 2.0, noise), 0.0)
    after, _ = expectation(ensemble, STOVE, _OVEN)
    assert after.mean() == pytest.approx(mean + 2.0 * variance / (variance + noise), abs=1e-6)
    assert after.var() == pytest.approx(variance * noise / (variance + noise), rel=1e-6)


def test_a_confirmed_surprise_gives_the_normal_posterior_too():
    ensemble = _warm_ensemble()
    seen, _ = expectation(ensemble, STOVE, _OVEN)
    mean, variance, noise = float(seen.mean()), float(seen.var()), 9.0
    far = replace(_reading(_OVEN, mean + 80.0, noise), confirmed=True)
    assert judge(ensemble, STOVE, far).slip_chance == 0.0
    assimilate(ensemble, STOVE, far, 0.0)
    after, _ = expectation(ensemble, STOVE, _OVEN)
    assert after.mean() == pytest.approx(mean + 80.0 * variance / (variance + noise), abs=1e-6)


def test_an_unread_lump_moves_by_its_regression_on_the_reading():
    ensemble = _warm_ensemble()
    seen, _ = expectation(ensemble, STOVE, _OVEN)
    plate = ensemble.x[heat.PLATE].copy()
    gain = float(np.mean((plate - plate.mean()) * (seen - seen.mean()))) / (float(seen.var()) + 9.0)
    assimilate(ensemble, STOVE, _reading(_OVEN, float(seen.mean()) + 2.0, 9.0), 0.0)
    assert ensemble.x[heat.PLATE].mean() - plate.mean() == pytest.approx(2.0 * gain, abs=1e-6)


def test_a_spots_total_belief_is_the_normal_posterior_of_physics_and_its_own_share():
    ensemble = _warm_ensemble()
    seen, row = expectation(ensemble, STOVE, _TOP)
    prior = float(seen.var() + row @ ensemble.remainder @ row)
    mean, noise = float(seen.mean()), 16.0
    assimilate(ensemble, STOVE, _reading(_TOP, mean + 5.0, noise), 0.0)
    after, row = expectation(ensemble, STOVE, _TOP)
    total = float(after.var() + row @ ensemble.remainder @ row)
    # The excess over the room, by which a share counts, itself moves a little: a few per cent are allowed.
    assert after.mean() - mean == pytest.approx(5.0 * prior / (prior + noise), rel=0.05)
    assert total == pytest.approx(prior * noise / (prior + noise), rel=0.25)


def test_a_likely_slip_moves_the_belief_by_almost_nothing():
    ensemble = _warm_ensemble()
    verdict = judge(ensemble, STOVE, _reading(_OVEN, 600.0, 9.0))
    before = ensemble.x[heat.DIAL].mean()
    assimilate(ensemble, STOVE, _reading(_OVEN, 600.0, 9.0), verdict.slip_chance)
    assert verdict.slip_chance > 0.95
    assert abs(ensemble.x[heat.DIAL].mean() - before) < 10.0


def test_a_reading_of_one_spot_tells_of_its_neighbours():
    ensemble = _warm_ensemble()
    neighbour = FIELD + _TOP
    before = ensemble.remainder[_TOP, _TOP]
    assimilate(ensemble, STOVE, _reading(_TOP, 560.0, 9.0), 0.0)
    assert ensemble.x[neighbour].mean() > 0.0
    assert ensemble.remainder[_TOP, _TOP] < before


def test_waiting_longer_than_usual_leaves_only_longer_gaps():
    gaps, masses, _ = Habits().next_loads(60.0, 4000, np.random.Generator(np.random.Philox(5)))
    assert gaps.min() > 0.0
    assert masses.min() > 0.0
    total = 60.0 + gaps[:, 0]
    # Lognormal beyond 60 min; its median by scipy's conditional quantile, the centre's own doubt included.
    from scipy.stats import lognorm

    habits = Habits()
    spread = habits.interval_deviation
    tail = lognorm.sf(60.0, spread, scale=np.exp(habits.interval_log))
    expected = lognorm.isf(0.5 * tail, spread, scale=np.exp(habits.interval_log))
    assert np.median(total) == pytest.approx(expected, rel=0.12)


def test_habits_learn_the_usual_interval_and_mass():
    habits = Habits()
    for _ in range(40):
        habits = habits.after_interval(50.0).after_mass(3.0)
    assert np.exp(habits.interval_log) == pytest.approx(50.0, rel=0.05)
    assert np.exp(habits.mass_log) == pytest.approx(3.0, rel=0.05)
    assert habits.interval_deviation == pytest.approx(0.25)
