"""What a cook's hands do in a test: find a control by its name, press keys, click."""

from typing import TypeVar

from PySide6.QtCore import QItemSelectionModel, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractItemView, QApplication, QLabel, QLineEdit, QPushButton, QTableView, QWidget

Found = TypeVar("Found", bound=QWidget)


def control(inside: QWidget, name: str, kind: type[Found]) -> Found:
    """The control of that name; a test fails when there is none."""
    found = inside.findChild(kind, name)
    assert found is not None, f"no control {name}"
    return found


def click(inside: QWidget, name: str) -> None:
    """Press a button with the mouse."""
    QTest.mouseClick(control(inside, name, QPushButton), Qt.MouseButton.LeftButton)


def push(inside: QWidget, name: str) -> None:
    """Press a button that is seen, with the keyboard."""
    wanted = control(inside, name, QPushButton)
    assert wanted.isVisibleTo(inside), f"{name} is not shown"
    assert wanted.isEnabled(), f"{name} cannot be pressed"
    wanted.setFocus()
    QTest.keyClick(wanted, Qt.Key.Key_Space)
    QApplication.processEvents()


def type_in(inside: QWidget, name: str, text: str) -> None:
    """Type into a line that is seen, in the place of what stands there, and press Enter."""
    line = control(inside, name, QLineEdit)
    assert line.isVisibleTo(inside), f"{name} is not shown"
    line.setFocus()
    line.selectAll()
    if text:
        QTest.keyClicks(line, text)
    else:
        QTest.keyClick(line, Qt.Key.Key_Delete)
    QTest.keyClick(line, Qt.Key.Key_Return)
    QApplication.processEvents()


def type_text(inside: QWidget, text: str) -> None:
    """Type into whatever has the keyboard, key by key."""
    QTest.keyClicks(_focused(inside), text)


def press(inside: QWidget, key: Qt.Key, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
    """Press one key in whatever has the keyboard."""
    QTest.keyClick(_focused(inside), key, modifier)
    QApplication.processEvents()


def ctrl(inside: QWidget, key: Qt.Key) -> None:
    """Press a key together with Ctrl."""
    press(inside, key, Qt.KeyboardModifier.ControlModifier)


def enter_number(inside: QWidget, text: str) -> None:
    """Type and press Enter."""
    type_text(inside, text)
    press(inside, Qt.Key.Key_Return)


def words(inside: QWidget, name: str) -> str:
    """What a label says."""
    return control(inside, name, QLabel).text()


def seen(inside: QWidget, name: str) -> str:
    """What a label says; empty while it is not shown."""
    label = control(inside, name, QLabel)
    return label.text() if label.isVisibleTo(inside) else ""


def rows(inside: QWidget, name: str) -> list[list[str]]:
    """What the list of that name shows."""
    return rows_of(control(inside, name, QAbstractItemView))


def rows_of(view: QAbstractItemView) -> list[list[str]]:
    """What a list shows, row by row, a text a column."""
    model = view.model()
    columns = view.horizontalHeader().count() if isinstance(view, QTableView) else 1
    return [[str(model.index(row, column).data()) for column in range(columns)] for row in range(model.rowCount())]


def lines(inside: QWidget, name: str) -> list[str]:
    """What a list shows in its first column, line by line."""
    return [row[0] for row in rows(inside, name)]


def mark(inside: QWidget, name: str, place: int) -> None:
    """Give a list the keyboard, with one of its rows marked."""
    view = control(inside, name, QAbstractItemView)
    view.setFocus()
    model = view.selectionModel()
    model.setCurrentIndex(view.model().index(place, 0), QItemSelectionModel.SelectionFlag.ClearAndSelect)


def _focused(inside: QWidget) -> QWidget:
    focused = inside.focusWidget()
    assert focused is not None, "nothing has the keyboard"
    return focused
