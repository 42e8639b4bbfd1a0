"""Wood over time with its doubt, and below on the same axis how long a load lasts."""

import math

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.desk.plan.wood import WoodPlan
from cookstove_gui.gui.drawn_stove.lettering import advance, write
from cookstove_gui.gui.plan.lane import CLOCK, Lane, dashed
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import PLACE, SMALL
from cookstove_gui.phrases.edge import Edge, duration, mass_text
from cookstove_gui.phrases.plan.wood import wood_headline, wood_stages
from cookstove_gui.units import KILOGRAMS_PER_POUND

_LEFT, _RIGHT, _TOP = 48, 132, 12  # px of the design round the plot; at its right stands the sum
_ROW, _STAGE = 44, 26  # of a load's bar, of the stages below the plot [px of the design]
_STEPS = (0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0)  # of the numbers at the left, in the unit on the screen
_MARKS = (15.0, 30.0, 60.0, 120.0, 240.0)  # min apart, where no clock can be told
_AFTER, _LEAST = 1.08, 60.0  # how far beyond the last the axis goes; the least it shows [min]


class WoodPicture(QWidget):
    """Drawn only; the sentences beside it say the same."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._plan: WoodPlan | None = None
        self._edge: Edge | None = None
        self._is_lit = False
        self._band = ""
        self.setObjectName("wood_picture")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        look.changed.connect(self.update)

    def sizeHint(self) -> QSize:
        """No more than that; it takes the room there is."""
        return QSize(px(320), px(250))

    def show_wood(self, plan: WoodPlan, band: str, edge: Edge, *, is_lit: bool) -> None:
        """Show a plan; with a fire its axis is a clock from now, without one minutes from lighting."""
        self._plan, self._edge, self._band, self._is_lit = plan, edge, band, is_lit
        self.setAccessibleName(f"Wood over time. {wood_headline(plan.mass, plan.splits, edge.unit)}")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The sum of the wood, its stages, the loads, the axis."""
        plan, edge = self._plan, self._edge
        if plan is None or edge is None or plan.mass.p50 is None or plan.mass.p90 is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        wanted = plan.warm_up_min + plan.choice.at_heat_min
        burns = [plan.load.to_coals_min.p90 or 0.0, plan.measured.longest_min or 0.0]
        end = max(wanted, *burns, _LEAST) * _AFTER
        foot = float(self.height() - px(CLOCK))
        rows = 2 if plan.measured.typical_min is not None else 1
        low = foot - px(rows * _ROW)
        box = QRectF(px(_LEFT), px(_TOP), self.width() - px(_LEFT + _RIGHT), low - px(_STAGE + _TOP) - px(8))
        lane = Lane(painter, 0.0, end, box, 0.0, 1.12 * plan.mass.p90)
        self._sum(painter, lane, plan, wanted, edge)
        self._stages(painter, lane, plan, box.bottom() + px(6))
        axis = Lane(painter, 0.0, end, QRectF(box.left(), low, box.width(), foot - low), 0.0, 1.0)
        self._loads(painter, axis, plan, low)
        if self._is_lit:
            axis.clock(foot, edge, self._look.theme, from_now="now")
        else:
            step = next((one for one in _MARKS if end / one <= box.width() / px(90)), _MARKS[-1])
            marks = [(minute, duration(minute)) for minute in np.arange(step, end, step).tolist()]
            axis.marks(foot, marks, self._look.theme, first="lit")
        painter.end()

    def _sum(self, painter: QPainter, lane: Lane, plan: WoodPlan, wanted: float, edge: Edge) -> None:
        theme, box = self._look.theme, lane.box
        p10, p50, p90 = (value or 0.0 for value in (plan.mass.p10, plan.mass.p50, plan.mass.p90))
        scale = KILOGRAMS_PER_POUND if edge.unit == "F" else 1.0
        step = next((one for one in _STEPS if p90 / scale / one <= max(box.height() / px(34), 1.0)), _STEPS[-1])
        for place in range(int(p90 / scale / step) + 1):
            y = lane.y(place * step * scale)
            draw_line(
                painter, theme.faint if place else theme.line, 1.2, QPointF(box.left(), y), QPointF(box.right(), y)
            )
            words = QRectF(0, y - px(10), box.left() - px(8), px(20))
            draw_words(painter, words, f"{place * step:g}", theme.soft, side=RIGHT, size=SMALL)
        at = np.array([0.0, wanted])
        lane.fan(at, (at / wanted * p10, at / wanted * p90), theme=theme)
        lane.line(at, at / wanted * p50, dashed(theme.ink))
        x, top, bottom = lane.x(wanted), lane.y(p90), lane.y(p10)
        pen = QPen(QColor(theme.verdigris), px(9))
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        painter.drawLine(QPointF(x, top), QPointF(x, bottom))
        painter.setPen(QPen(QColor(theme.verdigris), px(3.5)))
        painter.setBrush(QColor(theme.ground))
        painter.drawEllipse(QPointF(x, lane.y(p50)), px(9), px(9))
        painter.setPen(QColor(theme.verdigris))
        beside = x + px(18)
        write(painter, beside, lane.y(p50) - px(2), mass_text(p50, edge.unit), px(22), 600)
        window = f"{mass_text(p10, edge.unit).split()[0]} to {mass_text(p90, edge.unit)}"
        write(painter, beside, lane.y(p50) + px(22), window, px(PLACE))

    def _stages(self, painter: QPainter, lane: Lane, plan: WoodPlan, top: float) -> None:
        """Warming up, then the stay, as a bar with its words."""
        theme, warm, stay = self._look.theme, plan.warm_up_min, plan.choice.at_heat_min
        first, then = wood_stages(self._band)
        for start, end, words, fill in ((0.0, warm, first, theme.plate), (warm, warm + stay, then, theme.band)):
            if end - start < 1.0:
                continue
            bar = QRectF(lane.x(start), top, lane.x(end) - lane.x(start) - 1, px(_STAGE) - 4)
            painter.fillRect(bar, QColor(fill))
            if advance(words, px(SMALL), 600) < bar.width() - px(12):
                ink = theme.verdigris if fill == theme.band else theme.ink
                inner = bar.adjusted(px(6), 0, 0, 0)
                draw_words(painter, inner, words, ink, side=LEFT, size=SMALL, weight=600)

    def _loads(self, painter: QPainter, lane: Lane, plan: WoodPlan, top: float) -> None:
        """How long two splits burn to coals; below it what loads with the air shut down lasted, as measured."""
        theme, burn, seen = self._look.theme, plan.load.to_coals_min, plan.measured
        rows = [("two splits to coals", burn.p10, burn.p50, burn.p90)]
        if seen.typical_min is not None:
            rows.append(("loads shut down, measured", None, seen.typical_min, seen.longest_min))
        for place, (words, low, middle, high) in enumerate(rows):
            if middle is None:
                continue
            y = top + px(_ROW) * (place + 0.72)
            start, end = lane.x(0.0), lane.x(middle)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(theme.good))
            painter.drawRoundedRect(QRectF(start, y - px(5), end - start, px(10)), px(3), px(3))
            draw_words(painter, QRectF(start, y - px(27), px(240), px(20)), words, theme.ink, side=LEFT, size=SMALL)
            last = lane.x(middle if high is None else high)
            begins = end if low is None else lane.x(low)
            if not math.isclose(begins, last):
                draw_line(painter, theme.ink, 2.0, QPointF(begins, y), QPointF(last, y))
                for x in (begins, last):
                    draw_line(painter, theme.ink, 2.0, QPointF(x, y - px(6)), QPointF(x, y + px(6)))
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(theme.ink))
            painter.drawEllipse(QPointF(end, y), px(4), px(4))
            beside = QRectF(max(end, last) + px(12), y - px(10), px(90), px(20))
            draw_words(painter, beside, duration(middle), theme.ink, side=LEFT, size=PLACE, weight=600)
