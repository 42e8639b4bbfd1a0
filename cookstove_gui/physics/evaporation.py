"""What dries from open water into a still room: mass transfer by the buoyancy of warm, moist air."""

import numpy as np

from cookstove_gui.physics.crumb import vapour_diffusivity
from cookstove_gui.physics.quantities import STANDARD_GRAVITY, STANDARD_PRESSURE, Quantity, quantity, within
from cookstove_gui.physics.water import GAS_CONSTANT, heat_of_vaporisation, saturation_pressure

TURBULENT = 0.14  # Sh = 0.14 (Ra)^(1/3), the plate facing up of McAdams with heat and mass exchanged
SHELTERED = 0.75  # a pan's rim and its own plume slow it; between theory and tables of open tanks, see Source
MOST_VAPOUR = (
    0.72  # share of vapour in the air that a pan's rim holds over the water: no drier near the boil; judgement
)
AIR_VISCOSITY = 1.9e-5  # m2/s, of moist air near 60 °C
VAPOUR_TO_AIR = 0.622  # molar masses


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
    Below boiling; at it the heat that comes in decides. Right within a factor of 1.35, one standard deviation: sources
    for water of 88 °C run from 6.8 and 9.1 kW/m2 (tables of open tanks) to 13 to 16 (theory, an unsheltered surface). A
    timed pan sets that right.

    Notes
    -----
    Stefan's law: m = h p / (R T) ln((p - p room) / (p - p sat)), with the coefficient h of natural convection, whose
    buoyancy is that of warmth and vapour together.

    Source
    ------
    Bird, Stewart and Lightfoot, Transport Phenomena, for Stefan's law; McAdams (1954) for a plate facing up, heat and
    mass exchanged; the form Sh = 0.23 Sc^(1/3) Ra^0.321 measured by Bower and Saylor, Int. J. Heat Mass Transfer 52
    (2009) 3055, is within a fifth; from memory; rows `p.drying-*` in tests/reference.
    """
    water = within("temperature_water", temperature_water, 273.15, 374.0)
    room = within("temperature_room", temperature_room, 273.15, 330.0)
    absolute = within("pressure", pressure, 30_000.0, 110_000.0)
    far = within("humidity", humidity, 0.0, 1.0) * np.asarray(saturation_pressure(room)) / absolute
    near = np.minimum(np.asarray(saturation_pressure(water)) / absolute, MOST_VAPOUR)
    film = 0.5 * (water + room)
    light_near, light_far = (1.0 - (1.0 - VAPOUR_TO_AIR) * share for share in (near, far))
    dense_near, dense_far = light_near / water, light_far / room  # densities but for a factor that cancels
    lift = np.maximum(dense_far - dense_near, 1e-9) / (0.5 * (dense_far + dense_near))
    diffusivity = np.asarray(vapour_diffusivity(film, absolute))
    stretched = AIR_VISCOSITY * STANDARD_PRESSURE / absolute
    coefficient = TURBULENT * diffusivity * (STANDARD_GRAVITY * lift / (stretched * diffusivity)) ** (1.0 / 3.0)
    mass = SHELTERED * coefficient * absolute / (GAS_CONSTANT * film) * np.log((1.0 - far) / (1.0 - near))
    return quantity(mass * np.asarray(heat_of_vaporisation(np.maximum(water, 273.16))))
