"""What the plot says of now: the oven and its heat; while a pan is put on, a row for each of its spots."""

from typing import Protocol

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPen

from cookstove_gui.gui.time_axis.free_room import Drawn, FreeRoom
from cookstove_gui.gui.time_axis.plot_records import SpotNow
from cookstove_gui.gui.time_axis.span import AXIS_WIDTH, TimeSpan
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import Theme, colour
from cookstove_gui.gui.widgets.type import NUMBER, font

_CAPTION, _HEAT = 18, 20
_GAP = 10
_SAMPLE, _MARK = 34, 10  # of a spot's line, and its mark on it [px of the design]


class _Saying(Drawn, Protocol):
    oven_now: tuple[str, str, str] | None
    spots_now: tuple[SpotNow, ...]


def paint_now_said(
    painter: QPainter, words: _Saying, room: FreeRoom, theme: Theme, span: TimeSpan, plate: QRectF
) -> None:
    """At the foot, left of now; where nothing is free there, right of it, or at either end; not under the plate."""
    if span.now is None or not span.low <= span.now <= span.high:
        return
    wide, high = _size(words.oven_now, words.spots_now)
    if not high:
        return
    now, left, right = span.x(span.now, words.width()), float(px(AXIS_WIDTH)), words.width() - px(_GAP) - wide
    starts = [x for x in (now - px(_GAP) - wide, now + px(_GAP), left + px(8), right) if x >= left]
    box = room.put([box for x in starts for box in room.column(x, wide, high, ())], of_fan=True)
    if box.intersects(plate):
        return
    if words.spots_now:
        _paint_spots(painter, words.spots_now, theme, box)
    elif words.oven_now is not None:
        _paint_oven(painter, words.oven_now, theme, box)


def _size(oven: tuple[str, str, str] | None, spots: tuple[SpotNow, ...]) -> tuple[float, float]:
    if spots:
        name, number = QFontMetricsF(font(_CAPTION)), QFontMetricsF(font(_HEAT, 600))
        wide = max(name.horizontalAdvance(one.name) + number.horizontalAdvance(one.number) for one in spots)
        return wide + px(_SAMPLE) + 2 * px(8), len(spots) * number.height()
    if oven is None:
        return 0.0, 0.0
    wide = sum(QFontMetricsF(face).horizontalAdvance(one) for one, face in zip(oven, _faces(), strict=True))
    return wide + 2 * px(5), QFontMetricsF(font(NUMBER, 600)).capHeight() + px(10)


def _faces() -> tuple[QFont, QFont, QFont]:
    return font(_CAPTION), font(NUMBER, 600), font(_CAPTION)


def _paint_oven(painter: QPainter, parts: tuple[str, str, str], theme: Theme, box: QRectF) -> None:
    base, at = box.bottom() - px(5), box.left()
    for words, face, ink in zip(parts, _faces(), (theme.soft, theme.ink, theme.soft), strict=True):
        painter.setFont(face)
        painter.setPen(colour(ink))
        painter.drawText(QPointF(at, base), words)
        at += QFontMetricsF(face).horizontalAdvance(words) + px(5)


def _paint_spots(painter: QPainter, spots: tuple[SpotNow, ...], theme: Theme, box: QRectF) -> None:
    """A piece of the line with the mark on it, the name, the heat."""
    high = box.height() / len(spots)
    for number, one in enumerate(spots):
        row = QRectF(box.left(), box.top() + number * high, box.width(), high)
        middle = row.center().y()
        pen = QPen(colour(theme.ink), px(2.4), Qt.PenStyle.CustomDashLine, Qt.PenCapStyle.FlatCap)
        pen.setDashPattern([length / px(2.4) for length in one.dashes])
        painter.setPen(pen)
        painter.drawLine(QPointF(row.left(), middle), QPointF(row.left() + px(_SAMPLE), middle))
        mark = QRectF(row.left() + (px(_SAMPLE) - px(_MARK)) / 2, middle - px(_MARK) / 2, px(_MARK), px(_MARK))
        painter.setPen(QPen(colour(theme.ink), px(1.8)))
        painter.setBrush(colour(theme.ground))
        (painter.drawEllipse if one.is_round else painter.drawRect)(mark)
        painter.setFont(font(_CAPTION))
        painter.setPen(colour(theme.soft))
        words = row.adjusted(px(_SAMPLE) + px(8), 0, 0, 0)
        painter.drawText(words, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, one.name)
        painter.setFont(font(_HEAT, 400 if one.number.startswith("≈") else 600))  # believed, or read
        painter.setPen(colour(theme.ink))
        painter.drawText(row, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight, one.number)
