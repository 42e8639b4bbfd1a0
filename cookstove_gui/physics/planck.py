"""Planck's law, and its integral over the 8-14 µm band that infrared thermometers see.

The fourth power, true for all wavelengths together, is wrong by many kelvin in this band.
"""

import numpy as np

from cookstove_gui.physics.quantities import Array, Quantity, positive, quantity, within

FIRST_RADIATION_CONSTANT = 1.191042972397188e-16  # W m2/sr, 2 h c^2, CODATA 2018
SECOND_RADIATION_CONSTANT = 0.01438776877503933  # m K, h c / k, CODATA 2018
STEFAN_BOLTZMANN = 5.670374419e-8  # W/(m2 K4), CODATA 2018
BAND_LOW, BAND_HIGH = 8e-6, 14e-6  # m, the usual band of hand-held instruments
TEMPERATURE_LOW, TEMPERATURE_HIGH = 200.0, 1500.0  # K, range of the series here


def blackbody_fraction(wavelength_temperature: Quantity) -> Quantity:
    """Share of a black body's radiation that lies below a wavelength.

    Parameters
    ----------
    wavelength_temperature : float or array, shape (...)
        Product of wavelength and temperature [m K], above 0, to 1.

    Returns
    -------
    float or array, shape (...)
        [-], 0 to 1.

    Raises
    ------
    ValueError
        If any product is outside the range.

    Notes
    -----
    15/pi^4 sum exp(-n x)/n (x^3 + 3 x^2/n + 6 x/n^2 + 6/n^3) with x = c2 / (wavelength temperature); below x = 1 the
    power series in x, since the first one converges slowly there.

    Source
    ------
    Chang and Rhee, "Blackbody radiation functions", Int. Comm. Heat Mass Transfer 11 (1984) 451-455 (from memory);
    constants CODATA 2018; checked against the rows `3.1-*` in tests/reference.
    """
    product = positive("wavelength_temperature", wavelength_temperature, 1.0)
    x = SECOND_RADIATION_CONSTANT / product
    large = np.maximum(x, 1.0)
    n = np.arange(1.0, 41.0).reshape((-1,) + (1,) * large.ndim)
    series = (np.exp(-n * large) / n * (((large + 3 / n) * large + 6 / n**2) * large + 6 / n**3)).sum(axis=0)
    small = np.minimum(x, 1.0)
    power = 1 / 3 - small / 8 + small**2 / 60 - small**4 / 5040 + small**6 / 272160 - small**8 / 13305600
    return quantity(np.where(x >= 1.0, 15 / np.pi**4 * series, 1 - 15 / np.pi**4 * small**3 * power))


def spectral_radiance(wavelength: Quantity, temperature: Quantity) -> Quantity:
    """Radiance of a black body per wavelength.

    Parameters
    ----------
    wavelength : float or array, shape (...)
        [m], above 0, to 1e-3.
    temperature : float or array, shape (...)
        [K], above 0, to 10 000.

    Returns
    -------
    float or array, shape (...)
        [W/(m2 sr m)]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Planck's law; constants CODATA 2018; checked against the row `3.4` in tests/reference.
    """
    length, warmth = positive("wavelength", wavelength, 1e-3), positive("temperature", temperature, 1e4)
    exponent = np.minimum(SECOND_RADIATION_CONSTANT / (length * warmth), 700.0)
    return quantity(FIRST_RADIATION_CONSTANT / length**5 / np.expm1(exponent))


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
    warmth = within("temperature", temperature, TEMPERATURE_LOW, TEMPERATURE_HIGH)
    return quantity(_band_radiance(warmth))


def band_temperature(radiance: Quantity) -> Quantity:
    """Temperature of the black body that has this radiance from 8 to 14 µm: the inverse of `band_radiance`.

    Parameters
    ----------
    radiance : float or array, shape (...)
        [W/(m2 sr)], that of 200 K to that of 1500 K (4.6 to 7320).

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
    Newton's method from the single-wavelength answer; five steps leave less than 1e-9 K.

    Source
    ------
    Planck's law integrated; round trip tested.
    """
    lowest, highest = _band_radiance(np.array([TEMPERATURE_LOW, TEMPERATURE_HIGH]))
    seen = within("radiance", radiance, float(lowest) * (1 - 1e-12), float(highest) * (1 + 1e-12))
    return quantity(_band_temperature(seen))


def band_slope(temperature: Quantity) -> Quantity:
    """How fast the 8-14 µm radiance of a black body grows with its temperature.

    Parameters
    ----------
    temperature : float or array, shape (...)
        [K], 200 to 1500.

    Returns
    -------
    float or array, shape (...)
        [W/(m2 sr K)]

    Raises
    ------
    ValueError
        If any temperature is outside the range.

    Notes
    -----
    The slope of the fourth power and the shift of both ends of the band: (4 B + [wavelength L]) / T.

    Source
    ------
    Derivative of Planck's law over the band; checked against the rows `3.exponent-*` in tests/reference.
    """
    return quantity(_band_slope(within("temperature", temperature, TEMPERATURE_LOW, TEMPERATURE_HIGH)))


def _band_radiance(temperature: Array) -> Array:
    fraction = np.asarray(blackbody_fraction(BAND_HIGH * temperature)) - blackbody_fraction(BAND_LOW * temperature)
    result: Array = STEFAN_BOLTZMANN / np.pi * temperature**4 * fraction
    return result


def _band_slope(temperature: Array) -> Array:
    """dB/dT: the fourth power's own slope and the shift of both ends of the band."""
    ends = [wavelength * np.asarray(spectral_radiance(wavelength, temperature)) for wavelength in (BAND_LOW, BAND_HIGH)]
    result: Array = (4 * _band_radiance(temperature) + ends[1] - ends[0]) / temperature
    return result


def _band_temperature(radiance: Array) -> Array:
    # At one wavelength B = width L(11 µm, T) can be solved; Newton from there is steady, since B is convex enough.
    middle, width = 10.6e-6, BAND_HIGH - BAND_LOW
    level = FIRST_RADIATION_CONSTANT * width / middle**5 / radiance
    temperature: Array = np.asarray(SECOND_RADIATION_CONSTANT / (middle * np.log1p(level)))
    for _ in range(5):
        step = (_band_radiance(temperature) - radiance) / _band_slope(temperature)
        temperature = np.clip(temperature - step, 0.5 * temperature, 2.0 * temperature)
    return temperature
