"""Drying from open water: between the tables of open tanks and theory, and by its laws."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.evaporation import evaporation_flux
from tests.physics.laws import law
from tests.reference import check

SPREAD = 1.35  # factor either way, as evaporation_flux states it


@pytest.mark.parametrize("row", ["p.drying-60", "p.drying-88-tank", "p.drying-88-theory"])
def test_drying_is_within_the_spread_of_what_sources_say(row: str) -> None:
    """Rows "p.drying-60", "p.drying-88-tank" and "p.drying-88-theory" of tests/reference."""
    water = {"60": 333.15, "88": 360.93}[row.split("-")[1]]
    found = evaporation_flux(water, 293.15, 0.5)
    assert 1 / SPREAD**1.6 < found / check(row).value < SPREAD**1.6


@law
@given(st.floats(290.0, 365.0), st.floats(0.1, 5.0), st.floats(0.0, 0.9))
def test_warmer_water_and_drier_air_dry_more(water: float, warmer: float, humidity: float) -> None:
    here = evaporation_flux(water, 288.15, humidity)
    assert evaporation_flux(water + warmer, 288.15, humidity) > here
    assert evaporation_flux(water, 288.15, humidity + 0.1) < here


def test_vapour_condenses_on_cold_water() -> None:
    assert evaporation_flux(278.15, 300.15, 0.8) < 0.0


def test_thin_air_dries_more() -> None:
    assert evaporation_flux(350.0, 293.15, 0.4, 80_000.0) > evaporation_flux(350.0, 293.15, 0.4)


def test_many_at_once_and_what_is_out_of_range() -> None:
    assert np.shape(evaporation_flux(np.array([300.0, 350.0]), 293.15, 0.4)) == (2,)
    with pytest.raises(ValueError, match="humidity"):
        evaporation_flux(300.0, 293.15, 40.0)
