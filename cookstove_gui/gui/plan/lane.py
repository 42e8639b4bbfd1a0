"""A strip of a picture on a clock axis: lines, what was read, round numbers at its left, and the clock below."""

from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.gui.drawn_stove.lettering import advance, write, write_centred
from cookstove_gui.gui.time_axis.clock_axis import clock_ticks
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import Theme
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.units import degrees, kelvin

CLOCK = 26  # height of the clock axis [px of the design]
_SMALL = 16  # px of the design
_OUTER, _INNER = 23, 33  # of 255, the fan's fills: 9 and 13 % ink
_TICK, _APART = 4, 66  # length of a mark, least distance of two clocks [px of the design]
_PLATE = (52, 22)  # round the clock at now [px of the design]


class Lane:
    """Minutes across, kelvin up."""

    def __init__(self, painter: QPainter, start: float, end: float, box: QRectF, low: float, high: float) -> None:
        self._painter, self.box = painter, box
        self.start, self.long = start, max(end - start, 1.0)  # min
        self._low, self._range = low, max(high - low, 1.0)

    def x(self, minute: float) -> float:
        """Pixels of a minute."""
        return self.box.left() + (minute - self.start) / self.long * self.box.width()

    def y(self, heat: float) -> float:
        """Pixels of a heat [K]."""
        return self.box.bottom() - (heat - self._low) / self._range * self.box.height()

    def _points(self, minutes: FloatArray, heats: FloatArray) -> list[QPointF]:
        seen = (minutes >= self.start) & (minutes <= self.start + self.long)
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

    def fan(self, minutes: FloatArray, *pairs: tuple[FloatArray, FloatArray], theme: Theme) -> None:
        """The doubt round a line: pairs of low and high, the outermost first, which has an edge."""
        painter = self._painter
        painter.save()
        painter.setClipRect(self.box.adjusted(0, -2, 0, 2))
        for place, (low, high) in enumerate(pairs):
            lower, higher = self._points(minutes, low), self._points(minutes, high)
            ink = QColor(theme.ink)
            ink.setAlpha(_INNER if place else _OUTER)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(ink)
            painter.drawPolygon(QPolygonF([*lower, *reversed(higher)]))
            if not place:
                painter.setPen(QPen(QColor(theme.line), 1))
                painter.drawPolyline(lower)
                painter.drawPolyline(higher)
        painter.restore()

    def rings(self, read: Sequence[tuple[float, float]], ink: str, ground: str) -> None:
        """What was read: minute and heat [K] of each."""
        self._painter.setPen(QPen(QColor(ink), px(2)))
        self._painter.setBrush(QColor(ground))
        for minute, heat in read:
            if self.start <= minute <= self.start + self.long:
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

    def marks(
        self,
        foot: float,
        marks: Sequence[tuple[float, str]],
        theme: Theme,
        *,
        first: str = "",
        kept_free: tuple[float, float] = (0.0, 0.0),
    ) -> None:
        """The axis at a height: minutes with their words, `first` at its beginning; none between two places."""
        painter, box = self._painter, self.box
        painter.setPen(QPen(QColor(theme.line), 1.2))
        painter.drawLine(QPointF(box.left(), foot), QPointF(box.right(), foot))
        middle, gap = foot + px(14), px(6)
        taken = box.left() + advance(first, px(_SMALL), 600) + gap if first else box.left() - px(30)
        for minute, told in marks:
            x, wide = self.x(minute), advance(told, px(_SMALL))
            painter.setPen(QPen(QColor(theme.line), 1.2))
            painter.drawLine(QPointF(x, foot), QPointF(x, foot + px(_TICK)))
            left = min(x - wide / 2, box.right() - wide)
            if left > taken and not (left < kept_free[1] + gap and left + wide > kept_free[0] - gap):
                painter.setPen(QColor(theme.soft))
                write(painter, left, middle, told, px(_SMALL))
        painter.setPen(QColor(theme.ink))
        write(painter, box.left(), middle, first, px(_SMALL), 600)

    def clock(self, foot: float, edge: Edge, theme: Theme, *, from_now: str = "", now_top: float | None = None) -> None:
        """The axis with its clocks at a height; now with its line from a height on, or as words at the beginning."""
        painter, now, half = self._painter, self.x(0.0), px(_PLATE[0]) / 2
        most = max(int(self.box.width() / px(_APART)), 1)
        ticks = clock_ticks(edge.now, edge.offset_minutes, self.start, self.start + self.long, most)
        if now_top is None:
            self.marks(foot, ticks, theme, first=from_now)
            return
        self.marks(foot, ticks, theme, kept_free=(now - half, now + half))
        painter.setPen(QPen(QColor(theme.ink), px(2)))
        painter.drawLine(QPointF(now, now_top), QPointF(now, foot))
        plate = QRectF(now - half, foot + px(2), 2 * half, px(_PLATE[1]))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(theme.ink))
        painter.drawRoundedRect(plate, 3, 3)
        painter.setPen(QColor(theme.ground))
        write_centred(painter, now, plate.center().y(), edge.clock(0.0), px(_SMALL), 600)

    def window(self, window: tuple[float | None, float | None, float | None], y: float, theme: Theme) -> None:
        """A window of doubt on a line: a bar from the earliest to the latest minute, a ring at the likely one."""
        painter = self._painter
        earliest, likely, latest = window
        end = self.start + self.long
        if earliest is not None and earliest <= end:
            pen = QPen(QColor(theme.verdigris), px(9))
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            painter.setPen(pen)
            last = self.x(min(end if latest is None else latest, end))
            painter.drawLine(QPointF(self.x(max(earliest, self.start)), y), QPointF(last, y))
        if likely is not None and likely <= end:
            painter.setPen(QPen(QColor(theme.verdigris), px(3.5)))
            painter.setBrush(QColor(theme.ground))
            painter.drawEllipse(QPointF(self.x(likely), y), px(9), px(9))

    def stem(self, minute: float, top: float, foot: float, shade: str) -> None:
        """A dotted line down to the axis at a minute."""
        self._painter.setPen(QPen(QColor(shade), 1.6, Qt.PenStyle.DotLine))
        self._painter.drawLine(QPointF(self.x(minute), top), QPointF(self.x(minute), foot))


def dashed(shade: str) -> QPen:
    """The pen of what is to come."""
    pen = QPen(QColor(shade), px(2.4))
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setDashPattern([3.0, 2.2])
    return pen
