"""Bodies of no simple shape: bricks and short cylinders from walls and cylinders."""

import numpy as np

from cookstove_gui.physics.eigenvalues import eigenvalues
from cookstove_gui.physics.quantities import Array, Quantity, finite, positive, quantity


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


def equivalent_dimension(
    half_thickness: float, half_width: float, half_length: float, heat_transfer_coefficient: float, conductivity: float
) -> float:
    """Dimension of the one-dimensional body that warms as a brick does, for `warming.Body`.

    Parameters
    ----------
    half_thickness : float
        Half the smallest side [m], above 0.
    half_width, half_length : float
        Halves of the other sides [m], at least half_thickness.
    heat_transfer_coefficient : float
        [W/(m2 K)], above 0.
    conductivity : float
        [W/(m K)], above 0.

    Returns
    -------
    float
        [-], 1 (wide slab) to 3.

    Raises
    ------
    ValueError
        If any argument is outside its range.

    Validity
    --------
    The slowest part of the change dies away at the brick's own rate, so its middle agrees with the product solution
    within 4 % of the change at Biot numbers to 30; the surface stands for the largest face.

    Notes
    -----
    In a body of dimension d the slowest root obeys zeta J(d/2)(zeta) / J(d/2 - 1)(zeta) = Bi, in a brick the squares
    of the three walls' roots add up: d is found by bisection so that both are the same.

    Source
    ------
    Carslaw and Jaeger (1959) for the roots; the matching is our own, held against the product solution in the tests
    (its idea: equivalent heat-transfer dimensionality, ASHRAE Handbook - Refrigeration, "Cooling and freezing times").
    """
    from scipy.special import jv

    sides = positive("half_thickness", [half_thickness, half_width, half_length])
    if sides.min() < sides[0]:
        raise ValueError("half_width and half_length must be at least half_thickness")
    biot = (
        positive("heat_transfer_coefficient", heat_transfer_coefficient)
        * sides
        / positive("conductivity", conductivity)
    )
    roots = eigenvalues("wall", biot, 1)[:, 0]
    root = float(np.sqrt(((roots * sides[0] / sides) ** 2).sum()))

    low, high = 1.0, 3.0
    for _ in range(50):
        middle = 0.5 * (low + high)
        # zeta J(d/2) - Bi J(d/2 - 1) is below zero as long as the root of dimension d lies above `root`
        below = root * jv(0.5 * middle, root) < biot[0] * jv(0.5 * middle - 1.0, root)
        low, high = (low, middle) if below else (middle, high)
    return 0.5 * (low + high)
