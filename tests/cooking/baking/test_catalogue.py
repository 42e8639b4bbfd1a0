"""The bakes of the file: shapes, weights, safe cores, and how done moves with height."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.cooking.baking.bodies import body_of, step_of
from cookstove_gui.cooking.baking.catalogue import bake_of, bakes, done_temperature, longer_setting, mass_of
from cookstove_gui.cooking.baking.doneness import steady_minutes
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.safety.food_safety import safe_minimum
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.physics.water import boiling_temperature
from tests.cooking.made import fahrenheit

LOAF = bake_of("bread_loaf")


def boiling_at(altitude: float) -> float:
    return float(boiling_temperature(float(standard_pressure(altitude))))


@pytest.mark.parametrize("bake", bakes(), ids=lambda bake: bake.key)
def test_each_row_is_sound(bake) -> None:  # type: ignore[no-untyped-def]
    assert task_of(bake.task) is not None
    assert bake.start < bake.done < bake.past_best
    assert 0.02 < bake.sizes[0] <= bake.sizes[1] <= bake.sizes[2] < 0.5
    assert 0.5 < bake.conduction < 2.0
    assert 0.0 < bake.openness <= 1.0
    if bake.form == "disc":
        assert bake.sizes[1] in (bake.sizes[0], bake.sizes[2])
    if bake.safety:
        assert bake.done >= safe_minimum(bake.safety).temperature


def test_shapes_weigh_their_share_of_a_brick() -> None:
    """A disc pi / 4 of the brick round it, an ellipsoid pi / 6: a potato 11 cm long is not half a kilogram."""
    brick = mass_of(replace(bake_of("potatoes"), form="brick"))
    assert mass_of(replace(bake_of("potatoes"), form="disc")) == pytest.approx(brick * np.pi / 4)
    assert mass_of(bake_of("potatoes")) == pytest.approx(brick * np.pi / 6)
    assert mass_of(replace(bake_of("potatoes"), sizes=(0.062, 0.065, 0.11))) == pytest.approx(0.25, rel=0.02)


def test_a_brick_of_dough_weighs_its_volume() -> None:
    # 0.10 by 0.11 by 0.21 m is 2.31 litres; white dough, 45 % water, is about 1.25 kg a litre without its gas, which
    # is 62 % of the loaf: about 1.10 kg
    assert mass_of(LOAF) == pytest.approx(1.10, rel=0.05)


def test_bones_weigh_and_do_not_cook() -> None:
    rib = bake_of("rib_roast")
    boned = replace(rib, bone=0.0)
    assert mass_of(boned) == pytest.approx(mass_of(rib) * (1 - rib.bone))
    assert steady_minutes(boned, fahrenheit(325)) == steady_minutes(rib, fahrenheit(325))


def test_what_is_done_near_boiling_keeps_its_distance_from_it_at_any_height() -> None:
    """Row "9.15" of tests/reference: at 1500 m water boils at 94.98 °C, so a core of 200 °F cannot be reached."""
    sea = boiling_at(0.0) - done_temperature(LOAF, boiling_at(0.0))
    assert sea == pytest.approx((211.953 - 200.0) / 1.8, abs=0.02)
    for altitude in (1500.0, 3000.0):
        boiling = boiling_at(altitude)
        assert boiling - done_temperature(LOAF, boiling) == pytest.approx(sea)
        assert longer_setting(LOAF, boiling) > 0.0
    assert longer_setting(LOAF, boiling_at(0.0)) == 0.0


def test_meat_is_done_at_the_same_core_at_any_height() -> None:
    for altitude in (0.0, 3000.0):
        assert done_temperature(bake_of("beef_roast"), boiling_at(altitude)) == pytest.approx(fahrenheit(145))
        assert longer_setting(bake_of("beef_roast"), boiling_at(altitude)) == 0.0


@pytest.mark.parametrize("altitude", [0.0, 1500.0, 3000.0])
def test_a_safe_minimum_is_never_undercut(altitude: float) -> None:
    for bake in bakes():
        if bake.safety:
            assert done_temperature(bake, boiling_at(altitude)) >= safe_minimum(bake.safety).temperature


def test_the_body_has_a_dimension_between_slab_and_ball() -> None:
    body = body_of(LOAF, STANDARD_PRESSURE)
    assert 1.5 < body.dimension < 3.0
    assert body.half_thickness == pytest.approx(0.05, rel=0.3)


def test_a_small_thing_is_followed_in_shorter_steps() -> None:
    assert step_of(bake_of("pork_chops")) < step_of(bake_of("bread_loaf")) <= 60.0


def test_an_unknown_bake_lists_the_known_ones() -> None:
    with pytest.raises(InputProblem, match="bread_loaf"):
        bake_of("dragon pie")
