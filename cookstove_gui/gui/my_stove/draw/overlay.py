"""What lies over the edited drawing: the walk over the cooktop, the handles of what is selected, a drag."""

import math
from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from cookstove_gui.gui.drawn_stove.spot_painting import RING
from cookstove_gui.stove.drawn.heat_colours import ON_IRON
from cookstove_gui.stove.drawn.shapes import Point, Polygon

_CORNER, _SIDE = 11.0, 9.0  # px of a handle
_KEEP_OFF = 30.0  # px from the numbers that the walk joins
_HEAD = 7.0  # px of an arrow's head


class Overlay(QWidget):
    """Painted over the spots; the mouse goes through it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._walk: Sequence[Point] = ()
        self._outline: Polygon | None = None
        self._has_handles = False
        self._size = 1.0
        self._dragged: QPointF | None = None
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)

    @property
    def handles(self) -> dict[tuple[int, int], Point]:
        """Where the handles lie, by -1, 0 or 1 across and down."""
        if self._outline is None or not self._has_handles:
            return {}
        upper_left, upper_right, lower_right, lower_left = self._outline
        return {
            (-1, -1): upper_left,
            (1, -1): upper_right,
            (1, 1): lower_right,
            (-1, 1): lower_left,
            (0, -1): _middle(upper_left, upper_right),
            (1, 0): _middle(upper_right, lower_right),
            (0, 1): _middle(lower_right, lower_left),
            (-1, 0): _middle(lower_left, upper_left),
        }

    def show_marks(self, *, walk: Sequence[Point], outline: Polygon | None, has_handles: bool, size: float) -> None:
        """Show the walk from spot to spot, and what is selected."""
        self._walk, self._outline, self._has_handles, self._size = walk, outline, has_handles, size
        self.update()

    def show_dragged(self, at: QPointF | None) -> None:
        """Show where the selected spot is being dragged to, or nothing."""
        self._dragged = at
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for one, other in zip(self._walk, self._walk[1:], strict=False):
            _arrow(painter, one, other)
        painter.setPen(QPen(QColor(RING), 1.5))
        painter.setBrush(QColor("#FFFFFF"))
        for (across, down), (x, y) in self.handles.items():
            side = _CORNER if across and down else _SIDE
            painter.drawRect(QRectF(x - side / 2, y - side / 2, side, side))
        if self._dragged is not None:
            pen = QPen(QColor(ON_IRON), 2, Qt.PenStyle.DashLine)
            painter.setPen(pen)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawEllipse(self._dragged, 40 * self._size, 24 * self._size)
        painter.end()


def _middle(one: Point, other: Point) -> Point:
    return (one[0] + other[0]) / 2, (one[1] + other[1]) / 2


def _arrow(painter: QPainter, one: Point, other: Point) -> None:
    """A dotted arrow between two numbers, clear of both."""
    long = math.dist(one, other)
    if long <= 2 * _KEEP_OFF:
        return
    x, y = (other[0] - one[0]) / long, (other[1] - one[1]) / long
    start = QPointF(one[0] + x * _KEEP_OFF, one[1] + y * _KEEP_OFF)
    end = QPointF(other[0] - x * _KEEP_OFF, other[1] - y * _KEEP_OFF)
    painter.setPen(QPen(QColor(ON_IRON), 1.3, Qt.PenStyle.DotLine))
    painter.drawLine(start, end)
    painter.setPen(QPen(QColor(ON_IRON), 1.3))
    for turn in (2.6, -2.6):
        across, down = math.cos(turn), math.sin(turn)
        painter.drawLine(
            end, QPointF(end.x() + _HEAD * (x * across - y * down), end.y() + _HEAD * (x * down + y * across))
        )
