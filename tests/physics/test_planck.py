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
    band_temperature,
)
from tests.physics.laws import law
from tests.reference import check, si

warm = st.floats(220.0, 1400.0)


@pytest.mark.parametrize("temperature", [220.0, 293.15, 523.15, 1400.0])
def test_band_radiance_is_the_integral_of_plancks_law_in_ht(temperature: float) -> None:
    integral, _ = quad(
        lambda length: blackbody_spectral_radiance(T=temperature, wavelength=length), BAND_LOW, BAND_HIGH
    )
    assert band_radiance(temperature) == pytest.approx(integral, rel=1e-6)


def test_share_of_the_band_in_all_radiation() -> None:
    row = check("3.3")
    temperature = si(row.inputs["temperature"])
    share = band_radiance(temperature) / (STEFAN_BOLTZMANN * temperature**4 / np.pi)
    np.testing.assert_allclose(share, row.expected(), atol=row.tolerance)


def test_local_exponent_of_the_band() -> None:
    row = check("3.exponent")
    temperature = si(row.inputs["temperature"])
    slope = (band_radiance(temperature + 0.01) - band_radiance(temperature - 0.01)) / 0.02
    exponent = temperature * slope / band_radiance(temperature)
    np.testing.assert_allclose(exponent, row.expected(), atol=row.tolerance)


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
