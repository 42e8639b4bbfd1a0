"""The lane under the time axis: what was done to the fire, each at its time."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import SMALL, font
from cookstove_gui.stove.entries import Kind

# Kinds that speak of the fire and so stand in the lane.
FIRE_KINDS = frozenset({Kind.LIT, Kind.WOOD, Kind.AIR, Kind.BYPASS, Kind.OVEN_DOOR})
_TICK = 7.0


@dataclass(frozen=True, slots=True)
class LaneMark:
    """One fire event at a place on the time axis [min]."""

    place: float
    words: str


class FireLane(QWidget):
    """Ticks with words that never overlap; it follows the plot above."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._marks: tuple[LaneMark, ...] = ()
        self._span = (0.0, 1.0)
        self.sides = (0.0, 1.0)  # left and right edge of the plot above [px]
        self._rows = 2
        self.setObjectName("fire_lane")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(self.sizeHint().height())
        look.changed.connect(self.update)
        self._name_it()

    def sizeHint(self) -> QSize:
        """Two rows of words under their ticks."""
        return QSize(300, round(_TICK + self._rows * QFontMetricsF(font(SMALL)).height() * 0.9) + 4)

    def set_rows(self, rows: int) -> None:
        """How many rows of words there is room for."""
        if rows != self._rows:
            self._rows = rows
            self.setFixedHeight(self.sizeHint().height())

    def show_marks(self, marks: tuple[LaneMark, ...]) -> None:
        """Show these events."""
        self._marks = marks
        self._name_it()
        self.update()

    def show_span(self, span: tuple[float, float], sides: tuple[float, float]) -> None:
        """Line up with the plot: what it sees [min], and where its left and right edges are [px]."""
        if (span, sides) != (self._span, self.sides):
            self._span, self.sides = span, sides
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the lane."""
        theme = self._look.theme
        left, right = self.sides
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        face = font(SMALL)
        size = QFontMetricsF(face)
        painter.setFont(face)
        painter.setPen(QPen(colour(theme.ember), 2))
        painter.drawLine(QPointF(left, 1), QPointF(right, 1))
        painter.setPen(colour(theme.soft))
        painter.drawText(QRectF(0, _TICK, max(left - 8, 0), size.height()), Qt.AlignmentFlag.AlignRight, "fire")
        begins = [right + 9.0] * self._rows  # where the words to the right of it begin, in each row
        for mark in reversed(self._marks):  # the newest first, because it matters most
            x = self._across(mark.place)
            if not left <= x <= right:
                continue
            painter.setPen(QPen(colour(theme.ember), 2))
            painter.drawLine(QPointF(x, 1), QPointF(x, _TICK))
            width = size.horizontalAdvance(mark.words)
            start = min(max(x - width / 2, left), right - width)
            row = next((number for number in range(self._rows) if start + width + 8 <= begins[number]), None)
            if row is None:
                continue  # no room for the words; the tick stays, and the list of entries has them all
            begins[row] = start
            painter.setPen(colour(theme.ink))
            painter.drawText(QPointF(start, _TICK + size.ascent() * 0.95 + row * size.height() * 0.9), mark.words)
        painter.end()

    def _across(self, place: float) -> float:
        (low, high), (left, right) = self._span, self.sides
        return left + (place - low) / max(high - low, 1e-9) * (right - left)

    def _name_it(self) -> None:
        words = ", ".join(mark.words for mark in self._marks) or "nothing yet"
        self.setAccessibleName(f"Done to the fire: {words}")
