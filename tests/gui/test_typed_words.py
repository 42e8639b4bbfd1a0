"""Typed words are shown to the letter: nothing that looks like markup is taken for it, in labels and tooltips."""

from dataclasses import replace

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Kind
from tests.held_clock import HeldClock

TYPED = "<b>bold</b>"


def test_no_label_or_tooltip_reads_typed_words_as_markup(clock: HeldClock, look: Look, qtbot: QtBot) -> None:
    desk = Desk(Logbook.in_memory(), clock)
    desk.save_stove(replace(desk.stove, name=TYPED, note=TYPED))
    desk.start_session(TYPED)
    desk.do(Kind.LIT)
    desk.do(Kind.NOTE, note=TYPED)
    desk.read("300", spot=f"shelf {TYPED}")
    desk.read("300", spot="oven_centre")
    window = MainWindow(desk, look)
    qtbot.addWidget(window)
    window.show()
    qtbot.waitUntil(lambda: desk.standing is not None, timeout=20_000)
    for page in ("cook", "plan", "my_stove", "logbook", "large"):
        window.show_page(page)
        QApplication.processEvents()
        rich = [
            label.objectName() or label.text()
            for label in window.findChildren(QLabel)
            if "<b>" in label.text() and label.textFormat() is not Qt.TextFormat.PlainText
        ]
        assert rich == [], page
        tips = [part.objectName() for part in window.findChildren(QWidget) if "<b>" in part.toolTip()]
        assert tips == [], page
    window.close()
