"""How soon a pan of water simmers and boils on a steady spot, where it stays, and when it has boiled away."""

from dataclasses import replace

import numpy as np

from cookstove_gui.physics.pan import Kitchen, Pan, heat_capacity_with_water, heat_through_base, pan_heat_loss
from cookstove_gui.physics.quantities import STANDARD_PRESSURE, Array, Quantity, positive, quantity, within
from cookstove_gui.physics.water import boiling_temperature, heat_of_vaporisation

_POINTS, _WEIGHTS = np.polynomial.legendre.leggauss(48)


def time_to_heat(
    pan: Pan,
    temperature_initial: Quantity,
    temperature_final: Quantity,
    temperature_spot: Quantity,
    kitchen: Kitchen,
) -> Quantity:
    """Time to bring a pan of water from one temperature to another on a steady spot.

    Parameters
    ----------
    pan : Pan
        Shape (...) or single numbers.
    temperature_initial, temperature_final : float or array, shape (...)
        [K], 273.15 to the boiling point in this kitchen.
    temperature_spot : float or array, shape (...)
        [K], 230 to 1200.
    kitchen : Kitchen
        Air round it.

    Returns
    -------
    float or array, shape (...)
        [s]; infinite where the spot cannot bring it there.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    Heat capacity over net heat, integrated over the temperature (Gauss-Legendre, 48 points).

    Source
    ------
    First law for a well-stirred pan; checked against the rows `p.time-*` in tests/reference, closed forms and
    `pan_course.pan_course`.
    """
    boiling = float(boiling_temperature(kitchen.pressure))
    start = within("temperature_initial", temperature_initial, 273.15, boiling)
    end = within("temperature_final", temperature_final, 273.15, boiling)
    spot = within("temperature_spot", temperature_spot, 230.0, 1200.0)
    wide = _with_axis(pan)
    levels = start[..., None] + (end - start)[..., None] * 0.5 * (_POINTS + 1.0)
    ends = np.stack(np.broadcast_arrays(levels[..., -1], end), axis=-1)
    net = _net_heat(wide, spot[..., None], levels, kitchen)
    capacity = heat_capacity_with_water(wide, levels, kitchen)
    direction = np.sign(end - start)
    at_ends = _net_heat(wide, spot[..., None], ends, kitchen)
    stuck = np.asarray((np.concatenate([net, at_ends], axis=-1) * direction[..., None] <= 0.0).any(axis=-1))
    share = capacity / np.where(stuck[..., None], 1.0, net)
    span = (share * _WEIGHTS).sum(axis=-1) * 0.5 * (end - start)
    return quantity(np.where(direction == 0.0, 0.0, np.where(stuck, np.inf, span)))


def holding_temperature(pan: Pan, temperature_spot: Quantity, kitchen: Kitchen) -> Quantity:
    """Temperature at which a pan stays on a steady spot: boiling, a simmer or less.

    Parameters
    ----------
    pan : Pan
        Shape (...) or single numbers.
    temperature_spot : float or array, shape (...)
        [K], 273.15 to 1200.
    kitchen : Kitchen
        Air round it.

    Returns
    -------
    float or array, shape (...)
        [K], at most boiling.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Bisection in the balance of `heat_through_base` and `pan_heat_loss`; tested against that balance.
    """
    spot = within("temperature_spot", temperature_spot, 273.15, 1200.0)
    shape = np.broadcast_shapes(spot.shape, *(np.shape(getattr(pan, name)) for name in Pan.__slots__))
    low: Array = np.full(shape, 273.15)
    high: Array = np.full(shape, float(boiling_temperature(kitchen.pressure)))
    for _ in range(40):
        middle = 0.5 * (low + high)
        warms = _net_heat(pan, spot, middle, kitchen) > 0.0
        low, high = np.where(warms, middle, low), np.where(warms, high, middle)
    return quantity(0.5 * (low + high))


def spot_to_hold(pan: Pan, temperature_water: Quantity, kitchen: Kitchen) -> Quantity:
    """Temperature of the spot that just holds a pan at a temperature.

    Parameters
    ----------
    pan : Pan
        Shape (...) or single numbers.
    temperature_water : float or array, shape (...)
        [K], 273.15 to the boiling point.
    kitchen : Kitchen
        Air round it.

    Returns
    -------
    float or array, shape (...)
        [K]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    The inverse of `holding_temperature`; round trip tested.
    """
    water = within("temperature_water", temperature_water, 273.15, float(boiling_temperature(kitchen.pressure)))
    path = positive("conductance", pan.conductance) * positive("base_area", pan.base_area)
    return quantity(water + np.asarray(pan_heat_loss(pan, water, kitchen)) / path)


def boil_away_time(water: Quantity, heat: Quantity, pressure: Quantity = STANDARD_PRESSURE) -> Quantity:
    """Time in which water that boils already is gone.

    Parameters
    ----------
    water : float or array, shape (...)
        Mass to boil away [kg], 0 or more.
    heat : float or array, shape (...)
        Net into the water [W], above 0.
    pressure : float or array, shape (...)
        Absolute [Pa], 30 000 to 110 000.

    Returns
    -------
    float or array, shape (...)
        [s]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Heat of vaporisation (IAPWS) over net heat; checked against the row `2.12` in tests/reference.
    """
    latent = np.asarray(heat_of_vaporisation(boiling_temperature(pressure)))
    return quantity(within("water", water, 0.0) * latent / positive("heat", heat))


def conductance_from_time(
    pan: Pan,
    temperature_initial: float,
    temperature_final: float,
    temperature_spot: float,
    time: float,
    kitchen: Kitchen,
) -> float:
    """Conductance from plate to water that a timed pan tells of.

    Parameters
    ----------
    pan : Pan
        Single numbers; its own conductance is not looked at.
    temperature_initial, temperature_final : float
        [K], 273.15 to the boiling point, the second one higher.
    temperature_spot : float
        Mean of the spot meanwhile [K], 300 to 1200.
    time : float
        Measured [s], above 0.
    kitchen : Kitchen
        Air round it.

    Returns
    -------
    float
        [W/(m2 K)], held to 2 to 5000.

    Raises
    ------
    ValueError
        If any argument is outside its range, or the pan did not warm.

    Source
    ------
    The inverse of `time_to_heat`, hemmed in; round trip tested.
    """
    measured = float(positive("time", time))
    if temperature_final <= temperature_initial:
        raise ValueError("temperature_final must be above temperature_initial")
    low, high = 2.0, 5000.0
    for _ in range(4):
        guesses: Array = np.geomspace(low, high, 50)
        many = replace(pan, conductance=guesses)
        needed = np.asarray(time_to_heat(many, temperature_initial, temperature_final, temperature_spot, kitchen))
        place = int(np.clip((needed > measured).sum(), 1, guesses.size - 1))
        low, high = float(guesses[place - 1]), float(guesses[place])
    return float(np.sqrt(low * high))


def _net_heat(pan: Pan, temperature_spot: Array, temperature_water: Array, kitchen: Kitchen) -> Array:
    heat = np.asarray(heat_through_base(pan, temperature_spot, temperature_water))
    result: Array = heat - np.asarray(pan_heat_loss(pan, temperature_water, kitchen))
    return result


def _with_axis(pan: Pan) -> Pan:
    """The pan with a last axis to each array, for the points of an integral."""
    return Pan(**{name: np.asarray(getattr(pan, name))[..., None] for name in Pan.__slots__})
