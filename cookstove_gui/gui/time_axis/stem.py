"""What runs down through plot, lane and rows: now, and the dotted stem of the arrival."""

from PySide6.QtCore import QLineF, Qt
from PySide6.QtGui import QPainter, QPen

from cookstove_gui.gui.time_axis.span import TimeSpan
from cookstove_gui.gui.widgets.theme import Theme, colour

_NOW, _STEM = 1.6, 1.4
_DOTS = (2.0, 2.6)  # drawn and left free, in widths of the stem


def paint_now(painter: QPainter, span: TimeSpan, theme: Theme, width: float, bottom: float, top: float = 0.0) -> None:
    """The line at now, from top to bottom."""
    if span.now is not None and span.low <= span.now <= span.high:
        x = span.x(span.now, width)
        painter.setPen(QPen(colour(theme.ink), _NOW))
        painter.drawLine(QLineF(x, top, x, bottom))


def paint_stem(painter: QPainter, span: TimeSpan, theme: Theme, width: float, bottom: float, top: float = 0.0) -> None:
    """The stem at the likely moment, if there is one."""
    if span.likely is not None and span.low <= span.likely <= span.high:
        pen = QPen(colour(theme.verdigris), _STEM, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap)
        pen.setDashPattern(_DOTS)
        x = span.x(span.likely, width)
        painter.setPen(pen)
        painter.drawLine(QLineF(x, top, x, bottom))
