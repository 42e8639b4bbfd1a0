"""The very first start offers three ways to begin; practice is left with nothing mixed."""

import argparse
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QPushButton, QScrollBar, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.desk.first_start import begin, is_first_start
from cookstove_gui.gui.start import Program, parse_arguments
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Kind
from tests.gui.clipping import settle
from tests.gui.hands import click, control, enter_number, press, seen, words
from tests.gui.pages import keep_session
from tests.held_clock import HeldClock


@pytest.fixture
def newcomer(clock: HeldClock, look: Look, qtbot: QtBot) -> Iterator[MainWindow]:
    """The window over an empty logbook."""
    logbook = Logbook.in_memory()
    window = MainWindow(Desk(logbook, clock), look)
    qtbot.addWidget(window)
    with qtbot.waitSignal(window.painted, timeout=20_000):
        window.show()
    yield window
    window.close()
    logbook.close()


def ways(window: MainWindow) -> QWidget:
    return control(window, "first_start", QWidget)


def test_only_an_empty_logbook_is_a_first_start(desk: Desk, clock: HeldClock) -> None:
    assert not is_first_start(desk), "begun already"
    fresh = Desk(Logbook.in_memory(), clock)
    assert is_first_start(fresh)
    keep_session(fresh, "Sunday bread", clock())
    assert not is_first_start(fresh)
    fresh.logbook.close()


def test_it_greets_and_warns_of_nothing_at_the_door(newcomer: MainWindow, qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: not newcomer.working.is_busy, timeout=20_000)
    assert ways(newcomer).isVisible()
    assert words(newcomer, "headline").endswith("No fire is lit yet.")
    assert "1, 2 and 3" in words(newcomer, "detail")
    assert seen(newcomer, "caution") == ""


def test_lighting_the_fire_shows_the_page_and_what_to_mind_first(newcomer: MainWindow, qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: not newcomer.working.is_busy, timeout=20_000)
    click(newcomer, "way_light")
    assert not ways(newcomer).isVisible()
    qtbot.waitUntil(lambda: "Cold flue" in seen(newcomer, "caution"), timeout=20_000)
    enter_number(newcomer, "95")
    assert [row.value for row in newcomer.desk.entries] == ["95"]


@pytest.mark.parametrize(("size", "text"), [((1280, 750), 1.5), ((1920, 1000), 1.5), ((1280, 750), 1.0)])
def test_one_bar_at_most_scrolls_the_ways_and_all_of_them_are_reached(
    newcomer: MainWindow, look: Look, size: tuple[int, int], text: float
) -> None:
    look.set_text_size(text)
    newcomer.resize(*size)
    settle()
    page = control(newcomer, "cook_page", QWidget)
    bars = [bar for bar in page.findChildren(QScrollBar) if bar.isVisible()]
    assert len(bars) == (1 if text > 1.0 else 0)
    last = control(newcomer, "way_light", QPushButton)
    last.setFocus()
    settle()
    look.set_text_size(1.0)
    assert not last.visibleRegion().isEmpty()


@pytest.mark.parametrize(
    ("digit", "way"), [(Qt.Key.Key_1, "draw"), (Qt.Key.Key_2, "practice"), (Qt.Key.Key_3, "light")]
)
def test_digits_choose(newcomer: MainWindow, qtbot: QtBot, digit: Qt.Key, way: str) -> None:
    control(newcomer, "way_draw", QPushButton).setFocus()
    with qtbot.waitSignal(newcomer.findChild(QWidget, "first_start").chosen) as chosen:  # type: ignore[union-attr]
        press(newcomer, digit)
    assert chosen.args == [way]
    assert newcomer.desk.entries == ()


def test_drawing_the_stove_goes_to_its_page(newcomer: MainWindow) -> None:
    click(newcomer, "way_draw")
    assert control(newcomer, "page_my_stove", QPushButton).isChecked()


def test_the_first_entry_ends_it_too(newcomer: MainWindow, qtbot: QtBot) -> None:
    newcomer.desk.do(Kind.LIT)
    qtbot.waitUntil(lambda: not ways(newcomer).isVisible())


@pytest.fixture
def options(tmp_path: Path) -> argparse.Namespace:
    return parse_arguments(["--logbook", str(tmp_path / "kitchen" / "logbook.sqlite")])


def test_practice_runs_beside_the_real_session_and_leaves_no_trace(
    options: argparse.Namespace, qapp: QApplication, qtbot: QtBot
) -> None:
    program = Program(qapp, options)
    program.open()
    real = program.window
    assert real is not None
    with qtbot.waitSignal(real.painted, timeout=20_000):
        pass
    begin(real.desk)
    real.desk.do(Kind.NOTE, note="before practice")
    real.practice_wanted.emit()
    practice = program.practice
    assert practice is not None
    assert real.isHidden()
    assert practice.desk.logbook is not real.desk.logbook
    practice.desk.read("300", spot="oven_centre")
    click(practice, "practice_end")
    assert program.practice is None
    assert real.isVisible()
    assert [row.note for row in real.desk.entries] == ["before practice"]
    program.close()


def test_a_practice_the_program_started_with_is_left_for_the_real_logbook(
    options: argparse.Namespace, qapp: QApplication, qtbot: QtBot
) -> None:
    options.practice = ""
    program = Program(qapp, options)
    program.open()
    practice = program.window
    assert practice is not None
    with qtbot.waitSignal(practice.painted, timeout=20_000):
        pass
    click(practice, "practice_end")
    assert program.window is not practice
    assert program.window is not None
    assert program.window.desk.entries == ()
    assert options.logbook.exists()
    program.close()
