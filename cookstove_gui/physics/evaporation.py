"""What dries from open water into a still room: a correlation of measured pools and vessels."""

import numpy as np

from cookstove_gui.physics.air import GAS_CONSTANT as DRY_GAS_CONSTANT
from cookstove_gui.physics.quantities import STANDARD_PRESSURE, Array, Quantity, quantity, within
from cookstove_gui.physics.water import GAS_CONSTANT, heat_of_vaporisation, saturation_pressure

BY_BUOYANCY = 35.0  # of the correlation, in its units: kg/(m2 h) for densities in kg/m3
BY_DRAUGHTS = 5e-5  # kg/(m2 h Pa), of the air's own stir where no buoyancy lifts the vapour
HOUR = 3600.0  # s


def evaporation_flux(
    temperature_water: Quantity,
    temperature_room: Quantity,
    humidity: Quantity,
    pressure: Quantity = STANDARD_PRESSURE,
) -> Quantity:
    """Heat that an open water surface loses by drying into still air.

    Parameters
    ----------
    temperature_water : float or array, shape (...)
        [K], 273.15 to 374.
    temperature_room : float or array, shape (...)
        [K], 273.15 to 330.
    humidity : float or array, shape (...)
        Relative, of the room [-], 0 to 1.
    pressure : float or array, shape (...)
        Absolute [Pa], 30 000 to 110 000.

    Returns
    -------
    float or array, shape (...)
        [W/m2]; below zero where the room's vapour condenses on cold water.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    Below boiling; at it the heat that comes in decides. The correlation was held against measurements of 11 sources,
    0.07 to 425 m2 and water of 7 to 94 °C, with a mean deviation of 18 %; a pan is as large as the smallest of them and
    has a rim. Tables for open tanks at 88 °C give 6.8 and 9.1 kW/m2 (here 8.2), theory for an unsheltered plate 15.
    A timed pan sets that right.

    Notes
    -----
    m = 35 rho_w (rho_r - rho_w)^(1/3) (W_w - W_r), with the dry air in a volume of air, saturated at the water and of
    the room, and the water for each of dry air; at least the draughts' 5e-5 (p_w - p_r). In thin air the analogy of
    heat and mass transfer, on which it rests, has the coefficient go with p^(-1/3).

    Source
    ------
    M. M. Shah, HVAC&R Research 8 (2002) 125 and ASHRAE Transactions 120-2 (2014), SE-14-001; rows `p.drying-*` in
    tests/reference.
    """
    water = within("temperature_water", temperature_water, 273.15, 374.0)
    room = within("temperature_room", temperature_room, 273.15, 330.0)
    absolute = within("pressure", pressure, 30_000.0, 110_000.0)
    far = within("humidity", humidity, 0.0, 1.0) * np.asarray(saturation_pressure(room))
    near = np.minimum(np.asarray(saturation_pressure(water)), absolute)
    dry_near, dry_far = (absolute - near) / (DRY_GAS_CONSTANT * water), (absolute - far) / (DRY_GAS_CONSTANT * room)
    share_far = far / (absolute - far) * DRY_GAS_CONSTANT / GAS_CONSTANT
    # rho_w W_w is the vapour's own density, which stays finite at the boil
    more = near / (GAS_CONSTANT * water) - dry_near * share_far
    lift = np.cbrt(np.maximum(dry_far - dry_near, 0.0) * STANDARD_PRESSURE / absolute)
    stirred: Array = BY_DRAUGHTS * (near - far)
    mass = np.where(near > far, np.maximum(BY_BUOYANCY * lift * more, stirred), stirred) / HOUR
    return quantity(mass * np.asarray(heat_of_vaporisation(np.maximum(water, 273.16))))
