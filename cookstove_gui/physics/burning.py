"""How long a load of splits burns: a simple model of charring from all sides, slowed by water and a shut air."""

import numpy as np

from cookstove_gui.physics.quantities import Array, Quantity, positive, quantity, within

CHARRING_SOFTWOOD = 0.65e-3 / 60  # m/s, EN 1995-1-2:2004 Table 3.1, solid softwood of 290 kg/m3 and more
AIR_SHUT_SHARE = 0.25  # burning rate with the air shut over that with it open; common practice, no source
CHAR_HEATING_VALUE = 30e6  # J/kg, net, of the coals of wood: 28 to 33, from memory
MOISTURE_SLOWING = 0.02  # burn time longer per % of moisture (wet basis) above 12; common practice, no source


def burning_share(air_open: Quantity, share_shut: Quantity = AIR_SHUT_SHARE) -> Quantity:
    """How fast a load burns at an air setting, against the air wide open.

    Parameters
    ----------
    air_open : float or array, shape (...)
        [-], 0 (shut) to 1 (wide open).
    share_shut : float or array, shape (...)
        The same with the air shut [-], above 0, to 1; learned from a measured burn where there is one.

    Returns
    -------
    float or array, shape (...)
        [-]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    A straight line between two ends; a stove leaks by its own habits, hence the measured burn.

    Source
    ------
    Common practice, no source.
    """
    return quantity(burning_at(within("air_open", air_open, 0.0, 1.0), positive("share_shut", share_shut, 1.0)))


def burning_at(air_open: Array, share_shut: Quantity) -> Array:
    """As `burning_share`, unchecked, for a model that takes many small steps.

    Parameters
    ----------
    air_open : array, shape (...)
        [-], 0 (shut) to 1 (wide open).
    share_shut : float or array, shape (...)
        The same with the air shut [-], above 0, to 1.

    Returns
    -------
    array, shape (...)
        [-]

    Raises
    ------
    Nothing; what is missing stays missing.

    Source
    ------
    Common practice, no source.
    """
    result: Array = share_shut + (1.0 - share_shut) * air_open
    return result


def burn_time(
    thickness: Quantity,
    air_open: Quantity,
    charring_rate: Quantity = CHARRING_SOFTWOOD,
    moisture_wet_basis: Quantity = 18.0,
    share_shut: Quantity = AIR_SHUT_SHARE,
) -> Quantity:
    """Time until the splits of a load have burnt through to coals.

    Parameters
    ----------
    thickness : float or array, shape (...)
        Of a split, its smaller side [m], 0.01 to 0.25.
    air_open : float or array, shape (...)
        [-], 0 to 1.
    charring_rate : float or array, shape (...)
        Advance of the char into the wood [m/s], 3e-6 to 2e-5.
    moisture_wet_basis : float or array, shape (...)
        [%], 0 to 60.
    share_shut : float or array, shape (...)
        As in `burning_share` [-], above 0, to 1.

    Returns
    -------
    float or array, shape (...)
        [s]; the coals last about as long again.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    Splits laid on a bed of coals in a firebox that is not crowded. Charring rates are those of timber in a standard
    fire, near those of a firebox with the air open. Right within a factor of 1.5 before a burn was measured.

    Notes
    -----
    thickness / (2 rate) times 1 + 0.02 (M - 12), at least 0.9, over `burning_share`.

    Source
    ------
    Charring rates: EN 1995-1-2:2004 Table 3.1 (from memory); moisture and air: common practice, no source; guarded by
    the rows `6.burn-*` in tests/reference.
    """
    half = within("thickness", thickness, 0.01, 0.25) / 2.0
    rate = within("charring_rate", charring_rate, 3e-6, 2e-5)
    moisture = within("moisture_wet_basis", moisture_wet_basis, 0.0, 60.0)
    slowing = np.maximum(1.0 + MOISTURE_SLOWING * (moisture - 12.0), 0.9)
    return quantity(half / rate * slowing / np.asarray(burning_share(air_open, share_shut)))


def flame_share(heating_value: Quantity, char_share: Quantity, moisture_wet_basis: Quantity) -> Quantity:
    """Share of a load's heat that its flames give; the rest is in its coals.

    Parameters
    ----------
    heating_value : float or array, shape (...)
        Of the moist wood, net [J/kg], 5e6 to 25e6.
    char_share : float or array, shape (...)
        Mass of the coals over that of the dry wood [-], above 0, to 0.4.
    moisture_wet_basis : float or array, shape (...)
        [%], 0 to 60.

    Returns
    -------
    float or array, shape (...)
        [-]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    Coals are nearly carbon and hold more heat for their mass than wood does, so that a fifth of the mass is a third of
    the heat.

    Source
    ------
    Energy balance with the heating value of char, `CHAR_HEATING_VALUE`; checked against the row `6.flame-share` in
    tests/reference.
    """
    whole = within("heating_value", heating_value, 5e6, 25e6)
    dry = 1.0 - within("moisture_wet_basis", moisture_wet_basis, 0.0, 60.0) / 100.0
    coals = positive("char_share", char_share, 0.4) * dry * CHAR_HEATING_VALUE
    return quantity(1.0 - np.minimum(coals / whole, 0.9))
