"""Control volumes: their step is the matrix exponential, their middle is the series', their volumes are the body's."""

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


def _rates(volumes: Volumes, conductivity: np.ndarray, capacity: np.ndarray, dimension: float) -> np.ndarray:
    """The same balance, written out place by place."""
    half, width = volumes.position[-1], volumes.position[1]
    rates = np.zeros((NODES, NODES))
    for place in range(NODES - 1):
        between = 2 * conductivity[place] * conductivity[place + 1] / (conductivity[place] + conductivity[place + 1])
        passed = between * (((place + 0.5) * width / half) ** (dimension - 1)) / width
        rates[place, place] -= passed / capacity[place]
        rates[place, place + 1] += passed / capacity[place]
        rates[place + 1, place + 1] -= passed / capacity[place + 1]
        rates[place + 1, place] += passed / capacity[place + 1]
    return rates


@pytest.mark.parametrize("dimension", [1.0, 2.0, 2.6, 3.0])
@pytest.mark.parametrize("time_step", [0.5, 60.0])
def test_step_is_the_matrix_exponential_of_scipy(dimension: float, time_step: float) -> None:
    volumes = Volumes(half_thickness=0.03, dimension=dimension, nodes=NODES)
    conductivity, heat_capacity = np.linspace(0.2, 0.6, NODES), np.linspace(1e6, 3e6, NODES)
    exact, answer, capacity = volumes.step(conductivity, heat_capacity, time_step)
    rates = _rates(volumes, conductivity, capacity, dimension)
    np.testing.assert_allclose(exact, expm(rates * time_step), atol=1e-9)
    with_flux = np.zeros((NODES + 1, NODES + 1))
    with_flux[:-1, :-1] = rates
    with_flux[NODES - 1, NODES] = 1 / capacity[-1]
    np.testing.assert_allclose(answer, expm(with_flux * time_step)[:-1, -1], rtol=1e-8, atol=1e-12)


@law
@given(st.floats(1.0, 3.5), st.floats(0.005, 0.2))
def test_volumes_fill_the_body(dimension: float, half: float) -> None:
    volumes = Volumes(half_thickness=half, dimension=dimension, nodes=NODES)
    assert volumes.volume.sum() == pytest.approx(half / dimension)


@law
@given(st.floats(1.0, 3.0), st.floats(0.01, 100.0))
def test_a_step_keeps_the_heat_and_an_even_body_even(dimension: float, time_step: float) -> None:
    volumes = Volumes(half_thickness=0.05, dimension=dimension, nodes=NODES)
    exact, answer, capacity = volumes.step(np.full(NODES, 0.4), np.full(NODES, 2e6), time_step)
    np.testing.assert_allclose(exact.sum(axis=1), 1.0, atol=1e-9)
    np.testing.assert_allclose(capacity @ exact, capacity, rtol=1e-8)
    assert capacity @ answer == pytest.approx(time_step, rel=1e-8)


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
