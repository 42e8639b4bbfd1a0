"""Water on a spot against handbook heats, an independent integration, and the laws it must keep."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.cooking.pans.boiling_time import (
    Goal,
    contact_draws,
    goal_temperature,
    hold_simmer,
    pan_lag,
    preheat_minutes,
    settled_heat,
    simmer_range,
    time_to_reach,
)
from cookstove_gui.cooking.pans.catalogue import Contact, PanOfWater, pan, pans, usual_contact
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.futures.goal_times import first_reach, late_quantiles
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.physics.boiling import time_to_heat
from cookstove_gui.physics.pan import pan_heat_loss
from cookstove_gui.units import degrees
from tests.cooking.made import projection

PANS = {one.key: one for one in pans()}
POT = PANS["stock pot"]
SURE = Contact(median=150.0, log_sd=1e-9)  # the usual one, without its doubt
TIMES = 37


def steady(heat: float, futures: int = 1):  # type: ignore[no-untyped-def]
    return projection({"top": [heat] * TIMES}, futures=futures)


def test_a_litre_is_measured_out_cold() -> None:
    # density at 15 °C 999.10 kg/m3: CoolProp 8.0.0
    assert PanOfWater(POT, 2.0).physical(100.0).water == pytest.approx(1.9982, abs=1e-4)


# reference 2.10: 3 kg from 15 °C to the boil at 1.2 kW net takes 889.8 s (IAPWS-95 by CoolProp 8.0.0); a hot spot and
# a poor contact here bring nearly steady heat, and what pan and room take is reckoned off
def test_time_to_the_boil_at_a_known_power() -> None:
    light = replace(POT, lid=True, mass=0.05)
    water = PanOfWater(light, 3 / 0.9991)
    spot, mean_water = 1100.0, 0.5 * (288.15 + 373.12)
    loss = float(pan_heat_loss(water.physical(1.0), mean_water, water.kitchen))
    contact = (1200.0 + loss) / (POT.base_area * (spot - mean_water))
    found = time_to_reach(steady(degrees(spot, "F")), "top", water, contact=Contact(median=contact, log_sd=1e-9))
    assert found.minutes.p50 == pytest.approx(889.8 / 60, rel=0.02)


def test_agrees_with_the_integral_over_temperature() -> None:
    # time_to_heat integrates over the temperature, time_to_reach steps through time
    water = PanOfWater(POT, 2.0)
    for goal in (Goal.SIMMER, Goal.BOIL):
        end = goal_temperature(goal, water.boiling)
        integral = time_to_heat(water.physical(SURE.median), 288.15, end, 540.0, water.kitchen)
        found = time_to_reach(steady(degrees(540.0, "F")), "top", water, goal, contact=SURE)
        assert found.minutes.p50 == pytest.approx(float(integral) / 60, rel=0.01)


def test_without_losses_to_speak_of_it_is_the_closed_form() -> None:
    # a very hot spot and little water: losses are under 1 %; time = C/U ln((Ts - T0)/(Ts - Tb))
    water = PanOfWater(replace(POT, lid=True), 8.0)
    spot = 1200.0
    physical = water.physical(SURE.median)
    capacity = float(physical.water) * 4186 + POT.heat_capacity
    expected = capacity / (SURE.median * POT.base_area) * np.log((spot - 288.15) / (spot - water.boiling)) / 60
    found = time_to_reach(steady(degrees(spot, "F")), "top", water, contact=SURE)
    assert found.minutes.p50 == pytest.approx(expected, rel=0.03)
    assert found.chance_reached == 1.0


def test_water_boils_well_on_a_450_degree_top() -> None:
    # common practice, no source
    found = time_to_reach(steady(450, 50), "top", PanOfWater(replace(POT, lid=True), 2.0))
    assert found.minutes.p50 is not None
    assert 8 < found.minutes.p50 < 25
    assert time_to_reach(steady(450), "top", PanOfWater(POT, 2.0), contact=SURE).chance_reached == 1.0


def test_water_on_a_250_degree_top_never_boils() -> None:
    found = time_to_reach(steady(250, 20), "top", PanOfWater(POT, 2.0))
    assert found.chance_reached == 0.0
    assert found.minutes.p10 is None


def test_altitude_lowers_boil_and_simmer_alike() -> None:
    # reference 9.18: simmer 190-200 °F, poach 180-190 °F at sea level, scaled down with the boiling point
    sea, high = PanOfWater(POT, 2.0), PanOfWater(POT, 2.0, pressure=float(standard_pressure(2000.0)))
    assert degrees(goal_temperature(Goal.SIMMER, sea.boiling), "F") == pytest.approx(190, abs=0.1)
    assert degrees(goal_temperature(Goal.POACH, sea.boiling), "F") == pytest.approx(180, abs=0.1)
    fall = sea.boiling - high.boiling
    assert fall == pytest.approx(99.974 - 93.315, abs=0.01)  # reference 1.5
    assert goal_temperature(Goal.SIMMER, sea.boiling) - goal_temperature(Goal.SIMMER, high.boiling) == pytest.approx(
        fall
    )


def test_the_simmer_range_holds_a_simmer_and_its_outside_does_not() -> None:
    water = PanOfWater(replace(POT, lid=True), 3.0)
    low, high = (degrees(heat, "F") for heat in simmer_range(water, SURE.median))
    assert low < high
    middle = hold_simmer(steady((low + high) / 2), "top", water, 120, contact=SURE)
    assert middle.chance == 1.0
    assert hold_simmer(steady(high + 15), "top", water, 170, contact=SURE).chance_boils == 1.0
    assert hold_simmer(steady(low - 30), "top", water, 170, contact=SURE).chance_falls == 1.0


def test_steam_carries_off_what_the_spot_brings_once_it_boils() -> None:
    # reference 2.12: 0.25 kg boiled away takes 2256.47 kJ/kg
    water = PanOfWater(replace(POT, lid=True), 3.0)
    spot = 520.0
    lost = hold_simmer(steady(degrees(spot, "F")), "top", water, 180, contact=SURE).litres_lost.p50
    physical = water.physical(SURE.median)
    # with its drying below the boil, which the balance counts as loss, all heat but the pan's own makes steam
    spare = SURE.median * POT.base_area * (spot - water.boiling)
    dry = pan_heat_loss(replace(physical, openness=0.0), water.boiling, water.kitchen)
    assert lost == pytest.approx(min((spare - float(dry)) * 180 * 60 / 2256.47e3, 3.0), rel=0.05)


def test_an_empty_pan_lags_and_settles_by_the_closed_form() -> None:
    iron = PANS["iron pot"]
    lag = pan_lag(iron, 100.0)
    assert lag == pytest.approx(iron.mass * 470 / (iron.base_area * 125.0) / 60)
    settles = settled_heat(iron, 500.0, contact=100.0)
    assert settles == pytest.approx((100 * 500 + 25 * 293.15) / 125)
    minutes = preheat_minutes(iron, 500.0, 293.15, contact=100.0)
    assert settles - (settles - 293.15) * np.exp(-minutes / lag) == pytest.approx(settles - 10)
    assert preheat_minutes(iron, 500.0, settles - 5, contact=100.0) == 0.0
    assert pan_lag(iron) > pan_lag(PANS["iron skillet"])


def test_first_reach_lies_between_steps_and_never_is_infinite() -> None:
    seconds = np.array([0.0, 10.0, 20.0])
    path = np.array([[0.0, 4.0, 8.0], [0.0, 1.0, 2.0], [9.0, 9.0, 9.0]])
    assert first_reach(seconds, path, 6.0) == pytest.approx([15.0, np.inf, 0.0])


def test_contact_draws_are_the_belief() -> None:
    draws = contact_draws(Contact(median=100.0, log_sd=0.5), 400)
    assert np.median(draws) == pytest.approx(100.0, rel=0.02)
    assert np.std(np.log(draws)) == pytest.approx(0.5, rel=0.02)
    assert abs(np.corrcoef(np.arange(400), draws)[0, 1]) < 0.05


def test_late_times_are_none() -> None:
    times = np.array([10.0] * 5 + [20.0] * 3 + [np.inf] * 2)
    found = late_quantiles(times, 180.0)
    assert (found.p10, found.p50, found.p90) == (10.0, 20.0, None) or found.p50 == 10.0
    assert found.p90 is None


def test_a_pan_that_goes_on_later_sees_the_later_spot() -> None:
    rising = projection({"top": 250 + 5.0 * np.arange(TIMES)})
    water = PanOfWater(replace(POT, lid=True), 1.0)
    now = time_to_reach(rising, "top", water, contact=SURE).minutes.p50
    later = time_to_reach(rising, "top", water, contact=SURE, goes_on_min=60).minutes.p50
    assert now is not None
    assert later is not None
    assert later < now


@given(st.floats(380, 650), st.floats(0.5, 6), st.floats(0, 2500), st.floats(60, 300), st.floats(0, 60), st.booleans())
@settings(max_examples=12)
def test_more_heat_less_water_and_a_lid_never_make_it_later(
    heat: float, litres: float, altitude: float, contact: float, more: float, lid: bool
) -> None:
    def minutes(spot: float, water: PanOfWater, passed: float) -> float:
        found = time_to_reach(steady(spot), "top", water, contact=Contact(median=passed, log_sd=1e-9)).minutes.p50
        return np.inf if found is None else found

    water = PanOfWater(replace(POT, lid=lid), litres, pressure=float(standard_pressure(altitude)))
    base = minutes(heat, water, contact)
    slack = 1e-6
    assert minutes(heat + more, water, contact) <= base + slack
    assert minutes(heat, replace(water, litres=litres * 0.8), contact) <= base + slack
    assert minutes(heat, replace(water, pan=replace(POT, lid=True)), contact) <= base + slack
    assert minutes(heat, water, contact + more) <= base + slack
    assert base > 0


@pytest.mark.parametrize("litres", [0.0, 100.0, float("nan")])
def test_no_pan_holds_that(litres: float) -> None:
    with pytest.raises(InputProblem, match="litres"):
        PanOfWater(POT, litres)


def test_own_pans_are_checked() -> None:
    own = pan("mine", material="copper", base="flat and thin", diameter=0.2, mass=1.5)
    assert usual_contact(own).median > 0
    with pytest.raises(InputProblem, match="cast iron"):
        pan("mine", material="gold", base="flat and thin", diameter=0.2, mass=1.5)
    with pytest.raises(InputProblem, match="flat and heavy"):
        pan("mine", material="copper", base="round", diameter=0.2, mass=1.5)
    with pytest.raises(InputProblem, match="metres"):
        pan("mine", material="copper", base="flat and thin", diameter=20, mass=1.5)
    with pytest.raises(InputProblem, match="kilograms"):
        pan("mine", material="copper", base="flat and thin", diameter=0.2, mass=1500)


def test_a_spot_unknown_to_the_projection_is_our_bug() -> None:
    with pytest.raises(ValueError):
        time_to_reach(steady(400), "nowhere", PanOfWater(POT, 1.0))


def test_a_pan_that_goes_on_after_the_projection_is_our_bug() -> None:
    with pytest.raises(ValueError, match="goes_on_min"):
        time_to_reach(steady(400), "top", PanOfWater(POT, 1.0), goes_on_min=200.0)


def test_a_projection_of_one_moment_reaches_nothing_new() -> None:
    found = time_to_reach(projection({"top": [450.0]}), "top", PanOfWater(POT, 1.0))
    assert found.chance_reached == 0.0


def test_no_kitchen_is_that_hot() -> None:
    with pytest.raises(InputProblem, match="kitchen"):
        PanOfWater(POT, 1.0, room=400.0)
