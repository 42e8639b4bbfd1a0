"""Heat that rises from hot surfaces in still air, and what a stove's faces give off in all."""

from typing import Literal

import numpy as np

from cookstove_gui.physics.air import air_properties
from cookstove_gui.physics.quantities import (
    STANDARD_GRAVITY,
    STANDARD_PRESSURE,
    Array,
    Quantity,
    positive,
    quantity,
    within,
)
from cookstove_gui.physics.radiation import small_body_flux

Face = Literal["vertical", "up", "down", "cylinder", "sphere"]


def rayleigh_number(
    temperature_surface: Quantity,
    temperature_room: Quantity,
    length: Quantity,
    kinematic_viscosity: Quantity,
    diffusivity: Quantity,
    expansion: Quantity,
) -> Quantity:
    """Drive of natural convection against what hinders it.

    Parameters
    ----------
    temperature_surface, temperature_room : float or array, shape (...)
        [K], above 0, to 2000.
    length : float or array, shape (...)
        Height of a vertical face, area over perimeter of a horizontal one, diameter of a cylinder or sphere [m],
        above 0.
    kinematic_viscosity, diffusivity : float or array, shape (...)
        Of the air at film temperature [m2/s], above 0.
    expansion : float or array, shape (...)
        Of the air [1/K], above 0.

    Returns
    -------
    float or array, shape (...)
        [-]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    g beta dT L^3 / (nu alpha); checked against the row `14.1-rayleigh` in tests/reference.
    """
    difference = np.abs(
        positive("temperature_surface", temperature_surface, 2000.0)
        - positive("temperature_room", temperature_room, 2000.0)
    )
    hindrance = positive("kinematic_viscosity", kinematic_viscosity) * positive("diffusivity", diffusivity)
    drive = STANDARD_GRAVITY * positive("expansion", expansion) * difference * positive("length", length) ** 3
    return quantity(drive / hindrance)


def vertical_plate_nusselt(rayleigh: Quantity, prandtl: Quantity) -> Quantity:
    """Mean Nusselt number of an upright plate in still air.

    Parameters
    ----------
    rayleigh : float or array, shape (...)
        With the height [-], 0 to 1e12.
    prandtl : float or array, shape (...)
        [-], above 0.

    Returns
    -------
    float or array, shape (...)
        [-]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1323; Incropera et al., equation 9.26; checked against the
    row `14.2` in tests/reference.
    """
    drive, fluid = within("rayleigh", rayleigh, 0.0, 1e12), positive("prandtl", prandtl)
    return quantity((0.825 + 0.387 * drive ** (1 / 6) / (1 + (0.492 / fluid) ** (9 / 16)) ** (8 / 27)) ** 2)


def horizontal_cylinder_nusselt(rayleigh: Quantity, prandtl: Quantity) -> Quantity:
    """Mean Nusselt number of a lying cylinder in still air.

    Parameters
    ----------
    rayleigh : float or array, shape (...)
        With the diameter [-], 0 to 1e12.
    prandtl : float or array, shape (...)
        [-], above 0.

    Returns
    -------
    float or array, shape (...)
        [-]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1049; Incropera et al., equation 9.34; checked against the
    row `14.3` in tests/reference.
    """
    drive, fluid = within("rayleigh", rayleigh, 0.0, 1e12), positive("prandtl", prandtl)
    return quantity((0.60 + 0.387 * drive ** (1 / 6) / (1 + (0.559 / fluid) ** (9 / 16)) ** (8 / 27)) ** 2)


def horizontal_plate_nusselt(rayleigh: Quantity, facing_up: bool) -> Quantity:
    """Mean Nusselt number of a hot level plate in still air.

    Parameters
    ----------
    rayleigh : float or array, shape (...)
        With area over perimeter [-], 0 to 1e12.
    facing_up : bool
        Whether the hot face looks up (cooktop) or down (underside).

    Returns
    -------
    float or array, shape (...)
        [-]

    Raises
    ------
    ValueError
        If any Rayleigh number is outside the range.

    Validity
    --------
    Up: 1e4 to 1e11. Down: 1e5 to 1e11 (scatter 20 % and more). Below, at least that of conduction into a half space is
    kept (Nu 1).

    Source
    ------
    McAdams, Heat Transmission, 3rd ed. (1954); Incropera et al., equations 9.30 to 9.32; checked against the rows
    `14.4-*` in tests/reference.
    """
    drive = within("rayleigh", rayleigh, 0.0, 1e12)
    if facing_up:
        return quantity(np.maximum(np.where(drive <= 1e7, 0.54 * drive**0.25, 0.15 * np.cbrt(drive)), 1.0))
    return quantity(np.maximum(0.27 * drive**0.25, 1.0))


def sphere_nusselt(rayleigh: Quantity, prandtl: Quantity) -> Quantity:
    """Mean Nusselt number of a sphere in still air.

    Parameters
    ----------
    rayleigh : float or array, shape (...)
        With the diameter [-], 0 to 1e11.
    prandtl : float or array, shape (...)
        [-], 0.6 and above.

    Returns
    -------
    float or array, shape (...)
        [-]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Churchill, Heat Exchanger Design Handbook, 2.5.7 (1983), with its turbulent correction; checked against the row
    `14.5` in tests/reference.
    """
    drive, fluid = within("rayleigh", rayleigh, 0.0, 1e11), within("prandtl", prandtl, 0.6)
    slowing = 1 + (0.469 / fluid) ** (9 / 16)
    laminar = 0.589 * drive**0.25 / slowing ** (4 / 9)
    return quantity(2 + laminar * (1 + 7.44e-8 * drive / slowing ** (16 / 9)) ** (1 / 12))


def convection_coefficient(
    face: Face,
    length: Quantity,
    temperature_surface: Quantity,
    temperature_room: Quantity,
    pressure: Quantity = STANDARD_PRESSURE,
) -> Quantity:
    """Heat transfer coefficient of natural convection from a hot surface.

    Parameters
    ----------
    face : "vertical", "up", "down", "cylinder" or "sphere"
        Upright plate, hot face looking up or down, lying cylinder, sphere.
    length : float or array, shape (...)
        Height, area over perimeter, or diameter, in this order [m], above 0.
    temperature_surface, temperature_room : float or array, shape (...)
        [K], 220 to 1300; for a level face the surface is at least as hot as the room.
    pressure : float or array, shape (...)
        Absolute [Pa], 30 000 to 110 000.

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
    Air at the mean of both temperatures. Draughts in a kitchen can double it.

    Source
    ------
    As the Nusselt functions of this file; checked against the rows `14.7-*` to `14.14-*` in tests/reference.
    """
    hot = within("temperature_surface", temperature_surface, 220.0, 1300.0)
    room = within("temperature_room", temperature_room, 220.0, 1300.0)
    if (hot < room).any() and face in ("up", "down"):
        raise ValueError("temperature_surface must be at least temperature_room for a level face")
    air = air_properties(0.5 * (hot + room), pressure)
    rayleigh = rayleigh_number(hot, room, length, air.kinematic_viscosity, air.diffusivity, air.expansion)
    return quantity(_nusselt(face, rayleigh, air.prandtl) * np.asarray(air.conductivity) / np.asarray(length))


def surface_heat_loss(
    face: Face,
    length: Quantity,
    temperature_surface: Quantity,
    temperature_room: Quantity,
    emissivity: Quantity,
    pressure: Quantity = STANDARD_PRESSURE,
) -> Quantity:
    """Heat that a hot surface gives to the room by convection and radiation.

    Parameters
    ----------
    face : "vertical", "up", "down", "cylinder" or "sphere"
        As in `convection_coefficient`.
    length : float or array, shape (...)
        As in `convection_coefficient` [m], above 0.
    temperature_surface, temperature_room : float or array, shape (...)
        [K], 220 to 1300.
    emissivity : float or array, shape (...)
        Total [-], 0 to 1.
    pressure : float or array, shape (...)
        Absolute [Pa], 30 000 to 110 000.

    Returns
    -------
    float or array, shape (...)
        [W/m2]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Sum of `convection_coefficient` times the difference and `small_body_flux`; checked against the row `14.1-loss` in
    tests/reference.
    """
    coefficient = np.asarray(convection_coefficient(face, length, temperature_surface, temperature_room, pressure))
    carried = coefficient * (np.asarray(temperature_surface) - np.asarray(temperature_room))
    return quantity(carried + np.asarray(small_body_flux(emissivity, temperature_surface, temperature_room)))


def _nusselt(face: Face, rayleigh: Quantity, prandtl: Quantity) -> Array:
    if face == "vertical":
        return np.asarray(vertical_plate_nusselt(rayleigh, prandtl))
    if face in ("up", "down"):
        return np.asarray(horizontal_plate_nusselt(rayleigh, face == "up"))
    if face == "cylinder":
        return np.asarray(horizontal_cylinder_nusselt(rayleigh, prandtl))
    if face == "sphere":
        return np.asarray(sphere_nusselt(rayleigh, prandtl))
    raise ValueError(f"face must be vertical, up, down, cylinder or sphere, got {face}")
