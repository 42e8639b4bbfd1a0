"""Signs of what was done: a drop for lit, log ends, a slide for the air, a lever, a gate for the oven door, a loaf."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen

from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.stove.entries import Kind

SIDE = 18  # of a sign's height [px of the design]
_END, _MOST_ENDS = 12, 3  # of a log's end; a larger load shows so many
_LINE = 1.6


def sign_width(kind: Kind, count: int) -> float:
    """How wide a sign is [px]; `count` is of log ends."""
    if kind is Kind.WOOD:
        return px(_END) * min(max(count, 1), _MOST_ENDS) + px(1)
    return px({Kind.LIT: 14, Kind.AIR: 19, Kind.BYPASS: 18}.get(kind, 15))


def paint_sign(
    painter: QPainter, middle: QPointF, kind: Kind, *, opening: float, count: int, ink: QColor, ground: QColor
) -> None:
    """One sign about its middle; `opening` is how far what it stands for is open, 0 to 1."""
    painter.setPen(QPen(ink, px(_LINE), Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin))
    painter.setBrush(ground)
    if kind in (Kind.LIT, Kind.OUT):
        painter.drawPath(_drop(middle))
        if kind is Kind.OUT:
            painter.drawLine(middle + QPointF(-px(8), px(7)), middle + QPointF(px(8), -px(7)))
    elif kind is Kind.WOOD:
        _paint_ends(painter, middle, count, ink)
    elif kind is Kind.AIR:
        _paint_slide(painter, middle, opening, ink)
    elif kind is Kind.BYPASS:
        _paint_lever(painter, middle, opening, ink)
    elif kind is Kind.OVEN_DOOR:
        _paint_gate(painter, middle, opening)
    else:
        painter.drawPath(_loaf(middle, lifted=kind is Kind.OVEN_OUT))


def _drop(middle: QPointF) -> QPainterPath:
    half, high = px(6), px(10)

    def at(x: float, y: float) -> QPointF:
        return middle + QPointF(x * half, y * high)

    path = QPainterPath(at(0, -1))
    path.cubicTo(at(0.4, -0.4), at(1, -0.1), at(1, 0.25))
    path.cubicTo(at(1, 1), at(-1, 1), at(-1, 0.25))
    path.cubicTo(at(-1, -0.1), at(-0.4, -0.4), at(0, -1))
    return path


def _loaf(middle: QPointF, *, lifted: bool) -> QPainterPath:
    """A loaf on the oven's floor; above it once it is taken out."""
    up = px(4) if lifted else 0
    base = middle.y() + px(5)
    path = QPainterPath(QPointF(middle.x() - px(7), base - up))
    path.cubicTo(
        QPointF(middle.x() - px(8), base - px(12) - up), QPointF(middle.x() + px(8), base - px(12) - up),
        QPointF(middle.x() + px(7), base - up),
    )  # fmt: skip
    path.closeSubpath()
    path.moveTo(middle.x() - px(9), base + px(2))
    path.lineTo(middle.x() + px(9), base + px(2))
    return path


def _paint_ends(painter: QPainter, middle: QPointF, count: int, ink: QColor) -> None:
    """Log ends side by side; wood of no known count is one filled billet, as kindling is."""
    if count < 1:
        painter.setBrush(ink)
        painter.drawRoundedRect(QRectF(middle.x() - px(7), middle.y() - px(3), px(14), px(6)), px(3), px(3))
        return
    shown = min(count, _MOST_ENDS)
    left = middle.x() - 0.5 * px(_END) * (shown - 1)
    for number in range(shown):
        centre = QPointF(left + px(_END) * number, middle.y())
        painter.drawEllipse(centre, px(5), px(5))
        painter.drawPoint(centre)


def _paint_slide(painter: QPainter, middle: QPointF, opening: float, ink: QColor) -> None:
    frame = QRectF(middle.x() - px(9), middle.y() - px(4.5), px(18), px(9))
    painter.drawRoundedRect(frame, px(4.5), px(4.5))
    if opening > 0.02:
        painter.setBrush(ink)
        filled = QRectF(frame.left(), frame.top(), max(frame.width() * min(opening, 1.0), px(6)), frame.height())
        painter.drawRoundedRect(filled, px(4.5), px(4.5))


def _paint_lever(painter: QPainter, middle: QPointF, opening: float, ink: QColor) -> None:
    """Level when the bypass is shut, dropped when it is open."""
    drop = px(6) if opening >= 0.5 else 0.0
    pivot, end = QPointF(middle.x() + px(6), middle.y()), QPointF(middle.x() - px(8), middle.y() + drop)
    painter.drawLine(pivot, end)
    painter.setBrush(ink)
    painter.drawEllipse(pivot, px(2.5), px(2.5))


def _paint_gate(painter: QPainter, middle: QPointF, opening: float) -> None:
    frame = QRectF(middle.x() - px(7), middle.y() - px(6), px(14), px(12))
    painter.drawRect(frame)
    if opening >= 0.5:
        painter.drawLine(frame.bottomLeft(), QPointF(frame.left() - px(4), frame.bottom() + px(3)))
    else:
        painter.drawLine(QPointF(middle.x() - px(3), middle.y()), QPointF(middle.x() + px(3), middle.y()))
