"""Names of the parts of a page stay where they are, whatever stands beside or below them."""

from PySide6.QtWidgets import QApplication, QHBoxLayout, QLabel, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.sections import Sections, scrolling
from tests.gui.clipping import settle
from tests.gui.hands import control


def test_the_bar_that_scrolls_leaves_a_gap_to_the_words(qtbot: QtBot, look: Look) -> None:
    inside = QWidget()
    inside.setFixedSize(200, 900)
    area = scrolling(inside)
    qtbot.addWidget(area)
    area.resize(300, 200)
    area.show()
    QApplication.processEvents()
    picture = area.grab().toImage()
    right = area.viewport().geometry().right()
    middle = area.verticalScrollBar().height() // 8
    columns = [picture.pixelColor(x, middle).name().upper() for x in range(right + 1, picture.width())]
    assert look.theme.line in columns
    assert columns.index(look.theme.line) >= 5


def test_the_names_do_not_move_where_one_part_has_keys_beside_them(look: Look, qtbot: QtBot) -> None:
    sections = Sections(look)
    qtbot.addWidget(sections)
    tools = QWidget()
    row = QHBoxLayout(tools)
    row.setContentsMargins(0, 0, 0, 0)
    row.addWidget(Key("Add a dish"))
    for key in ("one", "other"):
        sections.add(key, key, QLabel(key))
    sections.add_tools("one", tools)
    sections.resize(900, 500)
    sections.show()
    places = []
    for key in ("one", "other", "one"):
        sections.choose(key)
        settle()
        name = control(sections, "part_one", QPushButton)
        places.append(name.mapTo(sections, name.rect().center()).y())
    assert len(set(places)) == 1
    plate = tools.mapTo(sections, tools.rect().center()).y()
    assert abs(places[0] - plate) <= 1


def test_keys_stand_below_the_names_where_both_do_not_fit_side_by_side(look: Look, qtbot: QtBot) -> None:
    sections = Sections(look)
    qtbot.addWidget(sections)
    tools = QWidget()
    row = QHBoxLayout(tools)
    row.addWidget(Key("Add a dish to the plan"))
    for key in ("a first part", "a second part", "a third part", "a fourth part"):
        sections.add(key, key, QLabel(key))
    sections.add_tools("a first part", tools)
    last = control(sections, "part_a fourth part", QPushButton)
    sections.show()
    for width, beside in ((900, True), (620, False), (900, True)):
        sections.resize(width, 500)
        settle()
        right = last.mapTo(sections, last.rect().topRight()).x()
        assert right <= width
        above = tools.mapTo(sections, tools.rect().topLeft()).y() < last.mapTo(sections, last.rect().bottomLeft()).y()
        assert above is beside
        assert not last.visibleRegion().isEmpty()
