"""Painting one spot: its patch, its lid, the rings and signs on it, and its words."""

from dataclasses import replace

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from cookstove_gui.gui.drawn_stove.face import Face
from cookstove_gui.gui.drawn_stove.pot_painting import paint_pot
from cookstove_gui.gui.drawn_stove.writing import write_face
from cookstove_gui.stove.drawn.layout import Manner, Place
from cookstove_gui.stove.drawn.shapes import Box, Polygon

FOCUS = "#1B4F9C"
RING = "#0F3672"  # of the spot that the next number goes to; with its white edge 3.4 : 1 on any heat
_LID_ACROSS, _LID_DOWN = 0.46, 0.45  # of a plate's width and height, from its middle


def polygon(points: Polygon) -> QPolygonF:
    """Points as Qt has them."""
    return QPolygonF([QPointF(x, y) for x, y in points])


def lid(box: Box) -> QRectF:
    """The ellipse of the lid on a plate."""
    x, y = box.centre
    wide, high = box.width * _LID_ACROSS, box.height * _LID_DOWN
    return QRectF(x - wide, y - high, 2 * wide, 2 * high)


def paint_face(
    painter: QPainter, place: Place, face: Face, size: float, colours: tuple[QColor, QColor], *, has_focus: bool = False
) -> None:
    """Paint a spot in its place; fill and ink are handed in, so that a change of fill may be shown in steps."""
    fill, ink = colours
    painter.setPen(Qt.PenStyle.NoPen)
    if place.manner is not Manner.PAGE:
        painter.setBrush(fill)
        painter.drawPolygon(polygon(place.shape))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if place.manner is Manner.LID:
        faint = QColor(ink)
        faint.setAlphaF(0.26)
        painter.setPen(QPen(faint, 1.2 * size))
        painter.drawEllipse(lid(place.words))
    if face.rim:
        edge = 3.5 * size
        painter.setPen(QPen(QColor(face.rim), 3.2 * size))
        painter.drawEllipse(lid(place.words).adjusted(edge, edge * 0.7, -edge, -edge * 0.7))
    within = 4.0 * size if face.rim else 0.0
    if face.is_lit:
        double_ring(painter, place.shape, RING, size)
        within = max(within, 5.0 * size)
    if has_focus:
        _focus_ring(painter, place.shape, within + 3.0, size)
        within += 4.0 * size
    painter.setPen(ink)
    if face.pot is not None:
        paint_pot(painter, place.words.inset(within), face, face.pot, size, ink)
    else:
        write_face(painter, replace(place, words=place.words.inset(within)), face, size)
    if face.is_worth_reading:
        _diamond(painter, place, size)


def double_ring(painter: QPainter, shape: Polygon, inner: str, size: float) -> None:
    """A white ring with a dark one inside it, along an outline."""
    size = max(size, 0.85)
    line = polygon(_shrunk(shape, 4.0 * size))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for wide, shade in ((7.0, "#FFFFFF"), (3.6, inner)):
        pen = QPen(QColor(shade), wide * size)
        pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
        painter.setPen(pen)
        painter.drawPolygon(line)


def _focus_ring(painter: QPainter, shape: Polygon, inset: float, size: float) -> None:
    """Where the keyboard is: a thinner ring, inside that of a lit spot."""
    line = polygon(_shrunk(shape, inset + 1.5 * size))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for wide, shade in ((4.5, "#FFFFFF"), (2.2, FOCUS)):
        painter.setPen(QPen(QColor(shade), wide))
        painter.drawPolygon(line)


def _diamond(painter: QPainter, place: Place, size: float) -> None:
    """The sign of the reading worth most, at the upper right."""
    half = min(9.0 * size, 0.17 * place.words.height, 0.1 * place.words.width)
    x, y = place.shape.upper_right
    x += (-2.2 if place.manner is Manner.LID else -1.5) * half
    y += 1.6 * half
    if place.manner is Manner.PAGE:
        x, y = place.words.right - 1.2 * half, place.words.y + 1.6 * half
    painter.setPen(QPen(QColor("#000000"), 1.6 * size))
    painter.setBrush(QColor("#FFFFFF"))
    painter.drawPolygon(polygon(((x, y - half), (x + half, y), (x, y + half), (x - half, y))))


def _shrunk(shape: Polygon, inset: float) -> Polygon:
    """Corners moved inward along the diagonals, which for nearly upright shapes is a margin."""
    x = sum(point[0] for point in shape) / len(shape)
    y = sum(point[1] for point in shape) / len(shape)
    return tuple((px + (inset if px < x else -inset), py + (inset if py < y else -inset)) for px, py in shape)
