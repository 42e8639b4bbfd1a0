"""A time axis of days, with the months named below it: shared by the pictures of a season."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QFontMetricsF, QPainter

from cookstove_gui.gui.widgets.pen import LEFT, draw_line, draw_words
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import Theme
from cookstove_gui.gui.widgets.type import SMALL, font
from cookstove_gui.phrases.logbook.seasons import month_name

HIGH = 28  # of the months' names [px of the design]
_YEARS = 430  # days from which years are named instead of months


@dataclass(frozen=True, slots=True, kw_only=True)
class DayAxis:
    """Days from the first to the last between two places [px]."""

    first: date
    last: date
    left: float
    right: float

    @classmethod
    def over(cls, days: Sequence[date], left: float, right: float) -> "DayAxis":
        """Whole weeks that hold all these days, at least four."""
        first = min(days) - timedelta(days=min(days).weekday())
        last = max(max(days), first + timedelta(days=27))
        return cls(first=first, last=last + timedelta(days=6 - last.weekday()), left=left, right=right)

    @property
    def days(self) -> int:
        """How many days there are."""
        return (self.last - self.first).days + 1

    @property
    def column(self) -> float:
        """Width of one day [px]."""
        return (self.right - self.left) / self.days

    def x(self, day: date) -> float:
        """Left edge of a day."""
        return self.left + self.column * (day - self.first).days

    def day_at(self, x: float) -> date:
        """The day at a place."""
        place = int((x - self.left) / max(self.column, 1e-9))
        return self.first + timedelta(days=min(max(place, 0), self.days - 1))

    def draw(self, painter: QPainter, theme: Theme, level: float) -> None:
        """The line, a tick for each month, and as many names as there is room for."""
        draw_line(painter, theme.line, 1.2, QPointF(self.left, level), QPointF(self.right, level))
        by_year, taken = self.days > _YEARS, self.left - px(6)
        for start in self._months():
            if by_year and start.month != 1:
                continue
            x = max(self.x(start), self.left)
            draw_line(painter, theme.line, 1.0, QPointF(x, level), QPointF(x, level + px(5)))
            words = str(start.year) if by_year else month_name(start)
            wide = QFontMetricsF(font(SMALL)).horizontalAdvance(words)
            if x >= taken and x + px(4) + wide <= self.right:
                box = QRectF(x + px(4), level + px(3), wide, px(HIGH - 4))
                draw_words(painter, box, words, theme.soft, side=LEFT, size=SMALL)
                taken = x + wide + px(14)

    def _months(self) -> list[date]:
        found, day = [self.first], self.first.replace(day=1)
        while (day := (day + timedelta(days=32)).replace(day=1)) <= self.last:
            found.append(day)
        if len(found) > 1 and self.x(found[1]) - self.left < px(34):
            del found[0]  # a week of a month before the first whole one has no room for its name
        return found
