"""Words on the drawing: measured once, written about a point, as large as their place allows."""

from collections.abc import Sequence
from functools import cache

from PySide6.QtCore import QPointF
from PySide6.QtGui import QFont, QFontMetricsF, QPainter

from cookstove_gui.gui.widgets.steps import scale
from cookstove_gui.gui.widgets.type import font

SMALLEST = 11  # pixels; what does not fit even so is left to the tooltip
_FIGURE = 0.33  # from the middle of a figure down to the line it stands on, by its type's size


def text_size(size: float) -> float:
    """How large type is written on a stove drawn at a size: with it, and with the size of text the cook chose."""
    return max(size, scale())


def advance(text: str, pixels: float, weight: int = 400) -> float:
    """Width of a text in pixels."""
    return _metrics(_whole(pixels), weight).horizontalAdvance(text)


def fitting(text: str, width: float, sizes: Sequence[float], weight: int = 400) -> float:
    """The first of these sizes at which the text is no wider than its place; the last if none is."""
    return next((size for size in sizes if advance(text, size, weight) <= width), sizes[-1])


def write(painter: QPainter, x: float, middle: float, text: str, pixels: float, weight: int = 400) -> float:
    """Write from x on, the figures' middle at a height; returns the width."""
    painter.setFont(lettering(_whole(pixels), weight))
    painter.drawText(QPointF(x, middle + _FIGURE * pixels), text)
    return advance(text, pixels, weight)


def write_centred(painter: QPainter, x: float, middle: float, text: str, pixels: float, weight: int = 400) -> None:
    """Write about a point."""
    write(painter, x - advance(text, pixels, weight) / 2, middle, text, pixels, weight)


@cache
def lettering(pixels: int, weight: int) -> QFont:
    """The program's type at a height in pixels of the screen."""
    made = font(weight=weight)
    made.setPixelSize(pixels)
    return made


@cache
def _metrics(pixels: int, weight: int) -> QFontMetricsF:
    return QFontMetricsF(lettering(pixels, weight))


def _whole(pixels: float) -> int:
    return max(round(pixels), SMALLEST)
