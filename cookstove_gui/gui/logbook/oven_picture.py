"""The oven of one session: its curve as now known, the heat wanted, what was foretold against what came, its stages."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QLinearGradient, QPainter, QPen, QPolygonF

from cookstove_gui.desk.logbook.opened import Opened
from cookstove_gui.gui.time_axis.clock_axis import clock_ticks
from cookstove_gui.gui.time_axis.span import AXIS_WIDTH, TimeSpan
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import PLACE, SMALL, font
from cookstove_gui.phrases.edge import heat_name
from cookstove_gui.phrases.logbook.sessions import came_words, foretold_words, stage_rungs
from cookstove_gui.stove.drawn.heat_colours import heat_colour, heat_ink
from cookstove_gui.units import degrees, kelvin

_CLOCKS, _STRIP, _GAP = 28, 28, 4  # px of the design: clock axis, strip of stages, between them
_TICKS = {"F": 100.0, "C": 50.0}
_FLOOR = 289.0  # K, the foot of the axis where nothing was colder
_LABEL = 90  # px that one clock takes
_LINE = 22  # px from one line of words to the next
_DOUBT = 36  # of 255, how dark the doubt of the curve is


class OvenPicture(Picture):
    """One session's oven."""

    def __init__(self, span: TimeSpan, look: Look) -> None:
        super().__init__("oven_picture", look, (340, 230))
        self._span = span
        self._found: Opened | None = None
        self._unit = "F"

    def show_session(self, found: Opened | None, unit: str, said: str) -> None:
        """Draw a session; `said` reads the picture out."""
        self._found, self._unit = found, unit
        self.setAccessibleName(said)
        self.update()

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """Band, curve, readings, the projection, clocks, stages."""
        if self._found is not None:
            _Drawing(painter, self, self._span, self._unit, whole).draw(self._found)


class _Drawing:
    def __init__(self, painter: QPainter, picture: Picture, span: TimeSpan, unit: str, whole: QRectF) -> None:
        self._painter, self._theme, self._span, self._unit = painter, picture.look.theme, span, unit
        self._whole = whole
        self._ground = whole.bottom() - px(_CLOCKS + _STRIP + _GAP)
        self._top = whole.top() + px(6)
        self._floor, self._ceiling = _FLOOR, 500.0

    def draw(self, found: Opened) -> None:
        heats = [*found.low.tolist(), *found.high.tolist(), *(one.heat for one in found.readings if not one.is_doubted)]
        self._floor = min([_FLOOR, *heats]) - 6.0
        self._ceiling = max([found.band.high + 6.0, *heats]) + 4.0
        self._draw_band(found)
        if found.facts.curve and found.at.size:  # a log of a single moment has none
            self._draw_curve(found)
            self._draw_stages(found)
        self._draw_clocks()
        self._draw_foretold(found)

    def _x(self, minute: float) -> float:
        return self._span.x(minute, self._whole.width())

    def _y(self, heat: float) -> float:
        share = (heat - self._floor) / (self._ceiling - self._floor)
        return self._ground - min(max(share, 0.0), 1.0) * (self._ground - self._top)

    def _draw_band(self, found: Opened) -> None:
        band, theme, left, right = found.band, self._theme, px(AXIS_WIDTH), self._whole.right()
        box = QRectF(QPointF(left, self._y(band.high)), QPointF(right, self._y(band.low)))
        self._painter.fillRect(box, QColor(theme.band))
        for level in (box.top(), box.bottom()):
            draw_line(self._painter, theme.verdigris, 1.2, QPointF(left, level), QPointF(right, level))
        high = float(px(24))
        inside = box.height() >= 0.8 * high
        top = box.center().y() - 0.5 * high if inside else box.bottom() + px(1)  # never across its edge
        name = QRectF(left + px(8), top, px(200), high)
        draw_words(self._painter, name, heat_name(band), theme.verdigris, side=LEFT, size=PLACE, weight=600)
        step = _TICKS[self._unit]
        low, high = (float(degrees(heat, self._unit)) for heat in (self._floor, self._ceiling))
        tick = step * (low // step + 1)
        while tick < high:
            level = self._y(float(kelvin(tick, self._unit)))
            place = QRectF(0, level - px(12), left - px(8), px(24))
            draw_words(self._painter, place, f"{tick:.0f}", theme.soft, side=RIGHT, size=SMALL)
            tick += step

    def _draw_curve(self, found: Opened) -> None:
        painter, theme = self._painter, self._theme
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(colour(theme.ink, _DOUBT))
        upper = [QPointF(self._x(at), self._y(heat)) for at, heat in zip(found.at, found.high, strict=True)]
        lower = [QPointF(self._x(at), self._y(heat)) for at, heat in zip(found.at, found.low, strict=True)]
        painter.drawPolygon(QPolygonF([*upper, *reversed(lower)]))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(theme.ink), 2.4))
        painter.drawPolyline(
            QPolygonF([QPointF(self._x(at), self._y(heat)) for at, heat in zip(found.at, found.middle, strict=True)])
        )
        for reading in found.readings:
            middle = QPointF(self._x(reading.minute), self._y(reading.heat))
            painter.setPen(QPen(QColor(theme.ember if reading.is_doubted else theme.ink), 1.8))
            painter.setBrush(QColor(theme.ground))
            painter.drawEllipse(middle, px(5), px(5))
            if reading.is_doubted:
                painter.drawLine(middle + QPointF(-px(8), px(8)), middle + QPointF(px(8), -px(8)))

    def _draw_foretold(self, found: Opened) -> None:
        row = found.foretold
        if row is None or row.likely_min is None or row.came_true_min is None:
            return
        painter, theme = self._painter, self._theme
        made, level = found.place(row.made_at), self._y(row.band.low)
        likely, came = self._x(made + row.likely_min), self._x(made + row.came_true_min)
        first = self._x(made + (row.enters_min.p10 or 0.0))
        last = self._whole.right() if row.enters_min.p90 is None else self._x(made + row.enters_min.p90)
        pen = QPen(QColor(theme.verdigris), px(9), Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        painter.drawLine(QPointF(first, level), QPointF(min(last, self._whole.right() - px(5)), level))
        painter.setPen(QPen(QColor(theme.verdigris), px(3)))
        painter.setBrush(QColor(theme.ground))
        painter.drawEllipse(QPointF(likely, level), px(7), px(7))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(theme.ink))
        tip = level - px(8)
        painter.drawPolygon(
            QPolygonF([QPointF(came, tip), QPointF(came - px(7), tip - px(11)), QPointF(came + px(7), tip - px(11))])
        )
        words = came_words(row)
        wide = QFontMetricsF(font(PLACE, 600)).horizontalAdvance(words)
        box = QRectF(max(came - px(24) - wide, px(AXIS_WIDTH)), tip - px(20), wide, px(24))
        draw_words(painter, box, words, theme.ink, side=LEFT, size=PLACE, weight=600)
        lines = foretold_words(row)
        wide = max(QFontMetricsF(font(PLACE)).horizontalAdvance(line) for line in lines)
        left = min(max(likely, came) + px(14), self._whole.right() - wide)  # where the curve is mostly above them
        top = self.below_curve(found, left, left + wide, level + px(12), len(lines))
        for number, line in enumerate(lines):
            place = QRectF(left, top + number * px(_LINE), wide, px(24))
            draw_words(painter, place, line, theme.verdigris, side=LEFT, size=PLACE)

    def below_curve(self, found: Opened, left: float, right: float, at_least: float, lines: int) -> float:
        """Where lines of words begin so that curve and readings between two places stay above, if there is room."""
        drawn = [*zip(found.at, found.low, strict=True), *((one.minute, one.heat) for one in found.readings)]
        lowest = max((self._y(heat) for at, heat in drawn if left <= self._x(at) <= right), default=0.0)
        last = self._ground - lines * px(_LINE)
        return max(min(max(at_least, lowest + px(8)), last), at_least)

    def _draw_clocks(self) -> None:
        span, theme = self._span, self._theme
        left, right = px(AXIS_WIDTH), self._whole.right()
        draw_line(self._painter, theme.line, 1.2, QPointF(left, self._ground), QPointF(right, self._ground))
        if span.anchor is None:
            return
        most = max(int((right - left) // px(_LABEL)), 1)
        face = QFontMetricsF(font(SMALL))
        for place, words in clock_ticks(span.anchor, span.offset_minutes, span.low, span.high, most):
            x, half = self._x(place), 0.5 * face.horizontalAdvance(words)
            draw_line(self._painter, theme.line, 1.0, QPointF(x, self._ground), QPointF(x, self._ground + px(5)))
            if left <= x - half and x + half <= right:
                draw_words(
                    self._painter,
                    QRectF(x - half, self._ground + px(4), 2 * half, px(24)),
                    words,
                    theme.soft,
                    size=SMALL,
                )

    def _draw_stages(self, found: Opened) -> None:
        painter, theme = self._painter, self._theme
        top, high = self._ground + px(_CLOCKS), px(_STRIP - 2)
        draw_words(painter, QRectF(0, top, px(AXIS_WIDTH), high), "oven", theme.soft, side=LEFT, size=SMALL)
        start, end = self._x(float(found.at[0])), self._x(float(found.at[-1]))
        shades = QLinearGradient(QPointF(start, top), QPointF(end, top))
        for at, heat in zip(found.at, found.middle, strict=True):
            shades.setColorAt(
                min(max((self._x(at) - start) / max(end - start, 1.0), 0.0), 1.0), QColor(heat_colour(heat))
            )
        for stage in found.stages:
            left, right = self._x(stage.start), self._x(stage.end)
            box = QRectF(left + (1 if stage is not found.stages[0] else 0), top, right - left - 1, high)
            painter.fillRect(box, shades)
            heat = float(found.middle[int(abs(found.at - stage.start - 2.0).argmin())])
            for rung in stage_rungs(stage, found.band):
                if QFontMetricsF(font(PLACE, 600)).horizontalAdvance(rung) <= box.width() - px(12):
                    place = box.adjusted(px(8), 0, 0, 0)
                    draw_words(painter, place, rung, heat_ink(heat), side=LEFT, size=PLACE, weight=600)
                    break
