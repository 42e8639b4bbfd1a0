"""What a cook's hands do in a test: find a control by its name, press keys, click."""

from typing import TypeVar

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QListWidget, QPushButton, QWidget

Found = TypeVar("Found", bound=QWidget)


def control(inside: QWidget, name: str, kind: type[Found]) -> Found:
    """The control of that name; a test fails when there is none."""
    found = inside.findChild(kind, name)
    assert found is not None, f"no control {name}"
    return found


def click(inside: QWidget, name: str) -> None:
    """Press a button with the mouse."""
    QTest.mouseClick(control(inside, name, QPushButton), Qt.MouseButton.LeftButton)


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


def lines(inside: QWidget, name: str) -> list[str]:
    """What a list shows, line by line."""
    rows = control(inside, name, QListWidget)
    return [rows.item(number).text() for number in range(rows.count())]


def _focused(inside: QWidget) -> QWidget:
    focused = inside.focusWidget()
    assert focused is not None, "nothing has the keyboard"
    return focused
