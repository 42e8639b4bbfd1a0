"""A caution beside an answer: its sign, and what it says."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QWidget

from cookstove_gui.gui.widgets.form import words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.signs import Sign
from cookstove_gui.gui.widgets.theme import STEP


class CautionLine(QWidget):
    """Takes no room while there is nothing to say."""

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._words = words(role="caution", name=name)
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(STEP)
        line.addWidget(Sign("caution", look), 0, Qt.AlignmentFlag.AlignTop)
        line.addWidget(self._words, 1)
        self.hide()

    def say(self, text: str) -> None:
        """Say this; nothing hides it."""
        self._words.setText(text)
        self.setVisible(bool(text))
