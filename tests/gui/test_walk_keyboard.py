"""Four walks through the real window by keyboard alone: a first owner, a baker, four pots, a visitor's report."""

from datetime import timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QFileDialog, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.desk.plan.kept_pots import kept_pots
from cookstove_gui.gui.drawn_stove.spot_patch import SpotPatch
from cookstove_gui.gui.my_stove.draw.plus_place import PlusPlace
from cookstove_gui.gui.widgets.sections import Sections
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.stove.entries import Kind
from tests.gui.clipping import controls, settle
from tests.gui.pages import keep_session, light
from tests.gui.walking import answered, kinds
from tests.held_clock import HeldClock

pytestmark = [
    pytest.mark.gui,
    pytest.mark.qt_log_ignore("does not support (raise|grabbing)"),  # what the screenless platform says of open lists
]

_FAR = 150  # presses of Tab, after which a control is not reached


def key(window: MainWindow, pressed: Qt.Key, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
    """One key, to whatever has the keyboard."""
    QTest.keyClick(QApplication.focusWidget() or window, pressed, modifier)
    settle(2)


def typed(window: MainWindow, text: str) -> None:
    """A text and Enter."""
    QTest.keyClicks(QApplication.focusWidget() or window, text)
    key(window, Qt.Key.Key_Return)


def tab_to(window: MainWindow, name: str) -> QWidget:
    """Tab until the control of that name has the keyboard."""
    for _ in range(_FAR):
        at = QApplication.focusWidget()
        if at is not None and at.objectName() == name:
            return at
        key(window, Qt.Key.Key_Tab)
    raise AssertionError(f"Tab never comes to {name}")


def part(window: MainWindow, name: str) -> None:
    """A part of the page by its name: Tab to the names, arrows along them."""
    for _ in range(_FAR):
        at = QApplication.focusWidget()
        if at is not None and at.objectName().startswith("part_"):
            break
        key(window, Qt.Key.Key_Tab)
    for _ in range(30):
        at = QApplication.focusWidget()
        assert isinstance(at, QAbstractButton)
        if at.objectName() == f"part_{name}":
            key(window, Qt.Key.Key_Space)
            return
        key(window, Qt.Key.Key_Right)
    raise AssertionError(f"arrows never come to {name}")


def test_a_first_owner(opened: MainWindow, qtbot: QtBot) -> None:
    key(opened, Qt.Key.Key_1)  # draw my stove
    tab_to(opened, "six_fired_used")
    key(opened, Qt.Key.Key_Right)  # not fired before: new
    key(opened, Qt.Key.Key_Space)
    for _ in range(6):
        tab_to(opened, "six_next")
        key(opened, Qt.Key.Key_Space)
    assert opened.desk.stove.is_new
    key(opened, Qt.Key.Key_F1)
    key(opened, Qt.Key.Key_F5)
    key(opened, Qt.Key.Key_F6)
    key(opened, Qt.Key.Key_1)
    key(opened, Qt.Key.Key_E, Qt.KeyboardModifier.ControlModifier)
    typed(opened, "95")
    assert kinds(opened.desk) == [Kind.LIT, Kind.WOOD, Kind.READING]
    answered(opened, qtbot)
    assert opened.desk.standing is not None
    assert opened.desk.standing.first_fires.next is not None


def test_a_baker(opened: MainWindow, qtbot: QtBot) -> None:
    key(opened, Qt.Key.Key_3)  # light the fire
    clock = opened.desk.clock
    assert isinstance(clock, HeldClock)
    key(opened, Qt.Key.Key_B, Qt.KeyboardModifier.ControlModifier)
    typed(opened, "375-425")
    assert opened.desk.band.name != "bread"
    for minutes, heat in ((9, "oven 120"), (9, "oven 240"), (9, "oven 345")):
        clock.pass_minutes(minutes)
        key(opened, Qt.Key.Key_E, Qt.KeyboardModifier.ControlModifier)
        typed(opened, heat)
    answered(opened, qtbot)
    key(opened, Qt.Key.Key_F9)
    key(opened, Qt.Key.Key_3)  # food in
    key(opened, Qt.Key.Key_1)
    assert kinds(opened.desk)[-1] is Kind.OVEN_IN
    key(opened, Qt.Key.Key_R, Qt.KeyboardModifier.ControlModifier)
    key(opened, Qt.Key.Key_Delete)
    assert Kind.OVEN_IN not in kinds(opened.desk)
    key(opened, Qt.Key.Key_Escape)
    key(opened, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert kinds(opened.desk)[-1] is Kind.OVEN_IN


def test_four_pots(opened: MainWindow, qtbot: QtBot) -> None:
    clock = opened.desk.clock
    assert isinstance(clock, HeldClock)
    light(opened.desk, clock)
    answered(opened, qtbot)
    key(opened, Qt.Key.Key_F2)
    part(opened, "pots")
    tab_to(opened, "pots_add")
    for _ in range(4):
        key(opened, Qt.Key.Key_Insert)
        popup = QApplication.activePopupWidget()
        assert popup is not None, "Ins does not open the list of tasks"
        key(opened, Qt.Key.Key_Down)
        key(opened, Qt.Key.Key_Return)
        answered(opened, qtbot)
    assert len(kept_pots(opened.desk).pots) == 4
    key(opened, Qt.Key.Key_F1)
    key(opened, Qt.Key.Key_F10)
    key(opened, Qt.Key.Key_L)
    key(opened, Qt.Key.Key_Return)
    assert (kinds(opened.desk)[-1], opened.desk.entries[-1].note) == (Kind.PAN, "lid")


def test_a_visitors_report(opened: MainWindow, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    keep_session(opened.desk, "Sunday bread", opened.desk.clock() - timedelta(days=4))
    written = tmp_path / "report.html"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_, **__: (str(written), "HTML (*.html)"))
    key(opened, Qt.Key.Key_F4)
    answered(opened, qtbot)
    rows = tab_to(opened, "session_list")
    QTest.keyClick(rows, Qt.Key.Key_Home)
    settle()
    key(opened, Qt.Key.Key_Return)
    settle()
    tab_to(opened, "session_report")
    key(opened, Qt.Key.Key_Space)
    tab_to(opened, "session_report_html")
    key(opened, Qt.Key.Key_Space)
    qtbot.waitUntil(written.exists, timeout=20_000)
    assert "Sunday bread" in written.read_text(encoding="utf-8")


def test_every_control_of_every_page_is_reached(opened: MainWindow, qtbot: QtBot) -> None:
    clock = opened.desk.clock
    assert isinstance(clock, HeldClock)
    keep_session(opened.desk, "Sunday bread", clock() - timedelta(days=4))
    light(opened.desk, clock)
    answered(opened, qtbot)
    for page in ("cook", "plan", "my_stove", "logbook"):
        opened.show_page(page)
        settle()
        sections = next((one for one in opened.findChildren(Sections) if one.isVisible()), None)
        for name in sections.keys if sections is not None else ("",):
            if sections is not None:
                sections.choose(name)
            settle()
            unreached = unreached_controls(opened)
            assert not unreached, f"{page}, {name}: Tab and arrows do not come to {', '.join(unreached)}"


def unreached_controls(window: MainWindow) -> list[str]:
    """Names of the controls seen that the keyboard does not come to."""
    wanted = {one for one in controls(window) if one.isEnabled()}
    reached: set[QWidget] = set()
    start = window.nextInFocusChain()
    at = start
    while at is not None:
        if at.focusPolicy() & Qt.FocusPolicy.TabFocus:
            reached.add(at)
        at = at.nextInFocusChain()
        if at is start:
            break
    groups = {one.group() for one in reached if isinstance(one, QAbstractButton) and one.group() is not None}
    return [
        one.objectName() or type(one).__name__
        for one in wanted - reached
        if not (isinstance(one, QAbstractButton) and one.group() in groups)
        and not isinstance(one, SpotPatch | PlusPlace)  # one of them by Tab, the others by arrows
    ]
