"""The catalogue says what it says it says: a shipped table, guarded."""

import pytest

from cookstove_gui.cooking.fit.tasks import Place, catalogue, task_of, tasks_for
from cookstove_gui.stove.stove import Stove, TankPlace
from cookstove_gui.units import degrees
from tests.cooking.made import fahrenheit


def test_keys_and_names_are_unique() -> None:
    tasks = catalogue()
    assert len({task.key for task in tasks}) == len({task.name for task in tasks}) == len(tasks)


def test_both_places_are_well_filled() -> None:
    tasks = catalogue()
    assert sum(task.place is Place.TOP for task in tasks) >= 10
    assert sum(task.place is Place.OVEN for task in tasks) >= 14


@pytest.mark.parametrize("task", catalogue(), ids=lambda task: task.key)
def test_each_row_is_sound(task) -> None:  # type: ignore[no-untyped-def]
    hottest = fahrenheit(800 if task.place is Place.TOP else 700)
    assert fahrenheit(60) < task.low < task.high <= hottest
    assert 5 <= task.minutes <= 240
    assert 5 < task.evenness < 300
    assert task.source.strip()
    assert "common practice" in task.source or "Table" in task.source


# The American Woman's Cook Book, Table I (chestofbooks.com, looked up): white yeast loaf 400 falling to 375 °F, 60 min;
# biscuits 450-460 °F, 12-15 min; muffins 400-425; butter cake 350-375; fruit cake large 275, small 325;
# meringues 250-300.
@pytest.mark.parametrize(
    ("key", "low", "high"),
    [
        ("bread", 375, 400),
        ("biscuits", 450, 460),
        ("muffins", 400, 425),
        ("cake", 350, 375),
        ("fruit_cake", 275, 275),
        ("small_fruit_cake", 325, 325),
        ("meringue", 250, 300),
    ],
)
def test_bands_hold_the_published_baking_heats(key: str, low: float, high: float) -> None:
    """Row "9.5" of tests/reference."""
    task = task_of(key)
    assert task is not None
    assert degrees(task.low, "F") <= low <= high <= degrees(task.high, "F")


# Griddle surfaces, cooking pages, no standard: pancakes 350-375 °F, bacon 300-325, eggs 250-325, searing to 500.
@pytest.mark.parametrize(
    ("key", "somewhere_low", "somewhere_high"),
    [("griddle_cakes", 350, 375), ("fry_bacon", 300, 325), ("fry_eggs", 250, 325), ("sear", 430, 500)],
)
def test_bands_of_the_top_hold_the_usual_griddle_heats(key: str, somewhere_low: float, somewhere_high: float) -> None:
    """Row "9.19" of tests/reference."""
    task = task_of(key)
    assert task is not None
    assert degrees(task.low, "F") <= somewhere_low + 1e-9
    assert somewhere_high <= degrees(task.high, "F") + 1e-9


def test_only_plates_and_washing_water_are_not_food() -> None:
    assert {task.key for task in catalogue() if not task.is_food} == {"warm_plates", "wash_water", "reservoir"}


def test_an_unknown_key_has_no_task() -> None:
    assert task_of("roast a dragon") is None


def test_a_tanks_water_is_only_for_a_stove_that_has_one() -> None:
    bare, with_tank = Stove(name="Bare"), Stove(name="Tanked", water_tank=TankPlace.LEFT)
    assert {task.key for task in tasks_for(with_tank)} - {task.key for task in tasks_for(bare)} == {"reservoir"}
    assert not task_of("reservoir").goes_in
    assert task_of("raise_dough").goes_in
