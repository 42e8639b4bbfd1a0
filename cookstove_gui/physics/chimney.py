"""The chimney's natural draught, and how warm the gas in it stays on the way up."""

import numpy as np

from cookstove_gui.physics.air import GAS_CONSTANT, air_density
from cookstove_gui.physics.quantities import (
    STANDARD_GRAVITY,
    STANDARD_PRESSURE,
    Quantity,
    positive,
    quantity,
    within,
)


def natural_draught(
    height: Quantity,
    temperature_flue: Quantity,
    temperature_outdoors: Quantity,
    pressure: Quantity = STANDARD_PRESSURE,
    gas_constant_flue: Quantity = GAS_CONSTANT,
) -> Quantity:
    """Pressure by which the column of warm gas in a chimney is lighter than the air outdoors.

    Parameters
    ----------
    height : float or array, shape (...)
        From the flue outlet of the stove to the chimney's top [m], 0 to 60.
    temperature_flue : float or array, shape (...)
        Mean of the gas over the height [K], 230 to 1500.
    temperature_outdoors : float or array, shape (...)
        [K], 220 to 330.
    pressure : float or array, shape (...)
        Absolute air pressure where the stove stands [Pa], 30 000 to 110 000.
    gas_constant_flue : float or array, shape (...)
        Of the flue gas [J/(kg K)], 280 to 310; that of air if not given (wood smoke with water is 2 to 4 % lighter).

    Returns
    -------
    float or array, shape (...)
        [Pa]; below zero where the flue is colder than outdoors: smoke will come into the room.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    H g (rho air - rho gas). Wind, bends, soot and a tight house are not in it: it is what drives the draught, not what
    is left of it at the stove.

    Source
    ------
    EN 13384-1, theoretical draught, flue gas taken as air; checked against the rows `13.*` in tests/reference.
    """
    column = within("height", height, 0.0, 60.0)
    gas = within("temperature_flue", temperature_flue, 230.0, 1500.0)
    outdoors = within("temperature_outdoors", temperature_outdoors, 220.0, 330.0)
    constant = within("gas_constant_flue", gas_constant_flue, 280.0, 310.0)
    heavy = np.asarray(air_density(outdoors, pressure))
    light = np.asarray(air_density(gas, pressure)) * GAS_CONSTANT / constant
    return quantity(column * STANDARD_GRAVITY * (heavy - light))


def mean_flue_temperature(
    temperature_inlet: Quantity,
    temperature_outdoors: Quantity,
    height: Quantity,
    mass_flow: Quantity,
    perimeter: Quantity,
    heat_transfer_coefficient: Quantity,
    specific_heat: Quantity = 1100.0,
) -> Quantity:
    """Mean temperature of flue gas that cools on its way up.

    Parameters
    ----------
    temperature_inlet : float or array, shape (...)
        Gas where it enters the chimney [K], 230 to 1500.
    temperature_outdoors : float or array, shape (...)
        Around the chimney [K], 220 to 330.
    height : float or array, shape (...)
        [m], 0 to 60.
    mass_flow : float or array, shape (...)
        Gas [kg/s], above 0 (a cookstove: about 0.005 to 0.02, common practice, no source).
    perimeter : float or array, shape (...)
        Of the flue's inside [m], above 0.
    heat_transfer_coefficient : float or array, shape (...)
        From gas to outdoors through the wall [W/(m2 K)], 0 or more (single-wall pipe 5 to 8, insulated 0.5 to 2,
        common practice, no source).
    specific_heat : float or array, shape (...)
        Of the gas [J/(kg K)], above 0.

    Returns
    -------
    float or array, shape (...)
        [K]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    Tu + (Te - Tu) (1 - exp(-K)) / K with K = U h k / (m c), h the height and k the heat transfer coefficient.

    Source
    ------
    EN 13384-1, cooling of the flue gas (from memory); the limits K -> 0 and the energy balance are tested.
    """
    gas = within("temperature_inlet", temperature_inlet, 230.0, 1500.0)
    outdoors = within("temperature_outdoors", temperature_outdoors, 220.0, 330.0)
    wall = within("height", height, 0.0, 60.0) * positive("perimeter", perimeter)
    carried = positive("mass_flow", mass_flow) * positive("specific_heat", specific_heat)
    cooling = np.maximum(within("heat_transfer_coefficient", heat_transfer_coefficient, 0.0) * wall / carried, 1e-12)
    return quantity(outdoors + (gas - outdoors) * -np.expm1(-cooling) / cooling)
