"""Pans seen from the side, in lines: each stands beside its name."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen


def paint_pan(painter: QPainter, box: QRectF, key: str, shade: str, ground: str) -> None:
    """The pan of that key in a box; an unknown one is a pot."""
    painter.save()
    painter.translate(box.topLeft())
    painter.scale(box.width() / 46.0, box.height() / 34.0)
    painter.setPen(QPen(QColor(shade), 2.2, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin))
    painter.setBrush(QColor(ground))
    {"kettle": _kettle, "saucepan": _saucepan, "iron skillet": _skillet, "iron pot": _iron_pot}.get(key, _pot)(painter)
    painter.restore()


def _body(painter: QPainter, left: float, right: float, top: float, inset: float, round_: float = 3.0) -> None:
    path = QPainterPath(QPointF(left, top))
    path.lineTo(left + inset, 31 - round_)
    path.quadTo(left + inset, 31, left + inset + round_, 31)
    path.lineTo(right - inset - round_, 31)
    path.quadTo(right - inset, 31, right - inset, 31 - round_)
    path.lineTo(right, top)
    path.closeSubpath()
    painter.drawPath(path)


def _saucepan(painter: QPainter) -> None:
    painter.drawLine(QPointF(30, 13), QPointF(45, 9))
    _body(painter, 4, 30, 11, 2)


def _skillet(painter: QPainter) -> None:
    painter.drawLine(QPointF(29, 20), QPointF(45, 14))
    _body(painter, 1, 30, 19, 5)


def _pot(painter: QPainter) -> None:
    painter.drawLine(QPointF(5, 9), QPointF(41, 9))
    _body(painter, 9, 37, 9, 0)


def _iron_pot(painter: QPainter) -> None:
    for x in (5.0, 41.0):
        painter.drawLine(QPointF(x, 15), QPointF(23, 15))
    _body(painter, 8, 38, 13, 1, 9)


def _kettle(painter: QPainter) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawArc(QRectF(11, 2, 22, 26), 20 * 16, 140 * 16)
    spout = QPainterPath(QPointF(34, 25))
    spout.quadTo(38, 22, 43, 15)
    painter.drawPath(spout)
    path = QPainterPath(QPointF(10, 31))
    path.quadTo(4, 16, 22, 13)
    path.quadTo(40, 16, 34, 31)
    path.closeSubpath()
    painter.drawPath(path)
