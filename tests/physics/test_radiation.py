"""Radiation among surfaces: view factors obey their laws, and what one loses the others gain."""

import numpy as np
import pytest
from ht import q_rad
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.radiation import (
    enclosure_exchange,
    panel_and_wall,
    parallel_plates_flux,
    radiation_coefficient,
    small_body_flux,
    view_factor_parallel_rectangles,
    view_factor_perpendicular_rectangles,
)
from tests.physics.laws import emissivities, law, room_temperatures, stove_temperatures
from tests.reference import check, si

lengths = st.floats(0.1, 3.0)


def test_faces_of_a_cube_sum_to_one() -> None:
    """Row "7.7"."""
    opposite = view_factor_parallel_rectangles(1.0, 1.0, 1.0)
    beside = view_factor_perpendicular_rectangles(1.0, 1.0, 1.0)
    assert opposite + 4 * beside == pytest.approx(1.0, abs=1e-12)


@law
@given(lengths, lengths, lengths)
def test_faces_of_any_box_sum_to_one(width: float, height: float, gap: float) -> None:
    seen = view_factor_parallel_rectangles(width, height, gap)
    seen += 2 * view_factor_perpendicular_rectangles(height, gap, width)
    seen += 2 * view_factor_perpendicular_rectangles(width, gap, height)
    assert seen == pytest.approx(1.0, abs=1e-9)


@law
@given(lengths, lengths, lengths)
def test_what_one_sees_of_the_other_is_returned(depth: float, other: float, edge: float) -> None:
    there = depth * view_factor_perpendicular_rectangles(depth, other, edge)
    back = other * view_factor_perpendicular_rectangles(other, depth, edge)
    assert there == pytest.approx(back, rel=1e-9)


@law
@given(lengths, lengths, lengths)
def test_nearer_sees_more(width: float, height: float, gap: float) -> None:
    nearer = view_factor_parallel_rectangles(width, height, 0.9 * gap)
    assert 0.0 < view_factor_parallel_rectangles(width, height, gap) < nearer < 1.0


def test_view_factor_is_the_double_integral() -> None:
    """Midpoint rule over both rectangles, written out here."""
    places = (np.arange(24) + 0.5) / 24
    width, height, gap = 0.6, 0.7, 0.9
    x1, y1, x2, y2 = np.meshgrid(places * width, places * height, places * width, places * height, indexing="ij")
    square = (x1 - x2) ** 2 + (y1 - y2) ** 2 + gap**2
    cell = (width / 24) * (height / 24)
    factor = (gap**2 / (np.pi * square**2)).sum() * cell * cell / (width * height)
    assert view_factor_parallel_rectangles(width, height, gap) == pytest.approx(factor, rel=5e-4)


@law
@given(emissivities, stove_temperatures, room_temperatures)
def test_small_body_agrees_with_ht(emissivity: float, surface: float, room: float) -> None:
    assert small_body_flux(emissivity, surface, room) == pytest.approx(q_rad(emissivity, surface, room), rel=1e-5)


@law
@given(emissivities, stove_temperatures, room_temperatures)
def test_coefficient_times_difference_is_the_flux(emissivity: float, surface: float, room: float) -> None:
    carried = radiation_coefficient(emissivity, surface, room) * (surface - room)
    assert carried == pytest.approx(small_body_flux(emissivity, surface, room), rel=1e-9, abs=1e-9)


def test_irradiance_on_the_wall_patch() -> None:
    row = check("7.11-wall")
    exchange = panel_and_wall(**{name: si(value) for name, value in row.inputs.items()})
    assert exchange.irradiance[1] == pytest.approx(row.expected(), abs=row.tolerance)


@law
@given(lengths, lengths, lengths, st.floats(300.0, 700.0), st.floats(280.0, 400.0))
def test_no_heat_is_lost_among_three(width: float, height: float, gap: float, panel: float, wall: float) -> None:
    heat = panel_and_wall(width, height, gap, panel, wall, 293.15).heat
    assert heat.sum() == pytest.approx(0.0, abs=1e-6 * np.abs(heat).max())


def test_limits_of_the_gap() -> None:
    """Row "7.12"."""
    near = panel_and_wall(1.0, 1.0, 1e-3, 473.15, 313.15, 293.15)
    assert near.heat[0] == pytest.approx(parallel_plates_flux(473.15, 313.15, 0.9, 0.9), rel=0.01)
    far = panel_and_wall(1.0, 1.0, 300.0, 473.15, 313.15, 293.15)
    assert far.heat[0] == pytest.approx(small_body_flux(0.9, 473.15, 293.15), rel=1e-3)


def test_equal_temperatures_exchange_nothing() -> None:
    np.testing.assert_allclose(panel_and_wall(0.6, 0.7, 0.3, 293.15, 293.15, 293.15).heat, 0.0, atol=1e-6)


@pytest.mark.parametrize(
    ("call", "named"),
    [(lambda: view_factor_parallel_rectangles(0.0, 1.0, 1.0), "width"),
     (lambda: view_factor_perpendicular_rectangles(1.0, 1.0, -1.0), "width"),
     (lambda: small_body_flux(1.2, 400.0, 293.0), "emissivity"),
     (lambda: parallel_plates_flux(400.0, 300.0, 0.0, 0.9), "emissivity_hot"),
     (lambda: enclosure_exchange([[0.0, 0.5], [0.5, 0.5]], [1.0, 1.0], [0.9, 0.9], [400.0, 300.0]), "view_factors")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(call, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        call()
