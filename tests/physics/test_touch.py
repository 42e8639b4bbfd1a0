"""Touching hot things: longer burns at less, metal sooner than wood, and nothing is ever called safe."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.touch import (
    LASTING_CONTACT_LIMIT,
    burn_threshold,
    contact_temperature,
    effusivity,
    share_of_rise_limit,
    skin_damage_temperature,
    skin_damage_time,
)
from cookstove_gui.resource_files import table
from tests.physics.laws import law

MATERIALS = {row["name"]: row for row in table("touch.toml")["material"]}


def _threshold(name: str, contact_time: float) -> float:
    row = MATERIALS[name]
    return float(burn_threshold(contact_time, row["contact_times"], np.array(row["thresholds"]) + 273.15))


def _contact(name: str) -> float:
    row = MATERIALS[name]
    pull = effusivity(row["conductivity"], row["density"], row["specific_heat"])
    return float(contact_temperature(343.15, pull))


@pytest.mark.parametrize("contact_time", [1.0, 4.0, 10.0, 30.0])
def test_metal_burns_sooner_than_stone_plastic_wood(contact_time: float) -> None:
    """Row "8.9-order"."""
    order = [_threshold(name, contact_time) for name in ("bare metal", "glass, tile or stone", "plastic", "wood")]
    assert order == sorted(order)
    assert order[0] < order[-1]
    felt = [_contact(name) for name in ("bare metal", "soapstone", "glass, tile or stone", "plastic", "wood")]
    assert felt == sorted(felt, reverse=True)


@pytest.mark.parametrize("name", MATERIALS)
def test_no_material_may_be_touched_for_hours_above_43(name: str) -> None:
    assert _threshold(name, 8 * 3600.0) <= LASTING_CONTACT_LIMIT + 1e-9


@law
@given(st.sampled_from(sorted(MATERIALS)), st.floats(1.0, 20_000.0), st.floats(1.0, 1.4))
def test_longer_burns_at_less(name: str, contact_time: float, longer: float) -> None:
    assert _threshold(name, contact_time * longer) <= _threshold(name, contact_time) + 1e-9


@law
@given(st.floats(1.0, 21_000.0), st.booleans())
def test_time_and_temperature_of_damage_belong_together(contact_time: float, full_depth: bool) -> None:
    skin = skin_damage_temperature(contact_time, full_depth)
    assert skin_damage_time(skin, full_depth) == pytest.approx(contact_time, rel=1e-4) or contact_time < 1.001


@law
@given(st.floats(1.0, 20_000.0))
def test_first_damage_comes_before_full(contact_time: float) -> None:
    assert skin_damage_temperature(contact_time, full_depth=False) < skin_damage_temperature(contact_time)


def test_ends_of_the_damage_curve() -> None:
    assert skin_damage_time(360.0) == 0.0
    assert np.isinf(skin_damage_time(312.0))


@law
@given(st.floats(310.0, 600.0), st.floats(100.0, 20_000.0))
def test_skin_takes_a_heat_between_its_own_and_the_surfaces(surface: float, pull: float) -> None:
    assert 306.15 < contact_temperature(surface, pull) < surface


def test_rise_counts_from_the_room() -> None:
    assert share_of_rise_limit(343.15, 293.15, 50.0) == pytest.approx(1.0)
    assert share_of_rise_limit(293.15, 293.15, 65.0) == 0.0


@pytest.mark.parametrize(
    ("call", "named"),
    [(lambda: _threshold("wood", 0.1), "contact_time"),
     (lambda: burn_threshold(2.0, [1.0, 1.0], [340.0, 330.0]), "contact_times must rise"),
     (lambda: burn_threshold(2.0, [1.0, 5.0], [330.0, 340.0]), "thresholds must not rise"),
     (lambda: skin_damage_temperature(0.5), "contact_time"), (lambda: effusivity(0.0, 1.0, 1.0), "conductivity"),
     (lambda: contact_temperature(100.0, 1000.0), "temperature_surface"),
     (lambda: share_of_rise_limit(343.0, 293.0, 0.0), "rise_limit")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(call, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        call()
