"""Skin on hot surfaces: contact temperature, burn thresholds, and rises of walls near the stove.

Nothing here says that a surface is safe or that a distance is enough; it says how soon it burns.
"""

import numpy as np

from cookstove_gui.physics.quantities import Quantity, positive, quantity, within

SKIN_EFFUSIVITY = 1176.0  # W s^0.5/(m2 K), from memory
SKIN_TEMPERATURE = 306.15  # K, from memory


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
