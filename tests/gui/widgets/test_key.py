"""Keys keep their words whole, show what they are, and are pressed by mouse and keyboard."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.widgets.key import RING, Key, Word
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import DAY


def shown(qtbot: QtBot, *keys: QPushButton) -> QWidget:
    box = QWidget()
    row = QHBoxLayout(box)
    for key in keys:
        row.addWidget(key)
    qtbot.addWidget(box)
    box.show()
    return box


def colour_at(key: QPushButton, x: int, y: int) -> str:
    return QColor(key.grab().toImage().pixel(QPoint(x % key.width(), y % key.height()))).name().upper()


def test_a_plate_has_a_lower_edge_and_one_that_is_chosen_is_ink(qtbot: QtBot, look: Look) -> None:
    plain, chosen = Key("Wood", "F6"), Key("Leave it")
    chosen.setCheckable(True)
    chosen.setChecked(True)
    _box = shown(qtbot, plain, chosen)
    plain.clearFocus()
    middle = plain.width() // 2
    assert colour_at(plain, RING + 6, RING + 5) == DAY.plate
    assert colour_at(plain, middle, -RING - 1) == DAY.line
    assert colour_at(chosen, RING + 6, RING + 5) == DAY.ink
    plain.setDown(True)
    assert colour_at(plain, middle, -RING - 1) == DAY.plate


def test_a_ring_stands_round_the_key_that_has_the_keyboard(qtbot: QtBot, look: Look) -> None:
    one, other = Key("Keep"), Key("Correct")
    box = shown(qtbot, one, other)
    with qtbot.waitActive(box):
        box.activateWindow()
    one.setFocus()
    assert colour_at(one, one.width() // 2, 1) == DAY.cobalt
    assert colour_at(other, other.width() // 2, 1) != DAY.cobalt


@pytest.mark.parametrize("make", [Key, Word])
def test_words_fit_chosen_or_not(qtbot: QtBot, look: Look, make: type[Key] | type[Word]) -> None:
    key = make("Open the bypass", "Ctrl Z")
    key.setCheckable(True)
    _box = shown(qtbot, key)
    before = key.sizeHint()
    key.setChecked(True)
    assert key.sizeHint() == before, "choosing moves nothing"
    assert key.minimumSizeHint().width() >= key.fontMetrics().horizontalAdvance(key.text())


def test_pressed_by_mouse_and_keyboard(qtbot: QtBot, look: Look) -> None:
    key = Key("Enter")
    _box = shown(qtbot, key)
    with qtbot.waitSignal(key.clicked):
        QTest.mouseClick(key, Qt.MouseButton.LeftButton)
    with qtbot.waitSignal(key.clicked):
        QTest.keyClick(key, Qt.Key.Key_Space)


def test_the_name_of_the_key_goes_before_the_word_does(qtbot: QtBot, look: Look) -> None:
    key = Key("Undo", "Ctrl Z")
    assert key.minimumSizeHint().width() < key.sizeHint().width()
