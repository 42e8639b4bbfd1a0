"""A quantity through the days of a season: a ring for each value, and where a course is drawn, its band."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from math import ceil, floor

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from cookstove_gui.gui.logbook.day_axis import HIGH, DayAxis
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import BODY, PLACE, SMALL
from cookstove_gui.logbook.seasons import Smoothed

_LEFT, _TOP = 62, 34  # px of the design
_TICKS = 3
_BAND = 36  # of 255


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """What is drawn; `words` makes a number of the axis, `steps` are its round distances."""

    title: str
    beside: str
    values: tuple[tuple[date, float], ...]
    words: Callable[[float], str]
    steps: Sequence[float]
    smooth: tuple[Smoothed, ...] = ()
    zero: str = ""  # what 0 is called, where it has a line
    joined: bool = False
    column: str = ""  # heading of the values in a table


class CoursePicture(Picture):
    """One quantity."""

    def __init__(self, name: str, look: Look) -> None:
        super().__init__(name, look, (330, 150))
        self._course: Course | None = None
        self.values = self._table

    def show_course(self, course: Course) -> None:
        """Draw this."""
        self._course = course
        self.setAccessibleName(f"{course.title}: {course.beside or len(course.values)}")
        self.update()

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """Heading, scale, band, rings."""
        course, theme = self._course, self.look.theme
        if course is None or not course.values:
            return
        heading = QRectF(0, 0, whole.width(), px(28))
        draw_words(painter, heading, course.title, theme.ink, side=LEFT, size=BODY, weight=600)
        draw_words(painter, heading, course.beside, theme.soft, side=RIGHT, size=PLACE)
        axis = DayAxis.over([day for day, _ in course.values], px(_LEFT), whole.right())
        top, foot = px(_TOP), whole.bottom() - px(HIGH)
        low, high, step = self._scale(course)

        def level(value: float) -> float:
            return foot - (foot - top) * (value - low) / (high - low)

        tick = low
        while tick <= high + 1e-9:
            draw_line(painter, theme.faint, 1.0, QPointF(axis.left, level(tick)), QPointF(axis.right, level(tick)))
            box = QRectF(0, level(tick) - px(11), axis.left - px(8), px(22))
            draw_words(painter, box, course.words(tick), theme.soft, side=RIGHT, size=SMALL)
            tick += step
        if course.zero:
            draw_line(painter, theme.verdigris, 1.4, QPointF(axis.left, level(0.0)), QPointF(axis.right, level(0.0)))
        half = timedelta(0)
        if course.smooth:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(colour(theme.ink, _BAND))
            upper = [QPointF(axis.x(one.day + half), level(one.high)) for one in course.smooth]
            lower = [QPointF(axis.x(one.day + half), level(one.low)) for one in course.smooth]
            painter.drawPolygon(QPolygonF([*upper, *reversed(lower)]))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(theme.ink), 2.4))
            painter.drawPolyline(QPolygonF([QPointF(axis.x(one.day), level(one.middle)) for one in course.smooth]))
        points = [QPointF(axis.x(day) + axis.column / 2, level(value)) for day, value in course.values]
        painter.setPen(QPen(QColor(theme.ink), 1.6))
        painter.setBrush(QColor(theme.ground))
        if course.joined:
            painter.drawPolyline(QPolygonF(points))
        radius = px(4) if len(points) < 80 else px(2.6)
        for point in points:
            painter.drawEllipse(point, radius, radius)
        axis.draw(painter, theme, foot)

    @staticmethod
    def _scale(course: Course) -> tuple[float, float, float]:
        spread = [one for smooth in course.smooth for one in (smooth.low, smooth.high)]
        heights = [value for _, value in course.values] + spread + ([0.0] if course.zero else [])
        least, most = min(heights), max(heights)
        step = next((one for one in course.steps if (most - least) / one <= _TICKS), course.steps[-1])
        low, high = floor(least / step) * step, ceil(most / step) * step
        return low, max(high, low + step), step

    def _table(self) -> str:
        course = self._course
        if course is None:
            return ""
        return "\n".join([f"day\t{course.column}", *(f"{day}\t{value:.1f}" for day, value in course.values)]) + "\n"
