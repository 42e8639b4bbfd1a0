"""The plan is saved as a calendar or a page, what goes wrong is told; a recipe is reached from the list of dishes."""

from pathlib import Path

import icalendar
import pytest
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.plan.supper.dish_list import DishList
from cookstove_gui.gui.plan.supper.from_recipe import FromRecipe
from cookstove_gui.gui.plan.supper.save_key import SaveKey
from tests.gui.alarms.test_alarms import plan_pie
from tests.gui.hands import control, push


def chosen(key: SaveKey, words: str) -> None:
    """Choose from the key's list."""
    next(one for one in key.choices().actions() if words in one.text()).trigger()


@pytest.fixture
def key(desk: Desk, qtbot: QtBot) -> SaveKey:
    made = SaveKey(desk)
    qtbot.addWidget(made)
    made.show()
    return made


def test_the_calendar_and_the_page_are_written(
    key: SaveKey, desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plan_pie(desk, 10, 50)
    told: list[str] = []
    key.told.connect(told.append)
    for words, name in (("calendar", "a.ics"), ("print", "a.html")):
        monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_, name=name: (str(tmp_path / name), ""))
        chosen(key, words)
    calendar = icalendar.Calendar.from_ical((tmp_path / "a.ics").read_bytes())
    assert "Apple pie: bake" in [str(one["summary"]) for one in calendar.walk("VEVENT")]
    assert "Apple pie" in (tmp_path / "a.html").read_text("utf-8")
    assert told == ["", ""]


def test_without_a_plan_it_says_so(key: SaveKey, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "a.ics"), ""))
    with qtbot.waitSignal(key.told) as told:
        chosen(key, "calendar")
    assert "No supper is planned" in told.args[0]


def test_a_recipe_is_opened_from_the_list_of_dishes_and_left_to_it(desk: Desk, qtbot: QtBot) -> None:
    dishes = DishList(desk)
    qtbot.addWidget(dishes)
    dishes.open()
    push(dishes, "dish_recipe")
    pane = control(dishes, "from_recipe", FromRecipe)
    assert pane.isVisible()
    push(pane, "recipe_close")
    assert not pane.isVisible()
