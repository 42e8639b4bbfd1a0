"""Rows that begin with a large number: the ways to begin, the first steps of a page that is still empty."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QGridLayout, QWidget

from cookstove_gui.gui.widgets.form import words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px

_NUMBER = 48  # px of the design
_NARROW = 500  # px of the design: below it the key stands under the words


class NumberedRow(QWidget):
    """A number, a title with what belongs to it below, and a key if one does it: at the right, or below."""

    def __init__(self, look: Look, number: int, title: str, *below: QWidget, press: QWidget | None = None) -> None:
        super().__init__()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.addWidget(words(f"{number}", role="way"), 0, 0, len(below) + 1, 1, Qt.AlignmentFlag.AlignTop)
        for place, part in enumerate((words(title, role="next"), *below)):
            self._grid.addWidget(part, place, 1)
        self._press, self._rows, self._is_narrow = press, len(below) + 1, False
        self._place_key()
        self._grid.setColumnStretch(1, 1)
        look.changed.connect(self._space)
        self._space()

    def _place_key(self) -> None:
        if self._press is None:
            return
        self._grid.removeWidget(self._press)
        if self._is_narrow:
            self._grid.addWidget(self._press, self._rows, 1, Qt.AlignmentFlag.AlignLeft)
        else:
            self._grid.addWidget(self._press, 0, 2, self._rows, 1, Qt.AlignmentFlag.AlignTop)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Beside the words the key leaves them room, or it stands below."""
        super().resizeEvent(event)
        is_narrow = event.size().width() < px(_NARROW)
        if is_narrow != self._is_narrow:
            self._is_narrow = is_narrow
            self._place_key()

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
