"""An oven that changes, as a sum of small steps."""

import numpy as np
import pytest

from cookstove_gui.physics.conduction import temperature_ratio
from cookstove_gui.physics.superposition import superposed_temperature
from cookstove_gui.physics.warming import Body, Exposure, warm_through

TIME = np.arange(0.0, 7201.0, 10.0)


def test_one_step_is_the_step() -> None:
    ratio = np.exp(-TIME / 1500.0)
    answer = superposed_temperature(ratio, 290.0, np.full(TIME.size, 450.0))
    np.testing.assert_allclose(answer, 450.0 - 160.0 * ratio, atol=1e-9)


def test_a_steady_rise_is_followed_late_by_the_time_constant() -> None:
    ratio = np.exp(-TIME / 1500.0)
    answer = superposed_temperature(ratio, 290.0, 290.0 + 0.02 * TIME)
    exact = 290.0 + 0.02 * (TIME - 1500.0 * (1.0 - ratio))
    np.testing.assert_allclose(answer, exact, atol=1e-3)


def test_agrees_with_the_volumes_under_a_swinging_oven() -> None:
    oven = 450.0 + 30.0 * np.sin(TIME / 900.0)
    body = Body(half_thickness=0.05, dimension=3.0, conductivity=0.45, heat_capacity=0.45 / 1.4e-7)
    course = warm_through(body, Exposure(convection_coefficient=20.0), 290.0, oven, 10.0)
    fourier = 1.4e-7 * TIME / 0.05**2
    ratio = np.asarray(temperature_ratio("sphere", 20.0 * 0.05 / 0.45, fourier))
    np.testing.assert_allclose(superposed_temperature(ratio, 290.0, oven), course.core, atol=0.2)


def test_series_of_different_lengths_are_refused() -> None:
    with pytest.raises(ValueError, match="same length"):
        superposed_temperature(np.ones(3), 290.0, np.ones(4))
