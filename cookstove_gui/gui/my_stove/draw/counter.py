"""A small whole number with a key on each side that makes it one less or one more."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from cookstove_gui.gui.widgets.form import button, words
from cookstove_gui.gui.widgets.theme import STEP


class Counter(QWidget):
    """Says which key was pressed; whether the number changes is for the page to decide."""

    stepped = Signal(int)  # -1 or 1

    def __init__(self, unit: str, caption: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName(unit)
        self._number = words(name=f"{unit}_number", role="strong")
        named = words(unit, role="soft")
        for label in (self._number, named):
            label.setWordWrap(False)
        fewer = button("−", f"{unit}_fewer", f"{caption}: one fewer")
        more = button("+", f"{unit}_more", f"{caption}: one more")
        fewer.setAccessibleName(f"{caption}: one fewer")
        more.setAccessibleName(f"{caption}: one more")
        fewer.clicked.connect(lambda: self.stepped.emit(-1))
        more.clicked.connect(lambda: self.stepped.emit(1))
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(STEP)
        for part in (fewer, self._number, more, named):
            line.addWidget(part)

    def show_number(self, number: int) -> None:
        """Show what is kept."""
        self._number.setText(str(number))
