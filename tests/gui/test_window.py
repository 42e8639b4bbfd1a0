"""The whole window, driven by keys and clicks, with the real desk behind it."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QShortcut
from PySide6.QtWidgets import QAbstractButton, QApplication, QLineEdit, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.desk.first_start import begin
from cookstove_gui.gui.drawn_stove.stove_drawing import StoveDrawing
from cookstove_gui.gui.frame.keys_page import KEYS
from cookstove_gui.gui.time_axis.good_list import GoodList
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Kind
from tests.gui.hands import click, control, enter_number, press, type_text, words
from tests.held_clock import HeldClock

SIZES = ((1280, 800), (1024, 768))
LEAST_TARGET = 40  # px, also in the smallest window
WALK = ((118, 215, 160, 190), (176, 330, 240, 310), (245, 420, 300, 405))  # °F; the oven's centre, then three on top


def settled(window: MainWindow, qtbot: QtBot) -> None:
    """Wait until all that was entered has been worked out and shown."""
    qtbot.waitUntil(lambda: not window.working.is_busy and window.desk.standing is not None, timeout=10_000)
    QApplication.processEvents()


def walk_round(window: MainWindow, clock: HeldClock) -> None:
    """Light the fire and type twelve readings by keyboard alone."""
    press(window, Qt.Key.Key_F5)
    press(window, Qt.Key.Key_F7)
    type_text(window, "5")
    press(window, Qt.Key.Key_F6)
    type_text(window, "2")
    for readings in WALK:
        clock.pass_minutes(9)
        for name, number in zip(("oven", "front left", "front middle", "front right"), readings, strict=True):
            enter_number(window, f"{name} {number}")


def test_twelve_readings_by_keyboard_alone(window: MainWindow, desk: Desk, clock: HeldClock, qtbot: QtBot) -> None:
    walk_round(window, clock)
    settled(window, qtbot)
    read = [int(row.value) for row in desk.entries if row.kind is Kind.READING]
    assert read == [number for readings in WALK for number in readings]
    assert desk.standing is not None
    assert desk.standing.now == clock()
    assert "bread heat" in words(window, "headline").lower()
    assert control(window, "good_for_rows", GoodList).rows()
    assert control(window, "stove_drawing", StoveDrawing).patch("oven_centre").face.number.isdigit()


def test_what_the_window_shows_is_on_disk(tmp_path: Path, clock: HeldClock, look: Look, qtbot: QtBot) -> None:
    logbook = Logbook.open(tmp_path / "logbook.sqlite")
    desk = Desk(logbook, clock)
    begin(desk)
    window = MainWindow(desk, look)
    qtbot.addWidget(window)
    with qtbot.waitSignal(window.painted, timeout=10_000):
        window.show()
    enter_number(window, "385")
    other = Logbook.open(tmp_path / "logbook.sqlite")
    [session] = other.sessions()
    assert [row.value for row in other.session(session.number).entries] == ["385"]
    other.close()
    window.close()
    logbook.close()


def test_keys_and_buttons_turn_the_pages_and_no_two_parts_listen_to_one_key(window: MainWindow, desk: Desk) -> None:
    for key, name in (
        (Qt.Key.Key_F2, "plan"),
        (Qt.Key.Key_F3, "my_stove"),
        (Qt.Key.Key_F4, "logbook"),
        (Qt.Key.Key_F1, "cook"),
    ):
        press(window, key)
        assert control(window, f"page_{name}", QPushButton).isChecked()
    enter_number(window, "385")  # back on Cook the number field has the keyboard
    assert [row.value for row in desk.entries] == ["385"]
    click(window, "page_logbook")
    assert control(window, "page_logbook", QPushButton).isChecked()
    keys = [
        shortcut.key().toString()
        for shortcut in window.findChildren(QShortcut)
        if shortcut.context() is Qt.ShortcutContext.WindowShortcut
    ]
    assert sorted(keys) == sorted(set(keys)), "one pressed key would do nothing"


def test_units_and_colours_switch_by_key_and_are_kept(window: MainWindow, desk: Desk, look: Look) -> None:
    press(window, Qt.Key.Key_U, Qt.KeyboardModifier.ControlModifier)
    assert desk.unit == "C"
    press(window, Qt.Key.Key_U, Qt.KeyboardModifier.ControlModifier)
    assert desk.unit == "F"
    assert look.mode == "day"
    press(window, Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier)
    assert (look.theme.name, desk.setting("theme")) == ("night", "night")
    look.set_mode("day")


def test_large_view_comes_and_goes(window: MainWindow, desk: Desk, clock: HeldClock, qtbot: QtBot) -> None:
    walk_round(window, clock)
    settled(window, qtbot)
    press(window, Qt.Key.Key_F12)
    view = control(window, "large_view", QWidget)
    assert "°F" in view.accessibleName()
    assert view.accessibleName().startswith(words(window, "clock")) or "Cautions" in view.accessibleName()
    assert not control(window, "next_line", QWidget).isVisible()
    press(window, Qt.Key.Key_Escape)
    assert control(window, "next_line", QWidget).isVisible()


def test_all_keys_are_listed_at_a_key_and_each_is_meant_for_one_thing(window: MainWindow) -> None:
    press(window, Qt.Key.Key_H, Qt.KeyboardModifier.ControlModifier)
    assert control(window, "keys_page", QWidget).isVisible()
    press(window, Qt.Key.Key_Escape)
    assert control(window, "cook_page", QWidget).isVisible()
    listed = " ".join(key for _, keys in KEYS for key, _ in keys)
    spans = {f"Ctrl+{number}" for number in range(1, 7)} | {f"F{number}" for number in range(1, 5)} | {"Ctrl+="}
    made = [shortcut.key().toString() for shortcut in window.findChildren(QShortcut)]
    assert {key for key in set(made) - spans if key not in listed} == set()
    assert sorted({key for key in made if made.count(key) > 1}) == []


def test_ctrl_z_undoes_from_wherever_the_keyboard_is(window: MainWindow, desk: Desk) -> None:
    enter_number(window, "385")
    control(window, "good_for_rows", QWidget).setFocus()
    press(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert desk.entries == ()


def test_every_control_is_named_and_large_enough_and_so_is_type(window: MainWindow) -> None:
    small = [
        (button.objectName(), button.width(), button.height())
        for button in window.findChildren(QPushButton)
        if button.isVisible() and (button.height() < LEAST_TARGET or button.width() < LEAST_TARGET)
    ]
    assert small == []
    kinds = (QAbstractButton, QLineEdit)
    controls = [part for kind in kinds for part in window.findChildren(kind) if part.isVisible()]
    nameless = [
        part.objectName() or part.metaObject().className()
        for part in controls
        if not part.objectName() or not (part.accessibleName() or getattr(part, "text", str)())
    ]
    assert nameless == []
    tiny = [
        part.objectName()
        for part in control(window, "cook_page", QWidget).findChildren(QWidget)
        if part.isVisible() and part.font().pixelSize() < 14
    ]
    assert tiny == []


def test_a_fault_of_our_own_is_told_and_the_window_goes_on(window: MainWindow, desk: Desk) -> None:
    window.show_fault("ValueError: made up", "trace")
    assert "Everything you entered is in the logbook" in words(window, "fault_words")
    enter_number(window, "385")
    click(window, "fault_copy")
    assert QApplication.clipboard().text() == "trace"
    assert len(desk.entries) == 1


def test_a_hot_flue_is_warned_of_even_when_its_number_looks_like_a_slip(
    window: MainWindow, clock: HeldClock, qtbot: QtBot
) -> None:
    walk_round(window, clock)
    enter_number(window, "flue 900")
    settled(window, qtbot)
    assert "Flue pipe too hot" in words(window, "caution")
