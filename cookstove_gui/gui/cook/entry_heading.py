"""The line over the number field: the lit spot and its last reading at the left, what was saved at the right."""

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QMouseEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QWidget

from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role


class EntryHeading(QWidget):
    """Where it is tight, the last reading goes first, then the longer words of what was saved, then their verb."""

    entries_wanted = Signal()  # what was saved was pressed

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("entry_heading")
        self.setToolTip("Press for the list of entries (Ctrl+R)")
        self._words, self._short = "", ""
        self._spot = _label("lit_spot", "heading")
        self._last = _label("last_reading", "place")
        self._verb = _label("said_verb", "place")
        self._said = _label("said", "said")
        row = QHBoxLayout(self)
        row.setSizeConstraint(QHBoxLayout.SizeConstraint.SetNoConstraint)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(STEP)
        row.addWidget(self._spot)
        row.addWidget(self._last)
        row.addStretch(1)
        row.addWidget(self._verb)
        row.addWidget(self._said)

    def show_spot(self, name: str, last: str = "") -> None:
        """The spot that the next number goes to, and what was last read there."""
        self._spot.setText(name)
        self._last.setText(last)
        self._fit()

    def say(self, verb: str, words: str = "", short: str = "", *, in_question: bool = False) -> None:
        """What was done, as `saved` and `oven centre 385 °F`; `short` is said where that is too long."""
        self._words, self._short = words, short or words
        self._verb.setText(verb)
        set_role(self._said, "doubted" if in_question else "said")
        self.setToolTip(f"{verb} {words}. Press for the list of entries (Ctrl+R)".strip())
        self._fit()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """The line about the latest entry opens them all."""
        if self.rect().contains(event.position().toPoint()):
            self.entries_wanted.emit()

    def minimumSizeHint(self) -> QSize:
        """As narrow as may be, for the words are cut to the room."""
        return QSize(0, super().sizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Choose the words for the room."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        verb = _wide(self._verb, self._verb.text()) + STEP
        room = self.width() - _wide(self._spot, self._spot.text()) - verb - 3 * STEP
        words = self._words if _wide(self._said, self._words) <= room else self._short
        says_verb = not words or _wide(self._said, words) <= room
        self._verb.setVisible(says_verb)
        room += 0 if says_verb else verb
        metrics = self._said.fontMetrics()
        self._said.setText(metrics.elidedText(words, Qt.TextElideMode.ElideRight, max(int(room), 0)))
        left = room - _wide(self._said, words) - STEP
        self._last.setVisible(bool(self._last.text()) and _wide(self._last, self._last.text()) <= left)


def _wide(label: QLabel, text: str) -> float:
    return QFontMetricsF(label.font()).horizontalAdvance(text) if text else 0.0


def _label(name: str, role: str) -> QLabel:
    made = QLabel()
    made.setObjectName(name)
    set_role(made, role)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
    return made
