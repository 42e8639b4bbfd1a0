"""Wood by week of a season, or by month of all years; the fullest in ink."""

from datetime import timedelta

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter

from cookstove_gui.gui.logbook.day_axis import HIGH, DayAxis
from cookstove_gui.gui.logbook.hours_picture import LEFT_OF_AXIS
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import BODY, PLACE, SMALL, font
from cookstove_gui.phrases.logbook.seasons import fullest_words
from cookstove_gui.reports.season_figures import ALL_YEARS, Season
from cookstove_gui.units import KILOGRAMS_PER_POUND

_TOP = 26  # px of the design
_ROUND = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000)


class WoodPicture(Picture):
    """One bar a week, or a month."""

    def __init__(self, look: Look) -> None:
        super().__init__("wood_picture", look, (440, 118))
        self._season: Season | None = None
        self._unit = "F"
        self.values = self._table

    def show_season(self, found: Season, unit: str) -> None:
        """Draw the wood of a season."""
        self._season, self._unit = found, unit
        weeks = found.first_year != ALL_YEARS
        self.setAccessibleName(
            f"Wood by {'week' if weeks else 'month'}: {fullest_words(found.spans, unit, weeks=weeks)}"
        )
        self.update()

    def _mass(self, kilograms: float) -> float:
        return kilograms / KILOGRAMS_PER_POUND if self._unit == "F" else kilograms

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """Scale, bars, months."""
        found, theme = self._season, self.look.theme
        most = max((self._mass(span.wood) for span in found.spans), default=0.0) if found else 0.0
        if found is None or most <= 0.0:
            return
        weeks = found.first_year != ALL_YEARS
        days = [row.day for row in found.rows]
        axis = DayAxis.over(days, px(LEFT_OF_AXIS), whole.right())
        top, foot = whole.top() + px(_TOP), whole.bottom() - px(HIGH)
        name, unit = QRectF(0, top - px(6), px(LEFT_OF_AXIS), px(28)), "lb" if self._unit == "F" else "kg"
        draw_words(painter, name, "Wood", theme.ink, side=LEFT, size=BODY, weight=600)
        below = QRectF(0, top + px(18), px(LEFT_OF_AXIS), px(22))
        draw_words(painter, below, f"{unit} a {'week' if weeks else 'month'}", theme.soft, side=LEFT, size=SMALL)
        step = next((one for one in _ROUND if most / one < 3.0), _ROUND[-1])
        for tick in range(step, int(most) + 1, step):
            level = foot - (foot - top) * tick / most
            draw_line(painter, theme.faint, 1.0, QPointF(axis.left, level), QPointF(axis.right, level))
            box = QRectF(axis.left - px(60), level - px(11), px(52), px(22))
            draw_words(painter, box, str(tick), theme.soft, side=RIGHT, size=SMALL)
        fullest = max(found.spans, key=lambda span: span.wood)
        painter.setPen(Qt.PenStyle.NoPen)
        for span in found.spans:
            left = max(axis.x(span.start), axis.left)
            right = min(axis.x(span.start + timedelta(days=span.days)), axis.right)
            high = (foot - top) * self._mass(span.wood) / most
            bar = QRectF(left + 1.5, foot - high, max(right - left - 3.0, 1.0), high)
            painter.fillRect(bar, QColor(theme.ink if span is fullest else theme.line))
            if span is fullest:
                words = fullest_words(found.spans, self._unit, weeks=weeks)
                wide = QFontMetricsF(font(PLACE, 600)).horizontalAdvance(words)
                box = QRectF(min(bar.left(), axis.right - wide), top - px(25), wide, px(22))
                draw_words(painter, box, words, theme.ink, side=LEFT, size=PLACE, weight=600)
        axis.draw(painter, theme, foot)

    def _table(self) -> str:
        unit = "lb" if self._unit == "F" else "kg"
        lines = [f"from\tdays\tfires\twood {unit}"]
        for span in self._season.spans if self._season else ():
            lines.append(f"{span.start}\t{span.days}\t{span.fires}\t{self._mass(span.wood):.1f}")
        return "\n".join(lines) + "\n"
