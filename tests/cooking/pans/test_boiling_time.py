"""Water on a spot against handbook heats, an independent integration, and the laws it must keep."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.cooking.pans.boiling_time import (
    Goal,
    goal_temperature,
    pan_lag,
    preheat_minutes,
    settled_heat,
    simmer_hold,
    simmer_range,
    water_course,
    water_time,
)
from cookstove_gui.cooking.pans.catalogue import Contact, PanOfWater, pans
from cookstove_gui.forecast.futures.goal_times import first_reach, late_quantiles
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.physics.boiling import time_to_heat
from cookstove_gui.physics.pan import pan_heat_loss
from cookstove_gui.units import degrees
from tests.cooking.made import projection
from tests.cooking.pans.sure import NO_DOUBTS

PANS = {one.key: one for one in pans()}
POT = PANS["stock pot"]
SURE = Contact(median=150.0, log_sd=1e-9)  # the usual one, without its doubt
TIMES = 37


def _sure(contact: float) -> Contact:
    return Contact(median=contact, log_sd=1e-9)


def steady(heat: float, futures: int = 1):  # type: ignore[no-untyped-def]
    return projection({"top": [heat] * TIMES}, futures=futures)


# reference 2.10: 3 kg from 15 °C to the boil at 1.2 kW net takes 889.8 s (IAPWS-95 by CoolProp 8.0.0); a hot spot and
# a poor contact here bring nearly steady heat, and what the pan and the room take is taken off
def test_time_to_the_boil_at_a_known_power() -> None:
    light = replace(POT, lid=True, mass=0.05)
    water = PanOfWater(light, 3 / 0.9991)
    spot, mean_water = 1100.0, 0.5 * (288.15 + 373.12)
    loss = float(pan_heat_loss(water.physical(1.0), mean_water, water.kitchen))
    contact = (1200.0 + loss) / (POT.base_area * (spot - mean_water))
    found = water_time(steady(degrees(spot, "F")), "top", water, contact=_sure(contact), doubts=NO_DOUBTS)
    assert found.minutes.p50 == pytest.approx(889.8 / 60, rel=0.02)


def test_agrees_with_the_integral_over_temperature() -> None:
    # time_to_heat integrates over the temperature, water_time steps through time
    water = PanOfWater(POT, 2.0)
    for goal in (Goal.SIMMER, Goal.BOIL):
        end = goal_temperature(goal, water.boiling)
        integral = time_to_heat(water.physical(SURE.median), 288.15, end, 540.0, water.kitchen)
        found = water_time(steady(degrees(540.0, "F")), "top", water, goal, contact=SURE, doubts=NO_DOUBTS)
        assert found.minutes.p50 == pytest.approx(float(integral) / 60, rel=0.01)


def test_without_losses_to_speak_of_it_is_the_closed_form() -> None:
    # a very hot spot and little water: losses are under 1 %; time = C/U ln((Ts - T0)/(Ts - Tb))
    water = PanOfWater(replace(POT, lid=True), 8.0)
    spot = 1200.0
    physical = water.physical(SURE.median)
    capacity = float(physical.water) * 4186 + POT.heat_capacity
    expected = capacity / (SURE.median * POT.base_area) * np.log((spot - 288.15) / (spot - water.boiling)) / 60
    found = water_time(steady(degrees(spot, "F")), "top", water, contact=SURE, doubts=NO_DOUBTS)
    assert found.minutes.p50 == pytest.approx(expected, rel=0.03)
    assert found.chance_reached == 1.0


def test_the_course_crosses_the_boil_when_the_water_is_said_to_boil() -> None:
    water, top = PanOfWater(replace(POT, lid=True), 2.0), steady(520, 40)
    minutes = water_time(top, "top", water).minutes
    course = water_course(top, "top", water)
    for heats, at in ((course.p90, minutes.p10), (course.p50, minutes.p50), (course.p10, minutes.p90)):
        assert at is not None
        assert course.minutes[int((heats >= water.boiling).argmax())] == pytest.approx(at, abs=0.75)
    assert (course.p10 <= course.p25).all()
    assert (course.p75 <= course.p90).all()
    assert course.p50[0] == pytest.approx(288.15)
    assert course.p50.max() == pytest.approx(water.boiling)


def test_water_boils_well_on_a_450_degree_top() -> None:
    # common practice, no source
    found = water_time(steady(450, 50), "top", PanOfWater(replace(POT, lid=True), 2.0))
    assert found.minutes.p50 is not None
    assert 8 < found.minutes.p50 < 25
    assert water_time(steady(450), "top", PanOfWater(POT, 2.0), contact=SURE, doubts=NO_DOUBTS).chance_reached == 1.0


def test_water_on_a_250_degree_top_never_boils() -> None:
    found = water_time(steady(250, 20), "top", PanOfWater(POT, 2.0))
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
    middle = simmer_hold(steady((low + high) / 2), "top", water, 120, contact=SURE, doubts=NO_DOUBTS)
    assert middle.chance == 1.0
    assert simmer_hold(steady(high + 15), "top", water, 170, contact=SURE, doubts=NO_DOUBTS).chance_boils == 1.0
    assert simmer_hold(steady(low - 30), "top", water, 170, contact=SURE, doubts=NO_DOUBTS).chance_falls == 1.0


def half_and_half(one: float, other: float, minutes_until_other: float = 0.0):  # type: ignore[no-untyped-def]
    """Half the futures at one heat [°F], the others at another, from some minutes on."""
    heats = np.full((40, TIMES), one)
    heats[20:, round(minutes_until_other / 5) :] = other
    return projection({"top": heats})


def test_the_chances_of_a_simmer_are_shares_of_the_futures() -> None:
    water = PanOfWater(replace(POT, lid=True), 3.0)
    low, high = (degrees(heat, "F") for heat in simmer_range(water, SURE.median))
    middle = (low + high) / 2
    boiling = simmer_hold(half_and_half(middle, high + 40), "top", water, 120, contact=SURE, doubts=NO_DOUBTS)
    assert (boiling.chance, boiling.chance_boils, boiling.chance_falls) == pytest.approx((0.5, 0.5, 0.0))
    falling = simmer_hold(half_and_half(middle, low - 60), "top", water, 120, contact=SURE, doubts=NO_DOUBTS)
    assert (falling.chance, falling.chance_boils, falling.chance_falls) == pytest.approx((0.5, 0.0, 0.5))


def test_a_simmer_is_asked_to_hold_so_long_and_no_longer() -> None:
    water = PanOfWater(replace(POT, lid=True), 3.0)
    low, high = (degrees(heat, "F") for heat in simmer_range(water, SURE.median))
    later_hot = half_and_half((low + high) / 2, high + 100, minutes_until_other=60)
    assert simmer_hold(later_hot, "top", water, 30, contact=SURE, doubts=NO_DOUBTS).chance == 1.0
    assert simmer_hold(later_hot, "top", water, 150, contact=SURE, doubts=NO_DOUBTS).chance == pytest.approx(0.5)


def test_the_doubt_of_the_contact_is_in_the_answer() -> None:
    vague = Contact(median=SURE.median, log_sd=0.5)
    sure, unsure = (
        water_time(steady(500, 100), "top", PanOfWater(POT, 2.0), contact=contact, doubts=NO_DOUBTS).minutes
        for contact in (SURE, vague)
    )
    assert sure.p10 == pytest.approx(sure.p90)
    assert (unsure.p10 or 0) < 0.8 * (sure.p50 or 0)
    assert unsure.p90 is None or unsure.p90 > 1.2 * (sure.p50 or 0)


def test_the_answer_says_what_it_is_about() -> None:
    water = PanOfWater(POT, 2.0)
    found = water_time(steady(500), "top", water, Goal.SIMMER)
    assert found.goal is Goal.SIMMER
    assert degrees(found.temperature, "F") == pytest.approx(190, abs=0.1)  # at sea level


def test_part_of_the_futures_gets_there() -> None:
    found = water_time(half_and_half(250, 500), "top", PanOfWater(POT, 2.0), contact=SURE, doubts=NO_DOUBTS)
    assert found.chance_reached == pytest.approx(0.5)
    assert found.minutes.p10 is not None
    assert found.minutes.p90 is None


def test_a_simmer_comes_before_a_boil_and_poaching_before_both() -> None:
    water = PanOfWater(POT, 2.0)
    times = [water_time(steady(480), "top", water, goal, contact=SURE, doubts=NO_DOUBTS).minutes.p50 for goal in Goal]
    assert times == sorted(times)
    assert len(set(times)) == 3


def test_warm_water_takes_less_time_and_boiling_water_none() -> None:
    water = PanOfWater(POT, 2.0)

    def minutes(start: float) -> float:
        return water_time(steady(480), "top", water, start=start, contact=SURE, doubts=NO_DOUBTS).minutes.p50 or 0.0

    assert minutes(330.0) < minutes(288.15) - 1
    assert minutes(400.0) == 0.0


def test_steam_carries_off_what_the_spot_brings_once_it_boils() -> None:
    # reference 2.12: 0.25 kg boiled away takes 2256.47 kJ/kg
    water = PanOfWater(replace(POT, lid=True), 3.0)
    spot = 520.0
    lost = simmer_hold(steady(degrees(spot, "F")), "top", water, 180, contact=SURE, doubts=NO_DOUBTS).litres_lost.p50
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


def test_late_times_are_none() -> None:
    times = np.array([10.0] * 5 + [20.0] * 3 + [np.inf] * 2)
    found = late_quantiles(times, 180.0)
    assert (found.p10, found.p50, found.p90) == (10.0, 20.0, None) or found.p50 == 10.0
    assert found.p90 is None


def test_a_pan_that_goes_on_later_sees_the_later_spot() -> None:
    rising = projection({"top": 250 + 5.0 * np.arange(TIMES)})
    water = PanOfWater(replace(POT, lid=True), 1.0)
    now = water_time(rising, "top", water, contact=SURE, doubts=NO_DOUBTS).minutes.p50
    later = water_time(rising, "top", water, contact=SURE, doubts=NO_DOUBTS, goes_on_min=60).minutes.p50
    assert now is not None
    assert later is not None
    assert later < now


@given(st.floats(380, 650), st.floats(0.5, 6), st.floats(0, 2500), st.floats(60, 300), st.floats(0, 60), st.booleans())
@settings(max_examples=12)
def test_more_heat_less_water_and_a_lid_never_make_it_later(
    heat: float, litres: float, altitude: float, contact: float, more: float, lid: bool
) -> None:
    def minutes(spot: float, water: PanOfWater, passed: float) -> float:
        found = water_time(steady(spot), "top", water, contact=_sure(passed), doubts=NO_DOUBTS).minutes.p50
        return np.inf if found is None else found

    water = PanOfWater(replace(POT, lid=lid), litres, pressure=float(standard_pressure(altitude)))
    base = minutes(heat, water, contact)
    slack = 1e-6
    assert minutes(heat + more, water, contact) <= base + slack
    assert minutes(heat, replace(water, litres=litres * 0.8), contact) <= base + slack
    assert minutes(heat, replace(water, pan=replace(POT, lid=True)), contact) <= base + slack
    assert minutes(heat, water, contact + more) <= base + slack
    assert base > 0


def test_a_spot_unknown_to_the_projection_is_our_bug() -> None:
    with pytest.raises(ValueError):
        water_time(steady(400), "nowhere", PanOfWater(POT, 1.0))


def test_a_pan_that_goes_on_after_the_projection_is_our_bug() -> None:
    with pytest.raises(ValueError, match="goes_on_min"):
        water_time(steady(400), "top", PanOfWater(POT, 1.0), goes_on_min=200.0)


def test_a_projection_of_one_moment_reaches_nothing_new() -> None:
    found = water_time(projection({"top": [450.0]}), "top", PanOfWater(POT, 1.0))
    assert found.chance_reached == 0.0


def test_a_pan_hotter_than_its_spot_cools_down_to_it() -> None:
    iron = PANS["iron pot"]
    settles = settled_heat(iron, 450.0)
    minutes = preheat_minutes(iron, 450.0, 500.0)
    assert settles + (500.0 - settles) * np.exp(-minutes / pan_lag(iron)) == pytest.approx(settles + 10)
