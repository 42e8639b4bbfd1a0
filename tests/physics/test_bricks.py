"""Bricks and short cylinders: products of simple bodies, and the one-dimensional body that stands for a brick."""

import numpy as np
import pytest

from cookstove_gui.physics.bricks import EquivalentBody, equivalent_body, equivalent_ellipsoid, product_ratio
from cookstove_gui.physics.conduction import biot_number, fourier_number, temperature_ratio
from cookstove_gui.physics.volumes import Volumes
from cookstove_gui.physics.warming import Body, Exposure, warm_through
from tests.reference import check

CONDUCTIVITY, DIFFUSIVITY = 0.45, 1.4e-7


def test_short_cylinder_is_a_product() -> None:
    row = check("5.10")
    across = temperature_ratio("cylinder", 20 * 0.05 / 0.45, fourier_number(2700.0, 0.05, 1.4e-7))
    along = temperature_ratio("wall", 20 * 0.10 / 0.45, fourier_number(2700.0, 0.10, 1.4e-7))
    reached = 473.15 + (298.15 - 473.15) * product_ratio(across, along)
    assert reached == pytest.approx(row.expected(), abs=row.allowed())
    assert row.id == "5.10"


def _brick(*sides: float, coefficient: float = 20.0) -> EquivalentBody:
    return equivalent_body(tuple(("wall", side) for side in sides), coefficient, CONDUCTIVITY)


def test_a_wide_slab_stays_a_slab() -> None:
    slab = _brick(0.03, 0.4, 0.4)
    assert slab.dimension == pytest.approx(1.0, abs=0.02)
    assert slab.half_thickness == pytest.approx(0.03, rel=0.01)


def test_a_long_bar_is_nearly_a_cylinder_and_a_cube_nearly_a_sphere() -> None:
    assert _brick(0.05, 0.05, 0.5).dimension == pytest.approx(2.1, abs=0.15)
    assert _brick(0.05, 0.05, 0.05).dimension == pytest.approx(3.2, abs=0.2)


SHAPES = [
    (("wall", 0.05), ("wall", 0.06), ("wall", 0.12)),
    (("wall", 0.05), ("wall", 0.05), ("wall", 0.05)),
    (("wall", 0.03), ("wall", 0.10), ("wall", 0.15)),
    (("wall", 0.02), ("wall", 0.15), ("wall", 0.30)),
    (("wall", 0.04), ("cylinder", 0.12)),
    (("wall", 0.10), ("cylinder", 0.05)),
]


@pytest.mark.parametrize("simple", SHAPES, ids=lambda simple: "-".join(f"{shape}{half:g}" for shape, half in simple))
@pytest.mark.parametrize("coefficient", [8.0, 20.0, 100.0])
def test_middle_of_a_brick_by_one_dimension(simple, coefficient) -> None:  # type: ignore[no-untyped-def]
    found = equivalent_body(simple, coefficient, CONDUCTIVITY)
    body = Body(
        half_thickness=found.half_thickness,
        dimension=found.dimension,
        conductivity=CONDUCTIVITY,
        heat_capacity=CONDUCTIVITY / DIFFUSIVITY,
    )
    exposure = Exposure(convection_coefficient=coefficient)
    course = warm_through(body, exposure, 298.15, np.full(721, 473.15), 20.0)
    later = course.time[30:]
    ratios = [
        temperature_ratio(shape, biot_number(coefficient, half, CONDUCTIVITY), fourier_number(later, half, DIFFUSIVITY))
        for shape, half in simple
    ]
    ours = (course.core[30:] - 473.15) / (298.15 - 473.15)
    assert np.abs(ours - product_ratio(*ratios)).max() < 0.025


def test_what_is_no_body_is_refused() -> None:
    with pytest.raises(ValueError, match="ratios must be two or more"):
        product_ratio(0.5)
    with pytest.raises(ValueError, match="simple must name two"):
        equivalent_body((("wall", 0.05),), 20.0, 0.45)
    with pytest.raises(ValueError, match="heat_transfer_coefficient"):
        _brick(0.05, 0.06, 0.1, coefficient=0.0)
    with pytest.raises(ValueError, match="simple must be above 0"):
        _brick(0.05, 0.0, 0.1)


def _ellipsoid_left(axes: tuple[float, float, float], biot: float, times: np.ndarray, degree: int = 6) -> np.ndarray:
    """Share of a sudden change left in the middle of an ellipsoid (properties 1): Ritz-Galerkin on even polynomials."""
    a, b, c = axes
    powers = [(i, j, k) for i in range(degree + 1) for j in range(degree + 1 - i) for k in range(degree + 1 - i - j)]
    nodes, weights = np.polynomial.legendre.leggauss(18)
    up, round_ = 0.5 * (nodes + 1), (nodes + 1) * np.pi / 4  # one octant
    height, angle = np.meshgrid(up, round_, indexing="ij")
    solid = np.outer(0.5 * weights, np.pi / 4 * weights)
    on = np.stack([np.sqrt(1 - height**2) * np.cos(angle), np.sqrt(1 - height**2) * np.sin(angle), height])
    area = (a * b * c * np.sqrt(sum((part / axis) ** 2 for part, axis in zip(on, axes, strict=True))) * solid).ravel()
    inside = np.multiply.outer(up, on.reshape(3, -1)).transpose(1, 0, 2).reshape(3, -1)
    volume = a * b * c * np.multiply.outer(0.5 * weights * up**2, solid.ravel()).ravel()

    def terms(at: np.ndarray, along: int | None = None) -> np.ndarray:
        found = []
        for power in powers:
            product = np.ones(at.shape[1])
            for axis, (n, x) in enumerate(zip(power, at, strict=True)):
                product = product * (2 * n * x ** max(2 * n - 1, 0) / axes[axis] if axis == along else x ** (2 * n))
            found.append(product)
        return np.array(found)

    base, edge = terms(inside), terms(on.reshape(3, -1))
    mass = (base * volume) @ base.T
    stiff = biot * (edge * area) @ edge.T
    for axis in range(3):
        slope = terms(inside, axis)
        stiff += (slope * volume) @ slope.T
    values, vectors = np.linalg.eigh(mass)
    kept = values > 1e-12 * values.max()
    whiten = vectors[:, kept] / np.sqrt(values[kept])
    rates, modes = np.linalg.eigh(whiten.T @ stiff @ whiten)
    modes = whiten @ modes
    return np.exp(-np.multiply.outer(times, rates)) @ ((modes.T @ (base * volume).sum(axis=1)) * modes[0])


def test_the_ellipsoids_reference_is_the_series_for_a_ball() -> None:
    times = np.geomspace(1e-4, 0.01, 30)
    series = np.asarray(temperature_ratio("sphere", 30.0 * 0.03, times / 0.03**2))
    np.testing.assert_allclose(_ellipsoid_left((0.03, 0.03, 0.03), 30.0, times), series, atol=1e-5)


AXES, BIOTS = [(0.03, 0.03, 0.055), (0.05, 0.065, 0.10), (0.03, 0.06, 0.06)], [20.0, 50.0, 200.0]


@pytest.mark.parametrize(
    ("axes", "biot"),
    [
        pytest.param(axes, biot, marks=() if AXES.index(axes) == BIOTS.index(biot) else pytest.mark.slow)
        for axes in AXES
        for biot in BIOTS
    ],
)
def test_an_ellipsoid_warms_as_its_equivalent_body(axes: tuple[float, float, float], biot: float) -> None:
    """Row "b.ellipsoid": the time to a share of the change."""
    body = equivalent_ellipsoid(axes)
    volumes = Volumes(half_thickness=body.half_thickness, dimension=body.dimension, nodes=40)
    times = np.geomspace(1e-2, 15.0, 120) * axes[0] ** 2 * (1 + 1 / (biot * axes[0]))
    exact = _ellipsoid_left(axes, biot, times)
    found = np.array([volumes.left_in_the_middle(biot, float(time)) for time in times])
    for left in (0.8, 0.5, 0.25, 0.1):
        ours, theirs = (np.exp(np.interp(-left, -one, np.log(times))) for one in (found, exact))
        assert ours == pytest.approx(theirs, rel=check("b.ellipsoid").tolerance)
