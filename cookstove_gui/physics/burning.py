"""How long a load of splits burns: a simple model of charring from all sides, slowed by water and a shut air."""

import numpy as np

from cookstove_gui.physics.quantities import Quantity, positive, quantity, within

CHARRING_SOFTWOOD = 0.65e-3 / 60  # m/s, EN 1995-1-2:2004 Table 3.1, solid softwood of 290 kg/m3 and more
CHARRING_HARDWOOD = 0.50e-3 / 60  # m/s, same table, hardwood of 450 kg/m3 and more
CHARRING_LIGHT_HARDWOOD = 0.65e-3 / 60  # m/s, same table, hardwood of 290 kg/m3
AIR_SHUT_SHARE = 0.25  # burning rate with the air shut over that with it open; common practice, no source
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
    opening = within("air_open", air_open, 0.0, 1.0)
    shut = positive("share_shut", share_shut, 1.0)
    return quantity(shut + (1.0 - shut) * opening)


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


def share_shut_from_burn(
    time: Quantity,
    thickness: Quantity,
    air_open: Quantity,
    charring_rate: Quantity = CHARRING_SOFTWOOD,
    moisture_wet_basis: Quantity = 18.0,
) -> Quantity:
    """What a measured burn says about how much a shut air slows this stove.

    Parameters
    ----------
    time : float or array, shape (...)
        From the load to coals, measured [s], above 0.
    thickness : float or array, shape (...)
        Of a split, its smaller side [m], 0.01 to 0.25.
    air_open : float or array, shape (...)
        During the burn [-], 0 to 0.5.
    charring_rate : float or array, shape (...)
        [m/s], 3e-6 to 2e-5.
    moisture_wet_basis : float or array, shape (...)
        [%], 0 to 60.

    Returns
    -------
    float or array, shape (...)
        `share_shut` of `burn_time` [-], held to 0.02 to 1.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    The inverse of `burn_time`; round trip tested.
    """
    opening = within("air_open", air_open, 0.0, 0.5)
    wide_open = np.asarray(burn_time(thickness, 1.0, charring_rate, moisture_wet_basis))
    share = wide_open / positive("time", time)
    return quantity(np.clip((share - opening) / (1.0 - opening), 0.02, 1.0))


def mass_left(time: Quantity, mass_initial: Quantity, burn_time_full: Quantity, char_share: Quantity = 0.2) -> Quantity:
    """Fuel left of a load: wood shrinks evenly until it has burnt through, then the coals fade.

    Parameters
    ----------
    time : float or array, shape (...)
        Since it caught [s], 0 or more.
    mass_initial : float or array, shape (...)
        [kg], 0 or more.
    burn_time_full : float or array, shape (...)
        `burn_time` at the present air [s], above 0.
    char_share : float or array, shape (...)
        Mass of coals over that of the wood [-], above 0, to 0.4 (0.15 to 0.25, common practice, no source).

    Returns
    -------
    float or array, shape (...)
        [kg]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    A split charred from all sides keeps the square of its remaining half thickness; coals then fade with a time
    constant of 0.6 burn times.

    Source
    ------
    Common practice, no source; its start, its end and that it only falls are tested.
    """
    elapsed = within("time", time, 0.0) / positive("burn_time_full", burn_time_full)
    start, coals = within("mass_initial", mass_initial, 0.0), positive("char_share", char_share, 0.4)
    wood = (1.0 - coals) * np.maximum(1.0 - elapsed, 0.0) ** 2
    return quantity(start * (wood + coals * np.exp(-np.maximum(elapsed - 1.0, 0.0) / 0.6)))


def mean_burning_rate(mass: Quantity, burn_time_full: Quantity, char_share: Quantity = 0.2) -> Quantity:
    """Mean rate at which a load burns until it has become coals.

    Parameters
    ----------
    mass : float or array, shape (...)
        Of the load [kg], 0 or more.
    burn_time_full : float or array, shape (...)
        `burn_time` [s], above 0.
    char_share : float or array, shape (...)
        [-], above 0, to 0.4.

    Returns
    -------
    float or array, shape (...)
        [kg/s]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Balance of `mass_left`, tested against it.
    """
    load = within("mass", mass, 0.0)
    return quantity(load * (1.0 - positive("char_share", char_share, 0.4)) / positive("burn_time_full", burn_time_full))
