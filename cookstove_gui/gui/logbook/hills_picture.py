"""The oven heats reached, as a hill a month: its height the number of fires, its colour the heat."""

from math import exp

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QLinearGradient, QPainter, QPen, QPolygonF

from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import BODY, PLACE, SMALL
from cookstove_gui.logbook.seasons import season_of
from cookstove_gui.phrases.edge import heat_name
from cookstove_gui.phrases.logbook.seasons import month_name
from cookstove_gui.reports.season_figures import ALL_YEARS, HeatHill, Season
from cookstove_gui.stove.drawn.heat_colours import heat_colour
from cookstove_gui.units import degrees

_MOST = 8  # hills side by side, the latest
_TOP, _FOOT, _GAP = 62, 26, 14  # px of the design
_WIDTH = 11.0  # K, of one session's share in a hill; judgement
_STEPS = 48


class HillsPicture(Picture):
    """One hill a month, or a season."""

    def __init__(self, look: Look) -> None:
        super().__init__("hills_picture", look, (360, 150))
        self._season: Season | None = None
        self._unit = "F"
        self.values = self._table

    def show_season(self, found: Season, unit: str) -> None:
        """Draw the heats of a season."""
        self._season, self._unit = found, unit
        words = ", ".join(f"{self._name(hill)} {hill.fires}" for hill in found.hills)
        self.setAccessibleName(f"Oven heats reached, fires in each: {words}")
        self.update()

    def _name(self, hill: HeatHill) -> str:
        if self._season is not None and self._season.first_year == ALL_YEARS:
            return f"{season_of(hill.start)}–{(season_of(hill.start) + 1) % 100:02d}"
        return month_name(hill.start)

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """The hills on one scale."""
        found, theme = self._season, self.look.theme
        hills = [hill for hill in found.hills if hill.heats][-_MOST:] if found else []
        if found is None or not hills:
            return
        heats = [heat for hill in hills for heat in hill.heats]
        low = min(*heats, found.band.low) - 3 * _WIDTH
        high = max(*heats, found.band.high) + 3 * _WIDTH
        title = "Oven heats reached, fires in each " + ("season" if found.first_year == ALL_YEARS else "month")
        draw_words(painter, QRectF(0, 0, whole.width(), px(28)), title, theme.ink, side=LEFT, size=BODY, weight=600)
        shapes = [_heights(hill, low, high) for hill in hills]
        tallest = max(max(shape) for shape in shapes)
        wide = (whole.width() - px(_GAP) * (len(hills) - 1)) / len(hills)
        foot = whole.bottom() - px(_FOOT)
        for place, (hill, shape) in enumerate(zip(hills, shapes, strict=True)):
            left = place * (wide + px(_GAP))
            box = QRectF(left, px(_TOP), wide, foot - px(_TOP))

            def x(heat: float, box: QRectF = box) -> float:
                return box.left() + (heat - low) / (high - low) * box.width()

            band = QRectF(QPointF(x(found.band.low), px(32)), QPointF(x(found.band.high), foot))
            painter.fillRect(band, QColor(theme.band))
            head = QRectF(left, px(32), wide, px(24))
            draw_words(painter, head, self._name(hill), theme.ink, side=LEFT, size=PLACE, weight=600)
            draw_words(painter, head, str(hill.fires), theme.soft, side=RIGHT, size=SMALL)
            self._draw_hill(painter, box, shape, tallest, low, high)
            if wide > px(84):
                ends = QRectF(left, foot + px(2), wide, px(22))
                draw_words(painter, ends, f"{degrees(low, self._unit):.0f}", theme.soft, side=LEFT, size=SMALL)
                draw_words(painter, ends, f"{degrees(high, self._unit):.0f}", theme.soft, side=RIGHT, size=SMALL)
        name = heat_name(found.band)
        draw_words(
            painter, QRectF(0, 0, whole.width(), px(28)), name, theme.verdigris, side=RIGHT, size=PLACE, weight=600
        )

    def _draw_hill(
        self, painter: QPainter, box: QRectF, shape: list[float], tallest: float, low: float, high: float
    ) -> None:
        points = [
            QPointF(box.left() + box.width() * step / _STEPS, box.bottom() - box.height() * height / tallest)
            for step, height in enumerate(shape)
        ]
        shades = QLinearGradient(box.bottomLeft(), box.bottomRight())
        for step in range(9):
            shades.setColorAt(step / 8, QColor(heat_colour(low + (high - low) * step / 8)))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(shades)
        painter.drawPolygon(QPolygonF([box.bottomLeft(), *points, box.bottomRight()]))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(self.look.theme.ink), 1.6))
        painter.drawPolyline(QPolygonF(points))
        draw_line(painter, self.look.theme.line, 1.2, box.bottomLeft(), box.bottomRight())

    def _table(self) -> str:
        lines = [f"from\tfires\thottest oven °{self._unit}"]
        for hill in self._season.hills if self._season else ():
            heats = " ".join(f"{degrees(heat, self._unit):.0f}" for heat in hill.heats)
            lines.append(f"{hill.start}\t{hill.fires}\t{heats}")
        return "\n".join(lines) + "\n"


def _heights(hill: HeatHill, low: float, high: float) -> list[float]:
    """The hill over equal steps of heat: a small normal curve for each session, added up."""
    steps = [low + (high - low) * step / _STEPS for step in range(_STEPS + 1)]
    return [sum(exp(-0.5 * ((at - heat) / _WIDTH) ** 2) for heat in hill.heats) for at in steps]
