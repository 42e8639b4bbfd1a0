"""One button for each step that can be taken now; pressing it asks the desk, and what comes back is told."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from cookstove_gui.desk import Desk
from cookstove_gui.forecast.answers import LEAVE, ActionKind
from cookstove_gui.gui.cook.what_if import WhatIf
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.stove.entries import Kind
from tests.gui.hands import click, control
from tests.once import stood


@pytest.fixture
def row(link: DeskLink, look: Look, qtbot: QtBot) -> WhatIf:
    made = WhatIf(link)
    qtbot.addWidget(made)
    made.resize(900, 60)
    made.show()
    return made


def offered(row: WhatIf) -> list[str]:
    seen = [button for button in row.findChildren(QPushButton) if button.isVisible()]
    return [button.text() for button in sorted(seen, key=QPushButton.x)]


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
    assert stood_desk.show(stood(stood_desk.inputs()))
    key = control(row, "what_if_1", QPushButton)
    qtbot.waitUntil(lambda: key.accessibleDescription().startswith("Two splits: "))
    assert not control(row, "what_if_0", QPushButton).accessibleDescription()


def test_steps_follow_what_was_done(row: WhatIf, desk: Desk, qtbot: QtBot) -> None:
    desk.do(Kind.BYPASS, value="1")
    qtbot.waitUntil(lambda: "Close bypass" in offered(row))
    desk.do(Kind.BYPASS, value="0")
    qtbot.waitUntil(lambda: "Close bypass" not in offered(row))


def test_steps_that_do_not_fit_go_behind_the_last_key_and_the_chosen_one_stays(row: WhatIf, desk: Desk) -> None:
    desk.do(Kind.BYPASS, value="1")
    click(row, "what_if_1")
    row.resize(330, 60)
    shown = offered(row)
    assert shown[0] == "Leave it"
    assert "Two splits" in shown
    assert shown[-1] == "…"
    row.resize(900, 60)
    assert "…" not in offered(row)


def test_at_a_dead_fire_kindling_is_offered_in_the_place_of_air_and_wood(
    row: WhatIf, fired_desk: Desk, qtbot: QtBot
) -> None:
    fired_desk.do(Kind.OUT)
    assert fired_desk.show(stood(fired_desk.inputs()))
    qtbot.waitUntil(lambda: offered(row) == ["Leave it", "Kindling"])
    fired_desk.do(Kind.LIT)
    assert fired_desk.show(stood(fired_desk.inputs()))
    qtbot.waitUntil(lambda: "Kindling" not in offered(row))
