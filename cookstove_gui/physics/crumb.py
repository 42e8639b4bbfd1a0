"""Heat through a moist crumb: in each bubble water evaporates on the warm side and condenses on the cold one."""

import numpy as np

from cookstove_gui.physics.foods import GAS_CONDUCTIVITY, Composition, conductivity, porous_conductivity
from cookstove_gui.physics.quantities import STANDARD_PRESSURE, Array, Quantity, quantity, within
from cookstove_gui.physics.water import GAS_CONSTANT, boiling_temperature, heat_of_vaporisation, saturation_pressure

DIFFUSIVITY_FROZEN = 2.26e-5  # m2/s, water vapour in air at 273.15 K and standard pressure
DIFFUSIVITY_POWER = 1.81
BELOW_BOILING = 2.0  # K; nearer than this the share of air in a bubble is no longer told by the temperature
WATER_ACTIVITY = 0.95  # of dough and crumb over pure water, from memory


def vapour_diffusivity(temperature: Quantity, pressure: Quantity = STANDARD_PRESSURE) -> Quantity:
    """Diffusivity of water vapour in air.

    Parameters
    ----------
    temperature : float or array, shape (...)
        [K], 250 to 450.
    pressure : float or array, shape (...)
        Absolute [Pa], 30 000 to 110 000.

    Returns
    -------
    float or array, shape (...)
        [m2/s]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Schirmer (1938), as in Krischer and Kast, Die wissenschaftlichen Grundlagen der Trocknungstechnik (1978), from
    memory; guarded by the row `5.vapour-diffusivity` in tests/reference.
    """
    warmth = within("temperature", temperature, 250.0, 450.0)
    share = within("pressure", pressure, 30_000.0, 110_000.0) / STANDARD_PRESSURE
    return quantity(DIFFUSIVITY_FROZEN * (warmth / 273.15) ** DIFFUSIVITY_POWER / share)


def bubble_conductivity(temperature: Quantity, pressure: Quantity = STANDARD_PRESSURE) -> Quantity:
    """Conductivity of a moist bubble: its gas, and the heat that vapour carries across it.

    Parameters
    ----------
    temperature : float or array, shape (...)
        [K], 273.16 to 423.15.
    pressure : float or array, shape (...)
        Absolute [Pa], 30 000 to 110 000.

    Returns
    -------
    float or array, shape (...)
        [W/(m K)]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    Walls wet. The share of air in the bubble runs out as boiling comes near: within 2 K of it the value 2 K below is
    kept; from boiling on the crumb counts as dry crust and only its gas conducts.

    Notes
    -----
    k gas + D L a dps/dT / (R T) p / (p - a ps), with a the water activity.

    Source
    ------
    Krischer's vapour conductivity, Krischer and Kast (1978); taken for dough and crumb by de Vries, Sluimer and
    Bloksma, "A quantitative model for heat transport in dough and crumb during baking", Cereal Science and
    Technology in Sweden (1989); both from memory; guarded by the row `5.bubble` in tests/reference.
    """
    warmth = within("temperature", temperature, 273.16, 423.15)
    absolute = within("pressure", pressure, 30_000.0, 110_000.0)
    boiling = np.asarray(boiling_temperature(absolute))
    moist: Array = np.minimum(warmth, boiling - BELOW_BOILING)
    step = 1e-2
    vapour = WATER_ACTIVITY * np.asarray(saturation_pressure(moist))
    slope = (
        WATER_ACTIVITY
        * (np.asarray(saturation_pressure(moist + step)) - np.asarray(saturation_pressure(moist - step)))
        / (2 * step)
    )
    carried = (
        np.asarray(vapour_diffusivity(moist, absolute))
        * np.asarray(heat_of_vaporisation(moist))
        * slope
        / (GAS_CONSTANT * moist)
        * absolute
        / (absolute - vapour)
    )
    return quantity(GAS_CONDUCTIVITY + np.where(warmth < boiling, carried, 0.0))


def crumb_conductivity(
    composition: Composition, temperature: Quantity, porosity: Quantity, pressure: Quantity = STANDARD_PRESSURE
) -> Quantity:
    """Thermal conductivity of dough and crumb while they bake, vapour in the bubbles included.

    Parameters
    ----------
    composition : Composition
        Mass fractions.
    temperature : float or array, shape (...)
        [K], 273.16 to 423.15.
    porosity : float or array, shape (...)
        Share of bubbles in the volume [-], 0 to 0.95.
    pressure : float or array, shape (...)
        Absolute [Pa], 30 000 to 110 000.

    Returns
    -------
    float or array, shape (...)
        [W/(m K)]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    As `bubble_conductivity`. It jumps down at boiling, where crumb becomes crust: a table for `warming.Body` wants
    steps of 2 K or so. A loaf of half a kilogram then bakes in about half an hour at 375 °F, as loaves do.

    Source
    ------
    `bubble_conductivity` within `foods.conductivity` by `foods.porous_conductivity`; held against common practice by
    the row `5.loaf` in tests/reference.
    """
    solid = conductivity(composition, temperature)
    return porous_conductivity(solid, bubble_conductivity(temperature, pressure), porosity)
