"""Control volumes: their exponential is scipy's, their middle is the series', their volumes are the body's."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.linalg import expm

from cookstove_gui.physics.conduction import temperature_ratio
from cookstove_gui.physics.volumes import Volumes, _exponential
from tests.physics.laws import law
from tests.reference import check

NODES = 25


@pytest.mark.parametrize("time", [0.5, 60.0])
def test_exponential_is_that_of_scipy(time: float) -> None:
    rates = np.random.default_rng(1).normal(size=(NODES, NODES)) / 40.0
    np.testing.assert_allclose(_exponential(rates * time), expm(rates * time), rtol=1e-8, atol=1e-9)


@law
@given(st.floats(1.0, 3.5), st.floats(0.005, 0.2))
def test_volumes_fill_the_body(dimension: float, half: float) -> None:
    volumes = Volumes(half_thickness=half, dimension=dimension, nodes=NODES)
    assert volumes.volume.sum() == pytest.approx(half / dimension)


def test_many_bodies_are_each_as_alone() -> None:
    many = Volumes(half_thickness=np.array([0.02, 0.05]), dimension=np.array([1.0, 2.6]), nodes=NODES)
    alone = Volumes(half_thickness=0.05, dimension=2.6, nodes=NODES)
    np.testing.assert_allclose(many.volume[1], alone.volume)
    np.testing.assert_allclose(many.spread[1], alone.spread)


@pytest.mark.parametrize(("shape", "dimension"), [("wall", 1.0), ("cylinder", 2.0), ("sphere", 3.0)])
def test_middle_is_that_of_the_series(shape, dimension) -> None:  # type: ignore[no-untyped-def]
    volumes = Volumes(half_thickness=0.05, dimension=dimension, nodes=80)
    for biot in (0.5, 5.0, 50.0):
        for fourier in (0.05, 0.2, 0.6):
            left = volumes.left_in_the_middle(biot / 0.05, fourier * 0.05**2)
            assert left == pytest.approx(temperature_ratio(shape, biot, fourier), abs=2e-3)


def test_exponential_runs_two_coupled_nodes() -> None:
    row = check("4.5b")
    rates = np.array([[-1 / 20 - 1 / 60, 1 / 20, 3 + 20 / 60], [1 / 80, -1 / 80 - 1 / 90, 20 / 90], [0.0, 0.0, 0.0]])
    course = [(_exponential(rates * minutes) @ [20.0, 20.0, 1.0])[:2] for minutes in (5.0, 15.0, 30.0, 60.0)]
    np.testing.assert_allclose(course, row.expected(), atol=row.tolerance)
