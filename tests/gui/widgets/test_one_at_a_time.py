"""A stack asks for no more room than the view that is shown needs."""

import pytest
from PySide6.QtWidgets import QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.widgets.one_at_a_time import OneAtATime

pytestmark = pytest.mark.gui


def test_a_tall_view_that_is_not_shown_takes_no_room(qtbot: QtBot) -> None:
    stack = OneAtATime()
    qtbot.addWidget(stack)
    low, tall = QWidget(), QWidget()
    for view, high in ((low, 50), (tall, 900)):
        view.setLayout(_filled(high))
        stack.addWidget(view)
    stack.show()
    assert stack.minimumSizeHint().height() < 200
    assert (low.isVisibleTo(stack), tall.isVisibleTo(stack)) == (True, False)
    stack.setCurrentIndex(1)
    assert stack.minimumSizeHint().height() >= 900
    assert (low.isVisibleTo(stack), tall.isVisibleTo(stack)) == (False, True)


def _filled(high: int) -> QVBoxLayout:
    column, part = QVBoxLayout(), QWidget()
    part.setMinimumHeight(high)
    column.addWidget(part)
    return column
