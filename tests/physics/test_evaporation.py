"""Drying from open water: against the correlation's own table, tables of open tanks and baths, and by its laws."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.evaporation import evaporation_flux
from cookstove_gui.physics.water import heat_of_vaporisation
from cookstove_gui.units import kelvin
from tests.physics.laws import law
from tests.reference import check

BTU = 3.154591  # W/m2 in a Btu/(ft2 h)
GALLON = 3.785412 * 0.97 / 0.09290304 / 3600.0  # kg/(m2 s) in a gal/(ft2 h) of hot water


def vapour_heat(fahrenheit: float) -> float:
    return float(heat_of_vaporisation(kelvin(fahrenheit, "F")))


def test_a_pool_dries_as_the_published_table_says() -> None:
    """Row "p.drying-pool" of tests/reference."""
    hourly = evaporation_flux(301.15, 301.15, 0.5) / float(heat_of_vaporisation(301.15)) * 3600.0
    assert hourly == pytest.approx(check("p.drying-pool").value, rel=0.005)


SPREAD = 1.35  # factor either way: more than the correlation's mean deviation of 18 %, for tables are rough too
SAID = [
    *(("p.drying-tanks", place, warm, 60.0, 0.5, BTU) for place, warm in enumerate(range(110, 211, 20))),
    ("p.drying-plating", None, 180.0, 75.0, 0.75, GALLON * vapour_heat(180.0)),
    *(
        ("p.drying-still-tanks", place, warm, 70.0, 0.5, GALLON * vapour_heat(warm))
        for place, warm in enumerate((110.0, 150.0, 190.0))
    ),
    ("p.drying-60", None, 140.0, 68.0, 0.5, 1.0),
]


@pytest.mark.parametrize(("row", "place", "water", "room", "humidity", "unit"), SAID)
def test_drying_is_within_the_spread_of_what_sources_say(row, place, water, room, humidity, unit) -> None:  # type: ignore[no-untyped-def]
    """Rows "p.drying-tanks", "p.drying-plating", "p.drying-still-tanks" and "p.drying-60" of tests/reference."""
    said = check(row).value if place is None else check(row).value[place]
    found = evaporation_flux(kelvin(water, "F"), kelvin(room, "F"), humidity)
    assert 1 / SPREAD < found / (said * unit) < SPREAD


@law
@given(st.floats(290.0, 372.0), st.floats(0.1, 1.0), st.floats(0.0, 0.9))
def test_warmer_water_and_drier_air_dry_more(water: float, warmer: float, humidity: float) -> None:
    here = evaporation_flux(water, 288.15, humidity)
    assert evaporation_flux(water + warmer, 288.15, humidity) > here
    assert evaporation_flux(water, 288.15, humidity + 0.1) < here


def test_vapour_condenses_on_cold_water() -> None:
    assert evaporation_flux(278.15, 300.15, 0.8) < 0.0


def test_water_as_warm_as_the_room_still_dries_by_draughts() -> None:
    """A cold pool in a hot, dry room: nothing lifts its vapour."""
    assert evaporation_flux(285.0, 315.0, 0.05) > 0.0


def test_thin_air_dries_more() -> None:
    assert evaporation_flux(350.0, 293.15, 0.4, 80_000.0) > evaporation_flux(350.0, 293.15, 0.4)


def test_many_at_once_and_what_is_out_of_range() -> None:
    assert np.shape(evaporation_flux(np.array([300.0, 350.0]), 293.15, 0.4)) == (2,)
    with pytest.raises(ValueError, match="humidity"):
        evaporation_flux(300.0, 293.15, 40.0)
