"""Radiation of a surface to its room."""

import pytest
from ht import q_rad
from hypothesis import given

from cookstove_gui.physics.radiation import (
    radiation_coefficient,
    small_body_flux,
)
from tests.physics.laws import emissivities, law, room_temperatures, stove_temperatures


@law
@given(emissivities, stove_temperatures, room_temperatures)
def test_small_body_agrees_with_ht(emissivity: float, surface: float, room: float) -> None:
    assert small_body_flux(emissivity, surface, room) == pytest.approx(q_rad(emissivity, surface, room), rel=1e-5)


@law
@given(emissivities, stove_temperatures, room_temperatures)
def test_coefficient_times_difference_is_the_flux(emissivity: float, surface: float, room: float) -> None:
    carried = radiation_coefficient(emissivity, surface, room) * (surface - room)
    assert carried == pytest.approx(small_body_flux(emissivity, surface, room), rel=1e-9, abs=1e-9)


def test_emissivity_beyond_one_is_refused() -> None:
    with pytest.raises(ValueError, match="emissivity"):
        small_body_flux(1.2, 400.0, 293.0)
