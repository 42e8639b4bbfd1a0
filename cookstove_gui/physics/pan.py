"""A pan of water on a hot spot: the heat through its base and the heat lost from it.

The weak place is the contact of base and plate. Its conductance is an input in all of this; a first guess comes from
the gap, a good one from a pan that was timed (`boiling.conductance_from_time`).
"""

from dataclasses import dataclass

import numpy as np

from cookstove_gui.physics.convection import convection_coefficient
from cookstove_gui.physics.evaporation import evaporation_flux
from cookstove_gui.physics.quantities import STANDARD_PRESSURE, Array, Quantity, positive, quantity, within
from cookstove_gui.physics.radiation import small_body_flux
from cookstove_gui.physics.water import liquid_specific_heat

PAN_HEIGHT = 0.12  # m, for convection from the side; enters with its fourth root only
TOP_LENGTH = 0.05  # m, area over perimeter of the water or the lid; does not enter the turbulent range
WATER_EMISSIVITY = 0.96


@dataclass(frozen=True, slots=True, kw_only=True)
class Pan:
    """A pan with water; each number may be an array, shape (...), so that many guesses are worked out at once."""

    water: Quantity  # kg, 0.05 and more
    heat_capacity: Quantity  # J/K, empty: mass times specific heat (iron 460, steel 490, aluminium 900 J/(kg K))
    base_area: Quantity  # m2 that stands on the plate
    side_area: Quantity  # m2
    top_area: Quantity  # m2 of the water's surface
    conductance: Quantity  # W/(m2 K) from plate to water, see base_conductance
    emissivity: Quantity = 0.3  # of the pan's side and lid, total: bright 0.1 to enamelled or sooty 0.9
    evaporation: Quantity = 1.0  # factor on what open water dries, see evaporation_flux
    openness: Quantity = 1.0  # share of the open surface's losses that a lid lets by: none 1, loose 0.2, tight 0.05


@dataclass(frozen=True, slots=True, kw_only=True)
class Kitchen:
    """Air round the pan, single numbers."""

    temperature_room: float = 293.15  # K
    pressure: float = STANDARD_PRESSURE  # Pa, where the stove stands
    humidity: float = 0.4  # relative, 0 to 1


def pan_heat_loss(pan: Pan, temperature_water: Quantity, kitchen: Kitchen) -> Quantity:
    """Heat that a warm pan loses from its side and its top.

    Parameters
    ----------
    pan : Pan
        Shape (...) or single numbers.
    temperature_water : float or array, shape (...)
        [K], 273.15 to 374.
    kitchen : Kitchen
        Air round it.

    Returns
    -------
    float or array, shape (...)
        [W]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    The side is taken to be as warm as the water. The warm air that rises along a pan from the cooktop is left out, so
    the loss is rather too high.

    Source
    ------
    Natural convection (Churchill and Chu; McAdams), radiation, `evaporation_flux`; checked against the row `14.14-loss`
    in tests/reference.
    """
    water = within("temperature_water", temperature_water, 273.15, 374.0)
    side, top, glow, drying = (
        area * flux for area, flux in zip(loss_areas(pan), loss_fluxes(water, kitchen), strict=True)
    )
    return quantity(side + top + glow + drying)


def heat_through_base(pan: Pan, temperature_spot: Quantity, temperature_water: Quantity) -> Quantity:
    """Heat from the spot into the water.

    Parameters
    ----------
    pan : Pan
        Shape (...) or single numbers.
    temperature_spot : float or array, shape (...)
        Of the plate under the pan [K], 230 to 1200.
    temperature_water : float or array, shape (...)
        [K], 273.15 to 374.

    Returns
    -------
    float or array, shape (...)
        [W]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    A plate read beside the pan is hotter than under it; a conductance learned from a timed pan has that in it.

    Source
    ------
    U A dT; checked against the row `p.heat` in tests/reference.
    """
    drive = within("temperature_spot", temperature_spot, 230.0, 1200.0) - within(
        "temperature_water", temperature_water, 273.15, 374.0
    )
    return quantity(positive("conductance", pan.conductance) * positive("base_area", pan.base_area) * drive)


def pan_time_constant(heat_capacity: Quantity, conductance: Quantity, area: Quantity) -> Quantity:
    """Time by which a heavy pan lags behind its spot, for `lumped_temperature`.

    Parameters
    ----------
    heat_capacity : float or array, shape (...)
        Of the pan and what is in it [J/K], above 0.
    conductance : float or array, shape (...)
        From plate to pan [W/(m2 K)], above 0.
    area : float or array, shape (...)
        That touches [m2], above 0.

    Returns
    -------
    float or array, shape (...)
        [s]; on a spot that rises steadily the pan is late by this time.

    Raises
    ------
    ValueError
        If any argument is not above zero.

    Source
    ------
    C / (U A), first-order lag; checked against the row `p.lag` in tests/reference.
    """
    path = positive("conductance", conductance) * positive("area", area)
    return quantity(positive("heat_capacity", heat_capacity) / path)


def heat_capacity_with_water(pan: Pan, temperature_water: Quantity, kitchen: Kitchen) -> Array:
    """Heat capacity of a pan and the water in it.

    Parameters
    ----------
    pan : Pan
        Shape (...) or single numbers.
    temperature_water : float or array, shape (...)
        [K], 273.15 to 374.
    kitchen : Kitchen
        Air round it.

    Returns
    -------
    array, shape (...)
        [J/K]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Sum of both; the water's by IAPWS, checked against the rows `2.*` in tests/reference.
    """
    water = within("water", pan.water, 0.05) * np.asarray(liquid_specific_heat(temperature_water, kitchen.pressure))
    result: Array = water + within("heat_capacity", pan.heat_capacity, 0.0)
    return result


def loss_fluxes(temperature_water: Array, kitchen: Kitchen) -> Array:
    """Convection from the side, convection from the top, black radiation and drying: the parts of `pan_heat_loss`.

    Parameters
    ----------
    temperature_water : array, shape (...)
        [K], 273.15 to 374.
    kitchen : Kitchen
        Air round the pan.

    Returns
    -------
    array, shape (4, ...)
        In this order [W/m2]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    As `pan_heat_loss`.
    """
    room = kitchen.temperature_room
    side = convection_coefficient("vertical", PAN_HEIGHT, temperature_water, room, kitchen.pressure)
    above = np.maximum(temperature_water, room)
    top = convection_coefficient("up", TOP_LENGTH, above, room, kitchen.pressure)
    glow = small_body_flux(1.0, temperature_water, room)
    drying = evaporation_flux(temperature_water, room, kitchen.humidity, kitchen.pressure)
    return np.stack([side * (temperature_water - room), top * (above - room), np.asarray(glow), np.asarray(drying)])


def loss_areas(pan: Pan) -> tuple[Array, Array, Array, Array]:
    """Areas by which a pan gives off its `loss_fluxes`: apart, so that a long course works them out once.

    Parameters
    ----------
    pan : Pan
        Shape (...) or single numbers.

    Returns
    -------
    tuple of four arrays, shape (...)
        [m2], in the order of `loss_fluxes`; the loss [W] is the sum of each times its flux.

    Raises
    ------
    ValueError
        If an area or a share of the pan is outside its range.

    Source
    ------
    As `pan_heat_loss`.
    """
    grey = within("emissivity", pan.emissivity, 0.0, 1.0)
    openness = within("openness", pan.openness, 0.0, 1.0)
    side, top = within("side_area", pan.side_area, 0.0), within("top_area", pan.top_area, 0.0)
    glowing = side * grey + top * (openness * WATER_EMISSIVITY + (1 - openness) * grey)
    return side, top, glowing, top * openness * within("evaporation", pan.evaporation, 0.0)
