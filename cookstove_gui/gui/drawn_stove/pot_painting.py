"""A pot on a plate, seen from above: an ellipse with two ears or a handle, its words on it, the number below."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from cookstove_gui.gui.drawn_stove.face import Face, Pot
from cookstove_gui.gui.drawn_stove.lettering import fitting, text_size, write_centred
from cookstove_gui.stove.drawn.shapes import Box

GROUND, INK = "#F2F3EF", "#1C2022"  # enamel, the same by day and by night
_ACROSS, _DOWN = 0.42, 0.38  # of the plate, from its middle
_EAR = (10.0, 18.0)  # px, as designed
_HANDLE = (0.62, 0.8, 0.98, 1.16)  # from the middle of its ellipse, in halves of it: where it begins and ends


def paint_pot(painter: QPainter, box: Box, face: Face, pot: Pot, size: float, ink: QColor) -> None:
    """Paint a pot in the box of a plate, and the plate's number below it."""
    number = 20 * size
    x, middle = box.centre[0], box.centre[1] - number * 0.55
    wide, high = box.width * _ACROSS, (box.height - number) * (_DOWN + 0.08)
    painter.setPen(QPen(ink, 1))
    write_centred(painter, x, box.bottom - number * 0.6, face.number, number, 600 if face.is_sure else 400)
    body = QRectF(x - wide, middle - high, 2 * wide, 2 * high)
    edge, body_fill = (ink, ink) if pot.is_later else (QColor("#000000"), QColor(GROUND))
    if pot.has_handle:
        begins = QPointF(x + _HANDLE[0] * wide, middle + _HANDLE[1] * high)
        ends = QPointF(x + _HANDLE[2] * wide, middle + _HANDLE[3] * high)
        for thick, shade in ((10.0, edge), (5.6, body_fill)):
            pen = QPen(shade, thick * size)
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            painter.setPen(pen)
            painter.drawLine(begins, ends)
    if pot.is_later:
        painter.setPen(QPen(ink, 2.4 * size, Qt.PenStyle.DashLine))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(body)
        painter.setPen(ink)
    else:
        painter.setPen(QPen(QColor("#000000"), 2.2 * size))
        painter.setBrush(QColor(GROUND))
        for end in () if pot.has_handle else (x - wide, x + wide):
            painter.drawRoundedRect(QRectF(end - _EAR[0] / 2, middle - _EAR[1] / 2, *_EAR), 3, 3)
        painter.drawEllipse(body)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QColor(INK))
    _words(painter, QPointF(x, middle), pot, wide, high, size)


def _words(painter: QPainter, middle: QPointF, pot: Pot, wide: float, high: float, size: float) -> None:
    """The name and what it does, as many lines as there is room for."""
    at = text_size(size)
    lines = [(pot.name, 22 * at, 600), *((line, 18 * at, 400) for line in pot.lines)]
    while len(lines) > 1 and sum(pixels for _, pixels, _ in lines) > 1.7 * high:
        lines.pop()
    y = middle.y() - sum(pixels for _, pixels, _ in lines) / 2
    for text, pixels, weight in lines:
        fits = fitting(text, 1.72 * wide, [pixels, 0.9 * pixels, 0.8 * pixels, 0.7 * pixels, 0.6 * pixels], weight)
        write_centred(painter, middle.x(), y + pixels / 2, text, fits, weight)
        y += pixels
