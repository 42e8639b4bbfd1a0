"""Planck's law, and its integral over the 8-14 µm band that infrared thermometers see.

The fourth power, true for all wavelengths together, is wrong by many kelvin in this band.
"""

from functools import cache

import numpy as np

from cookstove_gui.physics.quantities import Array, Quantity, quantity, within

FIRST_RADIATION_CONSTANT = 1.191042972397188e-16  # W m2/sr, 2 h c^2, CODATA 2018
SECOND_RADIATION_CONSTANT = 0.01438776877503933  # m K, h c / k, CODATA 2018
STEFAN_BOLTZMANN = 5.670374419e-8  # W/(m2 K4), CODATA 2018
BAND_LOW, BAND_HIGH = 8e-6, 14e-6  # m, the usual band of hand-held instruments
TEMPERATURE_LOW, TEMPERATURE_HIGH = 200.0, 1500.0  # K, range of the series here
_ENDS = SECOND_RADIATION_CONSTANT / np.array([BAND_LOW, BAND_HIGH])  # K


def band_radiance(temperature: Quantity) -> Quantity:
    """Radiance of a black body from 8 to 14 µm.

    Parameters
    ----------
    temperature : float or array, shape (...)
        [K], 200 to 1500.

    Returns
    -------
    float or array, shape (...)
        [W/(m2 sr)]

    Raises
    ------
    ValueError
        If any temperature is outside the range.

    Notes
    -----
    sigma T^4 / pi times the difference of `blackbody_fraction` at both ends; a flat response of the instrument is
    assumed, and that the air between takes and gives nothing (true within a few metres).

    Source
    ------
    Planck's law integrated; checked against the rows `3.2-*` in tests/reference.
    """
    return quantity(_band_radiance(within("temperature", temperature, TEMPERATURE_LOW, TEMPERATURE_HIGH)))


def band_temperature(radiance: Quantity) -> Quantity:
    """Temperature of the black body that has this radiance from 8 to 14 µm: the inverse of `band_radiance`.

    Parameters
    ----------
    radiance : float or array, shape (...)
        [W/(m2 sr)], that of 200 K to that of 1500 K (6.01 to 3864).

    Returns
    -------
    float or array, shape (...)
        [K]

    Raises
    ------
    ValueError
        If any radiance belongs to no temperature from 200 to 1500 K.

    Notes
    -----
    A table a kelvin apart and one of Newton's steps, which leaves less than 1e-7 K.

    Source
    ------
    Planck's law integrated; round trip tested.
    """
    levels, temperatures = _table()
    seen = within("radiance", radiance, float(np.exp(levels[0])) * (1 - 1e-12), float(np.exp(levels[-1])) * (1 + 1e-12))
    found: Array = np.interp(np.log(seen), levels, temperatures)
    value, slope = _radiance_and_slope(found)
    return quantity(found - (value - seen) / slope)


def _fraction(x: Array) -> Array:
    """Share of a black body's radiation below a wavelength, of x = c2 / (wavelength temperature).

    15/pi^4 sum exp(-n x)/n (x^3 + 3 x^2/n + 6 x/n^2 + 6/n^3); below x = 1 the power series in x, since the first one
    converges slowly there (Chang and Rhee, Int. Comm. Heat Mass Transfer 11 (1984) 451-455, from memory).
    """
    large = np.maximum(x, 1.0)
    terms = int(np.ceil(37.0 / large.min(initial=37.0)))  # what follows is below 1e-16
    n = np.arange(1.0, terms + 1.0).reshape((-1,) + (1,) * large.ndim)
    series = (np.exp(-n * large) / n * (((large + 3 / n) * large + 6 / n**2) * large + 6 / n**3)).sum(axis=0)
    small = np.minimum(x, 1.0)
    power = 1 / 3 - small / 8 + small**2 / 60 - small**4 / 5040 + small**6 / 272160 - small**8 / 13305600
    return np.where(x >= 1.0, 15 / np.pi**4 * series, 1 - 15 / np.pi**4 * small**3 * power)


def _band_radiance(temperature: Array) -> Array:
    low, high = _fraction(np.multiply.outer(_ENDS, 1.0 / temperature))
    result: Array = STEFAN_BOLTZMANN / np.pi * temperature**4 * (high - low)
    return result


def _radiance_and_slope(temperature: Array) -> tuple[Array, Array]:
    radiance = _band_radiance(temperature)
    x = np.multiply.outer(_ENDS, 1.0 / temperature)
    low, high = FIRST_RADIATION_CONSTANT * (x * temperature / SECOND_RADIATION_CONSTANT) ** 4 / np.expm1(x)
    return radiance, (4 * radiance + high - low) / temperature


@cache
def _table() -> tuple[Array, Array]:
    """Logarithm of the band's radiance, rising, and the temperature that has it."""
    temperatures: Array = np.linspace(TEMPERATURE_LOW, TEMPERATURE_HIGH, 1301)
    return np.log(_band_radiance(temperatures)), temperatures
