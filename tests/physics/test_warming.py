"""The bake solver: exact where the series is exact, no heat lost, what is moist never past boiling."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.conduction import temperature_ratio
from cookstove_gui.physics.planck import STEFAN_BOLTZMANN
from cookstove_gui.physics.warming import Body, Exposure, Warming, warm_through
from cookstove_gui.physics.water import boiling_temperature, heat_of_vaporisation
from tests.physics.coolprop import HAPropsSI
from tests.physics.laws import law

COLD, HOT = 298.15, 473.15
HALF, CONDUCTIVITY, HEAT_CAPACITY = 0.05, 0.45, 3.2e6
BOILING = float(boiling_temperature(101325.0))
LATENT = float(heat_of_vaporisation(BOILING))


def _course(minutes: float, time_step: float = 5.0, oven: float = HOT, **changes: float) -> Warming:
    body = {"half_thickness": HALF, "conductivity": CONDUCTIVITY, "heat_capacity": HEAT_CAPACITY}
    exposure = {"convection_coefficient": 20.0}
    for name, value in changes.items():
        (exposure if name in Exposure.__slots__ else body)[name] = value
    steps = round(minutes * 60 / time_step)
    return warm_through(Body(**body), Exposure(**exposure), COLD, np.full(steps + 1, oven), time_step)


@pytest.mark.parametrize(("shape", "dimension"), [("wall", 1.0), ("cylinder", 2.0), ("sphere", 3.0)])
@pytest.mark.parametrize("coefficient", [8.0, 20.0, 100.0])
def test_middle_agrees_with_the_exact_series(shape, dimension, coefficient) -> None:  # type: ignore[no-untyped-def]
    """Row "5.warming"."""
    course = _course(120.0, dimension=dimension, convection_coefficient=coefficient)
    fourier = CONDUCTIVITY / HEAT_CAPACITY * course.time / HALF**2
    biot = coefficient * HALF / CONDUCTIVITY
    middle = HOT + (COLD - HOT) * np.asarray(temperature_ratio(shape, biot, fourier))
    surface = HOT + (COLD - HOT) * np.asarray(temperature_ratio(shape, biot, fourier, 1.0))
    assert np.abs(course.core - middle).max() < 0.0015 * (HOT - COLD)
    assert np.abs(course.surface - surface)[12:].max() < 0.012 * (HOT - COLD)


def test_length_of_the_step_hardly_matters() -> None:
    bread = {"emissivity": 0.9, "water": 200.0, "heat_capacity": 1.2e6, "conductivity": 0.4, "crust_diffusivity": 2e-6}
    for changes in ({"emissivity": 0.9}, bread):
        quick, slow = _course(60.0, time_step=1.0, **changes), _course(60.0, time_step=30.0, **changes)
        assert np.abs(quick.core[::30] - slow.core).max() < 0.8
        assert quick.water_lost[-1] == pytest.approx(slow.water_lost[-1], rel=0.02)


@law
@given(st.floats(1.0, 3.0), st.floats(5.0, 60.0), st.floats(0.0, 1.0), st.floats(0.0, 300.0), st.floats(0.0, 1.0))
def test_no_heat_is_lost(dimension, coefficient, emissivity, water, openness) -> None:  # type: ignore[no-untyped-def]
    course = _course(
        90.0,
        time_step=30.0,
        dimension=dimension,
        convection_coefficient=coefficient,
        emissivity=emissivity,
        water=water,
        openness=openness,
    )
    kept = HEAT_CAPACITY * HALF / dimension * (course.mean_temperature - COLD)
    np.testing.assert_allclose(course.heat_taken, kept + LATENT * course.water_lost, rtol=1e-6, atol=0.5)


def test_what_goes_in_comes_from_the_oven() -> None:
    """Energy balance across the crust: what the surface is given, by its own temperature, is what was taken."""
    course = _course(90.0, time_step=2.0, emissivity=0.9, water=250.0, heat_capacity=1.2e6, conductivity=0.4)
    air = 20.0 * (HOT - course.surface) + 0.9 * STEFAN_BOLTZMANN * (HOT**4 - course.surface**4)
    assert float(air[1:].sum() * 2.0) == pytest.approx(course.heat_taken[-1], rel=0.01)


def test_radiation_alone_ends_at_the_walls_temperature() -> None:
    course = _course(1800.0, time_step=60.0, convection_coefficient=0.0, emissivity=1.0, conductivity=50.0)
    assert course.core[-1] == pytest.approx(HOT, abs=0.5)


def test_first_radiation_is_stefan_boltzmanns() -> None:
    course = _course(0.1, time_step=0.1, convection_coefficient=0.0, emissivity=0.8, conductivity=50.0)
    first = course.heat_taken[1] / 0.1
    assert first == pytest.approx(0.8 * STEFAN_BOLTZMANN * (HOT**4 - COLD**4), rel=1e-3)


def test_walls_may_be_hotter_than_the_air() -> None:
    body = Body(half_thickness=HALF, conductivity=CONDUCTIVITY, heat_capacity=HEAT_CAPACITY)
    exposure = Exposure(convection_coefficient=10.0, emissivity=0.9)
    air = np.full(361, HOT)
    plain = warm_through(body, exposure, COLD, air, 10.0)
    glowing = warm_through(body, exposure, COLD, air, 10.0, temperature_walls=air + 60.0)
    assert glowing.core[-1] > plain.core[-1] + 2.0


BREAD = {"emissivity": 0.9, "water": 200.0, "heat_capacity": 1.2e6, "conductivity": 0.4, "crust_diffusivity": 2e-6}


def test_nothing_moist_passes_boiling_and_the_crust_outside_does() -> None:
    course = _course(60.0, **BREAD)
    assert course.temperature.max() <= BOILING
    assert course.temperature[-1, -1] > BOILING - 6.0
    assert course.surface[-1] > BOILING + 30.0
    assert (np.diff(course.temperature[-1]) >= -1e-9).all()


def test_the_crust_is_as_thick_as_the_water_that_left_it() -> None:
    course = _course(60.0, **BREAD)
    np.testing.assert_allclose(course.crust, course.water_lost / 200.0)
    assert 0.002 < course.crust[-1] < 0.02


def test_a_crust_holds_back_vapour_and_heat() -> None:
    tight, loose = _course(60.0, **{**BREAD, "crust_diffusivity": 2e-7}), _course(60.0, **BREAD)
    assert tight.water_lost[-1] < 0.95 * loose.water_lost[-1]
    assert tight.core[-1] > loose.core[-1]
    insulating = _course(60.0, **{**BREAD, "crust_conductivity": 0.03})
    assert insulating.surface[-1] > loose.surface[-1] + 5.0


def test_a_skin_keeps_water_in() -> None:
    peeled, whole = _course(60.0, **BREAD), _course(60.0, **{**BREAD, "skin": 2000.0})
    assert whole.water_lost[60] < 0.6 * peeled.water_lost[60]
    assert whole.core[-1] > peeled.core[-1]


def test_water_slows_the_middle() -> None:
    wet = _course(60.0, water=300.0, heat_capacity=1.2e6)
    dry = _course(60.0, heat_capacity=1.2e6)
    assert wet.core[-1] < dry.core[-1] - 1.0


def test_what_is_closed_loses_nothing_and_salt_lets_it_get_hotter() -> None:
    closed = _course(60.0, **{**BREAD, "openness": 0.0})
    assert closed.water_lost[-1] == 0.0
    pure, salted = _course(60.0, **BREAD), _course(60.0, **{**BREAD, "water_activity": 0.9})
    assert salted.temperature[-1, -1] > pure.temperature[-1, -1] + 1.0


def test_all_the_water_but_what_stays_bound_can_go() -> None:
    course = _course(
        1200.0, time_step=60.0, half_thickness=0.005, water=100.0, convection_coefficient=60.0, crust_diffusivity=2e-5
    )
    assert course.water_lost[-1] == pytest.approx(0.98 * 100.0 * 0.005, rel=1e-9)
    assert course.core[-1] == pytest.approx(HOT, abs=1.0)


def test_wet_surface_settles_near_the_wet_bulb_temperature() -> None:
    """Row "5.wet-bulb": within 2 K, by a Lewis number that is a little off and a fixed heat of vaporisation."""
    for oven, vapour in ((340.0, 2000.0), (380.0, 8000.0), (420.0, 3000.0)):
        body = Body(half_thickness=0.005, conductivity=5.0, heat_capacity=1e5, water=1000.0)
        exposure = Exposure(
            convection_coefficient=20.0, vapour_pressure=vapour, crust_diffusivity=1e-4, crust_conductivity=10.0
        )
        course = warm_through(body, exposure, 310.0, np.full(31, oven), 10.0)
        share = vapour / (101325.0 - vapour) * 0.622
        wet_bulb = HAPropsSI("B", "T", oven, "P", 101325.0, "W", share)
        assert course.core[-1] == pytest.approx(wet_bulb, abs=2.0)


@law
@given(st.floats(0.002, 0.03), st.floats(0.1, 1.0), st.floats(10.0, 400.0), st.floats(10.0, 60.0))
def test_no_more_water_is_lost_than_there_was(half, openness, water, time_step) -> None:  # type: ignore[no-untyped-def]
    course = _course(
        200.0, time_step, half_thickness=half, openness=openness, water=water, emissivity=0.9,
        convection_coefficient=30.0,
    )  # fmt: skip
    assert (np.diff(course.water_lost) >= -1e-12).all() or course.water_lost[1] < 0.0
    assert course.water_lost.max() <= water * half * (1 + 1e-6)
    kept = HEAT_CAPACITY * half * (course.mean_temperature - COLD)
    np.testing.assert_allclose(course.heat_taken, kept + LATENT * course.water_lost, rtol=1e-6, atol=1.0)


def test_a_thin_damp_body_does_not_ring_under_long_steps() -> None:
    course = _course(
        60.0, 60.0, half_thickness=0.001, water=900.0, conductivity=0.3, convection_coefficient=50.0,
        crust_diffusivity=1e-4,
    )  # fmt: skip
    apart = np.abs(np.diff(course.temperature[:, -1]))
    assert apart[18:].max() < 0.05 * apart[8]  # swings die out within ten steps
    assert apart[30:].max() < 0.002 * apart[8]


def test_steam_condenses_on_a_cold_surface_and_warms_it() -> None:
    steamy = _course(5.0, time_step=1.0, water=200.0, vapour_pressure=40_000.0)
    plain = _course(5.0, time_step=1.0, water=200.0)
    assert steamy.water_lost[10] < 0.0
    assert steamy.temperature[60, -1] > plain.temperature[60, -1]


def test_many_bodies_at_once_are_each_as_alone() -> None:
    halves, waters = np.array([0.02, 0.05, 0.04]), np.array([0.0, 200.0, 120.0])
    air = np.linspace(400.0, 480.0, 3) + np.zeros((361, 1))
    many = warm_through(
        Body(half_thickness=halves, conductivity=0.4, heat_capacity=1.2e6, water=waters),
        Exposure(convection_coefficient=np.array([10.0, 15.0, 20.0]), emissivity=0.9), COLD, air, 10.0,
    )  # fmt: skip
    assert many.core.shape == (361, 3)
    for place, (half, water, given_) in enumerate(zip(halves, waters, (10.0, 15.0, 20.0), strict=True)):
        alone = warm_through(
            Body(half_thickness=half, conductivity=0.4, heat_capacity=1.2e6, water=water),
            Exposure(convection_coefficient=given_, emissivity=0.9), COLD, air[:, place], 10.0,
        )  # fmt: skip
        np.testing.assert_allclose(many.core[:, place], alone.core, rtol=1e-10)
        np.testing.assert_allclose(many.water_lost[:, place], alone.water_lost, atol=1e-10)


def test_what_is_hot_enough_is_followed_no_further_and_no_otherwise() -> None:
    body = Body(half_thickness=np.array([0.02, 0.03]), conductivity=0.4, heat_capacity=1.2e6, water=200.0)
    exposure, air = Exposure(convection_coefficient=15.0, emissivity=0.9), np.full(721, HOT)
    whole = warm_through(body, exposure, COLD, air, 10.0)
    hot = int((whole.core.min(axis=1) >= 340.0).argmax())
    for least in (10, hot + 50):
        part = warm_through(body, exposure, COLD, air, 10.0, until=(340.0, least))
        assert len(part.time) == max(hot, least) + 1
        assert (part.temperature == whole.first(len(part.time)).temperature).all()
        assert (part.heat_taken == whole.first(len(part.time)).heat_taken).all()


def test_a_thin_air_boils_sooner() -> None:
    high = _course(60.0, water=300.0, heat_capacity=1.2e6, emissivity=0.9, pressure=80_000.0)
    assert high.temperature.max() <= boiling_temperature(80_000.0) + 1e-9


def test_a_table_of_one_value_is_a_constant_and_a_factor_is_another_conductivity() -> None:
    table = (np.array([250.0, 450.0]), np.full(2, CONDUCTIVITY))
    plain = _course(30.0).temperature
    np.testing.assert_allclose(_course(30.0, conductivity=table).temperature, plain, atol=1e-9)
    np.testing.assert_allclose(_course(30.0, conductivity=0.5 * CONDUCTIVITY, conduction=2.0).temperature, plain)


def test_properties_that_grow_lie_between_their_ends() -> None:
    levels = np.array([COLD, HOT])
    growing = _course(90.0, conductivity=(levels, np.array([0.3, 0.6])))
    low, high = _course(90.0, conductivity=0.3), _course(90.0, conductivity=0.6)
    assert low.core[-1] < growing.core[-1] < high.core[-1]


@law
@given(st.floats(400.0, 520.0), st.floats(1.0, 60.0))
def test_a_hotter_oven_bakes_sooner(oven: float, hotter: float) -> None:
    assert _course(40.0, 60.0, oven + hotter).core[-1] > _course(40.0, 60.0, oven).core[-1]


@pytest.mark.parametrize(
    ("changes", "named"),
    [({"half_thickness": 0.0}, "half_thickness"), ({"dimension": 5.0}, "dimension"), ({"water": -1.0}, "water"),
     ({"conductivity": 0.0}, "conductivity"), ({"emissivity": 2.0}, "emissivity"), ({"openness": -0.1}, "openness"),
     ({"oven": 200.0}, "temperature_oven"), ({"pressure": 1013.0}, "pressure")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(changes: dict[str, float], named: str) -> None:
    with pytest.raises(ValueError, match=named):
        _course(1.0, **changes)


def test_a_step_of_no_length_is_refused() -> None:
    body = Body(half_thickness=HALF, conductivity=1.0, heat_capacity=1e6)
    with pytest.raises(ValueError, match="time_step"):
        warm_through(body, Exposure(convection_coefficient=10.0), COLD, np.full(3, HOT), 0.0)


def test_an_oven_must_be_a_series() -> None:
    body = Body(half_thickness=HALF, conductivity=1.0, heat_capacity=1e6)
    with pytest.raises(ValueError, match="temperature_oven and temperature_walls"):
        warm_through(body, Exposure(convection_coefficient=10.0), COLD, np.array([HOT]), 1.0)
    with pytest.raises(ValueError, match="one number or a series"):
        warm_through(body, Exposure(convection_coefficient=np.ones((2, 2))), COLD, np.full(3, HOT), 1.0)
