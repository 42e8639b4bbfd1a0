"""The colours follow the system or the cook's choice, and every painter is told when they change."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import DAY, NIGHT


@pytest.fixture
def fresh(qapp: QApplication, look: Look) -> Iterator[Look]:
    yield look
    look.set_mode("day")


def test_night_is_dark_and_day_is_light(fresh: Look, qapp: QApplication) -> None:
    fresh.set_mode("night")
    assert qapp.palette().color(QPalette.ColorRole.Window).name().upper() == NIGHT.ground
    fresh.set_mode("day")
    assert qapp.palette().color(QPalette.ColorRole.Window).name().upper() == DAY.ground


def test_a_change_is_told_once(fresh: Look, qtbot: QtBot) -> None:
    with qtbot.waitSignal(fresh.changed):
        fresh.set_mode("night")
    with qtbot.assertNotEmitted(fresh.changed):
        fresh.set_mode("night")


@pytest.mark.parametrize(("scheme", "theme"), [(Qt.ColorScheme.Dark, NIGHT), (Qt.ColorScheme.Light, DAY)])
def test_the_system_is_followed(
    fresh: Look, qapp: QApplication, monkeypatch: pytest.MonkeyPatch, scheme: Qt.ColorScheme, theme: object
) -> None:
    class Hints:
        def colorScheme(self) -> Qt.ColorScheme:
            return scheme

    monkeypatch.setattr(fresh, "_app", _Dressed(qapp, Hints()))
    fresh.set_mode("system")
    assert fresh.theme is theme


def test_an_unknown_mode_follows_the_system(fresh: Look) -> None:
    fresh.set_mode("dusk")
    assert fresh.mode == "system"


class _Dressed:
    """The application, but for what it says of the system's colours."""

    def __init__(self, app: QApplication, hints: object) -> None:
        self._app, self._hints = app, hints

    def styleHints(self) -> object:
        return self._hints

    def setPalette(self, palette: QPalette) -> None:
        self._app.setPalette(palette)

    def setStyleSheet(self, sheet: str) -> None:
        self._app.setStyleSheet(sheet)
