"""What the catalogue calls good never points to harm: food kept hot, meat roasted hot enough, dough that lives."""

import math
from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.cooking.baking.catalogue import MEAT, bakes
from cookstove_gui.cooking.fit.fit import fits
from cookstove_gui.cooking.fit.tasks import Task, catalogue, task_of
from cookstove_gui.cooking.pans.catalogue import Pan, PanOfWater, pans, usual_contact
from cookstove_gui.cooking.safety.food_safety import holding_limits
from cookstove_gui.cooking.safety.moment import limit
from cookstove_gui.physics.boiling import spot_to_hold
from tests.cooking.made import STOVE, fahrenheit, projection

TIMES = 37
_POOR_CONTACT = -1.2816  # standard deviations: one contact in ten is poorer


def task(key: str) -> Task:
    found = task_of(key)
    assert found is not None
    return found


def chance(key: str, oven: float, for_a_while: float | None = None) -> float:
    """Chance of a task now in an oven of so many °F, which is at another heat from 20 to 30 minutes on."""
    heats = np.full(TIMES, oven)
    if for_a_while is not None:
        heats[4:7] = for_a_while
    (found,) = fits(projection({"oven_centre": heats}), STOVE, (task(key),))
    return found.spots[0].chance_now


@pytest.mark.parametrize("pan", pans(), ids=lambda pan: pan.key)
def test_the_coolest_spot_of_keep_warm_holds_food_at_the_limit(pan: Pan) -> None:
    """Row "9.11-spot" of tests/reference."""
    food = PanOfWater(replace(pan, lid=True), 1.5, 288.15)
    usual = usual_contact(pan)
    contact = usual.median * math.exp(_POOR_CONTACT * usual.log_sd)
    needed = float(spot_to_hold(food.physical(contact), holding_limits().hot_at_least, food.kitchen))
    never_below = task("keep_warm").never_below
    assert never_below is not None
    assert needed <= never_below < task("keep_warm").low


def test_without_a_lid_that_would_not_hold_so_the_lid_and_the_probe_are_named() -> None:
    needed = []
    for pan in pans():
        food, usual = PanOfWater(pan, 1.5, 288.15), usual_contact(pan)
        contact = usual.median * math.exp(_POOR_CONTACT * usual.log_sd)
        needed.append(float(spot_to_hold(food.physical(contact), holding_limits().hot_at_least, food.kitchen)))
    assert max(needed) > task("keep_warm").low
    assert "lid" in task("keep_warm").name
    assert "probe" in task("keep_warm").name


@pytest.mark.parametrize("key", ["roast_meat", "slow_roast"])
def test_no_meat_is_roasted_in_an_oven_below_325(key: str) -> None:
    assert task(key).low == pytest.approx(fahrenheit(325))
    assert chance(key, 335) == 1.0
    assert chance(key, 320) == 0.0
    assert chance(key, 335, for_a_while=305) == 1.0
    assert chance(key, 335, for_a_while=295) == 0.0


@pytest.mark.parametrize(("peak", "good"), [(114.0, 1.0), (116.0, 0.0), (130.0, 0.0)])
def test_dough_is_never_shown_an_oven_past_its_limit(peak: float, good: float) -> None:
    """Row "9.14-dough-fit" of tests/reference."""
    assert chance("raise_dough", 90, for_a_while=peak) == good


@pytest.mark.parametrize("wanted", catalogue(), ids=lambda one: one.key)
def test_no_task_wants_a_cooktop_that_is_called_too_hot(wanted: Task) -> None:
    if wanted.place.value == "top":
        assert wanted.high <= limit("top_over_fired") + 1e-9


@pytest.mark.parametrize("key", ["boil", "wash_water"])
def test_water_is_not_boiled_where_the_iron_is_over_fired_even_for_a_while(key: str) -> None:
    for peak, good in ((699.0, 1.0), (705.0, 0.0)):
        heats = np.full(TIMES, 650.0)
        heats[2:4] = peak
        (found,) = fits(projection({"top_back_left": heats}), STOVE, (task(key),))
        assert found.spots[0].chance_now == good


def test_no_meat_is_roasted_below_325_degrees() -> None:
    """The government's roasting charts set the oven no lower than 325 °F (foodsafety.gov, meat and poultry; memory)."""
    roasts = {bake.task for bake in bakes() if bake.safety in MEAT}
    assert roasts >= {"roast_meat"}
    for key in roasts | {"slow_roast"}:
        assert task(key).low >= fahrenheit(325.0) - 0.01, key
