"""The number field: digits are a reading, letters choose a spot, arrows walk round the stove."""

import re

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from cookstove_gui.gui.widgets.modest_field import ModestField
from cookstove_gui.gui.widgets.type import set_role

_NAME_THEN_NUMBER = re.compile(r"\s*(?P<name>[^\W\d](?:[^\W\d]|[\s_])*?)?\s*(?P<number>[-+.,]?\d.*)?\s*", re.DOTALL)


def name_and_number(text: str) -> tuple[str, str]:
    """A spot's name and a number as typed: `back right 415` gives both; either may be empty."""
    match = _NAME_THEN_NUMBER.fullmatch(text)
    if match is None:
        return "", text.strip()
    return (match["name"] or "").strip(), (match["number"] or "").strip()


class NumberField(ModestField):
    """Enter records; up and down go to the previous or next spot; Escape clears."""

    walked = Signal(int)  # spots further along the walk
    left = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("number_field")
        set_role(self, "number")
        self.setAccessibleName("Temperature at the lit-up spot")
        self.setToolTip(
            "A number, then Enter; arrow keys or part of a spot's name choose another spot (Ctrl+E comes here)"
        )
        self.setMaxLength(60)

    def type_digit(self, digit: str) -> None:
        """Take a digit that was typed elsewhere on the page."""
        self.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.insert(digit)
        self.textEdited.emit(self.text())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows walk; Escape clears; everything else is typing."""
        if event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.walked.emit(1 if event.key() == Qt.Key.Key_Down else -1)
        elif event.key() in (Qt.Key.Key_Left, Qt.Key.Key_Right) and not self.text():
            self.walked.emit(1 if event.key() == Qt.Key.Key_Right else -1)
        elif event.key() == Qt.Key.Key_Escape:
            self.clear()
            self.left.emit()
        else:
            super().keyPressEvent(event)
