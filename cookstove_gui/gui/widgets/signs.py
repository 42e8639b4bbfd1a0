"""Signs that stand beside their words, drawn and not typed: the caution, what to read, a pin, a turn, a bell."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px

SIDE = 22  # of a sign's box [px of the design]


def paint_caution(painter: QPainter, box: QRectF, colour: QColor, ground: QColor) -> None:
    """A filled triangle with a stroke and a dot."""
    side, middle = box.width(), box.center().x()
    top, low = box.top() + 0.08 * side, box.bottom() - 0.06 * side
    painter.setPen(QPen(colour, 0.08 * side, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin))
    painter.setBrush(colour)
    inset = 0.04 * side
    painter.drawPolygon(
        QPolygonF([QPointF(middle, top), QPointF(box.right() - inset, low), QPointF(box.left() + inset, low)])
    )
    painter.setPen(QPen(ground, 0.11 * side, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
    painter.drawLine(QPointF(middle, top + 0.30 * side), QPointF(middle, top + 0.54 * side))
    painter.drawPoint(QPointF(middle, top + 0.72 * side))


def paint_diamond(painter: QPainter, box: QRectF, edge: QColor, fill: QColor) -> None:
    """What is worth reading."""
    middle, half = box.center(), 0.36 * box.width()
    painter.setPen(QPen(edge, max(0.07 * box.width(), 1.4)))
    painter.setBrush(fill)
    painter.drawPolygon(
        QPolygonF(
            [
                QPointF(middle.x(), middle.y() - half),
                QPointF(middle.x() + half, middle.y()),
                QPointF(middle.x(), middle.y() + half),
                QPointF(middle.x() - half, middle.y()),
            ]
        )
    )


def paint_pin(painter: QPainter, box: QRectF, colour: QColor) -> None:
    """A pin, for what stays until it is changed."""
    painter.setPen(QPen(colour, box.width() / 8, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
    painter.setBrush(colour)
    middle = box.center().x()
    painter.drawEllipse(QPointF(middle, box.top() + 0.3 * box.height()), 0.22 * box.width(), 0.22 * box.height())
    painter.drawLine(QPointF(middle, box.top() + 0.5 * box.height()), QPointF(middle, box.bottom()))


def paint_turn(painter: QPainter, box: QRectF, colour: QColor) -> None:
    """A bent arrow, for what is to be turned."""
    side = box.width()
    painter.setPen(QPen(colour, 0.13 * side, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    round_ = box.adjusted(0.16 * side, 0.2 * side, -0.16 * side, -0.12 * side)
    painter.drawArc(round_, -10 * 16, 200 * 16)
    tip = QPointF(round_.right(), round_.center().y() + 0.22 * side)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    half = 0.2 * side
    painter.drawPolygon(QPolygonF([tip, tip + QPointF(-half, -1.5 * half), tip + QPointF(half, -1.5 * half)]))


def paint_bell(painter: QPainter, box: QRectF, colour: QColor) -> None:
    """A bell, for an alarm."""
    side, left, top = box.width(), box.left(), box.top()

    def at(x: float, y: float) -> QPointF:
        return QPointF(left + x * side, top + y * side)

    bell = QPainterPath(at(0.50, 0.10))
    bell.cubicTo(at(0.80, 0.12), at(0.72, 0.52), at(0.86, 0.72))
    bell.lineTo(at(0.14, 0.72))
    bell.cubicTo(at(0.28, 0.52), at(0.20, 0.12), at(0.50, 0.10))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    painter.drawPath(bell)
    painter.drawEllipse(at(0.50, 0.10), 0.06 * side, 0.06 * side)
    painter.drawEllipse(at(0.50, 0.84), 0.10 * side, 0.08 * side)


class Sign(QWidget):
    """One sign: `bell`, `caution` or `diamond`. The words beside it are what is read out."""

    def __init__(self, kind: str, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._kind = kind
        self._look = look
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)
        look.changed.connect(self.update)

    def sizeHint(self) -> QSize:
        """A square."""
        return QSize(px(SIDE), px(SIDE))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The sign in the colours now in use."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme = self._look.theme
        box = QRectF(self.rect())
        if self._kind == "caution":
            paint_caution(painter, box, QColor(theme.ember), QColor(theme.ground))
        elif self._kind == "bell":
            paint_bell(painter, box, QColor(theme.ink))
        else:
            paint_diamond(painter, box, QColor(theme.ink), QColor(theme.ground))
