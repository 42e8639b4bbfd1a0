"""The sign of an alarm beside its clock."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath

from cookstove_gui.gui.widgets.steps import px


def paint_bell(painter: QPainter, middle: QPointF, ink: QColor) -> None:
    """A bell, some 14 px of the design high."""
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ink)
    half, high = px(6), px(7)
    path = QPainterPath(middle + QPointF(-half, 0.55 * high))
    path.cubicTo(
        middle + QPointF(-0.55 * half, 0.3 * high), middle + QPointF(-0.8 * half, -high), middle + QPointF(0, -high)
    )
    path.cubicTo(
        middle + QPointF(0.8 * half, -high), middle + QPointF(0.55 * half, 0.3 * high),
        middle + QPointF(half, 0.55 * high),
    )  # fmt: skip
    path.closeSubpath()
    painter.drawPath(path)
    painter.drawEllipse(QRectF(middle.x() - px(2), middle.y() + 0.62 * high, px(4), px(3)))
