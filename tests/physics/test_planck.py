"""Radiance of the 8-14 µm band: the series is the integral of Planck's law, its slope and inverse fit it."""

import numpy as np
import pytest
from ht import blackbody_spectral_radiance
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from cookstove_gui.physics.planck import (
    BAND_HIGH,
    BAND_LOW,
    STEFAN_BOLTZMANN,
    band_radiance,
    band_slope,
    band_temperature,
    blackbody_fraction,
    spectral_radiance,
)
from tests.physics.laws import law
from tests.reference import check, si

warm = st.floats(220.0, 1400.0)


@pytest.mark.parametrize("temperature", [220.0, 293.15, 523.15, 1400.0])
def test_band_radiance_is_the_integral_of_plancks_law(temperature: float) -> None:
    integral, _ = quad(lambda length: float(spectral_radiance(length, temperature)), BAND_LOW, BAND_HIGH)
    assert band_radiance(temperature) == pytest.approx(integral, rel=1e-9)


def test_spectral_radiance_agrees_with_ht() -> None:
    lengths = np.array([3e-6, 8e-6, 10.6e-6, 14e-6])
    theirs = [blackbody_spectral_radiance(T=523.15, wavelength=length) for length in lengths]
    np.testing.assert_allclose(spectral_radiance(lengths, 523.15), theirs, rtol=1e-6)


def test_share_of_the_band_in_all_radiation() -> None:
    row = check("3.3")
    temperature = si(row.inputs["temperature"])
    share = band_radiance(temperature) / (STEFAN_BOLTZMANN * temperature**4 / np.pi)
    np.testing.assert_allclose(share, row.expected(), atol=row.tolerance)


def test_local_exponent_of_the_band() -> None:
    row = check("3.exponent")
    temperature = si(row.inputs["temperature"])
    exponent = temperature * band_slope(temperature) / band_radiance(temperature)
    np.testing.assert_allclose(exponent, row.expected(), atol=row.tolerance)


def test_both_series_of_the_fraction_meet() -> None:
    at_join = 0.01438776877
    below, above = blackbody_fraction(np.array([at_join * (1 - 1e-9), at_join * (1 + 1e-9)]))
    assert below == pytest.approx(above, abs=1e-9)
    assert blackbody_fraction(0.9) == pytest.approx(1.0, abs=1e-6)


@law
@given(warm)
def test_slope_is_the_derivative(temperature: float) -> None:
    step = 0.01
    by_difference = (band_radiance(temperature + step) - band_radiance(temperature - step)) / (2 * step)
    assert band_slope(temperature) == pytest.approx(by_difference, rel=1e-6)


@law
@given(st.floats(200.0, 1500.0))
def test_temperature_comes_back_from_its_radiance(temperature: float) -> None:
    assert band_temperature(band_radiance(temperature)) == pytest.approx(temperature, abs=1e-6)


@pytest.mark.parametrize("temperature", [199.0, 1501.0, np.nan])
def test_temperatures_beyond_the_series_are_refused(temperature: float) -> None:
    with pytest.raises(ValueError, match="temperature must be from 200"):
        band_radiance(temperature)


def test_radiance_of_no_temperature_is_refused() -> None:
    with pytest.raises(ValueError, match="radiance must be from"):
        band_temperature(1.0)
