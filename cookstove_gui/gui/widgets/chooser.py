"""A small chooser in place, never a dialog: a question, a few answers with a digit key each, perhaps a field."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.modest_field import ModestField
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """One answer: the digit that picks it, its word, and what it stands for."""

    key: str
    words: str
    value: str


class Chooser(QWidget):
    """Digits pick, arrows move, letters and Tab go to the field, Escape leaves."""

    chosen = Signal(str)  # the value of an answer
    typed = Signal(str)  # what stands in the field
    left = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("chooser")
        self._answers: tuple[Answer, ...] = ()
        self._buttons: list[QPushButton] = []
        self._question = QLabel()
        set_role(self._question, "heading")
        self._question.setObjectName("chooser_question")
        self._field = ModestField()
        self._field.setObjectName("chooser_field")
        self._field.returnPressed.connect(lambda: self.typed.emit(self._field.text()))
        self._cancel = Key("Esc")
        self._cancel.setObjectName("chooser_cancel")
        self._cancel.setAccessibleName("Leave without entering anything")
        self._cancel.setToolTip("Leave without entering anything (Escape)")
        set_role(self._cancel, "quiet")
        self._cancel.clicked.connect(self.left)
        top = QHBoxLayout()
        top.setSpacing(STEP)
        top.addWidget(self._question)
        top.addWidget(self._field, 1)
        top.addStretch(0)
        top.addWidget(self._cancel)
        self._row = QHBoxLayout()
        self._row.setSpacing(STEP // 2)
        self._first = QLabel()
        self._first.setObjectName("chooser_first")
        set_role(self._first, "caution")
        self._first.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        column.addLayout(top)
        column.addLayout(self._row)
        column.addWidget(self._first)
        column.addStretch(1)

    def ask(self, question: str, answers: Sequence[Answer], field_hint: str = "", first: str = "") -> None:
        """Put a question; the first answer, or the field if there are none, has the keyboard.

        `first` is a caution that is shown with it.
        """
        self._first.setText(first)
        self._first.setVisible(bool(first))
        self._answers = tuple(answers)
        self._question.setText(question)
        for old in self._buttons:
            self._row.removeWidget(old)
            old.hide()
            old.deleteLater()
        self._buttons = []
        for answer in self._answers:
            button = Key(answer.words, answer.key)
            button.setObjectName(f"choice_{answer.key}")
            button.setAccessibleName(f"{question}: {answer.words}")
            button.setToolTip(f"{answer.words} (key {answer.key})")
            button.clicked.connect(lambda _checked=False, value=answer.value: self.chosen.emit(value))
            button.setAutoDefault(False)
            self._row.addWidget(button, 1)
            button.show()  # so that it can take the keyboard at once, also where a question follows on another
            self._buttons.append(button)
        self._field.clear()
        self._field.setPlaceholderText(field_hint)
        self._field.setAccessibleName(field_hint or question)
        self._field.setVisible(bool(field_hint))

    def take_focus(self) -> None:
        """Give the keyboard to the first answer."""
        (self._buttons[0] if self._buttons else self._field).setFocus(Qt.FocusReason.ShortcutFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Digits, arrows, Enter and Escape."""
        picked = next((answer for answer in self._answers if answer.key == event.text()), None)
        steps = {Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1, Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1}
        focused = self.focusWidget()
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        elif focused is self._field:
            super().keyPressEvent(event)
        elif picked is not None:
            self.chosen.emit(picked.value)
        elif event.key() in steps and isinstance(focused, QPushButton) and focused in self._buttons:
            at = self._buttons.index(focused) + steps[Qt.Key(event.key())]
            self._buttons[at % len(self._buttons)].setFocus(Qt.FocusReason.TabFocusReason)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and isinstance(focused, QPushButton):
            focused.click()
        elif self._field.isVisible() and event.text().strip():
            self._field.setFocus(Qt.FocusReason.OtherFocusReason)
            self._field.setText(event.text())
        else:
            super().keyPressEvent(event)
