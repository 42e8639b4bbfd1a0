"""What the colours of the heats mean in a cook's words, in one line below the stove."""

from dataclasses import dataclass

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QPainter, QPen

from cookstove_gui.gui.drawn_stove.lettering import advance, write
from cookstove_gui.gui.widgets.theme import Theme
from cookstove_gui.stove.drawn.shapes import Box

_SWATCH, _GAP, _BETWEEN = 12.0, 5.0, 14.0


@dataclass(frozen=True, slots=True)
class Legend:
    """Words with their colours, from cool to hot."""

    marks: tuple[tuple[str, str], ...] = ()


def paint_legend(painter: QPainter, box: Box, legend: Legend, theme: Theme, size: float) -> None:
    """Paint it, smaller where it would not fit, and not at all where it could not be read."""
    if not legend.marks:
        return
    for pixels in (15 * size, 14 * size, 13 * size, 12 * size):
        wide = sum(advance(word, pixels) for word, _ in legend.marks)
        wide += (_SWATCH + _GAP) * size * len(legend.marks) + _BETWEEN * size * (len(legend.marks) - 1)
        if wide <= box.width:
            break
    else:
        return
    x, middle = box.x + (box.width - wide) / 2, box.centre[1]
    side = _SWATCH * size
    for word, shade in legend.marks:
        painter.setPen(QPen(QColor(theme.line), 1))
        painter.setBrush(QColor(shade))
        painter.drawRect(QRectF(x, middle - side / 2, side, side))
        painter.setPen(QColor(theme.soft))
        x += side + _GAP * size
        x += write(painter, x, middle, word, pixels) + _BETWEEN * size
