"""Every control of the other pages can be reached, read and pressed: names, type, targets, nothing clipped."""

from datetime import timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QApplication,
    QComboBox,
    QLabel,
    QLineEdit,
    QPushButton,
    QWidget,
)

from cookstove_gui.desk.my_stove import checks
from cookstove_gui.gui.logbook.page import LogbookPage
from cookstove_gui.gui.my_stove.page import MyStovePage
from cookstove_gui.gui.plan.page import PlanPage
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.sections import Sections
from cookstove_gui.stove.stove import Firebox
from tests.gui.hands import control
from tests.gui.pages import NOW, held_desk, keep_session, shown

pytestmark = [pytest.mark.gui, pytest.mark.usefixtures("worked_out_once")]

SIZES = [(1280, 640), (1024, 460)]  # what the window leaves to a page at 1280 × 800 and 1024 × 768
PAGES = {"plan": PlanPage, "my_stove": MyStovePage, "logbook": LogbookPage}
LEAST_TARGET = 40  # px, of anything that is pressed
LEAST_PIXELS = 14


def seen(page, kind):
    return [one for one in page.findChildren(kind) if one.isVisible() and not one.objectName().startswith("qt_")]


def controls(page):
    found = [*seen(page, QPushButton), *seen(page, QLineEdit), *seen(page, QComboBox), *seen(page, QAbstractItemView)]
    return [one for one in found if one.focusPolicy() is not Qt.FocusPolicy.NoFocus]


def unnamed(page):
    """Controls without a name to find them by, one to be read out, or a tooltip."""
    for part in controls(page):
        if not part.objectName() or not part.accessibleName() or not part.toolTip():
            yield f"{part.objectName() or part} lacks a name, an accessible name or a tooltip"


def too_small(page):
    """Controls too small to press, and type too small to read."""
    for part in controls(page):
        if min(part.width(), part.height()) < LEAST_TARGET:
            yield f"{part.objectName()} is {part.size()}"
    for one in [*seen(page, QLabel), *seen(page, QAbstractButton), *controls(page)]:
        if one.font().pixelSize() < LEAST_PIXELS:
            yield f"{one.objectName()} is written at {one.font().pixelSize()} px"


def clipped(page):
    """Words that have too little room."""
    for label in (label for label in seen(page, QLabel) if label.text()):
        needed = label.heightForWidth(label.width()) if label.wordWrap() else label.sizeHint().height()
        if label.height() < needed - 1:
            yield f"{label.objectName()} is too low for {label.text()[:50]}"
        if not label.wordWrap():
            wide = label.shown_width if isinstance(label, OneLine) else label.sizeHint().width()
            if label.width() < wide - 1:
                yield f"{label.objectName()} is too narrow for {label.text()}"
    for button in seen(page, QPushButton):
        if button.width() < button.fontMetrics().horizontalAdvance(button.text()):
            yield f"{button.objectName()} is too narrow for {button.text()}"


def unreached(page):
    """Controls at which Tab never stops."""
    wanted = {
        one.objectName() for one in controls(page) if not one.objectName().startswith("part_") and one.isEnabled()
    }
    controls(page)[0].setFocus()
    reached = set()
    for _ in range(3 * len(controls(page)) + 6):
        QTest.keyClick(QApplication.focusWidget() or page, Qt.Key.Key_Tab)
        if QApplication.focusWidget() is not None:
            reached.add(QApplication.focusWidget().objectName())
    # Of buttons that stand for one choice Tab stops at one, and arrows go on to the others.
    for button in seen(page, QPushButton):
        if button.group() is not None and reached & {other.objectName() for other in button.group().buttons()}:
            reached.add(button.objectName())
    yield from (f"Tab never reaches {name}" for name in sorted(wanted - reached))


@pytest.mark.parametrize("name", PAGES)
def test_every_part_can_be_reached_read_and_pressed(qtbot, name):
    """Each part of a page in turn, on the screen with things to show in it, at both sizes."""
    desk = held_desk()
    keep_session(desk, "Sunday bread", NOW - timedelta(days=4))
    desk.open_session(keep_session(desk, "Today", NOW - timedelta(minutes=95)))
    checks.add_instrument(desk, "spot gun", "infrared")
    page, _ = shown(qtbot, desk, PAGES[name], SIZES[0])
    sections = page.findChild(Sections)
    keys = [button.objectName().removeprefix("part_") for button in page.findChildren(QPushButton)]
    keys = [key for key in keys if page.findChild(QWidget, f"scroll_{key}") is not None]
    assert keys
    found = []
    for size in SIZES:
        page.resize(*size)
        for key in keys:
            sections.choose(key)
            busy = [part for part in getattr(page, "_parts", ()) if hasattr(part, "is_busy")]
            qtbot.waitUntil(lambda busy=busy: not any(part.is_busy for part in busy), timeout=10000)
            for _ in range(3):  # words that came in change the heights, and those the places
                QApplication.processEvents()
            faults = clipped(page)
            if size == SIZES[-1]:
                faults = [*faults, *unnamed(page), *too_small(page), *unreached(page)]
            found += [f"{key} at {size}: {fault}" for fault in faults]
    assert not found, "\n".join(found)


def test_arrows_go_from_one_button_of_a_choice_to_the_next(qtbot):
    desk = held_desk()
    page, _ = shown(qtbot, desk, MyStovePage)
    with qtbot.waitActive(page):
        page.activateWindow()
    left = control(page, "firebox_left", QPushButton)
    left.setFocus()
    QTest.keyClick(left, Qt.Key.Key_Right)
    assert QApplication.focusWidget().objectName() == "firebox_right"
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Space)
    assert desk.stove.firebox is Firebox.RIGHT
