"""Whatever is pressed, in whatever order, the window goes on; a study, run with `-m slow`."""

import random

import pytest
from PySide6.QtCore import QEventLoop, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QFileDialog
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.window import MainWindow
from tests.held_clock import HeldClock

STEPS = 400
TEXTS = (
    "385",
    "oven 300",
    "back left",
    "x",
    "flue 520",
    "-5",
    "72F",
    "120c",
    "bread",
    "425-475",
    "-10",
    "7:05",
    "2 kg",
)
KEYS = [
    *(Qt.Key(Qt.Key.Key_F1 + number) for number in range(12)),
    *(Qt.Key.Key_Return, Qt.Key.Key_Escape, Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_Left, Qt.Key.Key_Right),
    *(Qt.Key.Key_Tab, Qt.Key.Key_Delete, Qt.Key.Key_Backspace),
]
LETTERS = "ZKMRTBEUDHW012345"


@pytest.mark.slow
@pytest.mark.qt_log_ignore("does not support (raise|grabbing)")  # what the screenless platform says of lists that open
@pytest.mark.parametrize("seed", range(4))
def test_nothing_that_is_pressed_brings_the_window_down(
    window: MainWindow, clock: HeldClock, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, seed: int
) -> None:
    for name, answer in (("getSaveFileName", ("", "")), ("getOpenFileNames", ([], "")), ("getExistingDirectory", "")):
        monkeypatch.setattr(QFileDialog, name, staticmethod(lambda *_, _answer=answer, **__: _answer))
    chance = random.Random(seed)
    # An exception in any slot fails the test: pytest-qt sees to that.
    for _ in range(STEPS):
        _press_something(window, clock, chance)
        if chance.random() < 0.3:
            _rest(chance.choice((1, 30, 80)))


def _press_something(window: MainWindow, clock: HeldClock, chance: random.Random) -> None:
    focused = window.focusWidget() or window
    match chance.choices(("type", "key", "ctrl", "click", "wait", "size"), (30, 30, 15, 17, 4, 4))[0]:
        case "type":
            QTest.keyClicks(focused, chance.choice(TEXTS))
            QTest.keyClick(window.focusWidget() or window, Qt.Key.Key_Return)
        case "key":
            QTest.keyClick(focused, chance.choice(KEYS))
        case "ctrl":
            QTest.keyClick(focused, Qt.Key(ord(chance.choice(LETTERS))), Qt.KeyboardModifier.ControlModifier)
        case "click":
            buttons = [
                button
                for button in window.findChildren(QAbstractButton)
                if button.isVisible() and button.isEnabled() and "backup" not in button.objectName()
            ]
            if buttons:
                QTest.mouseClick(chance.choice(buttons), Qt.MouseButton.LeftButton)
        case "wait":
            clock.pass_minutes(chance.choice((1, 3, 5, 9, 900)))
        case _:
            window.resize(chance.choice((1000, 1024, 1280, 1500)), chance.choice((700, 768, 800, 1000)))
    popup = QApplication.activePopupWidget()
    if popup is not None:
        popup.close()


def _rest(milliseconds: int) -> None:
    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()
