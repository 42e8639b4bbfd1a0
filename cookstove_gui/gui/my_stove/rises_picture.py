"""Every rise of the oven from the match on: the earlier ones as thin lines, today's heavy."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from cookstove_gui.desk.my_stove.abilities import Rise
from cookstove_gui.desk.my_stove.picture_values import rises_values
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import PLACE, SMALL, font
from cookstove_gui.phrases.edge import heat_name
from cookstove_gui.phrases.my_stove.abilities import rises_words
from cookstove_gui.stove.drawn.heat_colours import ROOM
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import degrees, kelvin

_LEFT, _FOOT, _TOP = 40, 26, 8  # px of the design
_HALF_HOURS = ("lit", "½ h", "1 h", "1½ h", "2 h", "2½ h", "3 h")
_LEAST_MIN, _STEP_MIN = 120.0, 30.0
_TICKS = {"F": 100.0, "C": 50.0}
_MANY = 30  # lines, from which they are drawn fainter


class RisesPicture(Picture):
    """The rises under one band."""

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, look, (260, 110), parent)
        self._rises: tuple[Rise, ...] = ()
        self._band: HeatBand | None = None
        self._unit = "F"
        self.values = lambda: rises_values(self._rises, self._unit)

    def show_rises(self, rises: tuple[Rise, ...], band: HeatBand, unit: str) -> None:
        """Draw these, with the heat they rise to."""
        self._rises, self._band, self._unit = rises, band, unit
        self.setAccessibleName(rises_words(len(rises), today=any(rise.is_today for rise in rises)))
        self.update()

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """Band, scale, lines."""
        if self._band is None:
            return
        last = max((rise.curve[-1][0] for rise in self._rises), default=0.0)
        ends = max(_LEAST_MIN, -(-last // _STEP_MIN) * _STEP_MIN)
        heats = [heat for rise in self._rises for _, heat in rise.curve]
        self._top, self._low = max([self._band.high, *heats]) + 8.0, min([ROOM, *heats])
        self._box = whole.adjusted(px(_LEFT), px(_TOP), 0, -px(_FOOT))
        self._ends = ends
        self._paint_scale(painter, self._band)
        for rise in sorted(self._rises, key=lambda one: one.is_today):
            self._paint_rise(painter, rise)

    def _place(self, reading: tuple[float, float]) -> QPointF:
        minute, heat = reading
        box = self._box
        share = (heat - self._low) / (self._top - self._low)
        return QPointF(box.left() + box.width() * min(minute / self._ends, 1.0), box.bottom() - box.height() * share)

    def _paint_scale(self, painter: QPainter, band: HeatBand) -> None:
        theme, box = self.look.theme, self._box
        upper, lower = self._place((0.0, band.high)).y(), self._place((0.0, band.low)).y()
        painter.fillRect(QRectF(box.left(), upper, box.width(), lower - upper), QColor(theme.band))
        for level in (upper, lower):
            draw_line(painter, theme.verdigris, 1.2, QPointF(box.left(), level), QPointF(box.right(), level))
        name = QRectF(box.left() + px(6), 0.5 * (upper + lower) - px(12), box.width(), px(24))
        draw_words(painter, name, heat_name(band), theme.verdigris, side=LEFT, size=PLACE, weight=600)
        step = _TICKS[self._unit]
        tick = step * -(-float(degrees(self._low, self._unit)) // step)
        while float(kelvin(tick, self._unit)) < self._top:
            level = self._place((0.0, float(kelvin(tick, self._unit)))).y()
            place = QRectF(0, level - px(12), box.left() - px(8), px(24))
            draw_words(painter, place, f"{tick:.0f}", theme.soft, side=RIGHT, size=SMALL)
            tick += step
        draw_line(painter, theme.line, 1.4, box.bottomLeft(), box.bottomRight())
        for number, words in enumerate(_HALF_HOURS):
            minute = number * _STEP_MIN
            if minute > self._ends:
                break
            wide = QFontMetricsF(font(SMALL)).horizontalAdvance(words)
            x = min(max(self._place((minute, ROOM)).x() - wide / 2, box.left()), box.right() - wide)
            draw_words(painter, QRectF(x, box.bottom() + px(3), wide, px(22)), words, theme.soft, side=LEFT, size=SMALL)

    def _paint_rise(self, painter: QPainter, rise: Rise) -> None:
        theme = self.look.theme
        line = [self._place(reading) for reading in rise.curve]
        ink = QColor(theme.ink) if rise.is_today else colour(theme.soft, 150 if len(self._rises) < _MANY else 70)
        painter.setPen(QPen(ink, 3.0 if rise.is_today else 1.3))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPolyline(QPolygonF(line))
        if rise.is_today:
            end = line[-1]
            wide = QFontMetricsF(font(PLACE, 600)).horizontalAdvance("today")
            x = min(end.x() + px(6), self._box.right() - wide)
            words = QRectF(x, end.y() + px(4), wide, px(24))
            draw_words(painter, words, "today", theme.ink, side=LEFT, size=PLACE, weight=600)
