"""Heat that soaks into bodies under a steady oven: exact series and closed forms, constant properties.

`temperature_ratio` is throughout (T - T surroundings) / (T initial - T surroundings): 1 at the start, 0 in the end.
An oven that changes, properties that change and drying are the business of `warming.py`.
"""

import numpy as np

from cookstove_gui.physics.eigenvalues import Shape, coefficients, eigenvalues, mean_profile, profile
from cookstove_gui.physics.quantities import Array, Quantity, positive, quantity, within

FOURIER_LOW = 1e-5  # below it the series needs thousands of terms and the surface form is exact enough


def biot_number(heat_transfer_coefficient: Quantity, length: Quantity, conductivity: Quantity) -> Quantity:
    """Resistance inside a body over the one at its surface.

    Parameters
    ----------
    heat_transfer_coefficient : float or array, shape (...)
        [W/(m2 K)], 0 or more.
    length : float or array, shape (...)
        Half thickness or radius [m], above 0.
    conductivity : float or array, shape (...)
        Of the body [W/(m K)], above 0.

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
    h L / k; checked against the row `5.12-biot` in tests/reference.
    """
    coefficient = within("heat_transfer_coefficient", heat_transfer_coefficient, 0.0)
    return quantity(coefficient * positive("length", length) / positive("conductivity", conductivity))


def fourier_number(time: Quantity, length: Quantity, diffusivity: Quantity) -> Quantity:
    """Time in units of what heat needs to soak through.

    Parameters
    ----------
    time : float or array, shape (...)
        [s], 0 or more.
    length : float or array, shape (...)
        Half thickness or radius [m], above 0.
    diffusivity : float or array, shape (...)
        k / (rho c) of the body [m2/s], above 0.

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
    alpha t / L^2; checked against the row `5.13-fourier` in tests/reference.
    """
    elapsed = within("time", time, 0.0)
    return quantity(elapsed * positive("diffusivity", diffusivity) / positive("length", length) ** 2)


def temperature_ratio(shape: Shape, biot: Quantity, fourier: Quantity, position: Quantity = 0.0) -> Quantity:
    """Unaccomplished share of the temperature change in a body put into steady surroundings, by the full series.

    Parameters
    ----------
    shape : "wall", "cylinder" or "sphere"
        Wall heated on both faces (or on one, insulated on the other), long cylinder, sphere.
    biot : float
        [-], above 0, infinity for a fixed surface.
    fourier : float or array, shape (...)
        [-], 0 or from 1e-5.
    position : float or array, shape (...)
        From the middle (0) to the surface (1) [-].

    Returns
    -------
    float or array, shape (...)
        (T - T surroundings) / (T initial - T surroundings) [-]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    As many terms as the smallest Fourier number needs; one term (`one_term_ratio`) is wrong by several percent below
    Fo = 0.2, where roasts spend half their time.

    Source
    ------
    Incropera, DeWitt, Bergman and Lavine, Fundamentals of Heat and Mass Transfer, 6th ed. (2007), 5.5-5.6; Carslaw and
    Jaeger (1959); checked against the rows `5.1` to `5.7` in tests/reference.
    """
    return _series(shape, biot, fourier, position, None)


def one_term_ratio(shape: Shape, biot: Quantity, fourier: Quantity, position: Quantity = 0.0) -> Quantity:
    """The first term of `temperature_ratio` alone, as textbooks' charts and tables have it.

    Parameters
    ----------
    shape : "wall", "cylinder" or "sphere"
        As in `temperature_ratio`.
    biot : float
        [-], above 0.
    fourier : float or array, shape (...)
        [-], 0 or from 1e-5.
    position : float or array, shape (...)
        From the middle (0) to the surface (1) [-].

    Returns
    -------
    float or array, shape (...)
        [-]; above 1, which is impossible, for short times.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    Fourier number above 0.2. Kept for comparison with books; nothing here is planned on it.

    Source
    ------
    Incropera et al. (2007), Table 5.1; checked against the rows `5.1` to `5.6` and `5.12` to `5.15` in tests/reference.
    """
    return _series(shape, biot, fourier, position, 1)


def heat_ratio(shape: Shape, biot: Quantity, fourier: Quantity) -> Quantity:
    """Share of the heat that a body will take up in the end which it has taken up so far.

    Parameters
    ----------
    shape : "wall", "cylinder" or "sphere"
        As in `temperature_ratio`.
    biot : float
        [-], above 0.
    fourier : float or array, shape (...)
        [-], 0 or from 1e-5.

    Returns
    -------
    float or array, shape (...)
        Q / (rho c V (T surroundings - T initial)) [-], 0 to 1.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Incropera et al. (2007), 5.5-5.6; checked against the rows `5.8-*` in tests/reference.
    """
    number, ratio_time, terms = _series_inputs(biot, fourier, None)
    roots = eigenvalues(shape, number, terms)
    decay = coefficients(shape, roots) * mean_profile(shape, roots) * np.exp(-(roots**2) * ratio_time[..., None])
    return quantity(np.where(ratio_time == 0.0, 0.0, 1.0 - decay.sum(axis=-1)))


def fourier_to_reach(shape: Shape, biot: Quantity, ratio: Quantity, position: Quantity = 0.0) -> Quantity:
    """Fourier number at which the unaccomplished share of the change has fallen to a given one.

    Parameters
    ----------
    shape : "wall", "cylinder" or "sphere"
        As in `temperature_ratio`.
    biot : float
        [-], above 0.
    ratio : float or array, shape (...)
        (T wanted - T surroundings) / (T initial - T surroundings) [-], above 0, to 1.
    position : float or array, shape (...)
        From the middle (0) to the surface (1) [-].

    Returns
    -------
    float or array, shape (...)
        [-]; 0 where it is reached before Fo = 1e-5.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Source
    ------
    Bisection in `temperature_ratio`, which only falls; checked against the rows `5.11-*` to `5.15` in tests/reference.
    """
    wanted, place = np.broadcast_arrays(positive("ratio", ratio, 1.0), within("position", position, 0.0, 1.0))
    number, _, terms = _series_inputs(biot, FOURIER_LOW, None)
    roots = eigenvalues(shape, number, terms)
    weights = coefficients(shape, roots) * profile(shape, roots * place[..., None])

    def still_above(logarithm: Array) -> Array:
        return np.asarray((weights * np.exp(-(roots**2) * np.exp(logarithm)[..., None])).sum(axis=-1) > wanted)

    first = np.full(wanted.shape, np.log(FOURIER_LOW))
    low, high = first, np.log((2.0 - np.log(wanted)) / roots[0] ** 2 + 1.0)
    for _ in range(50):
        middle = 0.5 * (low + high)
        above = still_above(middle)
        low, high = np.where(above, middle, low), np.where(above, high, middle)
    return quantity(np.where(still_above(first), np.exp(0.5 * (low + high)), 0.0))


def surface_layer_ratio(
    depth: Quantity,
    time: Quantity,
    heat_transfer_coefficient: Quantity,
    conductivity: Quantity,
    diffusivity: Quantity,
) -> Quantity:
    """Accomplished share of the temperature change near the surface of a thick body, for short times.

    Parameters
    ----------
    depth : float or array, shape (...)
        Below the surface [m], 0 or more.
    time : float or array, shape (...)
        [s], above 0.
    heat_transfer_coefficient : float or array, shape (...)
        [W/(m2 K)], above 0.
    conductivity : float or array, shape (...)
        [W/(m K)], above 0.
    diffusivity : float or array, shape (...)
        [m2/s], above 0.

    Returns
    -------
    float or array, shape (...)
        (T - T initial) / (T surroundings - T initial) [-]

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    Until the heat reaches the middle: Fo below about 0.05.

    Source
    ------
    Carslaw and Jaeger (1959), 2.7; Incropera et al. (2007), equation 5.60; checked against the row `5.9` in
    tests/reference.
    """
    from scipy.special import erfc, erfcx

    below, elapsed = within("depth", depth, 0.0), positive("time", time)
    coefficient = positive("heat_transfer_coefficient", heat_transfer_coefficient)
    reach = np.sqrt(positive("diffusivity", diffusivity) * elapsed)
    share, pull = below / (2 * reach), coefficient * reach / positive("conductivity", conductivity)
    # exp(h x/k + (h/k)^2 alpha t) erfc(share + pull), written so that it cannot overflow
    return quantity(erfc(share) - np.exp(-(share**2)) * erfcx(share + pull))


def _series(shape: Shape, biot: Quantity, fourier: Quantity, position: Quantity, only: int | None) -> Quantity:
    number, ratio_time, terms = _series_inputs(biot, fourier, only)
    place = within("position", position, 0.0, 1.0)
    roots = eigenvalues(shape, number, terms)
    form = profile(shape, roots * place[..., None])
    total = (coefficients(shape, roots) * form * np.exp(-(roots**2) * ratio_time[..., None])).sum(axis=-1)
    return quantity(total if only else np.where(ratio_time == 0.0, 1.0, total))


def _series_inputs(biot: Quantity, fourier: Quantity, only: int | None) -> tuple[Array, Array, int]:
    number = positive("biot", biot)
    if number.ndim:
        raise ValueError("biot must be one number")
    ratio_time = within("fourier", fourier, 0.0)
    later = ratio_time[ratio_time > 0.0]
    smallest = within("fourier", later.min(), FOURIER_LOW) if later.size else np.asarray(1.0)
    return number, ratio_time, only or 3 + int(6.1 / (np.pi * np.sqrt(min(float(smallest), 4.0))))
