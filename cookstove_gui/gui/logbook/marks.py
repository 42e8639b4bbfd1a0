"""How up to eight sessions are told apart without colour: a line and a mark for each, filled from the fifth on.

Of more sessions those that were not chosen are thin and soft.
"""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import Theme, colour
from cookstove_gui.phrases.logbook.compare import FEW

_HALF = 5  # [px of the design]
_DASHES: tuple[list[float], ...] = ([], [4.0, 2.4], [1.0, 1.8], [5.0, 2.0, 1.0, 2.0])
_WIDTHS = (2.6, 2.0, 2.2, 2.0)
_THIN, _FAINT = 1.2, 120  # px, of 255


def paint_mark(painter: QPainter, place: int, at: QPointF, theme: Theme, size: float = 1.0) -> None:
    """A ring, a diamond, a square or a triangle; the same again, filled; then a small dot for each."""
    if place >= FEW:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(theme.ink))
        painter.drawEllipse(at, px(3) * size, px(3) * size)
        return
    filled, place = divmod(place, len(_DASHES))
    half = px(_HALF) * size
    painter.setPen(QPen(QColor(theme.ink), 2.0))
    painter.setBrush(QColor(theme.ink if filled else theme.ground))
    if place == 0:
        painter.drawEllipse(at, half, half)
    elif place == 1:
        painter.drawPolygon(_corners(at, 1.25 * half, ((0, -1), (1, 0), (0, 1), (-1, 0))))
    elif place == 2:
        painter.drawRect(QRectF(at.x() - 0.9 * half, at.y() - 0.9 * half, 1.8 * half, 1.8 * half))
    else:
        painter.drawPolygon(_corners(at, 1.2 * half, ((0, -1), (0.95, 0.75), (-0.95, 0.75))))


def line_pen(place: int, theme: Theme) -> QPen:
    """Solid, dashes, dots, or dashes and dots; the same again."""
    place %= len(_DASHES)
    pen = QPen(QColor(theme.ink), _WIDTHS[place])
    if _DASHES[place]:
        pen.setDashPattern(_DASHES[place])
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    return pen


def thin_pen(theme: Theme) -> QPen:
    """Of one among many."""
    return QPen(colour(theme.soft, _FAINT), _THIN)


def _corners(at: QPointF, half: float, places: tuple[tuple[float, float], ...]) -> QPolygonF:
    return QPolygonF([at + QPointF(x * half, y * half) for x, y in places])
