"""One button for each step that can be taken now; pressing it asks the desk, and what comes back is told."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk, Memory, work_out
from cookstove_gui.forecast.answers import LEAVE, ActionKind
from cookstove_gui.gui.cook.what_if import WhatIf
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.stove.entries import Kind
from tests.gui.hands import click, control


@pytest.fixture
def row(link: DeskLink, look: Look, qtbot: QtBot) -> WhatIf:
    made = WhatIf(link)
    qtbot.addWidget(made)
    made.show()
    return made


def offered(row: WhatIf) -> list[str]:
    return [button.text() for button in row.findChildren(QPushButton) if button.isVisible()]


def test_leaving_it_comes_first_and_is_on(row: WhatIf) -> None:
    assert offered(row)[0] == "Leave it"
    assert control(row, "what_if_0", QPushButton).isChecked()


def test_pressing_asks_the_desk(row: WhatIf, desk: Desk) -> None:
    click(row, "what_if_1")
    assert desk.action.kind is ActionKind.WOOD


def test_keys_press_too(row: WhatIf, desk: Desk, qtbot: QtBot) -> None:
    qtbot.keyClick(row, Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    assert desk.action.kind is ActionKind.WOOD
    qtbot.keyClick(row, Qt.Key.Key_1, Qt.KeyboardModifier.ControlModifier)
    assert desk.action == LEAVE


def test_what_it_brings_is_told_in_a_sentence(stood_desk: Desk, row: WhatIf, qtbot: QtBot) -> None:
    click(row, "what_if_1")
    assert stood_desk.show(work_out(stood_desk.inputs(), Memory()))
    outcome = control(row, "what_if_outcome", QLabel)
    qtbot.waitUntil(outcome.isVisible)
    assert outcome.text().startswith("Add two splits")


def test_steps_follow_what_was_done(row: WhatIf, desk: Desk, qtbot: QtBot) -> None:
    desk.do(Kind.BYPASS, value="1")
    qtbot.waitUntil(lambda: "Close bypass" in offered(row))
    desk.do(Kind.BYPASS, value="0")
    qtbot.waitUntil(lambda: "Close bypass" not in offered(row))
