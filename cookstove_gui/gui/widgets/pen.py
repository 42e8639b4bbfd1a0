"""Lines and words of the pictures on the pages, in px of the design."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from cookstove_gui.gui.widgets.type import BODY, font

LEFT, MIDDLE, RIGHT = Qt.AlignmentFlag.AlignLeft, Qt.AlignmentFlag.AlignHCenter, Qt.AlignmentFlag.AlignRight


def draw_line(painter: QPainter, ink: str, width: float, start: QPointF, end: QPointF) -> None:
    """A straight line."""
    painter.setPen(QPen(QColor(ink), width))
    painter.drawLine(start, end)


def draw_words(
    painter: QPainter,
    box: QRectF,
    words: str,
    ink: str,
    *,
    side: Qt.AlignmentFlag = MIDDLE,
    size: int = BODY,
    weight: int = 400,
) -> None:
    """Words at half the height of a box, at one side of it; they may reach beyond it."""
    painter.setFont(font(size, weight))
    painter.setPen(QColor(ink))
    painter.drawText(box, int(side | Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextDontClip), words)
