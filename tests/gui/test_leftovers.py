"""A window, a thread or a timer that a test leaves behind is found, so that it can fail the test that made it."""

from PySide6.QtCore import QThread, QTimer
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from tests.gui.leftovers import left_behind


def test_a_visible_window_is_found(qtbot: QtBot) -> None:
    window = QWidget()
    window.setObjectName("stray")
    qtbot.addWidget(window)
    window.show()
    assert left_behind(()) == ["window stray"]


def test_a_repeating_timer_is_found(qtbot: QtBot) -> None:
    timer = QTimer()
    timer.start(1000)
    assert left_behind([timer]) == ["running QTimer"]
    timer.stop()
    assert left_behind([timer]) == []


def test_a_running_thread_is_found(qtbot: QtBot) -> None:
    thread = QThread()
    thread.start()
    assert left_behind([thread]) == ["running QThread"]
    thread.quit()
    thread.wait()
    assert left_behind([thread]) == []
