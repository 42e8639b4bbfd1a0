"""Air at heights and in weather reports; its properties over the whole range."""

import numpy as np
import pytest
from ambiance import Atmosphere
from fluids import ATMOSPHERE_1976
from hypothesis import given

from cookstove_gui.physics.air import (
    PRESSURE_EXPONENT,
    air_density,
    air_properties,
    pressure_altitude,
    standard_pressure,
    station_pressure,
)
from cookstove_gui.physics.water import boiling_temperature
from tests.physics.coolprop import PropsSI
from tests.physics.laws import altitudes, law
from tests.reference import check, si

HEIGHTS = np.array([1000.0, 2000.0, 3000.0, 4000.0])
EARTH_RADIUS = 6_356_766.0  # m, ICAO Doc 7488


def test_exponent_of_the_standard_atmosphere() -> None:
    row = check("1.3")
    assert pytest.approx(row.expected(), abs=row.allowed()) == PRESSURE_EXPONENT


@pytest.mark.parametrize("id", ["1.5-boiling", "1.11-feet", "1.15"])
def test_boiling_points_by_height(id: str) -> None:
    row = check(id)
    boiling = boiling_temperature(standard_pressure(si(row.inputs["altitude"])))
    np.testing.assert_allclose(boiling, row.expected(), atol=row.allowed())


def test_boiling_points_agree_with_iapws_95() -> None:
    """Row "1.6"."""
    heights = np.linspace(0.0, 4000.0, 9)
    theirs = [PropsSI("T", "P", pressure, "Q", 0, "Water") for pressure in np.asarray(standard_pressure(heights))]
    np.testing.assert_allclose(boiling_temperature(standard_pressure(heights)), theirs, atol=1e-3)


def test_geometric_heights_agree_with_other_libraries() -> None:
    row = check("1.7")
    ours = standard_pressure(EARTH_RADIUS * HEIGHTS / (EARTH_RADIUS + HEIGHTS))
    np.testing.assert_allclose(ours, row.expected(), atol=row.allowed())
    np.testing.assert_allclose(ours, Atmosphere(HEIGHTS).pressure, rtol=1e-5)
    np.testing.assert_allclose(ours, [ATMOSPHERE_1976(height).P for height in HEIGHTS], rtol=1e-5)


@pytest.mark.parametrize(
    ("ours", "theirs"),
    [("density", "D"), ("specific_heat", "C"), ("conductivity", "L"), ("viscosity", "V"), ("prandtl", "PRANDTL")],
)
def test_properties_agree_with_coolprop(ours: str, theirs: str) -> None:
    warm = np.linspace(250.0, 1300.0, 22)
    expected = [PropsSI(theirs, "T", one, "P", 101325, "Air") for one in warm]
    np.testing.assert_allclose(getattr(air_properties(warm), ours), expected, rtol=5e-3)


def test_properties_belong_together() -> None:
    air = air_properties(np.array([300.0, 600.0]), 85_000.0)
    np.testing.assert_allclose(air.prandtl, air.kinematic_viscosity / np.asarray(air.diffusivity))
    np.testing.assert_allclose(air.density, air_density(np.array([300.0, 600.0]), 85_000.0))


@law
@given(altitudes)
def test_height_comes_back_from_its_pressure(altitude: float) -> None:
    assert pressure_altitude(standard_pressure(altitude)) == pytest.approx(altitude, abs=1e-6)


def test_standard_report_gives_the_standard_pressure() -> None:
    np.testing.assert_allclose(station_pressure(101325.0, HEIGHTS), standard_pressure(HEIGHTS), rtol=1e-12)


def test_sea_level_pressure_taken_for_the_stations_is_three_kelvin_wrong() -> None:
    wrong = boiling_temperature(102_000.0) - boiling_temperature(station_pressure(102_000.0, 1000.0))
    assert wrong == pytest.approx(3.33, abs=0.02)


@pytest.mark.parametrize("altitude", [10_000.0, -600.0, np.nan])
def test_heights_without_stoves_are_refused(altitude: float) -> None:
    with pytest.raises(ValueError, match="altitude must be from -500 to 9000"):
        standard_pressure(altitude)
