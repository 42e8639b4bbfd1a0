"""The shipped tables of this subject: complete, in order, each row with its source, and usable by the functions."""

import numpy as np
import pytest

from cookstove_gui.desk.my_stove.describing import surfaces
from cookstove_gui.physics.burning import AIR_SHUT_SHARE, CHARRING_SOFTWOOD, burn_time
from cookstove_gui.physics.firewood import heating_value_net
from cookstove_gui.physics.foods import COMPONENTS, Composition, conductivity, density, specific_heat
from cookstove_gui.physics.infrared import surface_temperature
from cookstove_gui.resource_files import table
from cookstove_gui.stove.stove import stove_with_default_spots

SURFACES = table("surfaces.toml")["surface"]
FOODS = table("foods.toml")["food"]
WOODS = table("firewood.toml")["wood"]
BANDS = table("flue.toml")["band"]


def _named(rows: list[dict[str, object]]) -> object:
    return pytest.mark.parametrize("row", rows, ids=[str(row["name"]) for row in rows])


@_named(SURFACES)
def test_surface_has_a_range_and_a_source(row) -> None:  # type: ignore[no-untyped-def]
    low, usual, high = row["band"]
    assert 0 < low <= usual <= high <= 1
    assert 0 < row["total"] <= 1
    assert row["source"]
    assert row["verified"]
    assert row["shiny"] == (usual < 0.5)


@_named([row for row in SURFACES if not row["shiny"]])
def test_readings_of_dull_surfaces_can_be_mended(row) -> None:  # type: ignore[no-untyped-def]
    mended = np.asarray(surface_temperature(500.0, np.array(row["band"]), 0.95, 293.15))
    assert (np.diff(mended) <= 0).all()
    assert mended[0] - mended[-1] < 120.0


def test_every_surface_a_cooktop_may_have_is_in_the_table() -> None:
    names = {row["name"] for row in SURFACES}
    assert set(surfaces(stove_with_default_spots("any"))) <= names


@_named(FOODS)
def test_food_sums_to_one_and_has_properties(row) -> None:  # type: ignore[no-untyped-def]
    assert sum(row[name] for name in COMPONENTS) == pytest.approx(1.0, abs=1e-9)
    food = Composition(**{name: row[name] for name in COMPONENTS})
    low, usual, high = row["porosity"]
    assert 0 <= low <= usual <= high < 0.95
    assert 2000 < specific_heat(food, 333.15) < 4100
    assert 950 < density(food, 293.15) < 1400
    assert 0.05 < conductivity(food, 333.15, usual) < 0.65
    assert 120 < row["core"][0] < row["core"][1] <= 212
    assert row["source"]


def test_a_risen_loaf_is_as_light_as_bread() -> None:
    row = next(row for row in FOODS if row["name"] == "white bread dough")
    food = Composition(**{name: row[name] for name in COMPONENTS})
    assert 250 < density(food, 310.0, row["porosity"][1]) < 450


@_named(WOODS)
def test_wood_burns(row) -> None:  # type: ignore[no-untyped-def]
    low, usual, high = row["density_basic"]
    assert low < usual < high
    assert 17 <= row["heating_value"] <= 20
    assert 13e6 < heating_value_net(row["heating_value"] * 1e6, 20.0) < 16e6
    assert burn_time(0.08, 1.0, row["charring_rate"] / 60e3) > 0
    assert row["source"]


def test_charring_rate_of_softwood_is_the_functions() -> None:
    rates = {row["name"]: row["charring_rate"] / 60e3 for row in WOODS}
    assert rates["softwood"] == pytest.approx(CHARRING_SOFTWOOD)


@pytest.mark.parametrize("place", ["surface", "gas"])
def test_flue_bands_follow_one_another(place: str) -> None:
    bands = [row["range"] for row in BANDS if row["place"] == place]
    assert [band[0] for band in bands[1:]] == [band[1] for band in bands[:-1]]
    assert all(row["source"] for row in BANDS)


def test_touch_table_ends_with_who_decides() -> None:
    words = table("touch.toml")["words"]["decides"]
    assert "never a clearance" in words
    assert "licensed" in words
    assert all(row["thresholds"][-1] == table("touch.toml")["lasting_limit"] for row in table("touch.toml")["material"])


def test_a_shut_air_is_the_same_in_table_and_function() -> None:
    assert table("firewood.toml")["stove"]["air_shut_share"] == AIR_SHUT_SHARE
