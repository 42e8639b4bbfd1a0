"""Water: its boiling line, its liquid and the heat that boils it away (IAPWS formulations)."""

import numpy as np

from cookstove_gui.physics.quantities import STANDARD_PRESSURE, Array, Quantity, quantity, within

GAS_CONSTANT = 461.526  # J/(kg K), specific, IAPWS R7-97
CRITICAL_TEMPERATURE = 647.096  # K
CRITICAL_PRESSURE = 22.064e6  # Pa

# IAPWS R7-97(2012) Table 34, region 4
_LINE = (
    1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333,
    14.91510861353, -4823.2657361591, 405113.40542057, -0.23855557567849, 650.17534844798,
)  # fmt: skip
# IAPWS R7-97(2012) Table 2, region 1: exponents I and J, coefficient n
_I = np.array([0] * 8 + [1] * 6 + [2] * 5 + [3] * 3 + [4] * 3 + [5, 8, 8, 21, 23, 29, 30, 31, 32])
_J = np.array(
    [-2, -1, 0, 1, 2, 3, 4, 5, -9, -7, -1, 0, 1, 3, -3, 0, 1, 3, 17, -4, 0, 6, -5, -2, 10, -8, -11, -6, -29, -31, -38,
     -39, -40, -41]
)  # fmt: skip
_N = np.array(
    [0.14632971213167, -0.84548187169114, -3.756360367204, 3.3855169168385, -0.95791963387872, 0.15772038513228,
     -0.016616417199501, 8.1214629983568e-4, 2.8319080123804e-4, -6.0706301565874e-4, -0.018990068218419,
     -0.032529748770505, -0.021841717175414, -5.283835796993e-5, -4.7184321073267e-4, -3.0001780793026e-4,
     4.7661393906987e-5, -4.4141845330846e-6, -7.2694996297594e-16, -3.1679644845054e-5, -2.8270797985312e-6,
     -8.5205128120103e-10, -2.2425281908e-6, -6.5171222895601e-7, -1.4341729937924e-13, -4.0516996860117e-7,
     -1.2734301741641e-9, -1.7424871230634e-10, -6.8762131295531e-19, 1.4478307828521e-20, 2.6335781662795e-23,
     -1.1947622640071e-23, 1.8228094581404e-24, -9.3537087292458e-26]
)  # fmt: skip
# IAPWS R7-97(2012) Table 16, supplementary equation of region 2 for vapour on and near the boiling line
_VAPOUR = (
    (1, 0, -0.0073362260186506), (1, 2, -0.088223831943146), (1, 5, -0.072334555213245), (1, 11, -0.0040813178534455),
    (2, 1, 0.0020097803380207), (2, 7, -0.053045921898642), (2, 16, -0.007619040908697), (3, 4, -0.0063498037657313),
    (3, 16, -0.086043093028588), (4, 7, 0.007532158152277), (4, 10, -0.0079238375446139), (5, 9, -2.2888160778447e-4),
    (5, 10, -0.002645650148281),
)  # fmt: skip


def saturation_pressure(temperature: Quantity) -> Quantity:
    """Pressure at which water of this temperature boils.

    Parameters
    ----------
    temperature : float or array, shape (...)
        [K], 273.15 to 647.096.

    Returns
    -------
    float or array, shape (...)
        [Pa]

    Raises
    ------
    ValueError
        If any temperature is outside the range.

    Source
    ------
    IAPWS R7-97(2012), region 4, equation 30; checked against the rows `1.1-*` in tests/reference.
    """
    warmth = within("temperature", temperature, 273.15, CRITICAL_TEMPERATURE)
    return quantity(_saturation_pressure(warmth))


def saturation_temperature(pressure: Quantity) -> Quantity:
    """Temperature at which water under this pressure boils.

    Parameters
    ----------
    pressure : float or array, shape (...)
        Absolute pressure [Pa], 611.213 to 22.064e6.

    Returns
    -------
    float or array, shape (...)
        [K]

    Raises
    ------
    ValueError
        If any pressure is outside the range.

    Source
    ------
    IAPWS R7-97(2012), region 4, equation 31; checked against the rows `1.2-*` in tests/reference.
    """
    absolute = within("pressure", pressure, 611.213, CRITICAL_PRESSURE)
    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = _LINE
    root = (absolute / 1e6) ** 0.25
    e = root**2 + n3 * root + n6
    f = n1 * root**2 + n4 * root + n7
    g = n2 * root**2 + n5 * root + n8
    d = 2 * g / (-f - np.sqrt(f**2 - 4 * e * g))
    return quantity((n10 + d - np.sqrt((n10 + d) ** 2 - 4 * (n9 + n10 * d))) / 2)


def boiling_temperature(pressure: Quantity) -> Quantity:
    """Temperature at which water in an open pot boils.

    Parameters
    ----------
    pressure : float or array, shape (...)
        Absolute air pressure where the stove stands, not reduced to sea level [Pa], 30 000 to 110 000.

    Returns
    -------
    float or array, shape (...)
        [K]

    Raises
    ------
    ValueError
        If any pressure is outside the range; a pressure in hPa or inches of mercury is caught so.

    Notes
    -----
    Pure water at its surface. Salt for cooking raises it by 0.2 to 0.5 K; at the bottom of a pot 20 cm deep it is
    0.5 K more.

    Source
    ------
    IAPWS R7-97(2012), region 4, equation 31; checked against the rows `1.9-*`, `1.13` and `1.14-*` in
    tests/reference.
    """
    return saturation_temperature(within("pressure", pressure, 30_000.0, 110_000.0))


def liquid_density(temperature: Quantity, pressure: Quantity = STANDARD_PRESSURE) -> Quantity:
    """Density of liquid water.

    Parameters
    ----------
    temperature : float or array, shape (...)
        [K], 273.15 to 623.15, at most 5 K above boiling.
    pressure : float or array, shape (...)
        Absolute pressure [Pa], 611.213 to 100e6.

    Returns
    -------
    float or array, shape (...)
        [kg/m3]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    IAPWS R7-97(2012), region 1, equation 7; checked against the rows `2.1-*` and `2.3` in tests/reference.
    """
    warmth, absolute = _liquid(temperature, pressure)
    difference, inverse = _reduced(warmth, absolute)
    slope = -(_N * _I * difference ** (_I - 1) * inverse**_J).sum(axis=-1)
    return quantity(16.53e6 / (slope * GAS_CONSTANT * warmth))


def liquid_specific_heat(temperature: Quantity, pressure: Quantity = STANDARD_PRESSURE) -> Quantity:
    """Specific heat of liquid water at constant pressure.

    Parameters
    ----------
    temperature : float or array, shape (...)
        [K], 273.15 to 623.15, at most 5 K above boiling.
    pressure : float or array, shape (...)
        Absolute pressure [Pa], 611.213 to 100e6.

    Returns
    -------
    float or array, shape (...)
        [J/(kg K)]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    IAPWS R7-97(2012), region 1, equation 7; checked against the rows `2.1-*` and `2.2` in tests/reference.
    """
    warmth, absolute = _liquid(temperature, pressure)
    difference, inverse = _reduced(warmth, absolute)
    curvature = (_N * _J * (_J - 1) * difference**_I * inverse ** (_J - 2)).sum(axis=-1)
    return quantity(-GAS_CONSTANT * (1386.0 / warmth) ** 2 * curvature)


def heat_of_vaporisation(temperature: Quantity) -> Quantity:
    """Heat that turns water into steam at the same temperature.

    Parameters
    ----------
    temperature : float or array, shape (...)
        [K], 273.16 to 580.

    Returns
    -------
    float or array, shape (...)
        [J/kg]

    Raises
    ------
    ValueError
        If any temperature is outside the range.

    Notes
    -----
    Clapeyron's equation, T (v'' - v') dp/dT on the boiling line.

    Source
    ------
    IAPWS R7-97(2012) for the boiling line, the liquid and the vapour; checked against the rows `2.4-*` and `2.5-*` in
    tests/reference.
    """
    warmth = within("temperature", temperature, 273.16, 580.0)
    step = 1e-3
    slope = (_saturation_pressure(warmth + step) - _saturation_pressure(warmth - step)) / (2 * step)
    liquid = 1.0 / np.asarray(liquid_density(warmth, _saturation_pressure(warmth)))
    return quantity(warmth * slope * (1.0 / np.asarray(vapour_density(warmth)) - liquid))


def vapour_density(temperature: Quantity) -> Quantity:
    """Density of saturated water vapour.

    Parameters
    ----------
    temperature : float or array, shape (...)
        [K], 273.16 to 580.

    Returns
    -------
    float or array, shape (...)
        [kg/m3]

    Raises
    ------
    ValueError
        If any temperature is outside the range.

    Source
    ------
    IAPWS R7-97(2012), region 2, supplementary equation 18; checked against the row `2.vapour` in tests/reference.
    """
    warmth = within("temperature", temperature, 273.16, 580.0)
    pressure = _saturation_pressure(warmth) / 1e6
    inverse = 540.0 / warmth - 0.5
    slope = 1.0 / pressure + sum(n * i * pressure ** (i - 1) * inverse**j for i, j, n in _VAPOUR)
    return quantity(1e6 / (GAS_CONSTANT * warmth * slope))


def _saturation_pressure(temperature: Array) -> Array:
    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = _LINE
    theta = temperature + n9 / (temperature - n10)
    a = theta**2 + n1 * theta + n2
    b = n3 * theta**2 + n4 * theta + n5
    c = n6 * theta**2 + n7 * theta + n8
    result: Array = 1e6 * (2 * c / (-b + np.sqrt(b**2 - 4 * a * c))) ** 4
    return result


def _liquid(temperature: Quantity, pressure: Quantity) -> tuple[Array, Array]:
    """Both arguments, broadcast, if the water is liquid (or superheated by no more than a few kelvin)."""
    warmth = within("temperature", temperature, 273.15, 623.15)
    absolute = within("pressure", pressure, 611.213, 100e6)
    boiling = np.asarray(saturation_temperature(np.minimum(absolute, CRITICAL_PRESSURE)))
    if (warmth > boiling + 5.0).any():
        raise ValueError(
            "temperature must be at most 5 K above boiling at this pressure: the water is no longer liquid"
        )
    both = np.broadcast_arrays(warmth, absolute)
    return both[0], both[1]


def _reduced(temperature: Array, pressure: Array) -> tuple[Array, Array]:
    """7.1 - p/p* and T*/T - 1.222, with a last axis for the terms of region 1."""
    return 7.1 - (pressure / 16.53e6)[..., None], (1386.0 / temperature)[..., None] - 1.222
