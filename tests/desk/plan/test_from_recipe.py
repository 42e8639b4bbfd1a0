"""A recipe is read into lines with their notes; only confirmed lines make a dish, with what the cook typed in them."""

import json
from pathlib import Path

import pytest

from cookstove_gui.cooking.supper.dishes import Heat, Wait
from cookstove_gui.desk import Desk
from cookstove_gui.desk.plan.from_recipe import RecipeLine, Ticked, dish_confirmed, recipe_lines, recipes_in
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import degrees
from tests.cooking.supper.test_recipe_draft import LOAF


def ticked(line: RecipeLine, minutes: str | None = None, heat: str | None = None) -> Ticked:
    return Ticked(
        part=line.part,
        minutes=line.minutes if minutes is None else minutes,
        heat=line.heat if heat is None else heat,
    )


def fahrenheit(part: object) -> tuple[int, int]:
    assert isinstance(part, Heat)
    assert part.low is not None
    assert part.high is not None
    return round(degrees(part.low, "F")), round(degrees(part.high, "F"))


def test_each_line_stands_with_its_numbers_and_what_to_look_at(held_desk: Desk) -> None:
    rows = [(line.words, line.minutes, line.heat) for line in recipe_lines(held_desk, LOAF)]
    assert rows[2] == ("rise · wait", "75", "")
    assert rows[6] == ("bake · oven", "32", "350-400")
    notes = [line.note for line in recipe_lines(held_desk, LOAF)]
    assert "60 to 90 min" in notes[2]
    assert "said earlier" in notes[5]
    assert "core of 200 °F" in notes[6]


def test_heats_stand_in_the_unit_on_the_screen(held_desk: Desk) -> None:
    held_desk.set_unit("C")
    (line,) = recipe_lines(held_desk, "Bake one hour at 180 °C.")
    assert line.heat == "166-194"


def test_a_name_says_which_table_it_was_read_in_and_follows_the_chosen_one(held_desk: Desk) -> None:
    text = "Bake in a slow oven two hours."
    assert recipe_lines(held_desk, text)[0].heat == "250-350"
    held_desk.set_setting("band_table", "narrow")
    (line,) = recipe_lines(held_desk, text)
    assert line.heat == "300-325"
    assert "1976" in line.note


def test_only_what_was_confirmed_makes_the_dish_and_it_is_kept(held_desk: Desk) -> None:
    lines = recipe_lines(held_desk, LOAF)
    dish = dish_confirmed(held_desk, "Plain loaf", [ticked(lines[2], "1 h 20"), ticked(lines[5], "12", "hot")])
    assert [part.what for part in dish.parts] == ["rise", "bake"]
    rise, bake = dish.parts
    assert isinstance(rise, Wait)
    assert (rise.minutes, rise.shortest) == (80, 60)
    assert bake.minutes == 12
    assert fahrenheit(bake) == (400, 450)
    assert dish in held_desk.supper.dishes
    assert held_desk.supper.is_own(dish.key)


@pytest.mark.parametrize(
    ("minutes", "heat", "says"),
    [
        ("", "350-400", "no minutes"),
        ("soon", "350-400", "not how long"),
        ("20-30", "350-400", "not how long"),
        ("30", "", "no oven heat"),
        ("30", "warmish", "not an oven heat"),
    ],
)
def test_a_field_that_is_not_understood_is_explained_and_nothing_is_kept(
    held_desk: Desk, minutes: str, heat: str, says: str
) -> None:
    bake = recipe_lines(held_desk, LOAF)[5]
    before = held_desk.supper.dishes
    with pytest.raises(InputProblem) as caught:
        dish_confirmed(held_desk, "Loaf", [ticked(bake, minutes, heat)])
    assert says in caught.value.sentence
    assert held_desk.supper.dishes == before


def test_a_text_without_a_step_is_refused(held_desk: Desk) -> None:
    with pytest.raises(InputProblem):
        recipe_lines(held_desk, "A cake my neighbour liked.")


def test_files_of_the_vocabulary_and_plain_texts_are_opened(tmp_path: Path) -> None:
    recipe = {"@type": "Recipe", "name": "Plain cake", "recipeInstructions": ["Bake 1 hour at 350°F."]}
    (tmp_path / "cake.jsonld").write_text(json.dumps(recipe), "utf-8")
    (tmp_path / "my_bread.txt").write_text(LOAF, "utf-8")
    (cake,), (bread,) = recipes_in(tmp_path / "cake.jsonld"), recipes_in(tmp_path / "my_bread.txt")
    assert (cake.name, cake.steps) == ("Plain cake", ("Bake 1 hour at 350°F.",))
    assert (bread.name, bread.text) == ("my bread", LOAF)
    with pytest.raises(InputProblem):
        recipes_in(tmp_path / "none.txt")


RECIPE = json.dumps({"@type": "Recipe", "name": "Plain cake", "recipeInstructions": ["Bake 1 hour at 350°F."]})


@pytest.mark.parametrize("ending", [".json", ".JSONLD", ".html", ".htm", ".Html"])
def test_whatever_may_hold_the_vocabulary_is_read_for_it(tmp_path: Path, ending: str) -> None:
    page = f'<html><script type="application/ld+json">{RECIPE}</script><p>Bake it.</p></html>'
    (tmp_path / f"cake{ending}").write_text(page if "htm" in ending.lower() else RECIPE, "utf-8")
    (found,) = recipes_in(tmp_path / f"cake{ending}")
    assert (found.name, found.steps) == ("Plain cake", ("Bake 1 hour at 350°F.",))


def test_a_file_that_is_not_there_is_said_to_be_missing_and_a_folder_is_not(tmp_path: Path) -> None:
    with pytest.raises(InputProblem, match=r"none\.txt cannot be read: there is no such file\."):
        recipes_in(tmp_path / "none.txt")
    with pytest.raises(InputProblem, match="cannot be read") as caught:
        recipes_in(tmp_path)
    assert "no such file" not in caught.value.sentence


@pytest.mark.parametrize(
    ("text", "minutes"), [("Bake 2.5 minutes at 450°F.", "2.5"), ("Bake 5 to 8 minutes at 450°F.", "6")]
)
def test_minutes_below_five_keep_their_half(held_desk: Desk, text: str, minutes: str) -> None:
    assert recipe_lines(held_desk, text)[0].minutes == minutes


@pytest.mark.parametrize(
    ("typed", "minutes"), [("45", 45.0), (" 1 h 15 ", 75.0), ("1.5 hours", 90.0), ("168 hours", 10080.0)]
)
def test_a_length_may_be_typed_in_minutes_or_hours(held_desk: Desk, typed: str, minutes: float) -> None:
    bake = recipe_lines(held_desk, LOAF)[5]
    assert dish_confirmed(held_desk, "Loaf", [ticked(bake, typed)]).parts[0].minutes == minutes


@pytest.mark.parametrize("typed", ["169 hours", "10 min, turn, 20 min", "10 min and 20 min", "-", "0"])
def test_no_length_is_longer_than_a_week_or_two_at_once(held_desk: Desk, typed: str) -> None:
    bake = recipe_lines(held_desk, LOAF)[5]
    with pytest.raises(InputProblem, match="is not how long"):
        dish_confirmed(held_desk, "Loaf", [ticked(bake, typed)])


def test_a_heat_typed_is_in_the_unit_on_the_screen(held_desk: Desk) -> None:
    held_desk.set_unit("C")
    bake = recipe_lines(held_desk, LOAF)[5]
    (part,) = dish_confirmed(held_desk, "Loaf", [ticked(bake, "30", "200-220")]).parts
    assert fahrenheit(part) == (392, 428)
