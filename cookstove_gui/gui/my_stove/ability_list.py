"""Figures of a stove in rows: what it can do, how much, its range and the number of firings behind it."""

from collections.abc import Sequence
from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.gui.widgets.key import paint_ring
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, RIGHT, draw_words
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import BODY, PLACE, SMALL, font

_HIGH, _UPPER, _LOWER = 53, 28, 22  # px of the design: a row, its two lines
_BAR, _IN, _BETWEEN = 4, 10, 10
_LEAST = 300


class AbilityRow(QAbstractButton):
    """One figure."""

    def __init__(self, look: Look, key: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self.key = key
        self._name, self._value, self._range = "", "", ""
        self.setObjectName(f"{parent.objectName()}_{key}")
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_words(self, name: str, value: str, range_: str) -> None:
        """Say what it is of, how much, and what it stands on."""
        self._name, self._value, self._range = name, value, range_
        self.setAccessibleName(f"{name}: {value}")
        self.setAccessibleDescription(range_)
        self.setToolTip(f"{range_}\nPress to see the firings")
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """As wide as there is room."""
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        """Room for a name and a value beside each other."""
        words = _wide(self._name, SMALL) + self._value_room() + px(2 * _IN)
        return QSize(max(px(_LEAST), ceil(words), ceil(_wide(self._range, SMALL)) + px(2 * _IN)), px(_HIGH))

    def _value_room(self) -> float:
        return QFontMetricsF(font(BODY, 600)).horizontalAdvance(self._value) + px(_BETWEEN)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Name and value on one line, the range below, a hairline under both."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, whole = self._look.theme, QRectF(self.rect())
        if self.isChecked():
            painter.fillRect(whole, QColor(theme.plate))
            painter.fillRect(QRectF(0, 0, px(_BAR), whole.height()), QColor(theme.ink))
        else:
            painter.fillRect(QRectF(0, whole.height() - 1, whole.width(), 1), QColor(theme.faint))
        upper = QRectF(px(_IN), px(1), whole.width() - px(2 * _IN), px(_UPPER))
        lower = QRectF(px(_IN), px(_UPPER - 1), upper.width(), px(_LOWER))
        room = upper.width() - self._value_room()
        size = next((one for one in (BODY, PLACE, SMALL) if _wide(self._name, one) <= room), SMALL)
        draw_words(painter, upper, self._name, theme.ink, side=LEFT, size=size)
        draw_words(painter, upper, self._value, theme.ink, side=RIGHT, weight=600)
        draw_words(painter, lower, self._range, theme.soft, side=RIGHT, size=SMALL)
        if self.hasFocus():
            paint_ring(painter, whole.adjusted(4, 4, -4, -4), QColor(theme.cobalt))
        painter.end()


class AbilityList(QWidget):
    """Rows that the arrows walk through; Enter, Space or a click opens one."""

    chosen = Signal(str)  # key of a figure

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._rows: list[AbilityRow] = []
        self.setObjectName(name)
        self.setAccessibleName("What this stove can do")
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        look.changed.connect(self.updateGeometry)

    def show_rows(self, rows: Sequence[tuple[str, str, str, str]], marked: str = "") -> None:
        """Show key, name, value and range of each figure; the row with the key `marked` is marked."""
        keys = [row[0] for row in rows]
        if keys != [row.key for row in self._rows]:
            focused = next((row.key for row in self._rows if row.hasFocus()), "")
            for old in self._rows:
                self._column.removeWidget(old)
                old.hide()
                old.deleteLater()
            self._rows = [AbilityRow(self._look, key, self) for key in keys]
            for made in self._rows:
                made.clicked.connect(lambda _on=False, key=made.key: self._choose(key))
                self._column.addWidget(made)
                made.show()
                if made.key == focused:
                    made.setFocus()
        for made, (_, name, value, range_) in zip(self._rows, rows, strict=True):
            made.show_words(name, value, range_)
            made.setChecked(made.key == marked)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Up, Down, Home and End go through the rows, Enter opens one."""
        place = next((place for place, row in enumerate(self._rows) if row.hasFocus()), None)
        ways = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
        key = Qt.Key(event.key())
        if place is not None and key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._choose(self._rows[place].key)
        elif place is not None and key in ways:
            self._rows[min(max(place + ways[key], 0), len(self._rows) - 1)].setFocus()
        elif self._rows and key in (Qt.Key.Key_Home, Qt.Key.Key_End):
            self._rows[0 if key is Qt.Key.Key_Home else -1].setFocus()
        else:
            super().keyPressEvent(event)

    def _choose(self, key: str) -> None:
        self.chosen.emit(key)


def _wide(words: str, size: int) -> float:
    return QFontMetricsF(font(size)).horizontalAdvance(words)
