"""Heat radiated from hot surfaces to a room, a wall or each other: view factors and grey exchange."""

from cookstove_gui.physics.planck import STEFAN_BOLTZMANN
from cookstove_gui.physics.quantities import Quantity, positive, quantity, within


def small_body_flux(emissivity: Quantity, temperature_surface: Quantity, temperature_room: Quantity) -> Quantity:
    """Net radiation of a small grey surface into a large room.

    Parameters
    ----------
    emissivity : float or array, shape (...)
        Total emissivity (all wavelengths, not the 8-14 µm one) [-], 0 to 1.
    temperature_surface, temperature_room : float or array, shape (...)
        [K], above 0, to 2000.

    Returns
    -------
    float or array, shape (...)
        [W/m2], above zero when the surface loses heat.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Stefan-Boltzmann law; checked against the rows `7.8` and `7.9-*` in tests/reference and against ht.
    """
    grey = within("emissivity", emissivity, 0.0, 1.0)
    hot = positive("temperature_surface", temperature_surface, 2000.0)
    return quantity(grey * STEFAN_BOLTZMANN * (hot**4 - positive("temperature_room", temperature_room, 2000.0) ** 4))


def radiation_coefficient(emissivity: Quantity, temperature_surface: Quantity, temperature_room: Quantity) -> Quantity:
    """Radiation to a large room as a heat transfer coefficient.

    Parameters
    ----------
    emissivity : float or array, shape (...)
        Total emissivity [-], 0 to 1.
    temperature_surface, temperature_room : float or array, shape (...)
        [K], above 0, to 2000.

    Returns
    -------
    float or array, shape (...)
        [W/(m2 K)]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    eps sigma (T + Tr) (T^2 + Tr^2): exact, and defined where both are the same.

    Source
    ------
    Stefan-Boltzmann law; checked against the rows `14.7-*` to `14.14-*` in tests/reference.
    """
    grey = within("emissivity", emissivity, 0.0, 1.0)
    hot = positive("temperature_surface", temperature_surface, 2000.0)
    room = positive("temperature_room", temperature_room, 2000.0)
    return quantity(grey * STEFAN_BOLTZMANN * (hot + room) * (hot**2 + room**2))
