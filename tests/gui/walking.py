"""Shared by the walks through the real window: what they wait for, and what they look at in the log."""

from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.stove.entries import Kind
from tests.gui.clipping import settle


def answered(window: MainWindow, qtbot: QtBot) -> None:
    """Until everything is worked out."""
    qtbot.wait(60)
    qtbot.waitUntil(lambda: not window.working.is_busy, timeout=20_000)
    settle()


def kinds(desk: Desk) -> list[Kind]:
    return [row.kind for row in desk.entries]
