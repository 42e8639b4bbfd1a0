"""The colours follow the system or the cook's choice, and every painter is told when they change."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import scale
from cookstove_gui.gui.widgets.theme import DAY, NIGHT
from cookstove_gui.stove.drawn.contrast import contrast


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


class _Asking:
    """A system that asks for more contrast, or does not."""

    def __init__(self, wanted: Qt.ContrastPreference) -> None:
        self._wanted = wanted

    def contrastPreference(self) -> Qt.ContrastPreference:
        return self._wanted


def test_a_system_that_asks_for_contrast_gets_nothing_soft(fresh: Look, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(fresh, "_accessibility", _Asking(Qt.ContrastPreference.HighContrast))
    for mode, plain in (("day", DAY), ("night", NIGHT)):
        fresh.set_mode(mode)
        assert contrast(fresh.theme.soft, fresh.theme.plate) >= 12
        assert contrast(fresh.theme.line, fresh.theme.ground) >= 12
        assert fresh.theme.ember == plain.ember
    monkeypatch.setattr(fresh, "_accessibility", _Asking(Qt.ContrastPreference.NoPreference))
    fresh.set_mode("day")
    assert fresh.theme == DAY


def test_a_cook_who_wants_no_motion_gets_none(fresh: Look) -> None:
    assert fresh.moves
    fresh.set_still(True)
    assert not fresh.moves
    fresh.set_still(False)


def test_text_grows_within_its_sizes_and_never_beyond_the_window(fresh: Look) -> None:
    fresh.fit(1280, 750)
    fresh.set_text_size(9.0)
    assert fresh.text_size == 1.5
    assert 1.2 < scale() <= 1.5
    fresh.fit(1000, 640)
    assert scale() < 1.2, "a page would not fit"
    fresh.set_text_size(0.1)
    assert fresh.text_size == 0.8
    fresh.set_text_size(1.0)
    fresh.fit(1280, 750)
    assert scale() == 1.0
