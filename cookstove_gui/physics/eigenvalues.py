"""The series behind transient conduction in wall, cylinder and sphere: roots, coefficients and profiles."""

from typing import Literal

import numpy as np

from cookstove_gui.physics.quantities import Array, Quantity, finite, positive

Shape = Literal["wall", "cylinder", "sphere"]


def eigenvalues(shape: Shape, biot: Quantity, terms: int) -> Array:
    """Roots of a shape's characteristic equation.

    Parameters
    ----------
    shape : "wall", "cylinder" or "sphere"
        zeta tan zeta = Bi, zeta J1/J0 = Bi, 1 - zeta cot zeta = Bi.
    biot : float or array, shape (...)
        With half thickness or radius [-], above 0; infinity means a surface held at the oven's temperature.
    terms : int
        How many roots, 1 or more.

    Returns
    -------
    array, shape (..., terms)
        Rising [-].

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Notes
    -----
    Each root lies alone between known bounds (zeros of the limits Bi -> 0 and Bi -> infinity), so that bisection in
    the equation without its poles always finds it.

    Source
    ------
    Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed. (1959), appendix IV; checked against the rows `5.roots-*`
    in tests/reference.
    """
    number = positive("biot", biot)[..., None]
    if terms < 1:
        raise ValueError(f"terms must be 1 or more, got {terms}")
    weight = 1.0 / (1.0 + number)  # 1 for no transfer at all, 0 for a fixed surface
    low, high = _root_bounds(shape, terms)
    low, high = (np.broadcast_to(bound, (*number.shape[:-1], terms)).copy() for bound in (low, high))
    sign = np.where(np.arange(terms) % 2 == 0, 1.0, -1.0)
    for _ in range(54):
        middle = 0.5 * (low + high)
        below = sign * _characteristic(shape, middle, weight) < 0.0
        low, high = np.where(below, middle, low), np.where(below, high, middle)
    result: Array = 0.5 * (low + high)
    return result


def _root_bounds(shape: Shape, terms: int) -> tuple[Array, Array]:
    order = np.arange(terms, dtype=np.float64)
    if shape == "wall":
        return order * np.pi, (order + 0.5) * np.pi
    if shape == "sphere":
        return order * np.pi, (order + 1.0) * np.pi
    if shape == "cylinder":
        from scipy.special import jn_zeros

        return np.concatenate([[0.0], jn_zeros(1, terms)[:-1]]), np.asarray(jn_zeros(0, terms))
    raise ValueError(f"shape must be wall, cylinder or sphere, got {shape}")


def _characteristic(shape: Shape, zeta: Array, weight: Array) -> Array:
    """The characteristic equation without poles, weighted so that Bi may be infinite."""
    if shape == "wall":
        return weight * zeta * np.sin(zeta) - (1.0 - weight) * np.cos(zeta)
    if shape == "sphere":
        return (2.0 * weight - 1.0) * np.sin(zeta) - weight * zeta * np.cos(zeta)
    from scipy.special import j0, j1

    result: Array = weight * zeta * j1(zeta) - (1.0 - weight) * j0(zeta)
    return result


def coefficients(shape: Shape, roots: Array) -> Array:
    """Coefficients of the terms of the series.

    Parameters
    ----------
    shape : "wall", "cylinder" or "sphere"
        In this order the forms below.
    roots : array, shape (...)
        Of the characteristic equation [-].

    Returns
    -------
    array, shape (...)
        [-]

    Raises
    ------
    ValueError
        If any roots is missing.

    Notes
    -----
    4 sin z / (2 z + sin 2 z); 2 J1 / (z (J0^2 + J1^2)); 4 (sin z - z cos z) / (2 z - sin 2 z).

    Source
    ------
    Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed. (2007), 5.5-5.6; checked against the rows
    `5.coefficients-*` and `5.8-*` in tests/reference.
    """
    zeta = finite("roots", roots)
    if shape == "wall":
        return 4.0 * np.sin(zeta) / (2.0 * zeta + np.sin(2.0 * zeta))
    if shape == "sphere":
        return 4.0 * (np.sin(zeta) - zeta * np.cos(zeta)) / (2.0 * zeta - np.sin(2.0 * zeta))
    from scipy.special import j0, j1

    result: Array = 2.0 * j1(zeta) / (zeta * (j0(zeta) ** 2 + j1(zeta) ** 2))
    return result


def profile(shape: Shape, argument: Array) -> Array:
    """How a term of the series runs from the middle to the surface.

    Parameters
    ----------
    shape : "wall", "cylinder" or "sphere"
        In this order the forms below.
    argument : array, shape (...)
        Root times place, 0 in the middle [-].

    Returns
    -------
    array, shape (...)
        [-]

    Raises
    ------
    ValueError
        If any argument is missing.

    Notes
    -----
    cos x; J0(x); sin x / x.

    Source
    ------
    Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed. (2007), 5.5-5.6; checked against the rows
    `5.coefficients-*` and `5.8-*` in tests/reference.
    """
    x = finite("argument", argument)
    if shape == "wall":
        return np.cos(x)
    if shape == "sphere":
        return np.sinc(x / np.pi)
    from scipy.special import j0

    result: Array = j0(x)
    return result


def mean_profile(shape: Shape, roots: Array) -> Array:
    """Mean of `profile` over the volume.

    Parameters
    ----------
    shape : "wall", "cylinder" or "sphere"
        In this order the forms below.
    roots : array, shape (...)
        Of the characteristic equation [-].

    Returns
    -------
    array, shape (...)
        [-]

    Raises
    ------
    ValueError
        If any roots is missing.

    Notes
    -----
    sin z / z; 2 J1 / z; 3 (sin z - z cos z) / z^3.

    Source
    ------
    Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed. (2007), 5.5-5.6; checked against the rows
    `5.coefficients-*` and `5.8-*` in tests/reference.
    """
    zeta = finite("roots", roots)
    if shape == "wall":
        return np.sin(zeta) / zeta
    if shape == "sphere":
        return 3.0 * (np.sin(zeta) - zeta * np.cos(zeta)) / zeta**3
    from scipy.special import j1

    result: Array = 2.0 * j1(zeta) / zeta
    return result
