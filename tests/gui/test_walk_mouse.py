"""The same four walks by mouse alone; only what is typed comes from a keyboard on the screen."""

from datetime import timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QObject, QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QFileDialog, QLineEdit, QListView, QMenu, QWidget
from pytestqt.qtbot import QtBot

from cookstove_gui.desk.plan.kept_pots import kept_pots
from cookstove_gui.gui.drawn_stove.spot_patch import SpotPatch
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.stove.entries import Kind
from tests.gui.clipping import controls, settle
from tests.gui.hands import control
from tests.gui.pages import keep_session, light
from tests.gui.walking import answered, kinds
from tests.held_clock import HeldClock

pytestmark = [
    pytest.mark.gui,
    pytest.mark.qt_log_ignore("does not support (raise|grabbing)"),  # what the screenless platform says of open lists
]


def press(window: MainWindow, name: str) -> None:
    """Press what is seen of that name where it is on the screen, and nothing else may lie over it."""
    part = next((one for one in window.findChildren(QWidget, name) if one.isVisible()), None)
    assert part is not None, f"{name} is not shown"
    middle = part.mapTo(window, part.rect().center())
    hit = window.childAt(middle)
    assert hit is part or part.isAncestorOf(hit), f"{hit.objectName() if hit else 'nothing'} lies over {name}"
    QTest.mouseClick(hit, Qt.MouseButton.LeftButton, pos=hit.mapFrom(window, middle))
    settle()


def put(window: MainWindow, name: str, text: str) -> None:
    """Text into a field that was pressed, from a keyboard on the screen."""
    press(window, name)
    field = QApplication.focusWidget()
    assert isinstance(field, QLineEdit)
    field.selectAll()
    field.insert(text)
    field.textEdited.emit(text)


def more(window: MainWindow, begins: str) -> None:
    """A line of the list under More, which a caution covers until it is read."""
    while control(window, "caution_press", QWidget).isVisible():
        press(window, "caution_press")
    press(window, "more")
    menu = next(one for one in QApplication.topLevelWidgets() if isinstance(one, QMenu) and one.isVisible())
    wanted = next(action for action in menu.actions() if action.text().startswith(begins))
    QTest.mouseClick(menu, Qt.MouseButton.LeftButton, pos=menu.actionGeometry(wanted).center())
    settle()


def pick(window: MainWindow, name: str, place: int) -> None:
    """The entry at a place of a chooser that opens."""
    box, usual = control(window, name, QComboBox), QApplication.doubleClickInterval()
    QApplication.setDoubleClickInterval(1)  # so long an open list takes no press, lest the one that opened it chooses
    press(window, name)
    view = box.view()
    at = view.visualRect(view.model().index(place, 0)).center()
    QTest.mouseMove(view.viewport(), at)
    QTest.qWait(5)
    QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=at)
    QApplication.setDoubleClickInterval(usual)
    settle()
    assert not view.isVisible(), f"nothing was chosen of {name}"


def test_a_first_owner(opened: MainWindow, qtbot: QtBot) -> None:
    press(opened, "way_draw")
    press(opened, "six_fired_new")
    for _ in range(6):
        press(opened, "six_next")
    assert opened.desk.stove.is_new
    press(opened, "page_cook")
    press(opened, "fire_lit")
    press(opened, "fire_wood")
    press(opened, "choice_1")
    patch = opened.findChildren(SpotPatch)[0]
    QTest.mouseClick(patch, Qt.MouseButton.LeftButton)
    put(opened, "number_field", "95")
    press(opened, "enter")
    assert kinds(opened.desk) == [Kind.LIT, Kind.WOOD, Kind.READING]
    answered(opened, qtbot)


def test_a_baker_corrects_takes_back_and_does_again(opened: MainWindow, qtbot: QtBot) -> None:
    press(opened, "way_light")
    for heat in ("120", "240"):
        put(opened, "number_field", heat)
        press(opened, "enter")
    answered(opened, qtbot)
    press(opened, "fire_oven_door")
    press(opened, "choice_3")
    press(opened, "choice_1")
    assert kinds(opened.desk)[-1] is Kind.OVEN_IN
    press(opened, "undo")
    assert kinds(opened.desk)[-1] is Kind.READING
    more(opened, "Do again")
    assert kinds(opened.desk)[-1] is Kind.OVEN_IN
    press(opened, "entry_heading")
    assert control(opened, "entries_over", QWidget).isVisible()
    press(opened, "row_take_back")
    assert kinds(opened.desk)[-1] is Kind.READING
    press(opened, "rows_close")
    more(opened, "The lit spot on the walk")
    assert control(opened, "chooser", QWidget).isVisible()
    press(opened, "chooser_cancel")
    assert not control(opened, "chooser", QWidget).isVisible()


def test_four_pots(opened: MainWindow, qtbot: QtBot) -> None:
    clock = opened.desk.clock
    assert isinstance(clock, HeldClock)
    light(opened.desk, clock)
    answered(opened, qtbot)
    press(opened, "page_plan")
    press(opened, "part_pots")
    answered(opened, qtbot)
    for place in (2, 3, 4, 5):
        pick(opened, "pots_add", place)
        answered(opened, qtbot)
    assert len(kept_pots(opened.desk).pots) == 4
    press(opened, "page_cook")
    press(opened, "fire_pan")
    press(opened, "lid_on")
    press(opened, "choice_1")
    assert (kinds(opened.desk)[-1], opened.desk.entries[-1].note) == (Kind.PAN, "lid")


def test_a_visitors_report(
    opened: MainWindow,
    qtbot: QtBot,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    keep_session(opened.desk, "Sunday bread", opened.desk.clock() - timedelta(days=4))
    written = tmp_path / "report.html"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_, **__: (str(written), "HTML (*.html)"))
    press(opened, "page_logbook")
    rows = control(opened, "session_list", QListView)
    QTest.mouseClick(rows.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(40, 20))
    settle()
    press(opened, "session_report")
    press(opened, "session_report_html")
    qtbot.waitUntil(written.exists, timeout=20_000)
    assert "Sunday bread" in written.read_text(encoding="utf-8")


def test_what_stands_over_all_pages_is_left_by_a_press(opened: MainWindow) -> None:
    press(opened, "large")
    press(opened, "large_view")
    assert control(opened, "cook_page", QWidget).isVisible()
    more(opened, "All keys")
    press(opened, "keys_back")
    assert control(opened, "cook_page", QWidget).isVisible()


def test_nothing_lies_over_a_control_of_the_cook_page(opened: MainWindow, qtbot: QtBot) -> None:
    clock = opened.desk.clock
    assert isinstance(clock, HeldClock)
    light(opened.desk, clock)
    answered(opened, qtbot)
    for part in controls(opened):
        if isinstance(part, SpotPatch):
            continue
        hit = opened.childAt(part.mapTo(opened, part.rect().center()))
        assert hit is part or part.isAncestorOf(hit), f"{hit} lies over {part.objectName()}"


class _Windows(QObject):
    """Notes what is shown as a window of its own."""

    def __init__(self) -> None:
        super().__init__()
        self.seen: list[str] = []

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.Show and isinstance(watched, QWidget) and watched.isWindow():
            self.seen.append(watched.objectName() or type(watched).__name__)
        return False


def test_no_part_of_a_page_flashes_up_as_a_window_of_its_own(opened: MainWindow, qtbot: QtBot) -> None:
    keep_session(opened.desk, "Sunday bread", opened.desk.clock() - timedelta(days=4))
    app, windows = QApplication.instance(), _Windows()
    assert app is not None
    app.installEventFilter(windows)
    for page in ("page_plan", "page_my_stove", "page_logbook"):
        press(opened, page)
        answered(opened, qtbot)
    app.removeEventFilter(windows)
    assert windows.seen == []
