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


@pytest.fixture(params=PAGES)
def parts(request, qtbot):
    """Each part of a page in turn, on the screen with things to show in it."""
    name, size = request.param, SIZES[-1]
    desk = held_desk()
    keep_session(desk, "Sunday bread", NOW - timedelta(days=4))
    desk.open_session(keep_session(desk, "Today", NOW - timedelta(minutes=95)))
    checks.add_instrument(desk, "spot gun", "infrared")
    page, _ = shown(qtbot, desk, PAGES[name], size)
    sections = page.findChild(Sections)
    keys = [button.objectName().removeprefix("part_") for button in page.findChildren(QPushButton)]

    def each(size=size):
        page.resize(*size)
        for key in (key for key in keys if page.findChild(QWidget, f"scroll_{key}") is not None):
            sections.choose(key)
            qtbot.waitUntil(lambda: not any(part.is_busy for part in getattr(page, "_parts", ())), timeout=10000)
            for _ in range(3):  # words that came in change the heights, and those the places
                QApplication.processEvents()
            yield page

    return each


def seen(page, kind):
    return [one for one in page.findChildren(kind) if one.isVisible() and not one.objectName().startswith("qt_")]


def controls(page):
    found = [*seen(page, QPushButton), *seen(page, QLineEdit), *seen(page, QComboBox), *seen(page, QAbstractItemView)]
    return [one for one in found if one.focusPolicy() is not Qt.FocusPolicy.NoFocus]


def test_every_control_has_a_name_to_find_it_by_and_one_to_be_read_out(parts):
    for page in parts():
        for part in controls(page):
            assert part.objectName(), f"{part} has no object name"
            assert part.accessibleName(), f"{part.objectName()} has no accessible name"
            assert part.toolTip(), f"{part.objectName()} has no tooltip"


def test_every_target_is_large_enough_to_press(parts):
    for page in parts():
        for part in controls(page):
            size = part.size()
            assert min(size.width(), size.height()) >= LEAST_TARGET, f"{part.objectName()} is {size}"


def test_all_type_is_large_enough_to_read(parts):
    for page in parts():
        for one in [*seen(page, QLabel), *seen(page, QAbstractButton), *controls(page)]:
            assert one.font().pixelSize() >= LEAST_PIXELS, f"{one.objectName()} is {one.font().pixelSize()} px"


@pytest.mark.parametrize("size", SIZES, ids=str)
def test_no_words_are_clipped(parts, size):
    for page in parts(size):
        for label in seen(page, QLabel):
            if label.text():
                needed = label.heightForWidth(label.width()) if label.wordWrap() else label.sizeHint().height()
                assert label.height() >= needed - 1, f"{label.objectName()}: {label.text()[:50]}"
                if not label.wordWrap():
                    wide = label.shown_width if isinstance(label, OneLine) else label.sizeHint().width()
                    assert label.width() >= wide - 1, f"{label.objectName()}: {label.text()}"
        for button in seen(page, QPushButton):
            words = button.fontMetrics().horizontalAdvance(button.text())
            assert button.width() >= words, f"{button.objectName()} is too narrow for {button.text()}"


def test_tab_reaches_every_control(parts):
    for page in parts():
        wanted = {
            one.objectName() for one in controls(page) if not one.objectName().startswith("part_") and one.isEnabled()
        }
        first = controls(page)[0]
        first.setFocus()
        reached = set()
        for _ in range(3 * len(controls(page)) + 6):
            QTest.keyClick(QApplication.focusWidget() or page, Qt.Key.Key_Tab)
            if QApplication.focusWidget() is not None:
                reached.add(QApplication.focusWidget().objectName())
        # Of buttons that stand for one choice Tab stops at one, and arrows go on to the others.
        for button in seen(page, QPushButton):
            if button.group() is not None and reached & {other.objectName() for other in button.group().buttons()}:
                reached.add(button.objectName())
        assert wanted <= reached, f"never reached: {sorted(wanted - reached)}"


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
