"""Water on a spot against handbook heats, an independent integration, and the laws it must keep."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.cooking.arrivals import first_reach, late_quantiles
from cookstove_gui.cooking.pan import (
    STEP,
    Goal,
    contact_draws,
    goal_temperature,
    hold_simmer,
    pan_lag,
    preheat_minutes,
    settled_heat,
    simmer_range,
    time_to_reach,
    water_path,
)
from cookstove_gui.cooking.pan_heat import PanOfWater
from cookstove_gui.cooking.pans import Contact, pan, pans, usual_contact
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.units import degrees
from tests.cooking.made import projection

PANS = {one.key: one for one in pans()}
POT = PANS["stock pot"]
SURE = Contact(median=170.0, log_sd=1e-9)
TIMES = 37


def steady(heat: float, futures: int = 1):  # type: ignore[no-untyped-def]
    return projection({"top": [heat] * TIMES}, futures=futures)


# reference 2.6, 2.7, 2.8: heat to the boil at sea level, IAPWS-95 by CoolProp 8.0.0: 335.05, 1675.3, 753.9 kJ
@pytest.mark.parametrize(
    ("kilograms", "start", "kilojoules"), [(1, 293.15, 335.05), (5, 293.15, 1675.3), (2, 283.15, 753.9)]
)
def test_heat_to_the_boil(kilograms: float, start: float, kilojoules: float) -> None:
    water = PanOfWater(POT, kilograms / 0.9991)  # a litre, measured out cold, is 0.9991 kg
    taken = (water.heat_capacity - POT.heat_capacity) * (water.boiling - start)
    assert taken / 1000 == pytest.approx(kilojoules, rel=0.003)


def test_heat_to_the_boil_at_1500_m() -> None:
    # reference 2.9: 5 kg from 20 °C at 845.56 hPa, boils at 94.983 °C, takes 1570.1 kJ
    water = PanOfWater(POT, 5 / 0.9991, pressure=float(standard_pressure(1500.0)))
    assert degrees(water.boiling, "C") == pytest.approx(94.983, abs=0.005)
    assert (water.heat_capacity - POT.heat_capacity) * (water.boiling - 293.15) / 1000 == pytest.approx(
        1570.1, rel=0.003
    )


def test_evaporation_is_near_that_of_a_hot_pool() -> None:
    # pools without activity: (0.089 + 0.0782 V)(pw - pa)/Y [kg/m2s], pressures in kPa, Y in kJ/kg; ASHRAE HVAC
    # Applications, natatoriums, from memory; pressures and Y from CoolProp 8.0.0 at 60 and 80 °C, room 20 °C at 40 %
    water = PanOfWater(POT, 3.0)
    for celsius, vapour_kpa, latent in ((60, 19.946, 2357.7), (80, 47.414, 2308.0)):
        pool = 0.089 * (vapour_kpa - 0.4 * 2.339) / latent
        ours = float(water.evaporation(celsius + 273.15)) / POT.base_area
        assert ours == pytest.approx(pool, rel=0.4)


def test_agrees_with_an_independent_integration() -> None:
    from scipy.integrate import solve_ivp

    water = PanOfWater(POT, 2.0)
    seconds = np.arange(0, 60 * 60, STEP)
    heat = 480 + 40 * np.sin(seconds / 900)
    conductance = float(water.conductance(150.0))

    def rate(at: float, temperature: np.ndarray) -> np.ndarray:
        spot = np.interp(at, seconds, heat)
        return np.asarray((conductance * (spot - temperature) - water.loss(temperature)) / water.heat_capacity)

    ours = water_path(water, np.array([150.0]), heat[None, :], 288.15)[0]
    until = int(np.argmax(ours >= water.boiling)) or len(seconds)
    theirs = solve_ivp(rate, (0, seconds[until - 1]), [288.15], t_eval=seconds[:until], rtol=1e-8, max_step=STEP)
    assert ours[: until - 1] == pytest.approx(theirs.y[0][: until - 1], abs=0.02)


def test_without_losses_to_speak_of_it_is_the_closed_form() -> None:
    # a very hot spot and little water: losses are under 1 %; time = C/U ln((Ts - T0)/(Ts - Tb))
    water = PanOfWater(replace(POT, lid=True), 8.0)
    spot = 1200.0
    conductance = float(water.conductance(SURE.median))
    expected = water.heat_capacity / conductance * np.log((spot - 288.15) / (spot - water.boiling)) / 60
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
    spare = float(water.conductance(SURE.median)) * (spot - water.boiling) - float(water.loss(water.boiling))
    assert lost == pytest.approx(min(spare * 180 * 60 / 2256.47e3, water.water_mass), rel=0.05)


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
@settings(max_examples=40, deadline=None)
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
