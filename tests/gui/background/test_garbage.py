"""Garbage is collected in the window's thread, never where the work is done."""

import gc
import threading
import weakref
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.background.garbage import GarbageInTheWindowsThread


class Looped:
    """Reachable only from itself."""

    def __init__(self) -> None:
        self.own = self


@pytest.fixture
def keeper(qtbot: QtBot) -> Iterator[QObject]:
    parent = QObject()
    yield parent
    parent.deleteLater()


def test_a_working_thread_collects_nothing_and_the_window_does(keeper: QObject) -> None:
    gc.enable()  # as Python begins
    garbage = GarbageInTheWindowsThread(keeper)
    gone: list[str] = []
    made = Looped()
    weakref.finalize(made, lambda: gone.append(threading.current_thread().name))
    del made
    thread = threading.Thread(target=lambda: [[number] for number in range(5000)])
    thread.start()
    thread.join()
    assert gone == []
    kept = [[number] for number in range(2 * gc.get_threshold()[0])]
    garbage.look()
    assert kept
    assert gone == [threading.main_thread().name]
