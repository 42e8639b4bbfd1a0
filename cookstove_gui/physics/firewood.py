"""Heat in firewood: moisture, heating values, the mass of a split and how long a load burns."""

import numpy as np

from cookstove_gui.physics.quantities import Quantity, positive, quantity, within

HEAT_OF_DRYING = 2.443e6  # J/kg of water evaporated at 25 °C, EN ISO 18125


def moisture_wet_basis(moisture_dry_basis: Quantity) -> Quantity:
    """Water over the whole mass of wood, from water over its dry mass (what most pin meters show).

    Parameters
    ----------
    moisture_dry_basis : float or array, shape (...)
        [%], 0 to 300.

    Returns
    -------
    float or array, shape (...)
        [%]

    Raises
    ------
    ValueError
        If any moisture is outside the range.

    Source
    ------
    Definition, EN ISO 17225-1; checked against the rows `6.6` in tests/reference.
    """
    u = within("moisture_dry_basis", moisture_dry_basis, 0.0, 300.0)
    return quantity(100.0 * u / (100.0 + u))


def moisture_dry_basis(moisture_wet_basis: Quantity) -> Quantity:
    """Water over the dry mass of wood, from water over its whole mass.

    Parameters
    ----------
    moisture_wet_basis : float or array, shape (...)
        [%], 0 to 75.

    Returns
    -------
    float or array, shape (...)
        [%]

    Raises
    ------
    ValueError
        If any moisture is outside the range.

    Source
    ------
    Definition, EN ISO 17225-1; round trip tested.
    """
    m = within("moisture_wet_basis", moisture_wet_basis, 0.0, 75.0)
    return quantity(100.0 * m / (100.0 - m))


def heating_value_net_dry(
    heating_value_gross_dry: Quantity, hydrogen: Quantity = 6.0, oxygen: Quantity = 42.0, nitrogen: Quantity = 0.1
) -> Quantity:
    """Net (lower) heating value of dry wood from the gross (higher) one.

    Parameters
    ----------
    heating_value_gross_dry : float or array, shape (...)
        At constant volume, dry basis [J/kg], 10e6 to 35e6.
    hydrogen, oxygen, nitrogen : float or array, shape (...)
        Share of the dry mass [%], 0 to 100.

    Returns
    -------
    float or array, shape (...)
        At constant pressure [J/kg]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    gross - 212.2 kJ/kg w(H) - 0.8 kJ/kg (w(O) + w(N)).

    Source
    ------
    EN ISO 18125:2017, from memory; checked against the row `6.2` in tests/reference.
    """
    gross = within("heating_value_gross_dry", heating_value_gross_dry, 10e6, 35e6)
    others = within("oxygen", oxygen, 0.0, 100.0) + within("nitrogen", nitrogen, 0.0, 100.0)
    return quantity(gross - 212.2e3 * within("hydrogen", hydrogen, 0.0, 100.0) - 0.8e3 * others)


def heating_value_net(heating_value_net_dry: Quantity, moisture_wet_basis: Quantity) -> Quantity:
    """Net heating value of wood as it goes into the fire, water and all.

    Parameters
    ----------
    heating_value_net_dry : float or array, shape (...)
        [J/kg], 10e6 to 35e6.
    moisture_wet_basis : float or array, shape (...)
        [%], 0 to 75.

    Returns
    -------
    float or array, shape (...)
        Per kg of moist wood [J/kg]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    EN ISO 18125:2017 and EN ISO 17225-1, formula from memory; checked against published tables in the rows `6.3-*` to
    `6.5` in tests/reference.
    """
    dry = within("heating_value_net_dry", heating_value_net_dry, 10e6, 35e6)
    m = within("moisture_wet_basis", moisture_wet_basis, 0.0, 75.0) / 100.0
    return quantity(dry * (1.0 - m) - HEAT_OF_DRYING * m)


def split_mass(length: Quantity, diameter: Quantity, pieces: Quantity, density: Quantity) -> Quantity:
    """Mass of one split of a round log.

    Parameters
    ----------
    length : float or array, shape (...)
        [m], above 0, to 3.
    diameter : float or array, shape (...)
        Of the round log before splitting [m], above 0, to 2.
    pieces : float or array, shape (...)
        Equal pieces it was split into [-], 1 or more.
    density : float or array, shape (...)
        As it lies there [kg/m3], above 0, to 1500.

    Returns
    -------
    float or array, shape (...)
        [kg]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Volume of a cylinder; checked against the row `6.split` in tests/reference.
    """
    round_volume = np.pi / 4 * positive("diameter", diameter, 2.0) ** 2 * positive("length", length, 3.0)
    return quantity(round_volume * positive("density", density, 1500.0) / within("pieces", pieces, 1.0))


def heat_output(burning_rate: Quantity, heating_value: Quantity, efficiency: Quantity) -> Quantity:
    """Heat that comes from the stove into room, oven and pots.

    Parameters
    ----------
    burning_rate : float or array, shape (...)
        Moist wood [kg/s], 0 or more.
    heating_value : float or array, shape (...)
        Of the moist wood, net [J/kg], 0 to 35e6.
    efficiency : float or array, shape (...)
        Share that does not leave by the flue, on the same heating value [-], above 0, to 1 (0.5 to 0.75, common
        practice, no source).

    Returns
    -------
    float or array, shape (...)
        [W]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Rate times heating value times efficiency; checked against the rows `6.10` and `6.11` in tests/reference.
    """
    rate = within("burning_rate", burning_rate, 0.0)
    value = within("heating_value", heating_value, 0.0, 35e6)
    return quantity(rate * value * positive("efficiency", efficiency, 1.0))
