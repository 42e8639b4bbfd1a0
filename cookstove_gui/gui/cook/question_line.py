"""A question about an entry, in the place of the fire keys: keep it, correct it, or take it in the other unit."""

from PySide6.QtCore import QEvent, QRectF, Qt, Signal, SignalInstance
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.desk.log.questions import Question
from cookstove_gui.gui.widgets.key import Key, named_key
from cookstove_gui.gui.widgets.signs import SIDE, paint_caution
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import set_role


class QuestionLine(QWidget):
    """One question at a time; the entry is in the log in any case."""

    kept = Signal(int)  # number of the entry
    correction_wanted = Signal(int)
    other_unit_meant = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._asked: Question | None = None
        self.setObjectName("question_line")
        self._words = QLabel()
        self._words.setObjectName("question")
        set_role(self._words, "strong")
        self._words.setWordWrap(True)
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Expanding)
        self._words.setAlignment(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft)
        self._keep = _key("keep", "Keep", "Ctrl K", "Keep the number as typed (Ctrl+K)")
        self._other = _key("other_unit", "", "Ctrl O", "It was read in the other unit (Ctrl+O)")
        self._correct = _key("correct", "Correct", "Ctrl M", "Type what it should be (Ctrl+M)")
        for key, told in (
            (self._keep, self.kept),
            (self._other, self.other_unit_meant),
            (self._correct, self.correction_wanted),
        ):
            key.clicked.connect(lambda _checked=False, told=told: self._tell(told))
        keys = QHBoxLayout()
        keys.setSpacing(0)
        for key in (self._keep, self._other, self._correct):
            keys.addWidget(key, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._words, 1)
        column.addLayout(keys)
        self._indent()

    def changeEvent(self, event: QEvent) -> None:
        """The words keep clear of the sign at every size."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.StyleChange:
            self._indent()

    @property
    def asked(self) -> Question | None:
        """The question on view."""
        return self._asked

    def ask(self, question: Question | None, typed: str = "") -> None:
        """Put a question about an entry that was typed so; none takes the present one away."""
        self._asked = question
        self._words.setText(question.sentence if question else "")
        self._keep.setText(f"Keep {typed}".strip())
        self._keep.setAccessibleName(f"Keep {typed} as typed (Ctrl+K)")
        unit = question.other_unit if question else ""
        self._other.setText(f"It was °{unit}")
        self._other.setVisible(bool(unit))

    def _tell(self, answer: SignalInstance) -> None:
        if self._asked is not None:
            answer.emit(self._asked.number)

    def _indent(self) -> None:
        self._words.setContentsMargins(px(SIDE + 8), 0, 0, 0)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The sign before the sentence."""
        tokens = self.palette()
        side = px(SIDE)
        line = self._words.geometry()
        box = QRectF(0, line.center().y() - side / 2, side, side)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint_caution(
            painter, box, tokens.color(QPalette.ColorRole.BrightText), tokens.color(QPalette.ColorRole.Window)
        )


def _key(name: str, text: str, keys: str, what: str) -> Key:
    return named_key(text, name, what, said=what, keys=keys, by_enter=False)
