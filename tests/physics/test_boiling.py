"""Pans that come to the boil: closed forms without losses; with them integral and course agree."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.boiling import (
    boil_away_time,
    conductance_from_time,
    holding_temperature,
    spot_to_hold,
    time_to_heat,
)
from cookstove_gui.physics.lumped import lumped_temperature
from cookstove_gui.physics.pan import Kitchen, heat_through_base, pan_heat_loss
from cookstove_gui.physics.pan_course import pan_course
from cookstove_gui.physics.water import boiling_temperature, heat_of_vaporisation, liquid_specific_heat
from tests.physics.laws import law
from tests.physics.test_pan import POT, _pot

KITCHEN = Kitchen()
BOILING = float(boiling_temperature(KITCHEN.pressure))
BARE = _pot(side_area=0.0, top_area=0.0)


def test_two_litres_boil_well_on_a_hot_top() -> None:
    """Row "p.boils"."""
    minutes = time_to_heat(_pot(openness=0.2), 293.15, BOILING, 505.37, KITCHEN) / 60
    assert 12.0 < minutes < 25.0


@law
@given(st.floats(400.0, 600.0), st.floats(0.3, 5.0))
def test_without_losses_it_is_first_order(spot: float, water: float) -> None:
    pot = _pot(side_area=0.0, top_area=0.0, water=water)
    constant = (water * liquid_specific_heat(330.0) + 700.0) / (120.0 * 0.038)
    time = time_to_heat(pot, 300.0, 360.0, spot, KITCHEN)
    assert lumped_temperature(time, 300.0, spot, constant) == pytest.approx(360.0, abs=0.2)


@law
@given(st.floats(420.0, 600.0), st.floats(0.0, 1.0), st.floats(60.0, 300.0))
def test_integral_and_course_agree(spot: float, openness: float, conductance: float) -> None:
    pot = _pot(openness=openness, conductance=conductance)
    time = time_to_heat(pot, 293.15, 355.0, spot, KITCHEN)
    if not np.isfinite(time) or time > 4000.0:
        return
    course = pan_course(pot, 293.15, np.full(134, spot), 30.0, KITCHEN)
    assert np.interp(355.0, course.temperature, course.time) == pytest.approx(time, rel=0.01)


@law
@given(st.floats(440.0, 600.0), st.floats(5.0, 80.0))
def test_a_hotter_spot_boils_sooner(spot: float, hotter: float) -> None:
    assert time_to_heat(POT, 293.15, BOILING, spot + hotter, KITCHEN) < time_to_heat(
        POT, 293.15, BOILING, spot, KITCHEN
    ) or not np.isfinite(time_to_heat(POT, 293.15, BOILING, spot + hotter, KITCHEN))


def test_a_lukewarm_spot_never_boils_it() -> None:
    assert np.isinf(time_to_heat(POT, 293.15, BOILING, 360.0, KITCHEN))
    assert time_to_heat(POT, 300.0, 300.0, 360.0, KITCHEN) == 0.0


def test_cooling_takes_time_too() -> None:
    assert 0 < time_to_heat(POT, 350.0, 330.0, 293.15, KITCHEN) < 4 * 3600


def test_water_boils_sooner_higher_up() -> None:
    high = Kitchen(pressure=80_000.0)
    there = time_to_heat(POT, 293.15, boiling_temperature(80_000.0), 505.0, high)
    assert there < time_to_heat(POT, 293.15, BOILING, 505.0, KITCHEN)


@law
@given(st.floats(300.0, 372.0))
def test_spot_that_holds_a_pan_holds_it(water: float) -> None:
    spot = spot_to_hold(POT, water, KITCHEN)
    assert holding_temperature(POT, spot, KITCHEN) == pytest.approx(water, abs=1e-3)
    assert heat_through_base(POT, spot, water) == pytest.approx(pan_heat_loss(POT, water, KITCHEN), rel=1e-6, abs=1e-6)


def test_a_hot_spot_holds_it_at_boiling_and_no_hotter() -> None:
    assert holding_temperature(POT, 600.0, KITCHEN) == pytest.approx(BOILING, abs=1e-6)


@law
@given(st.floats(25.0, 600.0))
def test_a_timed_pan_tells_its_conductance(conductance: float) -> None:
    time = float(time_to_heat(_pot(conductance=conductance, openness=0.1), 293.15, 350.0, 520.0, KITCHEN))
    if np.isfinite(time):
        found = conductance_from_time(_pot(openness=0.1), 293.15, 350.0, 520.0, time, KITCHEN)
        assert found == pytest.approx(conductance, rel=1e-3)


def test_times_no_contact_explains_give_the_ends() -> None:
    too_quick = conductance_from_time(POT, 293.15, 350.0, 520.0, 1.0, KITCHEN)
    too_slow = conductance_from_time(POT, 293.15, 350.0, 520.0, 1e7, KITCHEN)
    assert too_quick == pytest.approx(5000.0, rel=1e-3)
    assert 2.0 <= too_slow < 60.0


def test_surplus_heat_at_the_boil_makes_steam() -> None:
    course = pan_course(BARE, BOILING, np.full(61, 500.0), 10.0, KITCHEN)
    heat = float(heat_through_base(BARE, 500.0, BOILING)) * 600.0
    assert course.boiled_away[-1] == pytest.approx(heat / heat_of_vaporisation(BOILING), rel=1e-6)
    np.testing.assert_allclose(course.temperature, BOILING, atol=1e-9)


def test_course_follows_a_spot_that_fades() -> None:
    spot = np.linspace(520.0, 360.0, 361)
    fading = pan_course(POT, 293.15, spot, 10.0, KITCHEN).temperature
    steady = pan_course(POT, 293.15, np.full(361, 520.0), 10.0, KITCHEN).temperature
    assert fading[-1] < fading.max() < steady.max() + 1e-9


def test_many_pans_run_their_course_together() -> None:
    pots = _pot(conductance=np.array([60.0, 120.0, 240.0]))
    together = pan_course(pots, 293.15, np.full(61, 500.0), 10.0, KITCHEN).temperature
    alone = pan_course(_pot(conductance=120.0), 293.15, np.full(61, 500.0), 10.0, KITCHEN).temperature
    np.testing.assert_allclose(together[:, 1], alone, atol=1e-9)
    assert np.shape(time_to_heat(pots, 293.15, 350.0, np.array([[480.0], [520.0]]), KITCHEN)) == (2, 3)


@pytest.mark.parametrize(
    ("call", "named"),
    [(lambda: time_to_heat(POT, 260.0, 350.0, 500.0, KITCHEN), "temperature_initial"),
     (lambda: time_to_heat(POT, 293.0, 380.0, 500.0, KITCHEN), "temperature_final"),
     (lambda: time_to_heat(_pot(water=0.0), 293.0, 350.0, 500.0, KITCHEN), "water"),
     (lambda: pan_course(POT, 293.0, np.full(3, 500.0), 0.0, KITCHEN), "time_step"),
     (lambda: boil_away_time(1.0, 0.0), "heat"),
     (lambda: conductance_from_time(POT, 293.0, 350.0, 500.0, 0.0, KITCHEN), "time"),
     (lambda: conductance_from_time(POT, 350.0, 293.0, 500.0, 60.0, KITCHEN), "temperature_final must be above")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(call, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        call()
