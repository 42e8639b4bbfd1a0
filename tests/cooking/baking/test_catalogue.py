"""The bakes of the file: sizes, weights, safe cores, and the body each stands for."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.cooking.baking.catalogue import bake_of, bakes, body_of, done_temperature, mass_of
from cookstove_gui.cooking.baking.doneness import (
    steady_minutes,
)
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.safety.food_safety import safe_minimum
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.physics.water import boiling_temperature
from tests.cooking.made import fahrenheit

LOAF = bake_of("bread_loaf")


@pytest.mark.parametrize("bake", bakes(), ids=lambda bake: bake.key)
def test_each_row_is_sound(bake) -> None:  # type: ignore[no-untyped-def]
    assert task_of(bake.task) is not None
    assert bake.start < bake.done < bake.past_best
    assert 0.02 < bake.sizes[0] <= bake.sizes[1] <= bake.sizes[2] < 0.5
    assert bake.vapour > 0.5
    if bake.safety:
        assert bake.done >= safe_minimum(bake.safety).temperature


def test_a_round_one_is_a_disc_of_its_sizes() -> None:
    round_loaf = bake_of("bread_round")
    assert round_loaf.is_round
    assert not LOAF.is_round
    assert mass_of(round_loaf) == pytest.approx(mass_of(replace(round_loaf, is_round=False)) * np.pi / 4)


def test_a_brick_of_dough_weighs_its_volume() -> None:
    # 0.10 by 0.11 by 0.22 m is 2.42 litres; white dough, 45 % water, is about 1.25 kg a litre without its gas, which
    # is 65 % of the loaf: about 1.06 kg
    assert mass_of(LOAF) == pytest.approx(1.06, rel=0.05)


def test_no_core_is_asked_to_pass_boiling_at_altitude() -> None:
    """Row "9.15" of tests/reference."""
    # reference 9.15: at 1500 m water boils at 94.98 °C, so the upper end cannot be reached
    boiling = float(boiling_temperature(float(standard_pressure(1500.0))))
    assert done_temperature(bake_of("potatoes"), boiling) == pytest.approx(94.983 + 273.15 - 1.0, abs=0.005)
    assert steady_minutes(bake_of("potatoes"), fahrenheit(400), float(standard_pressure(1500.0))) is not None


@pytest.mark.parametrize("altitude", [0.0, 1500.0, 3000.0])
def test_a_safe_minimum_is_never_undercut(altitude: float) -> None:
    boiling = float(boiling_temperature(float(standard_pressure(altitude))))
    for bake in bakes():
        if bake.safety:
            assert done_temperature(bake, boiling) >= safe_minimum(bake.safety).temperature


def test_what_is_not_done_near_boiling_is_done_at_the_same_core_at_any_height() -> None:
    for altitude in (0.0, 3000.0):
        boiling = float(boiling_temperature(float(standard_pressure(altitude))))
        assert done_temperature(bake_of("beef_roast"), boiling) == pytest.approx(fahrenheit(150))


def test_the_body_has_the_loafs_water_and_a_dimension_between_slab_and_ball() -> None:
    body = body_of(LOAF)
    assert 1.5 < body.dimension < 3.0
    assert body.half_thickness == pytest.approx(0.05, rel=0.3)
    assert body.water < 500


def test_an_unknown_bake_lists_the_known_ones() -> None:
    with pytest.raises(InputProblem, match="bread_loaf"):
        bake_of("dragon pie")
