"""Bodies that are warm alike all through: one time constant, closed form."""

import numpy as np

from cookstove_gui.physics.quantities import Array, Quantity, finite, positive, quantity, within


def cooled(temperature_initial: Array, temperature_surroundings: Array, ratio_time: Quantity) -> Array:
    """As `lumped_temperature`, unchecked, for a model that takes many small steps.

    Parameters
    ----------
    temperature_initial, temperature_surroundings : array, shape (...)
        [K]
    ratio_time : float or array, shape (...)
        Elapsed time over the time constant [-], 0 or more.

    Returns
    -------
    array, shape (...)
        [K]

    Raises
    ------
    Nothing; what is missing stays missing.

    Source
    ------
    Newton's law of cooling, closed form.
    """
    result: Array = temperature_surroundings + (temperature_initial - temperature_surroundings) * np.exp(-ratio_time)
    return result


def lumped_temperature(
    time: Quantity, temperature_initial: Quantity, temperature_surroundings: Quantity, time_constant: Quantity
) -> Quantity:
    """Temperature of a body that is warm alike all through, in steady surroundings.

    Parameters
    ----------
    time : float or array, shape (...)
        [s], 0 or more.
    temperature_initial, temperature_surroundings : float or array, shape (...)
        [K]
    time_constant : float or array, shape (...)
        Heat capacity over heat transfer, m c / (h A) [s], above 0.

    Returns
    -------
    float or array, shape (...)
        [K]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    Biot number below about 0.1; one time constant only. Real cooling has several (a mug of water needs two).

    Source
    ------
    Newton's law of cooling, closed form; checked against the rows `4.1` and `4.4-*` in tests/reference.
    """
    elapsed = within("time", time, 0.0)
    start = finite("temperature_initial", temperature_initial)
    around = finite("temperature_surroundings", temperature_surroundings)
    return quantity(cooled(start, around, elapsed / positive("time_constant", time_constant)))


def lumped_time(
    temperature: Quantity, temperature_initial: Quantity, temperature_surroundings: Quantity, time_constant: Quantity
) -> Quantity:
    """Time after which such a body has reached a temperature: the inverse of `lumped_temperature`.

    Parameters
    ----------
    temperature : float or array, shape (...)
        Temperature to reach [K].
    temperature_initial, temperature_surroundings : float or array, shape (...)
        [K], different from each other.
    time_constant : float or array, shape (...)
        [s], above 0.

    Returns
    -------
    float or array, shape (...)
        [s]; infinite where it is never reached (it lies at or beyond the surroundings, or behind the start).

    Raises
    ------
    ValueError
        If any argument is outside its range, or start and surroundings are the same.

    Source
    ------
    Newton's law of cooling, closed form; checked against the rows `4.2` and `4.3` in tests/reference.
    """
    wanted, start = finite("temperature", temperature), finite("temperature_initial", temperature_initial)
    around = finite("temperature_surroundings", temperature_surroundings)
    if (start == around).any():
        raise ValueError("temperature_initial must differ from temperature_surroundings")
    ratio = (wanted - around) / (start - around)
    reached = (ratio > 0.0) & (ratio <= 1.0)
    span = -np.log(np.where(reached, ratio, 1.0)) * positive("time_constant", time_constant)
    return quantity(np.where(reached, span, np.inf))
