"""Bodies of no simple shape: bricks and short cylinders from walls and cylinders, and ellipsoids."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from cookstove_gui.physics.eigenvalues import Shape, coefficients, eigenvalues
from cookstove_gui.physics.quantities import Array, Quantity, finite, positive, quantity
from cookstove_gui.physics.volumes import Volumes

_LEFT = (0.8, 0.25)  # shares of the change at which both bodies are to agree
_NODES = 30


@dataclass(frozen=True, slots=True, kw_only=True)
class EquivalentBody:
    """A one-dimensional body that stands for another one."""

    dimension: float  # -, 1 wall to 3 sphere; a cube lies a little above
    half_thickness: float  # m


def product_ratio(*ratios: Quantity) -> Quantity:
    """Unaccomplished share in a body that is the intersection of simple ones: brick, short cylinder.

    Parameters
    ----------
    *ratios : float or array, shape (...)
        `temperature_ratio` of each simple body at the same time: three walls for a brick, a wall and a cylinder for a
        short cylinder [-].

    Returns
    -------
    float or array, shape (...)
        [-]

    Raises
    ------
    ValueError
        If fewer than two are given, or any is missing.

    Validity
    --------
    Exact for constant properties, one initial temperature and steady surroundings alike on all faces.

    Source
    ------
    Incropera et al. (2007), 5.8 (supplement); checked against the row `5.10` in tests/reference.
    """
    if len(ratios) < 2:
        raise ValueError("ratios must be two or more")
    product: Array = np.asarray(1.0)
    for ratio in ratios:
        product = product * finite("ratios", ratio)
    return quantity(product)


def equivalent_ellipsoid(length: tuple[float, float, float]) -> EquivalentBody:
    """The one-dimensional body whose middle warms as that of an ellipsoid does.

    Parameters
    ----------
    length : tuple of three floats
        Its half axes [m], above 0, to 5.

    Returns
    -------
    EquivalentBody
        Dimension [-] and half thickness [m].

    Raises
    ------
    ValueError
        If an axis is outside its range.

    Validity
    --------
    Axes up to twice each other: the middle is early by 2 to 6 % of the time, as a variational bound is.

    Notes
    -----
    Two things are kept: surface over volume, and the temperature in the middle of a body that makes heat evenly under a
    cold surface, which for an ellipsoid is exactly that of a ball of mean square inverse axis.

    Source
    ------
    Carslaw and Jaeger (1959) for the ball; area by Thomsen's formula (within 1.1 %), from memory; held against a
    Ritz-Galerkin solution for ellipsoids in the tests.
    """
    axes = positive("length", length, 5.0)
    power = 1.6075
    pairs = (axes * np.roll(axes, 1)) ** power
    area_over_volume = 3.0 * float(pairs.mean()) ** (1.0 / power) / float(axes.prod())
    half = area_over_volume / float((axes**-2.0).sum())
    return EquivalentBody(dimension=half * area_over_volume, half_thickness=half)


def equivalent_body(
    simple: tuple[tuple[Shape, float], ...], heat_transfer_coefficient: float, conductivity: float
) -> EquivalentBody:
    """The one-dimensional body whose middle warms as that of a brick or short cylinder does, for `warming.Body`.

    Parameters
    ----------
    simple : tuple of (shape, half thickness or radius)
        Bodies whose intersection it is [m], above 0: three walls for a brick, a wall and a cylinder for a short
        cylinder.
    heat_transfer_coefficient : float
        Radiation included [W/(m2 K)], above 0, to 500.
    conductivity : float
        [W/(m K)], above 0.

    Returns
    -------
    EquivalentBody
        Dimension [-] and half thickness [m].

    Raises
    ------
    ValueError
        If any argument is outside its range, or fewer than two bodies are given.

    Validity
    --------
    Sides up to 15 times each other: the middle agrees with the product solution within 2.5 % of the change. Its surface
    stands for an average of the faces.

    Notes
    -----
    A body of dimension d has a surface that grows with the power d - 1 of its radius (1 wall, 2 cylinder, 3 sphere);
    dimension and radius are found so that 0.8 and 0.25 of the change are left at the same times as in the brick.

    Source
    ------
    The matching is our own and held against the product solution in the tests; the idea is that of the equivalent
    heat-transfer dimensionality, ASHRAE Handbook - Refrigeration, "Cooling and freezing times of foods".
    """
    if len(simple) < 2:
        raise ValueError("simple must name two bodies or more")
    halves = positive("simple", [half for _, half in simple], 5.0)
    biot = float(positive("heat_transfer_coefficient", heat_transfer_coefficient, 500.0)) / float(
        positive("conductivity", conductivity)
    )
    times = _times_to_match(simple, biot)
    smallest = float(halves.min())

    def half_for(dimension: float) -> float:
        def too_slow(half: float) -> float:
            return _left(dimension, half, biot, times[0]) - _LEFT[0]

        return _root(too_slow, 0.4 * smallest, 4.0 * smallest, 1e-4 * smallest)

    def too_flat(dimension: float) -> float:
        return _left(dimension, half_for(dimension), biot, times[1]) - _LEFT[1]

    dimension = _root(too_flat, 1.0, 4.0, 1e-3)
    return EquivalentBody(dimension=dimension, half_thickness=half_for(dimension))


def _times_to_match(simple: tuple[tuple[Shape, float], ...], biot: float) -> list[float]:
    """When the shares to agree at are left in the product of simple bodies (diffusivity 1)."""
    shortest = min(half for _, half in simple)
    times = np.geomspace(1e-3, 1e2, 1000) * shortest**2 * (1.0 + 1.0 / (biot * shortest))
    product: Array = np.ones(times.size)
    for shape, half in simple:
        roots = eigenvalues(shape, biot * half, 60)
        product = product * (np.exp(-np.multiply.outer(times / half**2, roots**2)) @ coefficients(shape, roots))
    found: list[float] = np.exp(np.interp(-np.array(_LEFT), -product, np.log(times))).tolist()
    return found


def _left(dimension: float, half: float, biot: float, time: float) -> float:
    return Volumes(half_thickness=half, dimension=dimension, nodes=_NODES).left_in_the_middle(biot, time)


def _root(function: Callable[[float], float], low: float, high: float, tolerance: float) -> float:
    """Where a steady function passes zero (false position, Illinois rule), or the end nearer to that."""
    at_low, at_high = function(low), function(high)
    if at_low * at_high >= 0.0:
        return low if abs(at_low) < abs(at_high) else high
    before, middle, kept = high, low, 0
    while abs(middle - before) > tolerance:
        before, middle = middle, (low * at_high - high * at_low) / (at_high - at_low)
        value = function(middle)
        if value * at_high > 0.0:
            high, at_high = middle, value
            at_low, kept = (0.5 * at_low, 1) if kept == 1 else (at_low, 1)
        else:
            low, at_low = middle, value
            at_high, kept = (0.5 * at_high, -1) if kept == -1 else (at_high, -1)
    return middle
