"""Skin on hot surfaces: contact temperature, burn thresholds, and rises of walls near the stove.

Nothing here says that a surface is safe or that a distance is enough; it says how soon it burns.
"""

import numpy as np
from numpy.typing import ArrayLike

from cookstove_gui.physics.quantities import ZERO_CELSIUS, Array, Quantity, positive, quantity, within

SKIN_EFFUSIVITY = 1176.0  # W s^0.5/(m2 K), from memory
SKIN_TEMPERATURE = 306.15  # K, from memory
LASTING_CONTACT_LIMIT = 316.15  # K: above 43 °C no surface may be called safe to touch (ISO 13732-1, 8 h, from memory)


def effusivity(conductivity: Quantity, density: Quantity, specific_heat: Quantity) -> Quantity:
    """How hard a material pulls a surface it touches towards its own temperature.

    Parameters
    ----------
    conductivity : float or array, shape (...)
        [W/(m K)], above 0.
    density : float or array, shape (...)
        [kg/m3], above 0.
    specific_heat : float or array, shape (...)
        [J/(kg K)], above 0.

    Returns
    -------
    float or array, shape (...)
        [W s^0.5/(m2 K)]

    Raises
    ------
    ValueError
        If any argument is not above zero.

    Source
    ------
    sqrt(k rho c), Carslaw and Jaeger (1959), 2.14; checked against the row `8.effusivity` in tests/reference.
    """
    mass = positive("density", density) * positive("specific_heat", specific_heat)
    return quantity(np.sqrt(positive("conductivity", conductivity) * mass))


def contact_temperature(
    temperature_surface: Quantity,
    effusivity_surface: Quantity,
    temperature_skin: Quantity = SKIN_TEMPERATURE,
    effusivity_skin: Quantity = SKIN_EFFUSIVITY,
) -> Quantity:
    """Temperature that skin takes on at the moment it touches a thick body.

    Parameters
    ----------
    temperature_surface : float or array, shape (...)
        [K], 200 to 1500.
    effusivity_surface : float or array, shape (...)
        Of the body [W s^0.5/(m2 K)], above 0.
    temperature_skin : float or array, shape (...)
        [K], 270 to 320.
    effusivity_skin : float or array, shape (...)
        [W s^0.5/(m2 K)], above 0.

    Returns
    -------
    float or array, shape (...)
        [K]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    First second or so; both bodies thick, contact perfect. Thin enamel on iron behaves as the iron.

    Source
    ------
    Carslaw and Jaeger (1959), 2.15; checked against the rows `8.9-*` in tests/reference.
    """
    surface = within("temperature_surface", temperature_surface, 200.0, 1500.0)
    skin = within("temperature_skin", temperature_skin, 270.0, 320.0)
    pull, hold = positive("effusivity_surface", effusivity_surface), positive("effusivity_skin", effusivity_skin)
    return quantity((pull * surface + hold * skin) / (pull + hold))


def burn_threshold(contact_time: Quantity, contact_times: ArrayLike, thresholds: ArrayLike) -> Quantity:
    """Surface temperature from which touching for some time is thought to burn, between the entries of a table.

    Parameters
    ----------
    contact_time : float or array, shape (...)
        [s], from the first to the last time of the table.
    contact_times : array, shape (entries,)
        Times of the table, rising [s], above 0.
    thresholds : array, shape (entries,)
        Temperatures of the table, falling or level [K], 270 to 500.

    Returns
    -------
    float or array, shape (...)
        [K]

    Raises
    ------
    ValueError
        If any time is outside the table, or the table is not in order.

    Notes
    -----
    Straight between entries over the logarithm of time.

    Source
    ------
    Tables after ISO 13732-1:2006, from memory, in resources/touch.toml; the rows `8.1-*` to `8.5-*` in tests/reference
    guard them, they do not verify them.
    """
    times, temperatures = positive("contact_times", contact_times), within("thresholds", thresholds, 270.0, 500.0)
    if (np.diff(times) <= 0.0).any():
        raise ValueError("contact_times must rise")
    if (np.diff(temperatures) > 0.0).any():
        raise ValueError("thresholds must not rise")
    span = within("contact_time", contact_time, float(times[0]), float(times[-1]))
    return quantity(np.interp(np.log(span), np.log(times), temperatures))


def skin_damage_temperature(contact_time: Quantity, full_depth: bool = True) -> Quantity:
    """Temperature of the skin's surface that, held for some time, damages it.

    Parameters
    ----------
    contact_time : float or array, shape (...)
        [s], 1 to 21 600.
    full_depth : bool
        Whether irreversible damage through the outer skin is meant (else reversible damage).

    Returns
    -------
    float or array, shape (...)
        [K]

    Raises
    ------
    ValueError
        If any time is outside the range.

    Notes
    -----
    15.005 + 0.51907 L + 352.97/L and 39.468 - 0.41352 L + 190.60/L [°C] with L = ln(1000 t).

    Source
    ------
    Fit in the appendix of ASTM C1055 to the curves of Moritz and Henriques (1947), from memory; guarded by the rows
    `8.7-*` in tests/reference.
    """
    logarithm = np.log(1000.0 * within("contact_time", contact_time, 1.0, 21_600.0))
    if full_depth:
        return quantity(ZERO_CELSIUS + 15.005 + 0.51907 * logarithm + 352.97 / logarithm)
    return quantity(ZERO_CELSIUS + 39.468 - 0.41352 * logarithm + 190.60 / logarithm)


def skin_damage_time(temperature_contact: Quantity, full_depth: bool = True) -> Quantity:
    """Time that skin stands at a temperature: the inverse of `skin_damage_temperature`.

    Parameters
    ----------
    temperature_contact : float or array, shape (...)
        Of the skin's surface [K], 270 to 1500.
    full_depth : bool
        As in `skin_damage_temperature`.

    Returns
    -------
    float or array, shape (...)
        [s]; 0 where even one second is too long (the source goes no lower), infinite below the threshold of six hours.

    Raises
    ------
    ValueError
        If any temperature is outside the range.

    Source
    ------
    As `skin_damage_temperature`; round trip tested.
    """
    skin = within("temperature_contact", temperature_contact, 270.0, 1500.0)
    low: Array = np.zeros(skin.shape)
    high: Array = np.full(skin.shape, np.log(21_600.0))
    for _ in range(50):
        middle = 0.5 * (low + high)
        stands = np.asarray(skin_damage_temperature(np.clip(np.exp(middle), 1.0, 21_600.0), full_depth)) > skin
        low, high = np.where(stands, middle, low), np.where(stands, high, middle)
    ends = np.asarray(skin_damage_temperature(np.array([1.0, 21_600.0]), full_depth))
    found = np.where(skin >= ends[0], 0.0, np.exp(0.5 * (low + high)))
    return quantity(np.where(skin < ends[1], np.inf, found))


def share_of_rise_limit(temperature_wall: Quantity, temperature_room: Quantity, rise_limit: Quantity) -> Quantity:
    """How much of a heater standard's limit a wall's rise above the room has used up.

    Parameters
    ----------
    temperature_wall, temperature_room : float or array, shape (...)
        [K], 220 to 600.
    rise_limit : float or array, shape (...)
        Limit of the rise in the standard's test [K], above 0.

    Returns
    -------
    float or array, shape (...)
        [-]; 1 and more: stop firing, and have the installation looked at. Less than 1 is no permission.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    The standards' limits hold in a test with set distances and a set fire; wood that is warm for years can char below
    them. The stove's label, its manual, local code and a licensed installer decide.

    Source
    ------
    Rise limits in resources/touch.toml; checked against the rows `8.12-*` in tests/reference.
    """
    wall = within("temperature_wall", temperature_wall, 220.0, 600.0)
    room = within("temperature_room", temperature_room, 220.0, 600.0)
    return quantity((wall - room) / positive("rise_limit", rise_limit))
