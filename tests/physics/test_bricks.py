"""Bricks and short cylinders: products of simple bodies, and the one-dimensional body that stands for a brick."""

import numpy as np
import pytest

from cookstove_gui.physics.bricks import EquivalentBody, equivalent_body, product_ratio
from cookstove_gui.physics.conduction import biot_number, fourier_number, temperature_ratio
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
