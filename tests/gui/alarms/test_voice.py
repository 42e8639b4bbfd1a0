"""The voice's engine: where it hangs, the window opens, works and closes all the same."""

import sys
import threading
import time
from types import ModuleType

import pytest
from PySide6.QtCore import QLocale, QObject, QThread, Signal, Slot
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.alarms import voice
from cookstove_gui.gui.alarms.voice import Voice
from cookstove_gui.gui.background import job


class Hung(QThread):
    """An engine's thread that does not hear that it should end."""

    def __init__(self, let_go: threading.Event) -> None:
        super().__init__()
        self._let_go = let_go

    def run(self) -> None:
        """Wait for a service that doesn't answer."""
        self._let_go.wait(10.0)


class Engine(QObject):
    """As Qt's, on a machine that may have none."""

    errorOccurred = Signal()

    def __init__(self, _name: str) -> None:
        super().__init__()

    @Slot(str)
    def setEngine(self, name: str) -> None:
        """Begin."""

    @Slot(str)
    def say(self, words: str) -> None:
        """Say it."""

    @Slot(QLocale)
    def setLocale(self, locale: QLocale) -> None:
        """In a language."""

    @Slot()
    def stop(self) -> None:
        """Not a word more."""


def test_an_engine_that_hangs_keeps_no_window_from_closing(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    let_go, left, spoken = threading.Event(), list[QThread](), ModuleType("QtTextToSpeech")
    spoken.QTextToSpeech = Engine  # type: ignore[attr-defined]
    monkeypatch.setitem(sys.modules, "PySide6.QtTextToSpeech", spoken)
    monkeypatch.setattr(voice, "QThread", lambda: Hung(let_go))
    monkeypatch.setattr(voice, "_HUNG_MS", 20)
    monkeypatch.setattr(job, "_left_behind", left)
    monkeypatch.setattr(voice, "_running", [])
    one = Voice("mock")
    began = time.monotonic()
    one.say("Put the loaf in.")
    one.close()
    assert time.monotonic() - began < 5.0  # and not the ten seconds of the engine
    assert job.some_hang()  # so that the program ends without waiting for it
    assert [thread for thread, _ in voice._running] == left  # kept, thread and engine: Qt would end the program
    let_go.set()
    assert left[0].wait(5_000)
    assert not job.some_hang()
