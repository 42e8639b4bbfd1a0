"""Touching hot things: longer burns at less, metal sooner than wood, and nothing is ever called safe."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.touch import (
    contact_temperature,
    effusivity,
    share_of_rise_limit,
)
from cookstove_gui.resource_files import table
from tests.physics.laws import law

MATERIALS = {row["name"]: row for row in table("touch.toml")["material"]}


def _contact(name: str) -> float:
    row = MATERIALS[name]
    pull = effusivity(row["conductivity"], row["density"], row["specific_heat"])
    return float(contact_temperature(343.15, pull))


@pytest.mark.parametrize("place", range(5))
def test_metal_burns_sooner_than_stone_plastic_wood(place: int) -> None:
    """Row "8.9-order"."""
    names = ("bare metal", "glass, tile or stone", "plastic", "wood")
    order = [MATERIALS[name]["thresholds"][place] for name in names]
    assert order == sorted(order)
    felt = [_contact(name) for name in ("bare metal", "soapstone", "glass, tile or stone", "plastic", "wood")]
    assert felt == sorted(felt, reverse=True)


@pytest.mark.parametrize("name", MATERIALS)
def test_no_material_may_be_touched_for_hours_above_43(name: str) -> None:
    row = MATERIALS[name]
    assert row["contact_times"] == sorted(row["contact_times"])
    assert row["thresholds"] == sorted(row["thresholds"], reverse=True)
    assert row["thresholds"][-1] <= 43


@law
@given(st.floats(310.0, 600.0), st.floats(100.0, 20_000.0))
def test_skin_takes_a_heat_between_its_own_and_the_surfaces(surface: float, pull: float) -> None:
    assert 306.15 < contact_temperature(surface, pull) < surface


def test_rise_counts_from_the_room() -> None:
    assert share_of_rise_limit(343.15, 293.15, 50.0) == pytest.approx(1.0)
    assert share_of_rise_limit(293.15, 293.15, 65.0) == 0.0


@pytest.mark.parametrize(
    ("call", "named"),
    [(lambda: effusivity(0.0, 1.0, 1.0), "conductivity"),
     (lambda: contact_temperature(100.0, 1000.0), "temperature_surface"),
     (lambda: share_of_rise_limit(343.0, 293.0, 0.0), "rise_limit")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(call, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        call()
