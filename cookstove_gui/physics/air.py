"""Air: its pressure at a height, and the properties that convection and draught need."""

from dataclasses import dataclass

import numpy as np

from cookstove_gui.physics.quantities import (
    STANDARD_GRAVITY,
    STANDARD_PRESSURE,
    Array,
    Quantity,
    positive,
    quantity,
    within,
)

GAS_CONSTANT = 287.05287  # J/(kg K), ICAO Doc 7488
SEA_LEVEL_TEMPERATURE = 288.15  # K, ICAO Doc 7488
LAPSE_RATE = 0.0065  # K/m, ICAO Doc 7488
PRESSURE_EXPONENT = STANDARD_GRAVITY / (LAPSE_RATE * GAS_CONSTANT)
ALTITUDE_LOW, ALTITUDE_HIGH = -500.0, 9000.0  # m, from the Dead Sea's shore to the highest mountain


@dataclass(frozen=True, slots=True, kw_only=True)
class AirProperties:
    """Properties of dry air in SI units, arrays where the temperature was one."""

    density: Quantity  # kg/m3
    specific_heat: Quantity  # J/(kg K)
    conductivity: Quantity  # W/(m K)
    viscosity: Quantity  # Pa s
    kinematic_viscosity: Quantity  # m2/s
    diffusivity: Quantity  # m2/s, of heat
    prandtl: Quantity  # -
    expansion: Quantity  # 1/K


def standard_pressure(altitude: Quantity) -> Quantity:
    """Air pressure at a height in the standard atmosphere.

    Parameters
    ----------
    altitude : float or array, shape (...)
        Geopotential height above the sea, for a cook the height on the map [m], -500 to 9000.

    Returns
    -------
    float or array, shape (...)
        [Pa]

    Raises
    ------
    ValueError
        If any height is outside the range.

    Notes
    -----
    The weather moves the true pressure by up to 3 % either way: 1 K of boiling point. Geometric and geopotential
    height differ by 6 m at 6000 m.

    Source
    ------
    ICAO Doc 7488/3 (1993) = ISO 2533:1975; checked against the rows `1.4-*` in tests/reference.
    """
    height = within("altitude", altitude, ALTITUDE_LOW, ALTITUDE_HIGH)
    return quantity(STANDARD_PRESSURE * (1.0 - LAPSE_RATE * height / SEA_LEVEL_TEMPERATURE) ** PRESSURE_EXPONENT)


def pressure_altitude(pressure: Quantity) -> Quantity:
    """Height in the standard atmosphere at which this pressure rules: the inverse of `standard_pressure`.

    Parameters
    ----------
    pressure : float or array, shape (...)
        Absolute pressure [Pa], 30 000 to 110 000.

    Returns
    -------
    float or array, shape (...)
        Geopotential height [m]

    Raises
    ------
    ValueError
        If any pressure is outside the range.

    Source
    ------
    ICAO Doc 7488/3 (1993) = ISO 2533:1975; checked against the rows `1.8-*` in tests/reference.
    """
    absolute = within("pressure", pressure, 30_000.0, 110_000.0)
    share = (absolute / STANDARD_PRESSURE) ** (1.0 / PRESSURE_EXPONENT)
    return quantity(SEA_LEVEL_TEMPERATURE / LAPSE_RATE * (1.0 - share))


def station_pressure(pressure_reduced: Quantity, altitude: Quantity) -> Quantity:
    """Pressure where the stove stands, from the weather report's pressure reduced to sea level.

    Parameters
    ----------
    pressure_reduced : float or array, shape (...)
        Pressure reduced to sea level as reports and household barometers give it [Pa], 85 000 to 110 000.
    altitude : float or array, shape (...)
        [m], -500 to 9000.

    Returns
    -------
    float or array, shape (...)
        Absolute pressure there [Pa]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    p^n = QNH^n - p0^n L h / T0 with n = L R / g. Weather services reduce with the day's temperature, which in hard
    frost differs by some hPa at 1500 m.

    Source
    ------
    ICAO altimeter setting (QNH), Doc 7488/3 relations; checked against the rows `1.12-*` in tests/reference.
    """
    reduced = within("pressure_reduced", pressure_reduced, 85_000.0, 110_000.0)
    height = within("altitude", altitude, ALTITUDE_LOW, ALTITUDE_HIGH)
    n = 1.0 / PRESSURE_EXPONENT
    fall = STANDARD_PRESSURE**n * LAPSE_RATE * height / SEA_LEVEL_TEMPERATURE
    return quantity((reduced**n - fall) ** PRESSURE_EXPONENT)


def air_properties(temperature: Quantity, pressure: Quantity = STANDARD_PRESSURE) -> AirProperties:
    """Properties of dry air near atmospheric pressure.

    Parameters
    ----------
    temperature : float or array, shape (...)
        [K], 200 to 1300.
    pressure : float or array, shape (...)
        Absolute pressure [Pa], 30 000 to 110 000.

    Returns
    -------
    AirProperties
        Each property a float or array, shape (...).

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    Dilute-gas terms only: within 0.5 % of the full equations from 250 to 1300 K below 110 kPa.

    Source
    ------
    Lemmon and Jacobsen, Int. J. Thermophysics 25 (2004) 21-69 (viscosity, conductivity) and Lemmon et al., J. Phys.
    Chem. Ref. Data 29 (2000) 331-385 (specific heat), constants from memory; checked against the rows `14.6-*` in
    tests/reference and against CoolProp over the whole range.
    """
    warmth = within("temperature", temperature, 200.0, 1300.0)
    absolute = within("pressure", pressure, 30_000.0, 110_000.0)
    density = absolute / (GAS_CONSTANT * warmth)
    logarithm = np.log(warmth / 103.3)
    collision = np.exp(
        0.431 + logarithm * (-0.4623 + logarithm * (0.08406 + logarithm * (0.005341 - 0.00331 * logarithm)))
    )
    micro = 0.0266958 * np.sqrt(28.9586 * warmth) / (0.36**2 * collision)  # µPa s
    inverse = 132.6312 / warmth
    conductivity = 1e-3 * (1.308 * micro + 1.405 * inverse**-1.1 - 1.036 * inverse**-0.3)
    specific_heat = GAS_CONSTANT * (
        3.490888032
        + warmth * (2.395525583e-6 + warmth * (7.172111248e-9 - 3.115413101e-13 * warmth))
        + 0.223806688 * warmth**-1.5
        + 0.791309509 * _einstein(3364.011 / warmth)
        + 0.212236768 * _einstein(2242.45 / warmth)
    )
    viscosity = 1e-6 * micro
    diffusivity = conductivity / (density * specific_heat)
    return AirProperties(
        density=quantity(density),
        specific_heat=quantity(specific_heat),
        conductivity=quantity(conductivity),
        viscosity=quantity(viscosity),
        kinematic_viscosity=quantity(viscosity / density),
        diffusivity=quantity(diffusivity),
        prandtl=quantity(viscosity / density / diffusivity),
        expansion=quantity(1.0 / warmth),
    )


def air_density(temperature: Quantity, pressure: Quantity = STANDARD_PRESSURE) -> Quantity:
    """Density of dry air as a perfect gas.

    Parameters
    ----------
    temperature : float or array, shape (...)
        [K], above 0, to 2000.
    pressure : float or array, shape (...)
        Absolute pressure [Pa], 30 000 to 110 000.

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
    p / (R T), R after ICAO Doc 7488/3 (1993); checked against CoolProp.
    """
    warmth, absolute = positive("temperature", temperature, 2000.0), within("pressure", pressure, 30_000.0, 110_000.0)
    return quantity(absolute / (GAS_CONSTANT * warmth))


def _einstein(u: Array) -> Array:
    """Share of one vibration in the specific heat."""
    result: Array = u**2 * np.exp(u) / np.expm1(u) ** 2
    return result
