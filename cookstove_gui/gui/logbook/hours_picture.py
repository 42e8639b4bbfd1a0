"""When fires burnt: one column a day from four in the morning to midnight, coloured by the hottest oven."""

from datetime import date

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QHelpEvent, QKeyEvent, QLinearGradient, QMouseEvent, QPainter, QPen
from PySide6.QtWidgets import QToolTip

from cookstove_gui.gui.logbook.day_axis import HIGH, DayAxis
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.gui.widgets.type import BODY, SMALL
from cookstove_gui.phrases.edge import full_date, weekday
from cookstove_gui.phrases.logbook.seasons import fires_words, hottest_words
from cookstove_gui.reports.season_figures import Lit, Season
from cookstove_gui.stove.drawn.heat_colours import heat_colour
from cookstove_gui.units import degrees

LEFT_OF_AXIS = 112  # px of the design, for the words at the left
_FIRST, _LAST = 4.0, 24.0  # h
_TOP = 26
_KEY_WIDE = 120


class HoursPicture(Picture):
    """Left and right choose a day with a fire, Enter opens its session."""

    opened = Signal(int)

    def __init__(self, look: Look) -> None:
        super().__init__("hours_picture", look, (440, 150))
        self._season: Season | None = None
        self._unit = "F"
        self._chosen: date | None = None
        self.values = self._table

    def show_season(self, found: Season, unit: str, said: str) -> None:
        """Draw the fires of a season."""
        self._season, self._unit = found, unit
        if self._chosen not in {one.day for one in found.lit}:
            self._chosen = None
        self.setAccessibleName(f"Hours lit. {said} Left and right choose a day, Enter opens its session.")
        self.update()

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """Ground, hours, fires, months, the key of the colours."""
        found, theme = self._season, self.look.theme
        if found is None or not found.lit:
            return
        axis, top, foot = self._axis(whole), whole.top() + px(_TOP), whole.bottom() - px(HIGH)

        def level(hour: float) -> float:
            return top + (min(max(hour, _FIRST), _LAST) - _FIRST) / (_LAST - _FIRST) * (foot - top)

        painter.fillRect(QRectF(QPointF(axis.left, top), QPointF(axis.right, foot)), QColor(theme.plate))
        name = QRectF(0, top - px(4), px(LEFT_OF_AXIS), px(28))
        draw_words(painter, name, "Hours lit", theme.ink, side=LEFT, size=BODY, weight=600)
        below = QRectF(0, top + px(20), px(LEFT_OF_AXIS - 46), px(20))
        draw_words(painter, below, "by day", theme.soft, side=LEFT, size=SMALL)
        for hour, words in ((6.0, "6"), (12.0, "noon"), (18.0, "6")):
            draw_line(painter, theme.faint, 1.0, QPointF(axis.left, level(hour)), QPointF(axis.right, level(hour)))
            box = QRectF(0, level(hour) - px(11), axis.left - px(8), px(22))
            draw_words(painter, box, words, theme.soft, side=RIGHT, size=SMALL)
        painter.setPen(Qt.PenStyle.NoPen)
        for one in found.lit:
            low, high = level(one.start), level(one.end)
            box = QRectF(axis.x(one.day) + 0.5, low, max(axis.column - 1.0, 2.0), max(high - low, px(2)))
            painter.fillRect(box, QColor(theme.line if one.hottest is None else heat_colour(one.hottest)))
        if self._chosen is not None:
            painter.setPen(QPen(QColor(theme.cobalt), 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(axis.x(self._chosen) - 1.5, top, axis.column + 3.0, foot - top))
        axis.draw(painter, theme, foot)
        self._draw_key(painter, found, axis)

    def _draw_key(self, painter: QPainter, found: Season, axis: DayAxis) -> None:
        heats = [one.hottest for one in found.lit if one.hottest is not None]
        if not heats:
            return
        low, high = min(heats), max(heats)
        said, words = hottest_words(low, high, self._unit)
        theme, right = self.look.theme, axis.right - px(64)
        draw_words(painter, QRectF(right + px(6), 0, px(60), px(20)), words, theme.soft, side=LEFT, size=SMALL)
        bar = QRectF(right - px(_KEY_WIDE), px(5), px(_KEY_WIDE), px(10))
        shades = QLinearGradient(bar.topLeft(), bar.topRight())
        for step in range(9):
            shades.setColorAt(step / 8, QColor(heat_colour(low + (high - low) * step / 8)))
        painter.fillRect(bar, shades)
        box = QRectF(bar.left() - px(206), 0, px(200), px(20))
        draw_words(painter, box, said, theme.soft, side=RIGHT, size=SMALL)

    def _axis(self, whole: QRectF) -> DayAxis:
        days = [one.day for one in self._season.lit] if self._season else []
        return DayAxis.over(days, px(LEFT_OF_AXIS), whole.right())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Another day with a fire, or its session."""
        days = sorted({one.day for one in self._season.lit}) if self._season else []
        steps = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
        if days and event.key() in steps:
            place = days.index(self._chosen) + steps[Qt.Key(event.key())] if self._chosen in days else -1
            self._chosen = days[min(max(place, 0), len(days) - 1)] if self._chosen in days else days[-1]
            self.setAccessibleDescription(self._told(self._chosen))
            self.update()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._chosen is not None:
            self._open(self._chosen)
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose a day."""
        if self._season is None or not self._season.lit:
            return
        day = self._axis(QRectF(self.rect())).day_at(event.position().x())
        if any(one.day == day for one in self._season.lit):
            self._chosen = day
            self.update()

    def mouseDoubleClickEvent(self, _event: QMouseEvent) -> None:
        """Open the session of the day."""
        if self._chosen is not None:
            self._open(self._chosen)

    def event(self, event: QEvent) -> bool:
        """Tell what burnt on the day under the pointer."""
        if event.type() is QEvent.Type.ToolTip and isinstance(event, QHelpEvent) and self._season and self._season.lit:
            day = self._axis(QRectF(self.rect())).day_at(event.pos().x())
            QToolTip.showText(event.globalPos(), plain_tip(self._told(day)), self)
            return True
        return super().event(event)

    def _of(self, day: date) -> list[Lit]:
        return [one for one in self._season.lit if one.day == day] if self._season else []

    def _told(self, day: date) -> str:
        own = self._of(day)
        heats = [one.hottest for one in own if one.hottest is not None]
        hottest = f", oven to {degrees(max(heats), self._unit):.0f} °{self._unit}" if heats else ""
        return f"{weekday(day)} {full_date(day)}: {fires_words(len(own)) if own else 'no fire'}{hottest}"

    def _open(self, day: date) -> None:
        own = self._of(day)
        if own:
            self.opened.emit(own[0].session)

    def _table(self) -> str:
        lines = [f"day\tlit from h\tto h\thottest oven °{self._unit}"]
        for one in self._season.lit if self._season else ():
            heat = "" if one.hottest is None else f"{degrees(one.hottest, self._unit):.0f}"
            lines.append(f"{one.day}\t{one.start:.2f}\t{one.end:.2f}\t{heat}")
        return "\n".join(lines) + "\n"
