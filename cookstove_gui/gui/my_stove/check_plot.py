"""One thermometer against right: each check a ring, the line of its error, and its doubt as a fan."""

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.desk.my_stove.checks import CheckPicture
from cookstove_gui.desk.my_stove.picture_values import checks_values
from cookstove_gui.forecast.answers import NORMAL_P90
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, MIDDLE, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import BODY, SMALL, font
from cookstove_gui.stove.checks import CheckPoint
from cookstove_gui.units import degrees, degrees_difference, kelvin

_HOTTEST = {"F": 500.0, "C": 260.0}  # of the axis, unless more is cooked with
_TICKS = {"F": 100.0, "C": 50.0}  # of the heat
_STEPS = {"F": (5.0, 10.0, 20.0, 50.0, 100.0), "C": (2.0, 5.0, 10.0, 20.0, 50.0)}  # of the error
_FIVE_IN_TEN = 0.6745  # standard deviations either side
_FAN = ((NORMAL_P90, 23), (_FIVE_IN_TEN, 33))  # 9 and 13 % of ink
_LEFT, _RIGHT, _TOP, _BOTTOM = 46, 8, 34, 32  # px of the design round the plot
_WORDS = {CheckPoint.ICE: "ice", CheckPoint.BOIL: "boil"}


class CheckPlot(Picture):
    """Heat to the right, what it reads too high upward; solid between the checked points, dashed where carried on."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__("check_plot", look, (300, 220), parent)
        self._found: CheckPicture | None = None
        self._unit = "F"
        self._where = ""
        self.values = lambda: checks_values(self._found, self._unit) if self._found else ""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)

    def sizeHint(self) -> QSize:
        """As drawn in the design."""
        return QSize(px(444), px(310))

    def show_checks(self, found: CheckPicture, where: str, unit: str, words: str) -> None:
        """Draw a thermometer; `where` names the heat that is cooked with, `words` say the picture."""
        self._found, self._where, self._unit = found, where, unit
        self.setAccessibleName(words)
        self.update()

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """Fan, lines, rings, words."""
        if self._found is not None:
            _Drawing(painter, self._found, self.look, self._unit, whole).draw(self._where)


class _Drawing:
    def __init__(self, painter: QPainter, found: CheckPicture, look: Look, unit: str, whole: QRectF) -> None:
        self._painter, self._found, self._unit, self._theme = painter, found, unit, look.theme
        self._plot = whole.adjusted(px(_LEFT), px(_TOP), -px(_RIGHT), -px(_BOTTOM))
        self._hottest = max(_HOTTEST[unit], degrees(found.cooked, unit) + _TICKS[unit])
        self._heats = np.linspace(0.0, self._hottest, 101)
        self._errors = np.array([self._error(heat) for heat in self._heats])
        self._doubts = np.array([self._doubt(heat) for heat in self._heats])
        most = max(
            float((np.abs(self._errors) + NORMAL_P90 * self._doubts).max()),
            *(abs(degrees_difference(ring.error, unit)) for ring in found.rings),
            10.0 if unit == "F" else 5.0,
        )
        self._most = 1.08 * most
        self._step = next((step for step in _STEPS[unit] if most / step <= 3.0), _STEPS[unit][-1])

    def _error(self, heat: float) -> float:
        return float(degrees_difference(self._found.instrument.error(kelvin(heat, self._unit)), self._unit))

    def _doubt(self, heat: float) -> float:
        return float(degrees_difference(self._found.instrument.doubt(kelvin(heat, self._unit)), self._unit))

    def _at(self, heat: float, error: float) -> QPointF:
        across = self._plot.left() + self._plot.width() * heat / self._hottest
        return QPointF(across, self._plot.center().y() - 0.5 * self._plot.height() * error / self._most)

    def _heat(self, true: float) -> float:
        return float(degrees(true, self._unit))

    def draw(self, where: str) -> None:
        self._draw_fan()
        self._draw_axes()
        self._draw_marks()
        self._draw_line()
        self._draw_cooked(where)
        for ring in sorted(self._found.rings, key=lambda ring: ring.latest):
            middle = self._at(self._heat(ring.heat), degrees_difference(ring.error, self._unit))
            self._draw_ring(middle, filled=ring.latest)

    def _draw_fan(self) -> None:
        self._painter.setPen(Qt.PenStyle.NoPen)
        for deviations, alpha in _FAN:
            above = self._errors + deviations * self._doubts
            below = self._errors - deviations * self._doubts
            edge = [self._at(heat, error) for heat, error in zip(self._heats, above, strict=True)]
            edge += [self._at(heat, error) for heat, error in zip(self._heats[::-1], below[::-1], strict=True)]
            self._painter.setBrush(colour(self._theme.ink, alpha))
            self._painter.drawPolygon(QPolygonF(edge))

    def _draw_axes(self) -> None:
        theme, plot = self._theme, self._plot
        for tick in np.arange(_TICKS[self._unit], self._hottest + 1e-6, _TICKS[self._unit]):
            across = self._at(float(tick), 0.0).x()
            self._line(theme.line, 1.0, QPointF(across, plot.bottom()), QPointF(across, plot.bottom() + px(5)))
            last = bool(tick + _TICKS[self._unit] > self._hottest + 1e-6)
            text = f"{tick:.0f} °{self._unit}" if last else f"{tick:.0f}"
            where = QRectF(across - px(60), plot.bottom() + px(6), px(60) + (px(_RIGHT) if last else px(60)), px(24))
            self._text(where, text, theme.soft, SMALL, right=last)
        self._line(theme.line, 1.0, plot.bottomLeft(), plot.bottomRight())
        self._line(theme.verdigris, 2.0, self._at(0.0, 0.0), self._at(self._hottest, 0.0))
        most = int(self._most / self._step)
        for place in range(-most, most + 1):
            level = self._at(0.0, place * self._step)
            box = QRectF(0.0, level.y() - px(12), plot.left() - px(8), px(24))
            ink, weight = (theme.verdigris, 600) if place == 0 else (theme.soft, 400)
            text = f"{place * self._step:+.0f}".replace("-", "−") if place else "0"
            self._text(box, text, ink, SMALL, right=True, weight=weight)
        below = QRectF(plot.right() - px(90), plot.center().y() + px(2), px(88), px(24))
        self._text(below, "right", theme.verdigris, 18, right=True, weight=600)
        for words, upward in (("reads high", True), ("reads low", False)):
            height = plot.center().y() + (-0.36 if upward else 0.2) * plot.height()
            box = QRectF(self._at(60.0 * self._hottest / 500.0, 0.0).x(), height, px(110), px(24))
            self._text(box, words, theme.soft, SMALL, centred=False)

    def _draw_marks(self) -> None:
        for point, true in self._found.marks.items():
            across = self._at(self._heat(true), 0.0).x()
            top, bottom = QPointF(across, self._plot.top() - px(6)), QPointF(across, self._plot.bottom())
            self._line(self._theme.faint, 1.5, top, bottom)
            box = QRectF(across - px(40), 0.0, px(80), px(26))
            self._text(box, _WORDS[point], self._theme.ink, 18, weight=600)

    def _draw_line(self) -> None:
        checked = sorted(self._heat(ring.heat) for ring in self._found.rings)
        if not checked:
            return
        first, last = checked[0], checked[-1]
        self._line(self._theme.ink, 2.4, self._at(first, self._error(first)), self._at(last, self._error(last)))
        for start, end in ((last, self._hottest), (first, 0.0)):
            pen = QPen(QColor(self._theme.ink), 2.4)
            pen.setDashPattern([2.9, 2.1])
            self._painter.setPen(pen)
            self._painter.drawLine(self._at(start, self._error(start)), self._at(end, self._error(end)))

    def _draw_cooked(self, where: str) -> None:
        heat = self._heat(self._found.cooked)
        error, doubt = self._error(heat), NORMAL_P90 * self._doubt(heat)
        high, low = self._at(heat, error + doubt), self._at(heat, error - doubt)
        self._line(self._theme.ink, 2.0, high, low)
        self._draw_ring(self._at(heat, error), filled=False)
        number = f"{error:+.0f} ±{doubt:.0f}".replace("-", "−")
        strong, plain = QFontMetricsF(font(22, 600)), QFontMetricsF(font(18))
        rest = f" at {where}"
        width = strong.horizontalAdvance(number) + plain.horizontalAdvance(rest)
        left = min(self._at(heat, 0.0).x() - 0.5 * width, self._plot.right() - width)
        left = max(left, self._plot.left())
        top = max(high.y() - px(34), self._plot.top() + px(2))
        box = QRectF(left, top, strong.horizontalAdvance(number), px(30))
        self._text(box, number, self._theme.ink, 22, centred=False, weight=600)
        beside = QRectF(box.right(), top, plain.horizontalAdvance(rest) + px(4), px(30))
        self._text(beside, rest, self._theme.ink, 18, centred=False)

    def _draw_ring(self, middle: QPointF, *, filled: bool) -> None:
        self._painter.setPen(QPen(QColor(self._theme.ink), 2.2))
        self._painter.setBrush(QColor(self._theme.ink if filled else self._theme.ground))
        self._painter.drawEllipse(middle, px(5), px(5))

    def _line(self, ink: str, width: float, start: QPointF, end: QPointF) -> None:
        draw_line(self._painter, ink, width, start, end)

    def _text(
        self,
        box: QRectF,
        words: str,
        ink: str,
        size: int = BODY,
        *,
        right: bool = False,
        centred: bool = True,
        weight: int = 400,
    ) -> None:
        side = RIGHT if right else MIDDLE if centred else LEFT
        draw_words(self._painter, box, words, ink, side=side, size=size, weight=weight)
