"""Rows that begin with a large number: the ways to begin, the first steps of a page that is still empty."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QWidget

from cookstove_gui.gui.widgets.form import words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px

_NUMBER = 48  # px of the design


class NumberedRow(QWidget):
    """A number, a title with what belongs to it below, and at the right a key if one does it."""

    def __init__(self, look: Look, number: int, title: str, *below: QWidget, press: QWidget | None = None) -> None:
        super().__init__()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.addWidget(words(f"{number}", role="way"), 0, 0, len(below) + 1, 1, Qt.AlignmentFlag.AlignTop)
        for place, part in enumerate((words(title, role="next"), *below)):
            self._grid.addWidget(part, place, 1)
        if press is not None:
            self._grid.addWidget(press, 0, 2, len(below) + 1, 1, Qt.AlignmentFlag.AlignTop)
        self._grid.setColumnStretch(1, 1)
        look.changed.connect(self._space)
        self._space()

    def _space(self) -> None:
        self._grid.setHorizontalSpacing(px(16))
        self._grid.setVerticalSpacing(0)
        self._grid.setColumnMinimumWidth(0, px(_NUMBER))


class Rule(QWidget):
    """A hairline, or a rule in ink."""

    def __init__(self, look: Look, *, strong: bool) -> None:
        super().__init__()
        self._look = look
        self._strong = strong
        self.setFixedHeight(2)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """One line across."""
        theme = self._look.theme
        QPainter(self).fillRect(self.rect(), QColor(theme.ink if self._strong else theme.faint))
