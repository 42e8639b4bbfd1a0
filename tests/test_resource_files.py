"""The cook's own tables stand in for the program's, and what is wrong with them stops nothing."""

import pytest

from cookstove_gui.cooking.baking.catalogue import bake_of, bakes, foods
from cookstove_gui.cooking.fit.bands import band_from_text, minutes_of_bake
from cookstove_gui.cooking.fit.tasks import catalogue, task_of, usual_tasks
from cookstove_gui.cooking.own import own_sentences
from cookstove_gui.resource_files import own_words, use_own_tables
from cookstove_gui.units import kelvin

OWN_TASK = """
[[task]]
key = "render_lard"
name = "render lard"
place = "top"
band = [240, 300]
minutes = 90
evenness = 100
"""


@pytest.fixture
def place(tmp_path):
    use_own_tables(tmp_path)
    return tmp_path


def write(place, name: str, content: str) -> None:
    (place / name).write_text(content, encoding="utf-8")
    use_own_tables(place)


def test_a_task_of_the_cooks_own_comes_after_the_usual_ones(place):
    write(place, "tasks.toml", OWN_TASK)
    assert [task.key for task in catalogue()] == [*(task.key for task in usual_tasks()), "render_lard"]
    assert task_of("render_lard").high == pytest.approx(kelvin(300.0, "F"))
    assert own_sentences() == ()


def test_a_changed_task_stays_in_its_place_and_its_heat_is_that_of_its_band(place):
    changed = OWN_TASK.replace("render_lard", "bread").replace("render lard", "bread").replace('"top"', '"oven"')
    write(place, "tasks.toml", changed)
    assert [task.key for task in catalogue()] == [task.key for task in usual_tasks()]
    band = band_from_text("bread", "F")
    assert (band.low, band.high) == pytest.approx((kelvin(240.0, "F"), kelvin(300.0, "F")))
    assert minutes_of_bake(band) == 90.0


def test_without_its_file_all_is_as_before(place):
    write(place, "tasks.toml", OWN_TASK)
    use_own_tables(None)
    assert catalogue() == usual_tasks()


@pytest.mark.parametrize(
    ("content", "said"),
    [
        ("[[task]\nkey = 1", "isn't a TOML file that can be read"),
        ("task = 3", "write each row under [[task]]"),
        ("[[task]]\nname = 'x'", "a [[task]] has no key"),
        (OWN_TASK.replace("[240, 300]", "[300, 240]"), "isn't from a lower to a higher heat"),
        (OWN_TASK.replace("90", '"ninety"'), "minutes is a number"),
        (OWN_TASK.replace("minutes", "minuets"), "“minuets” is not known here"),
        (OWN_TASK.replace('"top"', '"grill"'), "its place is “top” or “oven”"),
        (OWN_TASK.replace('"render lard"', '""'), "give it a name"),
        (OWN_TASK.replace("minutes = 90", "minutes = 90\nnever_below = 250"), "never done below 250 °F"),
        (OWN_TASK.replace("minutes = 90", "minutes = 90\nnever_above = 250"), "never done above 250 °F"),
        (OWN_TASK.replace("render_lard", "bread"), "a usual task stays in its place"),
    ],
)
def test_a_bad_file_is_told_in_one_sentence_and_the_usual_tasks_are_all_there(place, content, said):
    write(place, "tasks.toml", content)
    assert catalogue() == usual_tasks()
    (sentence,) = own_sentences()
    assert said in sentence
    assert str(place / "tasks.toml") in sentence


def test_a_good_row_beside_a_bad_one_is_used(place):
    write(place, "tasks.toml", OWN_TASK.replace("[240, 300]", "[9, 8]").replace("render_lard", "bad") + OWN_TASK)
    assert task_of("render_lard") is not None
    assert task_of("bad") is None
    assert "“bad”" in own_sentences()[0]


def test_bytes_that_are_no_text_are_told(place):
    (place / "foods.toml").write_bytes(b"\xff\xfe\x00")
    use_own_tables(place)
    assert "isn't a TOML file" in own_sentences()[0]
    assert foods()


def test_no_meat_gets_a_cooler_oven_by_a_cooks_own_table(place):
    cooler = """
[[task]]
key = "roast_meat"
name = "roast meat"
place = "oven"
band = [225, 300]
minutes = 90
evenness = 100
"""
    write(place, "tasks.toml", cooler)
    assert task_of("roast_meat").low == pytest.approx(kelvin(325.0, "F"))
    assert "never done below 300 °F" in own_sentences()[0]


OWN_BAKE = """
[[bake]]
key = "chicken"
name = "whole chicken"
task = "roast_meat"
shape = "brick"
sizes = [0.07, 0.13, 0.19]
food = "pheasant"
crust = "skin"
done = [140, 150]
start = 40
"""
OWN_FOOD = """
[[food]]
name = "pheasant"
water = 0.70
protein = 0.24
fat = 0.05
ash = 0.01
core = [165, 180]
"""


def test_a_food_of_the_cooks_own_is_what_a_bake_is_made_of_and_its_safe_minimum_stays(place):
    write(place, "foods.toml", OWN_FOOD)
    write(place, "bakes.toml", OWN_BAKE)
    assert own_sentences() == ()
    assert bake_of("chicken").composition.protein == 0.24
    assert bake_of("chicken").safety == "poultry"


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (('"pheasant"', '"snipe"'), "“snipe” is not a known food"),
        (('"skin"', '"bark"'), "“bark” is not a known crust"),
        (('"roast_meat"', '"simmer"'), "“simmer” is no heat of the oven"),
        (("[0.07, 0.13, 0.19]", "[7, 13, 19]"), "its sides are 0.5 to 80 cm"),
        (("[0.07, 0.13, 0.19]", "[0.1]"), "write its three sizes"),
        (('"brick"', '"disc"'), "as wide one way as the other"),
        (('"roast_meat"', '"custard"'), "want an oven of 325 °F or more"),
        (('"brick"', '"star"'), "its shape is brick, disc, ellipsoid"),
        (("start = 40", "start = 400"), "start is 400"),
        (("start = 40", 'start = 40\nsafety = "snipe"'), ""),
    ],
)
def test_a_bake_that_cannot_be_is_told(place, change, said):
    write(place, "foods.toml", OWN_FOOD)
    usual = len(bakes())
    write(place, "bakes.toml", OWN_BAKE.replace(*change))
    assert len(bakes()) == usual
    if said:
        assert said in own_sentences()[0]


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (("0.70", "0.50"), "come to 80 % together"),
        (("0.70", "1.70"), "water is 1.7"),
        (("[165, 180]", "[180, 165]"), "isn't from a lower to a higher heat"),
        (("water = 0.70", "water = 0.0\ncarbohydrate = 0.70"), "it doesn't bake"),
    ],
)
def test_a_food_that_cannot_be_is_told(place, change, said):
    write(place, "foods.toml", OWN_FOOD.replace(*change))
    assert said in own_sentences()[0]
    assert "pheasant" not in [food.name for food in foods()]


def test_words_of_the_cooks_own_are_said_and_others_stay(place):
    write(place, "phrases.toml", '[bands.bread]\nready = "In they go."')
    assert own_words("bands", "bread", "ready") == "In they go."
    assert own_words("bands", "bread", "prepare") == "Shape the loaves."
    assert own_words("bands", "soup", "ready") == ""


def test_words_that_are_none_are_told_and_the_programs_are_said(place):
    write(place, "phrases.toml", "[bands.bread]\nready = 7")
    assert own_words("bands", "bread", "ready") == "Put the loaves in."
    assert "bands.bread.ready isn't words" in own_sentences()[0]
