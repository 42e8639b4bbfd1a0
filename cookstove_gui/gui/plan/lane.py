"""A strip of a picture on a clock axis: lines, what was read, and round numbers at its left."""

from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.gui.drawn_stove.lettering import advance, write
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.units import degrees, kelvin

_SMALL = 16  # px of the design
_OUTER = 34  # of 255, the fan's fill


class Lane:
    """Minutes across, kelvin up."""

    def __init__(self, painter: QPainter, start: float, end: float, box: QRectF, low: float, high: float) -> None:
        self._painter, self.box = painter, box
        self._start, self._long = start, max(end - start, 1.0)
        self._low, self._range = low, max(high - low, 1.0)

    def x(self, minute: float) -> float:
        """Pixels of a minute."""
        return self.box.left() + (minute - self._start) / self._long * self.box.width()

    def y(self, heat: float) -> float:
        """Pixels of a heat [K]."""
        return self.box.bottom() - (heat - self._low) / self._range * self.box.height()

    def _points(self, minutes: FloatArray, heats: FloatArray) -> list[QPointF]:
        seen = (minutes >= self._start) & (minutes <= self._start + self._long)
        return [
            QPointF(self.x(minute), self.y(heat))
            for minute, heat in zip(minutes[seen].tolist(), heats[seen].tolist(), strict=True)
        ]

    def line(self, minutes: FloatArray, heats: FloatArray, pen: QPen) -> None:
        """A line, cut off at the strip's edges."""
        self._painter.save()
        self._painter.setClipRect(self.box.adjusted(0, -2, 0, 2))
        self._painter.setPen(pen)
        self._painter.drawPolyline(self._points(minutes, heats))
        self._painter.restore()

    def fan(self, minutes: FloatArray, low: FloatArray, high: FloatArray, ink: QColor) -> None:
        """The doubt round a line."""
        ink.setAlpha(_OUTER)
        self._painter.save()
        self._painter.setClipRect(self.box.adjusted(0, -2, 0, 2))
        self._painter.setPen(Qt.PenStyle.NoPen)
        self._painter.setBrush(ink)
        self._painter.drawPolygon(QPolygonF([*self._points(minutes, low), *reversed(self._points(minutes, high))]))
        self._painter.restore()

    def rings(self, read: Sequence[tuple[float, float]], ink: str, ground: str) -> None:
        """What was read: minute and heat [K] of each."""
        self._painter.setPen(QPen(QColor(ink), px(2)))
        self._painter.setBrush(QColor(ground))
        for minute, heat in read:
            if self._start <= minute <= self._start + self._long:
                self._painter.drawEllipse(QPointF(self.x(minute), self.y(heat)), px(5), px(5))

    def scale(self, unit: str, ink: str, step: int, but: float | None = None) -> None:
        """Round degrees at the left; none beside the heat `but` [K], which is written by itself."""
        self._painter.setPen(QColor(ink))
        first = int(np.ceil(degrees(self._low, unit) / step)) * step
        last = -1e9
        for number in range(first, int(degrees(self._low + self._range, unit)) + 1, step):
            y = self.y(kelvin(float(number), unit))
            if (but is not None and abs(y - self.y(but)) < px(18)) or abs(y - last) < px(18):
                continue
            last = y
            told = str(number)
            write(self._painter, self.box.left() - px(6) - advance(told, px(_SMALL)), y, told, px(_SMALL))
