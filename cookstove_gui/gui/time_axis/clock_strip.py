"""The clock below the plot: round times, and now on a plate."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.gui.time_axis.clock_axis import clock_ticks
from cookstove_gui.gui.time_axis.span import AXIS_WIDTH, TimeSpan
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import font
from cookstove_gui.units import clock_text

HIGH = 26  # [px of the design]
_TICK = 5
_LABEL = 100  # px of the design that one clock time takes at least
_SIZE = 16


class ClockStrip(QWidget):
    """A line with ticks; it moves with the plot above it."""

    def __init__(self, span: TimeSpan, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._span, self._look = span, look
        self.setObjectName("clock_strip")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._dress()
        span.moved.connect(self.update)
        look.changed.connect(self._dress)

    def _dress(self) -> None:
        self.setFixedHeight(px(HIGH))
        self.update()

    def now_words(self) -> str:
        """What stands on the plate."""
        span = self._span
        return "" if span.now is None or span.anchor is None else clock_text(span.at(span.now), span.offset_minutes)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Line, ticks, times; the plate last, and no time under it."""
        span, theme = self._span, self._look.theme
        if span.anchor is None or span.now is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        width, left = self.width(), px(AXIS_WIDTH)
        painter.setPen(QPen(colour(theme.line), 1))
        painter.drawLine(QPointF(left, 0.5), QPointF(width, 0.5))
        face, size = font(_SIZE), QFontMetricsF(font(_SIZE))
        plate = self._plate()
        most = max(int((width - left) // px(_LABEL)), 1)
        painter.setFont(face)
        for place, words in clock_ticks(span.anchor, span.offset_minutes, span.low, span.high, most):
            x = span.x(place, width)
            painter.setPen(QPen(colour(theme.line), 1))
            painter.drawLine(QPointF(x, 0), QPointF(x, px(_TICK)))
            half = 0.5 * size.horizontalAdvance(words)
            free = plate.isNull() or x + half + px(6) < plate.left() or x - half - px(6) > plate.right()
            if free and x - half >= 0 and x + half <= width:
                painter.setPen(colour(theme.soft))
                painter.drawText(QPointF(x - half, px(_TICK) + size.ascent()), words)
        if not plate.isNull():
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(colour(theme.ink))
            painter.drawRoundedRect(plate, px(3), px(3))
            painter.setFont(font(_SIZE, 600))
            painter.setPen(colour(theme.ground))
            painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, self.now_words())
        painter.end()

    def _plate(self) -> QRectF:
        """Where now stands; nothing if it is out of sight."""
        span, words = self._span, self.now_words()
        if span.now is None or not span.low <= span.now <= span.high:
            return QRectF()
        half = 0.5 * QFontMetricsF(font(_SIZE, 600)).horizontalAdvance(words) + px(8)
        middle = min(max(span.x(span.now, self.width()), half), self.width() - half)
        return QRectF(middle - half, px(3), 2 * half, self.height() - px(5))
