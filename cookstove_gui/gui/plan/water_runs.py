"""Every pan of water so far: the window that those before it would have said, and what came."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.desk.plan import texts
from cookstove_gui.desk.plan.water import WaterPlan
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, MIDDLE, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import PLACE, SMALL
from cookstove_gui.phrases.edge import Edge, local_day, short_date
from cookstove_gui.phrases.plan.water import minutes_range, run_words
from cookstove_gui.units import TemperatureUnit

_LEFT, _TOP, _BOTTOM = 32, 24, 46  # px of the design round the plot
_BAR = 10
_SCALES = ((20.0, 10.0), (40.0, 10.0), (60.0, 20.0), (120.0, 30.0), (180.0, 60.0))  # min: its end, its marks


@dataclass(frozen=True, slots=True, kw_only=True)
class _Column:
    name: str
    below: str
    said: Quantiles
    came: float | None = None
    is_now: bool = False


class WaterRuns(QWidget):
    """Bars for what was said, ◀ for what came; the present answer last, in verdigris. A bar to the top has no end."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._columns: tuple[_Column, ...] = ()
        self.setObjectName("water_runs")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)

    def sizeHint(self) -> QSize:
        """As designed."""
        return QSize(px(400), px(170))

    def show_runs(self, plan: WaterPlan, edge: Edge) -> None:
        """Show the pans of the log, between the usual guess and the present answer."""
        if plan.asked is None or plan.guessed is None:
            return
        unit: TemperatureUnit = "F" if edge.unit == "F" else "C"
        amount = "qt" if unit == "F" else "l"
        days = [local_day(one.run.on_at, one.run.offset_minutes) for one in plan.said]
        self._columns = (
            _Column(name="usual guess", below="", said=plan.guessed),
            *(
                _Column(
                    name=short_date(day),
                    below=f"{float(texts.litres_text(one.run.water.litres, unit)):.1f} {amount}",
                    said=one.said,
                    came=one.run.minutes,
                )
                for day, one in zip(days, plan.said, strict=True)
            ),
            _Column(name="now", below="", said=plan.asked.answer.minutes, is_now=True),
        )
        told = (run_words(day, one.said, one.run.minutes) for day, one in zip(days, plan.said, strict=True))
        self.setAccessibleName("; ".join(told))
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The scale, then column by column."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme = self._look.theme
        plot = QRectF(px(_LEFT), px(_TOP), self.width() - px(_LEFT), self.height() - px(_TOP + _BOTTOM))
        longest = max([1.0, *(max(one.said.p90 or one.said.p50 or 0.0, one.came or 0.0) for one in self._columns)])
        end, step = next((scale for scale in _SCALES if longest <= scale[0]), _SCALES[-1])
        minute = 0.0
        while minute <= end:
            y = plot.bottom() - plot.height() * minute / end
            draw_line(
                painter, theme.faint if minute else theme.line, 1.2, QPointF(plot.left(), y), QPointF(plot.right(), y)
            )
            box = QRectF(0, y - px(10), plot.left() - px(8), px(20))
            draw_words(painter, box, f"{minute:.0f}", theme.soft, side=RIGHT, size=SMALL)
            minute += step
        each = plot.width() / max(len(self._columns), 1)
        for place, column in enumerate(self._columns):
            self._draw(painter, column, QRectF(plot.left() + place * each, plot.top(), each, plot.height()), end)
        painter.end()

    def _draw(self, painter: QPainter, column: _Column, box: QRectF, end: float) -> None:
        theme, x = self._look.theme, box.center().x()

        def y(minutes: float) -> float:
            return box.bottom() - box.height() * min(minutes, end) / end

        ink = theme.ink if column.is_now else theme.soft
        name = QRectF(box.left(), box.bottom() + px(6), box.width(), px(20))
        draw_words(painter, name, column.name, ink, size=SMALL, weight=600 if column.is_now else 400)
        draw_words(painter, name.translated(0, px(18)), column.below, theme.soft, size=SMALL)
        if column.said.p10 is None:
            return
        high, low = y(end if column.said.p90 is None else column.said.p90), y(column.said.p10)
        bar = QRectF(x - px(_BAR) / 2, high, px(_BAR), max(low - high, px(_BAR)))
        fill = QColor(theme.verdigris)
        if not column.is_now:
            fill = QColor(theme.ink)
            fill.setAlpha(70)
        painter.setPen(Qt.PenStyle.NoPen if column.is_now else QPen(QColor(theme.line), 1))
        painter.setBrush(fill)
        painter.drawRoundedRect(bar, px(_BAR) / 2, px(_BAR) / 2)
        if column.is_now and column.said.p50 is not None:
            painter.setBrush(QColor(theme.ground))
            painter.drawEllipse(QPointF(x, y(column.said.p50)), px(3), px(3))
        told = minutes_range(column.said)
        if column.is_now:
            over = QRectF(box.left(), high - px(24), box.width(), px(20))
            draw_words(painter, over, told, theme.verdigris, side=MIDDLE, size=PLACE, weight=600)
        elif column.came is None:
            beside = QRectF(x + px(14), bar.center().y() - px(10), px(80), px(20))
            draw_words(painter, beside, told, theme.soft, side=LEFT, size=PLACE)
        else:
            self._came(painter, QPointF(x + px(9), y(column.came)), column.came)

    def _came(self, painter: QPainter, tip: QPointF, minutes: float) -> None:
        theme, half = self._look.theme, px(6)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(theme.ink))
        painter.drawPolygon(QPolygonF([tip, tip + QPointF(1.9 * half, -half), tip + QPointF(1.9 * half, half)]))
        box = QRectF(tip.x() + px(15), tip.y() - px(10), px(50), px(20))
        draw_words(painter, box, f"{minutes:.0f}", theme.ink, side=LEFT, size=PLACE, weight=600)
