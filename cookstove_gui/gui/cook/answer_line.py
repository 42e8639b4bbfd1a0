"""What the desk answers to an entry: done, refused and why, or a question with its two keys. Never a dialog."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role


class AnswerLine(QWidget):
    """One sentence beside the field; a question is answered with Keep (Ctrl+K) or Correct (Ctrl+M)."""

    kept = Signal(int)  # number of the entry
    correction_wanted = Signal(int)
    told = Signal(bool)  # whether there is anything to read

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._number: int | None = None
        self.setObjectName("answer_line")
        self._words = QLabel()
        self._words.setObjectName("answer")
        self._words.setWordWrap(True)
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._words.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self._words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.MinimumExpanding)
        self._keep = _button("keep", "Keep Ctrl+K", "Keep the number as typed (Ctrl+K)")
        self._correct = _button("correct", "Correct Ctrl+M", "Type another number in its place (Ctrl+M)")
        self._keep.clicked.connect(self.keep)
        self._correct.clicked.connect(self._want_correction)
        for button, keys in ((self._keep, "Ctrl+K"), (self._correct, "Ctrl+M")):
            shortcut = QShortcut(QKeySequence(keys), self)
            shortcut.activated.connect(button.click)
        row = QHBoxLayout()
        row.setSpacing(STEP)
        row.addWidget(self._keep, 1)
        row.addWidget(self._correct, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP // 2)
        column.addWidget(self._words, 1)
        column.addLayout(row)
        for button in (self._keep, self._correct):
            button.hide()

    @property
    def asked_about(self) -> int | None:
        """Number of the entry the question is about."""
        return self._number

    @property
    def has_words(self) -> bool:
        """Whether there is anything to read."""
        return bool(self._words.text())

    def say(self, sentence: str) -> None:
        """Say what was done."""
        self._show(sentence, "soft", None)

    def refuse(self, sentence: str) -> None:
        """Say why something was not taken, and how to correct it."""
        self._show(sentence, "problem", None)

    def ask(self, question: str, number: int) -> None:
        """Question an entry; it has been kept in any case."""
        self._show(question, "problem", number)

    def keep(self) -> None:
        """Leave the number as typed."""
        number, self._number = self._number, None
        if number is not None:
            self.say("")
            self.kept.emit(number)

    def _want_correction(self) -> None:
        number, self._number = self._number, None
        if number is not None:
            self.say("")
            self.correction_wanted.emit(number)

    def _show(self, words: str, role: str, number: int | None) -> None:
        self._number = number
        self._words.setText(words)
        set_role(self._words, role)
        for button in (self._keep, self._correct):
            button.setVisible(number is not None)
        self.told.emit(bool(words))


def _button(name: str, text: str, what: str) -> QPushButton:
    made = Key(text)
    made.setObjectName(name)
    made.setAccessibleName(what)
    made.setToolTip(what)
    made.setAutoDefault(False)
    return made
