"""A problem in one sentence with what can be done about it; and the report of an error of our own."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role


class ProblemPane(QWidget):
    """Fills the window: the sentence, and a button for each way out."""

    chosen = Signal(str)  # key of the way out

    def __init__(self, sentence: str, ways_out: Sequence[tuple[str, str]], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sentence = sentence
        self.setObjectName("problem_pane")
        heading = QLabel("The logbook cannot be opened")
        set_role(heading, "next")
        words = QLabel(sentence)
        words.setObjectName("problem_words")
        words.setWordWrap(True)
        words.setTextFormat(Qt.TextFormat.PlainText)
        words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        safe = QLabel("Nothing in it has changed.")
        set_role(safe, "soft")
        row = QHBoxLayout()
        row.setSpacing(STEP)
        for key, text in ways_out:
            button = Key(text)
            button.setObjectName(f"way_{key}")
            button.clicked.connect(lambda _checked=False, wanted=key: self.chosen.emit(wanted))
            row.addWidget(button)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(6 * STEP, 6 * STEP, 6 * STEP, 6 * STEP)
        column.setSpacing(3 * STEP)
        column.addStretch(1)
        for part in (heading, words, safe):
            column.addWidget(part)
        column.addLayout(row)
        column.addStretch(2)


class FaultStrip(QFrame):
    """An error in the program, reported without stopping work; the log is safe on disk."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._details = ""
        self.setObjectName("fault_strip")
        set_role(self, "strip")
        self._words = QLabel()
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._words.setObjectName("fault_words")
        set_role(self._words, "problem")
        self._words.setWordWrap(True)
        copy, close = Key("Copy details"), Key("Close")
        copy.setObjectName("fault_copy")
        close.setObjectName("fault_close")
        copy.setAccessibleName("Copy the details, to be sent on or looked up")
        close.setAccessibleName("Close this message")
        for key in (copy, close):
            key.setToolTip(key.accessibleName())
        copy.clicked.connect(self._copy)
        close.clicked.connect(self.hide)
        row = QHBoxLayout(self)
        row.setContentsMargins(2 * STEP, STEP, 2 * STEP, STEP)
        row.addWidget(self._words, 1)
        row.addWidget(copy)
        row.addWidget(close)
        self.hide()

    def show_fault(self, summary: str, details: str) -> None:
        """Report an error of ours; the details can be copied for whoever corrects it."""
        self._details = details
        self._words.setText(f"The program made an error ({summary}). Everything you entered is in the logbook.")
        self.show()

    def show_problem(self, sentence: str) -> None:
        """Report a problem with a disk or file."""
        self._details = sentence
        self._words.setText(sentence)
        self.show()

    def withdraw(self, sentence: str) -> None:
        """Take a problem back that is over."""
        if self._words.text() == sentence:
            self.hide()

    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(self._details)
