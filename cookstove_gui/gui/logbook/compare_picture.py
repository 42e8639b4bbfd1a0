"""Several ovens over each other, told apart by line and mark, today's projection, and a fire lane for each below.

Of many sessions only those chosen stand out and have a lane; the others are thin lines.
"""

from collections.abc import Sequence
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen, QPolygonF

from cookstove_gui.cooking.fires.comparing import Figure
from cookstove_gui.desk.logbook.comparing import Beside, Compared, values_text
from cookstove_gui.gui.logbook.marks import line_pen, paint_mark, thin_pen
from cookstove_gui.gui.time_axis.lane_signs import paint_sign
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import PLACE, SMALL, font
from cookstove_gui.phrases.edge import heat_name, measured_time
from cookstove_gui.phrases.logbook.compare import TODAY, arrival_words
from cookstove_gui.stove.drawn.apart import moved_apart
from cookstove_gui.units import degrees, kelvin

_LEFT, _AXIS, _LANE, _LEGEND = 62, 30, 32, 28  # [px of the design], as all here
_TICKS = {"F": 100.0, "C": 50.0}
_FLOOR = 289.0  # K
_LEAST_CURVES = 150
_FAN = 30  # of 255 of ink, the futures' ground
_KEY = 52
_STEPS = (30, 60, 120, 240)  # min between the numbers of the axis
_DAY = 1440.0
_NOW = f"{TODAY}, now"


class ComparePicture(Picture):
    """Curves, lanes, and which line is whose."""

    def __init__(self, look: Look) -> None:
        super().__init__("compare_picture", look, (420, 300))
        self._found: Compared | None = None
        self._unit = "F"
        self._by_clock = False
        self._strong: tuple[int, ...] = ()  # places of the sessions that stand out
        self.values = lambda: values_text(self._found, self._unit) if self._found else ""

    def show_compared(self, found: Compared, unit: str, said: str, strong: Sequence[int], *, by_clock: bool) -> None:
        """Draw these sessions; those at the places in `strong` stand out."""
        self._found, self._unit, self._by_clock, self._strong = found, unit, by_clock, tuple(strong)
        self.setAccessibleName(said)
        self.updateGeometry()
        self.update()

    def minimumSizeHint(self) -> QSize:
        """Room for the curves, and a lane for each session."""
        count = len(self._strong) or 2
        return QSize(px(420), px(_LEAST_CURVES + _AXIS + _LANE * count + _LEGEND * (1 + count // 4)))

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """Everything, from the top down."""
        if self._found is not None and self._found.sessions:
            drawing = _Drawing(painter, self.look, whole, self._unit, by_clock=self._by_clock)
            drawing.draw(self._found, self._strong)


class _Drawing:
    def __init__(self, painter: QPainter, look: Look, whole: QRectF, unit: str, *, by_clock: bool) -> None:
        self._painter, self._theme, self._whole, self._unit, self._by_clock = painter, look.theme, whole, unit, by_clock
        self._left, self._right = whole.left() + px(_LEFT), whole.right() - px(6)
        self._first, self._last, self._ground, self._floor, self._ceiling = 0.0, 1.0, 0.0, _FLOOR, 500.0

    def _start(self, one: Beside) -> float:
        return one.clock_min if self._by_clock else 0.0

    def _x(self, minute: float) -> float:
        share = (minute - self._first) / max(self._last - self._first, 1.0)
        return self._left + share * (self._right - self._left)

    def _y(self, heat: float) -> float:
        share = (heat - self._floor) / (self._ceiling - self._floor)
        return self._ground - min(max(share, 0.0), 1.0) * (self._ground - self._whole.top() - px(6))

    def draw(self, found: Compared, strong: tuple[int, ...]) -> None:
        sessions, told = found.sessions, [found.sessions[place] for place in strong]
        legend = self._legend_rows(found, strong)
        below = px(_AXIS) + px(_LANE) * len(told) + px(_LEGEND) * (max(row for row, *_ in legend) + 1)
        self._ground = self._whole.bottom() - below
        self._first = min(self._start(one) + min(0.0, one.curve[0][0] if one.curve else 0.0) for one in sessions)
        self._last = max(self._start(one) + _length(one) for one in sessions)
        heats = [heat for one in sessions for _, heat in one.curve]
        heats += [heat for one in sessions if one.coming is not None for heat in one.coming.middle]
        self._floor = min([_FLOOR, *heats]) - 6.0
        self._ceiling = max([found.band.high + 8.0, *heats]) + 4.0
        self._draw_band(found)
        self._draw_axis()
        for one in sessions:
            self._draw_coming(one, found)
        for place, one in enumerate(sessions):
            if place not in strong:
                self._draw_thin(one)
        for place, one in enumerate(told):
            self._draw_curve(place, one)
        self._draw_band_name(found)
        for place, one in enumerate(told):
            self._draw_lane(one, self._ground + px(_AXIS) + px(_LANE) * place, strong=place == 0)
        top = self._ground + px(_AXIS) + px(_LANE) * len(told)
        for place, (row, left, words, wide) in enumerate(legend):
            self._draw_legend(place, QRectF(left, top + px(_LEGEND) * row, wide, px(_LEGEND)), words)

    def _legend_rows(self, found: Compared, strong: tuple[int, ...]) -> list[tuple[int, float, str, float]]:
        """Of each that stands out its row, where it begins, its words and their room; as many in a row as fit."""
        rises = found.found.figures.get(Figure.RISE, tuple(None for _ in found.sessions))
        placed: list[tuple[int, float, str, float]] = []
        row, left = 0, self._left
        for place, (one, rise) in enumerate((found.sessions[at], rises[at]) for at in strong):
            came = "" if rise is None or one.coming is not None else f", after {measured_time(rise)}"
            words = f"{one.name}, {one.title}{came}"
            face = QFontMetricsF(font(PLACE, 600 if place == 0 else 400))
            wide = min(face.horizontalAdvance(words) + px(_KEY), self._right - self._left)
            if left + wide > self._right and left > self._left:
                row, left = row + 1, self._left
            placed.append((row, left, words, wide))
            left += wide + px(22)
        return placed

    def _draw_band(self, found: Compared) -> None:
        theme, band = self._theme, found.band
        box = QRectF(QPointF(self._left, self._y(band.high)), QPointF(self._right, self._y(band.low)))
        self._painter.fillRect(box, QColor(theme.band))
        for level in (box.top(), box.bottom()):
            draw_line(self._painter, theme.verdigris, 1.2, QPointF(self._left, level), QPointF(self._right, level))
        step = _TICKS[self._unit]
        low, high = (float(degrees(heat, self._unit)) for heat in (self._floor, self._ceiling))
        tick = step * (low // step + 1)
        while tick < high:
            level = self._y(float(kelvin(tick, self._unit)))
            place = QRectF(0, level - px(12), self._left - px(8), px(24))
            draw_words(self._painter, place, f"{tick:.0f}", theme.soft, side=RIGHT, size=SMALL)
            tick += step

    def _draw_band_name(self, found: Compared) -> None:
        """In the band where no curve runs, as far left as may be; where all is full, on ground of its own."""
        words = heat_name(found.band)
        middle = 0.5 * (self._y(found.band.low) + self._y(found.band.high))
        wide = QFontMetricsF(font(PLACE, 600)).horizontalAdvance(words) + px(8)
        box = QRectF(self._left + px(4), middle - px(12), wide, px(24))
        curves = [self._points(one) for one in found.sessions]
        room = (box.translated(step, 0.0) for step in range(0, int(self._right - box.right()), int(px(12))))
        place = next((one for one in room if not any(runs_through(curve, one) for curve in curves)), None)
        if place is None:
            self._painter.fillRect(box, QColor(self._theme.band))
        name = (place or box).adjusted(px(4), 0, 0, 0)
        draw_words(self._painter, name, words, self._theme.verdigris, side=LEFT, size=PLACE, weight=600)

    def _draw_axis(self) -> None:
        theme = self._theme
        ends = (QPointF(self._left, self._ground), QPointF(self._right, self._ground))
        draw_line(self._painter, theme.line, 1.2, *ends)
        room = max((self._right - self._left) / px(86), 1.0)
        step = next((one for one in _STEPS if (self._last - self._first) / one <= room), _STEPS[-1])
        minute = step * (self._first // step + 1) if self._first % step else self._first
        while minute <= self._last:
            x = self._x(minute)
            draw_line(self._painter, theme.line, 1.0, QPointF(x, self._ground), QPointF(x, self._ground + px(5)))
            words = self._clock(minute) if self._by_clock else "match" if minute == 0 else measured_time(minute)
            half = min(px(44), self._right - x) if x + px(44) > self._right else px(44)
            if half > px(30):
                box = QRectF(x - px(44), self._ground + px(4), px(88), px(24))
                draw_words(self._painter, box, words, theme.soft, size=SMALL)
            minute += step

    @staticmethod
    def _clock(minute: float) -> str:
        hours, rest = divmod(round(minute % _DAY), 60)
        return f"{hours}:{rest:02d}"

    def _points(self, one: Beside) -> list[QPointF]:
        start = self._start(one)
        return [QPointF(self._x(start + minute), self._y(heat)) for minute, heat in one.curve]

    def _draw_thin(self, one: Beside) -> None:
        self._painter.setBrush(Qt.BrushStyle.NoBrush)
        self._painter.setPen(thin_pen(self._theme))
        self._painter.drawPolyline(QPolygonF(self._points(one)))

    def _draw_curve(self, place: int, one: Beside) -> None:
        points = self._points(one)
        if not points:
            return
        self._painter.setBrush(Qt.BrushStyle.NoBrush)
        self._painter.setPen(line_pen(place, self._theme))
        self._painter.drawPolyline(QPolygonF(points))
        for point in points:
            paint_mark(self._painter, place, point, self._theme)

    def _draw_lane(self, one: Beside, top: float, *, strong: bool) -> None:
        theme = self._theme
        middle = top + px(_LANE) / 2
        name = QRectF(0, top, self._left - px(8), px(_LANE))
        ink, weight = (theme.ink, 600) if strong else (theme.soft, 400)
        draw_words(self._painter, name, one.name, ink, side=RIGHT, size=SMALL, weight=weight)
        start = self._start(one)
        marks = [(minute, row) for minute, row in one.lane if self._first <= start + minute <= self._last]
        gaps = [float(px(24))] * max(len(marks) - 1, 0)
        wanted = [self._x(start + minute) for minute, _ in marks]
        for (_, row), x in zip(marks, moved_apart(wanted, gaps, (self._left, self._right - px(8))), strict=True):
            paint_sign(
                self._painter, QPointF(x, middle), row.kind, opening=row.opening, count=row.count,
                ink=QColor(theme.ink), ground=QColor(theme.ground),
            )  # fmt: skip
        foot = top + px(_LANE) - 1
        draw_line(self._painter, theme.faint, 1.0, QPointF(self._left, foot), QPointF(self._right, foot))

    def _draw_coming(self, one: Beside, found: Compared) -> None:
        """How today is likely to go on: the futures' ground, their middle, now, and the arrival on the band."""
        coming = one.coming
        if coming is None:
            return
        painter, theme, start = self._painter, self._theme, self._start(one)
        across = [self._x(start + minute) for minute in coming.minutes]
        upper = [QPointF(x, self._y(heat)) for x, heat in zip(across, coming.high, strict=True)]
        lower = [QPointF(x, self._y(heat)) for x, heat in zip(across, coming.low, strict=True)]
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(colour(theme.ink, _FAN))
        painter.drawPolygon(QPolygonF([*upper, *reversed(lower)]))
        pen = QPen(QColor(theme.ink), 2.0)
        pen.setDashPattern([3.5, 2.5])
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPolyline(
            QPolygonF([QPointF(x, self._y(heat)) for x, heat in zip(across, coming.middle, strict=True)])
        )
        now = self._x(start + coming.now)
        draw_line(painter, theme.ink, 1.6, QPointF(now, self._whole.top()), QPointF(now, self._ground))
        draw_words(painter, self._before_now(now), _NOW, theme.ink, side=LEFT, size=SMALL, weight=600)
        if coming.arrival is not None:
            self._draw_arrival(start, coming.arrival, self._y(found.band.low))

    def _before_now(self, now: float) -> QRectF:
        """Room for the name of now: before its line, behind it only where there is none."""
        wide = QFontMetricsF(font(SMALL, 600)).horizontalAdvance(_NOW) + px(2)
        left = now - px(8) - wide
        return QRectF(left if left >= self._left else now + px(8), self._ground - px(26), wide, px(22))

    def _draw_arrival(self, start: float, arrival: tuple[float, float, float | None], level: float) -> None:
        painter, theme = self._painter, self._theme
        likely, soonest, latest = arrival
        last = self._right if latest is None else min(self._x(start + latest), self._right)
        painter.setPen(QPen(QColor(theme.verdigris), px(9), Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
        first = self._x(start + soonest)
        painter.drawLine(QPointF(first, level), QPointF(max(last - px(4), first), level))
        at = QPointF(self._x(start + likely), level)
        painter.setPen(QPen(QColor(theme.verdigris), px(3)))
        painter.setBrush(QColor(theme.ground))
        painter.drawEllipse(at, px(7), px(7))
        words = arrival_words(likely)
        wide = QFontMetricsF(font(PLACE, 600)).horizontalAdvance(words)
        left = min(at.x() + px(8), self._right - wide)
        box = QRectF(left, self._ground - px(52), wide, px(24))
        draw_line(painter, theme.verdigris, 1.4, QPointF(at.x(), level + px(9)), QPointF(at.x(), self._ground))
        draw_words(painter, box, words, theme.verdigris, side=LEFT, size=PLACE, weight=600)

    def _draw_legend(self, place: int, box: QRectF, words: str) -> None:
        theme, middle = self._theme, box.center().y()
        self._painter.setPen(line_pen(place, theme))
        self._painter.drawLine(QPointF(box.left(), middle), QPointF(box.left() + px(40), middle))
        paint_mark(self._painter, place, QPointF(box.left() + px(20), middle), theme)
        weight = 600 if place == 0 else 400
        room = box.adjusted(px(_KEY - 4), 0, 0, 0)
        told = QFontMetricsF(font(PLACE, weight)).elidedText(words, Qt.TextElideMode.ElideRight, room.width() + 2)
        draw_words(self._painter, room, told, theme.ink, side=LEFT, size=PLACE, weight=weight)


def _length(one: Beside) -> float:
    """Minutes from the match that are drawn: to the last entry, of today as far as three hours ahead."""
    return one.minutes if one.coming is None else max(one.minutes, one.coming.minutes[-1])


def runs_through(curve: Sequence[QPointF], box: QRectF) -> bool:
    """Whether a line through points touches a box."""
    for start, end in pairwise(curve):
        left, right = max(start.x(), box.left()), min(end.x(), box.right())
        if left > right:
            continue
        slope = (end.y() - start.y()) / max(end.x() - start.x(), 1e-9)
        heights = [start.y() + slope * (x - start.x()) for x in (left, right)]
        if min(heights) <= box.bottom() and max(heights) >= box.top():
            return True
    return False
