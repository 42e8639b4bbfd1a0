"""Heat radiated from hot surfaces to a room, a wall or each other: view factors and grey exchange."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from cookstove_gui.physics.planck import STEFAN_BOLTZMANN
from cookstove_gui.physics.quantities import Array, Quantity, positive, quantity, within


@dataclass(frozen=True, slots=True, kw_only=True)
class Exchange:
    """What each surface of an enclosure gives and gets, shape (surfaces,)."""

    heat: Array  # W, net loss; below zero where the surface gains
    irradiance: Array  # W/m2, arriving
    radiosity: Array  # W/m2, leaving


def view_factor_parallel_rectangles(width: Quantity, height: Quantity, gap: Quantity) -> Quantity:
    """Share of the radiation of a rectangle that meets an equal one straight opposite.

    Parameters
    ----------
    width, height : float or array, shape (...)
        Sides of both rectangles [m], above 0.
    gap : float or array, shape (...)
        Between them [m], above 0.

    Returns
    -------
    float or array, shape (...)
        [-], 0 to 1.

    Raises
    ------
    ValueError
        If any length is not above zero.

    Validity
    --------
    Sides up to 1e4 gaps; from gaps to 1e3 sides (rounding takes the rest).

    Source
    ------
    Incropera et al., Fundamentals of Heat and Mass Transfer, Table 13.2; Howell, A Catalog of Radiation Configuration
    Factors, C-11; checked against the rows `7.1` to `7.4-*` in tests/reference.
    """
    distance = positive("gap", gap)
    x, y = positive("width", width) / distance, positive("height", height) / distance
    x2, y2 = 1 + x**2, 1 + y**2
    total = (
        0.5 * (np.log1p(x**2) + np.log1p(y**2) - np.log1p(x**2 + y**2))
        + x * np.sqrt(y2) * np.arctan(x / np.sqrt(y2))
        + y * np.sqrt(x2) * np.arctan(y / np.sqrt(x2))
        - x * np.arctan(x)
        - y * np.arctan(y)
    )
    return quantity(2 / (np.pi * x * y) * total)


def view_factor_perpendicular_rectangles(depth_from: Quantity, depth_to: Quantity, width: Quantity) -> Quantity:
    """Share of the radiation of a rectangle that meets another at a right angle along a common edge.

    Parameters
    ----------
    depth_from : float or array, shape (...)
        Depth of the radiating rectangle, away from the edge [m], above 0.
    depth_to : float or array, shape (...)
        Depth of the other one [m], above 0.
    width : float or array, shape (...)
        Length of the common edge [m], above 0.

    Returns
    -------
    float or array, shape (...)
        [-], 0 to 1.

    Raises
    ------
    ValueError
        If any length is not above zero.

    Source
    ------
    Incropera et al., Table 13.2; Howell, C-14; checked against the rows `7.5` and `7.6-*` in tests/reference.
    """
    edge = positive("width", width)
    w, h = positive("depth_from", depth_from) / edge, positive("depth_to", depth_to) / edge
    w2, h2 = w**2, h**2
    both = w2 + h2
    logarithm = (
        np.log((1 + w2) * (1 + h2) / (1 + both))
        + w2 * np.log(w2 * (1 + both) / ((1 + w2) * both))
        + h2 * np.log(h2 * (1 + both) / ((1 + h2) * both))
    )
    angles = w * np.arctan(1 / w) + h * np.arctan(1 / h) - np.sqrt(both) * np.arctan(1 / np.sqrt(both))
    return quantity((angles + 0.25 * logarithm) / (np.pi * w))


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


def parallel_plates_flux(
    temperature_hot: Quantity, temperature_cold: Quantity, emissivity_hot: Quantity, emissivity_cold: Quantity
) -> Quantity:
    """Net radiation between two plates so close that no heat escapes at their edges.

    Parameters
    ----------
    temperature_hot, temperature_cold : float or array, shape (...)
        [K], above 0, to 2000.
    emissivity_hot, emissivity_cold : float or array, shape (...)
        Total emissivities [-], above 0, to 1.

    Returns
    -------
    float or array, shape (...)
        [W/m2] from the hot plate to the cold one.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Incropera et al., equation 13.19; checked against the row `7.10` in tests/reference.
    """
    hot, cold = (
        positive("temperature_hot", temperature_hot, 2000.0),
        positive("temperature_cold", temperature_cold, 2000.0),
    )
    resistance = 1 / positive("emissivity_hot", emissivity_hot, 1.0) + 1 / positive(
        "emissivity_cold", emissivity_cold, 1.0
    )
    return quantity(STEFAN_BOLTZMANN * (hot**4 - cold**4) / (resistance - 1))


def enclosure_exchange(
    view_factors: ArrayLike, area: ArrayLike, emissivity: ArrayLike, temperature: ArrayLike
) -> Exchange:
    """Radiation among the grey surfaces of an enclosure.

    Parameters
    ----------
    view_factors : array, shape (surfaces, surfaces)
        Share of row's radiation that meets column [-]; each row sums to 1.
    area : array, shape (surfaces,)
        [m2], above 0; a large room may have any area far above the others.
    emissivity : array, shape (surfaces,)
        Total [-], above 0, to 1; an opening to a room is 1.
    temperature : array, shape (surfaces,)
        [K], above 0, to 2000.

    Returns
    -------
    Exchange
        Net heat, irradiance and radiosity of each surface.

    Raises
    ------
    ValueError
        If any argument is outside its range, or a row of view_factors does not sum to 1 within 1e-6.

    Source
    ------
    Net-radiation method, Incropera et al., 13.3; checked against the rows `7.11-*` in tests/reference.
    """
    factors = within("view_factors", view_factors, 0.0, 1.0)
    if (np.abs(factors.sum(axis=1) - 1.0) > 1e-6).any():
        raise ValueError("view_factors must sum to 1 in each row: what is missing goes to the room")
    size, grey = positive("area", area), positive("emissivity", emissivity, 1.0)
    emitted = grey * STEFAN_BOLTZMANN * positive("temperature", temperature, 2000.0) ** 4
    radiosity: Array = np.asarray(np.linalg.solve(np.eye(size.size) - (1 - grey)[:, None] * factors, emitted))
    irradiance = factors @ radiosity
    return Exchange(heat=size * (radiosity - irradiance), irradiance=irradiance, radiosity=radiosity)


def panel_and_wall(
    width: float,
    height: float,
    gap: float,
    temperature_panel: float,
    temperature_wall: float,
    temperature_room: float,
    emissivity_panel: float = 0.9,
    emissivity_wall: float = 0.9,
) -> Exchange:
    """Radiation among a stove's panel, the patch of wall straight opposite and the room: in this order.

    Parameters
    ----------
    width, height : float
        Of the panel [m], above 0.
    gap : float
        From panel to wall [m], above 0.
    temperature_panel, temperature_wall, temperature_room : float
        [K], above 0, to 2000.
    emissivity_panel, emissivity_wall : float
        Total [-], above 0, to 1.

    Returns
    -------
    Exchange
        Of panel, wall patch and room, shape (3,).

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    An explanation of where the heat goes. It is no clearance: a listed stove's label, the manual, local code and a
    licensed installer decide.

    Source
    ------
    As `enclosure_exchange` and `view_factor_parallel_rectangles`; checked against the rows `7.11-*` in tests/reference.
    """
    across = float(view_factor_parallel_rectangles(width, height, gap))
    patch, room = width * height, 1e6 * width * height
    back = (1 - across) * patch / room
    factors = [[0.0, across, 1 - across], [across, 0.0, 1 - across], [back, back, 1 - 2 * back]]
    return enclosure_exchange(
        factors,
        [patch, patch, room],
        [emissivity_panel, emissivity_wall, 1.0],
        [temperature_panel, temperature_wall, temperature_room],
    )
