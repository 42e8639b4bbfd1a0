"""Each fault that a look at the window is to find is found where it is planted, and none where there is none."""

import re
from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QPaintEvent
from PySide6.QtWidgets import QComboBox, QLabel, QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.sections import scrolling
from tests.gui.clipping import faults, settle, unlit
from tests.gui.hands import control


class Blind(Key):
    """A key that shows no focus."""

    def paintEvent(self, _event: QPaintEvent) -> None:
        pass


@pytest.fixture
def panel(look: Look, qtbot: QtBot) -> QWidget:
    made = QWidget()
    qtbot.addWidget(made)
    column = QVBoxLayout(made)
    line, words, first, second, field, box = (
        OneLine((20,)), QLabel("A fire of two splits"), Key("Lit"), Key("Wood"), QLineEdit("380"), QComboBox(),
    )  # fmt: skip
    line.show_rungs(("Bread heat about 4:31.", "4:31."))
    box.addItem("bread")
    for name, part in (
        ("line", line), ("words", words), ("first", first), ("second", second), ("field", field), ("box", box)
    ):  # fmt: skip
        part.setObjectName(name)
        part.setAccessibleName(name)
        column.addWidget(part)
    made.resize(400, 420)
    with qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    settle()
    return made


def part(panel: QWidget, name: str) -> QWidget:
    return control(panel, name, QWidget)


def test_a_panel_in_order_has_no_faults(panel: QWidget) -> None:
    assert faults(panel, targets=True) == []
    assert list(unlit(panel)) == []


def test_what_lies_beside_the_window_of_a_page_that_only_scrolls_up_and_down_is_found(
    panel: QWidget, qtbot: QtBot
) -> None:
    page = scrolling(panel)
    qtbot.addWidget(page)
    page.resize(300, 420)
    page.show()
    settle()
    assert not [fault for fault in faults(page) if "is not in" in fault]
    panel.setMinimumWidth(600)
    settle()
    assert [fault for fault in faults(page) if "is not in" in fault]


def test_what_scrolls_inside_a_page_that_scrolls_and_is_wider_than_it_is_found(panel: QWidget, qtbot: QtBot) -> None:
    column = scrolling(panel)
    column.setObjectName("column")
    outer = QWidget()
    QVBoxLayout(outer).addWidget(column)
    page = scrolling(outer)
    qtbot.addWidget(page)
    page.resize(300, 420)
    page.show()
    settle()
    assert not [fault for fault in faults(page) if "is not in" in fault]
    column.setMinimumWidth(600)
    settle()
    assert [fault for fault in faults(page) if fault.startswith("column at")]


def shorten_words(panel: QWidget) -> None:
    panel.layout().setEnabled(False)  # type: ignore[union-attr]
    part(panel, "words").resize(30, 30)


def squeeze_line(panel: QWidget) -> None:
    panel.layout().setEnabled(False)  # type: ignore[union-attr]
    part(panel, "line").resize(24, 30)


def narrow_box(panel: QWidget) -> None:
    part(panel, "box").setFixedWidth(60)


def overlap(panel: QWidget) -> None:
    panel.layout().setEnabled(False)  # type: ignore[union-attr]
    part(panel, "second").move(part(panel, "first").pos())


def push_out(panel: QWidget) -> None:
    panel.layout().setEnabled(False)  # type: ignore[union-attr]
    part(panel, "box").move(10, 410)


def shrink(panel: QWidget) -> None:
    part(panel, "first").setFixedHeight(30)


def unname(panel: QWidget) -> None:
    part(panel, "field").setAccessibleName("")


def jump(panel: QWidget) -> None:
    panel.layout().setEnabled(False)  # type: ignore[union-attr]
    part(panel, "first").setGeometry(220, 200, 90, 52)
    part(panel, "second").setGeometry(10, 100, 90, 52)


@pytest.mark.parametrize(
    ("plant", "told"),
    [
        (shorten_words, "words: “A fire of two splits” needs"),
        (squeeze_line, "line: no way to say"),
        (narrow_box, "box: “bread” needs"),
        (overlap, "first .* lies over second"),
        (push_out, "box at .* is not in"),
        (shrink, "first is"),
        (unname, "field has no accessible name"),
        (jump, "Tab jumps from first"),
    ],
    ids=lambda one: getattr(one, "__name__", ""),
)
def test_a_planted_fault_is_found(panel: QWidget, plant: Callable[[QWidget], None], told: str) -> None:
    plant(panel)
    settle()
    found = faults(panel, targets=True)
    assert any(re.match(told, one) for one in found), found


def test_a_key_that_shows_no_focus_is_found(panel: QWidget) -> None:
    blind = Blind("Air", parent=panel)
    blind.setObjectName("blind")
    blind.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    blind.setGeometry(200, 10, 90, 52)
    blind.show()
    assert list(unlit(panel)) == ["blind looks the same with the keyboard as without"]
