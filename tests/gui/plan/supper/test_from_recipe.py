"""Pasted or opened, a recipe is shown line by line; nothing is kept that the cook did not confirm."""

import json
from pathlib import Path

import pytest
from PySide6.QtWidgets import QLineEdit, QPlainTextEdit, QPushButton
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.plan.supper.from_recipe import FromRecipe
from tests.cooking.supper.test_recipe_draft import LOAF
from tests.gui.hands import control, push, type_in, words


@pytest.fixture
def pane(desk: Desk, qtbot: QtBot) -> FromRecipe:
    made = FromRecipe(desk)
    made.resize(1248, 610)
    qtbot.addWidget(made)
    made.show()
    made.open()
    return made


def paste(pane: FromRecipe, text: str) -> None:
    control(pane, "recipe_text", QPlainTextEdit).setPlainText(text)
    push(pane, "recipe_read")


def test_at_first_nothing_is_confirmed_and_nothing_can_be_kept(pane: FromRecipe) -> None:
    paste(pane, LOAF)
    assert not control(pane, "recipe_tick_0", QPushButton).isChecked()
    assert not control(pane, "recipe_keep", QPushButton).isEnabled()
    assert "left out" in words(pane, "recipe_confirmed")


def test_confirmed_lines_become_a_dish_of_the_cooks_own(pane: FromRecipe, desk: Desk, qtbot: QtBot) -> None:
    paste(pane, LOAF)
    type_in(pane, "recipe_name", "Plain loaf")
    push(pane, "recipe_tick_2")
    push(pane, "recipe_tick_6")
    type_in(pane, "recipe_minutes_6", "40")
    assert words(pane, "recipe_confirmed").startswith("2 of 8")
    with qtbot.waitSignal(pane.kept) as kept:
        push(pane, "recipe_keep")
    dish = next(one for one in desk.supper.dishes if one.key == kept.args[0])
    assert [(part.what, part.minutes) for part in dish.parts] == [("rise", 75), ("bake", 40)]


def test_a_line_shows_in_the_text_where_it_comes_from(pane: FromRecipe) -> None:
    paste(pane, LOAF)
    push(pane, "recipe_tick_2")
    text = control(pane, "recipe_text", QPlainTextEdit)
    assert [one.cursor.selectedText() for one in text.extraSelections()] == [  # type: ignore[attr-defined]
        "Let rise until doubled, 1 to 1 1/2 hours."
    ]


def test_what_is_missing_is_said_and_everything_typed_stays(pane: FromRecipe) -> None:
    paste(pane, "Roast at 350°F, 20 minutes per pound.")
    type_in(pane, "recipe_name", "Roast")
    push(pane, "recipe_tick_0")
    push(pane, "recipe_keep")
    assert "minutes" in words(pane, "recipe_problem")
    assert control(pane, "recipe_heat_0", QLineEdit).text() == "325-375"
    assert "per pound" in words(pane, "recipe_note_0")


def test_a_title_is_offered_as_the_name_but_never_in_the_place_of_one_that_was_typed(pane: FromRecipe) -> None:
    paste(pane, "Sunday chops\nSear the chops for 5 minutes.")
    assert control(pane, "recipe_name", QLineEdit).text() == "Sunday chops"
    type_in(pane, "recipe_name", "Chops")
    push(pane, "recipe_read")
    assert control(pane, "recipe_name", QLineEdit).text() == "Chops"


def test_a_text_without_steps_is_explained(pane: FromRecipe) -> None:
    paste(pane, "A cake my neighbour liked.")
    assert "No step" in words(pane, "recipe_problem")


def test_of_a_file_with_several_recipes_one_is_chosen(pane: FromRecipe, tmp_path: Path) -> None:
    rows = [
        {
            "@type": "Recipe",
            "name": name,
            "recipeInstructions": [f"Bake {minutes} minutes at 350°F."],
            "cookTime": "PT1H",
        }
        for name, minutes in (("Cake", 40), ("Pie", 50))
    ]
    path = tmp_path / "two.json"
    path.write_text(json.dumps(rows), "utf-8")
    pane.read_file(path)
    assert control(pane, "recipe_minutes_0", QLineEdit).text() == "40"
    assert "on heat 60 min" in words(pane, "recipe_said")
    pane._which.chosen.emit("1")
    assert control(pane, "recipe_name", QLineEdit).text() == "Pie"
    assert control(pane, "recipe_text", QPlainTextEdit).toPlainText() == "Bake 50 minutes at 350°F."


def test_a_file_that_is_no_recipe_is_explained(pane: FromRecipe, tmp_path: Path) -> None:
    path = tmp_path / "other.json"
    path.write_text("{}", "utf-8")
    pane.read_file(path)
    assert "schema.org/Recipe" in words(pane, "recipe_problem")
