"""Roots of the characteristic equations: each one found, in its interval, for any Biot number."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import j0, j1

from cookstove_gui.physics.eigenvalues import coefficients, eigenvalues, mean_profile, profile
from tests.physics.laws import biots, law, shapes


@law
@given(biots, st.integers(1, 60))
def test_roots_solve_their_equations(biot: float, terms: int) -> None:
    wall, cylinder, sphere = (eigenvalues(shape, biot, terms) for shape in ("wall", "cylinder", "sphere"))
    scale = biot + wall
    np.testing.assert_allclose((wall * np.sin(wall) - biot * np.cos(wall)) / scale, 0.0, atol=1e-11)
    np.testing.assert_allclose((cylinder * j1(cylinder) - biot * j0(cylinder)) / scale, 0.0, atol=1e-11)
    np.testing.assert_allclose(((1 - biot) * np.sin(sphere) - sphere * np.cos(sphere)) / scale, 0.0, atol=1e-11)


@law
@given(shapes, biots)
def test_roots_rise_by_about_pi(shape, biot) -> None:  # type: ignore[no-untyped-def]
    steps = np.diff(eigenvalues(shape, biot, 30))
    assert (np.abs(steps - np.pi) < 0.75).all()


@law
@given(shapes, biots)
def test_terms_sum_to_the_even_start(shape, biot) -> None:  # type: ignore[no-untyped-def]
    roots = eigenvalues(shape, biot, 1000)
    assert (coefficients(shape, roots) * mean_profile(shape, roots)).sum() == pytest.approx(1.0, abs=5e-3)


def test_profiles_are_one_in_the_middle() -> None:
    for shape in ("wall", "cylinder", "sphere"):
        assert profile(shape, np.array([0.0])) == pytest.approx(1.0)


def test_many_biot_numbers_at_once() -> None:
    assert eigenvalues("wall", np.array([[0.1], [1.0]]), 5).shape == (2, 1, 5)


@pytest.mark.parametrize("biot", [0.0, -1.0, np.nan])
def test_biot_number_must_be_positive(biot: float) -> None:
    with pytest.raises(ValueError, match="biot must be above 0"):
        eigenvalues("wall", biot, 3)


def test_other_shapes_and_no_terms_are_refused() -> None:
    with pytest.raises(ValueError, match="shape must be"):
        eigenvalues("loaf", 1.0, 3)  # type: ignore[arg-type]
    with pytest.raises(ValueError, match="terms must be"):
        eigenvalues("wall", 1.0, 0)
