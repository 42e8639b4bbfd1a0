"""The parts of the Cook page tell each other: a row chosen under the plot shows its places on the stove."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.cook.page import CookPage
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.drawn_stove.stove_drawing import StoveDrawing
from cookstove_gui.gui.time_axis.good_list import GoodList
from cookstove_gui.gui.widgets.look import Look
from tests.gui.hands import control


@pytest.fixture
def page(stood_desk: Desk, link: DeskLink, look: Look, qtbot: QtBot) -> CookPage:
    made = CookPage(link, look)
    qtbot.addWidget(made)
    made.resize(1280, 640)
    with qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    return made


def answered(page: CookPage, desk: Desk) -> list[str]:
    drawing = control(page, "stove_drawing", StoveDrawing)
    return [spot.name for spot in desk.stove.spots if drawing.patch(spot.name).face.is_answer]


def test_a_row_of_the_cooktop_shows_its_places_as_long_as_the_rows_have_the_keyboard(
    page: CookPage, stood_desk: Desk
) -> None:
    rows = control(page, "good_for_rows", GoodList)
    place = next(number for number, row in enumerate(rows.rows()) if not row.is_oven)
    assert answered(page, stood_desk) == []
    rows.setFocus()
    rows.setCurrentRow(place)
    QApplication.processEvents()
    assert rows.rows()[place].spots[0] in answered(page, stood_desk)
    page.take_focus()
    QApplication.processEvents()
    assert answered(page, stood_desk) == []


def test_a_spot_pressed_on_the_stove_is_asked_for_and_shows_no_task(page: CookPage, stood_desk: Desk) -> None:
    drawing = control(page, "stove_drawing", StoveDrawing)
    QTest.mouseClick(drawing.patch("top_front_left"), Qt.MouseButton.LeftButton)
    QApplication.processEvents()
    assert stood_desk.walk.spot.name == "top_front_left"
    assert answered(page, stood_desk) == []
    assert isinstance(page.focusWidget(), QLineEdit)
