"""The picture beside the answer: above the oven against the heat it wants, below the core on its way to done."""

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.desk.plan.bake_lines import BakeLines
from cookstove_gui.gui.drawn_stove.lettering import advance, write
from cookstove_gui.gui.plan.lane import CLOCK, Lane, dashed
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.phrases.edge import Edge, whole
from cookstove_gui.units import degrees

_OVEN_SHARE = 0.29  # of the height
_LEFT = 48  # width of the numbers [px of the design]
_SMALL, _BODY = 16, 18


class BakePicture(QWidget):
    """Drawn only; the words beside it say the same."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._lines: BakeLines | None = None
        self._edge: Edge | None = None
        self.setObjectName("bake_picture")
        self.setAccessibleName("Oven and core over time")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        look.changed.connect(self.update)

    def minimumSizeHint(self) -> QSize:
        """Room for both lanes."""
        return QSize(px(320), px(210))

    def sizeHint(self) -> QSize:
        """As designed."""
        return QSize(px(880), px(330))

    def show_lines(self, lines: BakeLines | None, edge: Edge) -> None:
        """The lines of a bake; none hides the picture."""
        self._lines, self._edge = lines, edge
        self.setVisible(lines is not None)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Two lanes on one clock axis."""
        lines, edge = self._lines, self._edge
        if lines is None or edge is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        left, foot = float(px(_LEFT)), float(self.height() - px(CLOCK))
        parted = foot * _OVEN_SHARE
        low, high = _oven_range(lines)
        wide = self.width() - left
        oven = Lane(painter, lines.start, lines.end, QRectF(left, px(4), wide, parted - px(8)), low, high)
        bottom = min([lines.core.p50[0], *(heat for _, heat in lines.probes)]) - 14.0
        top = max(lines.done_at, lines.safe_at or 0.0) + 14.0
        below = QRectF(left, parted + px(8), wide, foot - parted - px(10))
        core = Lane(painter, lines.start, lines.end, below, bottom, top)
        self._oven(painter, oven, lines, edge)
        painter.setPen(QPen(QColor(self._look.theme.faint), 1))
        painter.drawLine(QPointF(left, parted), QPointF(self.width(), parted))
        self._core(painter, core, lines, edge)
        self._moments(painter, core, lines, edge, foot)
        core.clock(foot, edge, self._look.theme, now_top=px(2))
        painter.end()

    def _oven(self, painter: QPainter, lane: Lane, lines: BakeLines, edge: Edge) -> None:
        theme = self._look.theme
        if lines.task is not None:
            top, bottom = lane.y(lines.task.high), lane.y(lines.task.low)
            x = lane.x(max(lines.goes_in, lines.start))
            painter.fillRect(QRectF(x, top, lane.box.right() - x, bottom - top), QColor(theme.band))
            painter.setPen(QPen(QColor(theme.verdigris), 1.4))
            for y in (top, bottom):
                painter.drawLine(QPointF(x, y), QPointF(lane.box.right(), y))
        past, ahead = lines.oven_past, lines.oven_ahead
        lane.fan(ahead.minutes, (ahead.p10, ahead.p90), (ahead.p25, ahead.p75), theme=theme)
        lane.line(past.minutes, past.p50, QPen(QColor(theme.ink), px(2.4)))
        lane.line(ahead.minutes, ahead.p50, dashed(theme.ink))
        lane.rings(lines.oven_read, theme.ink, theme.ground)
        lane.scale(edge.unit, theme.soft, 50)
        painter.setPen(QColor(theme.ink))
        write(painter, lane.box.left() + px(4), lane.box.top() + px(8), "oven", px(_SMALL), 600)

    def _core(self, painter: QPainter, lane: Lane, lines: BakeLines, edge: Edge) -> None:
        theme, core = self._look.theme, lines.core
        y = lane.y(lines.done_at)
        painter.setPen(QPen(QColor(theme.verdigris), 1.6))
        painter.drawLine(QPointF(lane.box.left(), y), QPointF(lane.box.right(), y))
        now = max(0.0, lines.goes_in)
        before = np.append(core.minutes[core.minutes < now], now)
        ahead = np.insert(core.minutes[core.minutes > now], 0, now)
        low, middle, high = (np.interp(ahead, core.minutes, heats) for heats in (core.p10, core.p50, core.p90))
        lane.fan(ahead, (low, high), theme=theme)
        lane.line(before, np.interp(before, core.minutes, core.p50), QPen(QColor(theme.ink), px(2.4)))
        lane.line(ahead, middle, dashed(theme.ink))
        lane.rings(lines.probes, theme.ink, theme.ground)
        lane.scale(edge.unit, theme.soft, 50, but=lines.done_at)
        painter.setPen(QColor(theme.verdigris))
        told = whole(degrees(lines.done_at, edge.unit))
        write(painter, lane.box.left() - px(6) - advance(told, px(_SMALL), 600), y, told, px(_SMALL), 600)
        write(painter, lane.box.left() + px(4), y - px(13), "done", px(_SMALL), 600)
        if lines.safe_at is not None and lines.safe_at < lines.done_at - 0.5:
            safe = lane.y(lines.safe_at)
            painter.setPen(QPen(QColor(theme.ember), 1.4))
            painter.drawLine(QPointF(lane.box.left(), safe), QPointF(lane.box.right(), safe))
            words = f"▲ safe from {edge.heat(lines.safe_at)}"
            write(painter, lane.box.left() + px(4), safe + px(12), words, px(_SMALL))
        painter.setPen(QColor(theme.ink))
        write(painter, lane.box.left() + px(4), y + px(15), "core", px(_SMALL), 600)

    def _moments(self, painter: QPainter, lane: Lane, lines: BakeLines, edge: Edge, foot: float) -> None:
        """Going in, turning, and the window on the line of done with its stem."""
        theme = self._look.theme
        self._stroke(painter, lane.x(lines.goes_in), foot, theme.ink, f"in {edge.clock(lines.goes_in)}")
        if lines.turn is not None and lines.turn > 0.0:
            self._stroke(painter, lane.x(lines.turn), foot, theme.ink, f"turn {edge.clock(lines.turn)}", weight=600)
        likely = lines.window[1]
        y = lane.y(lines.done_at)
        if likely is not None:
            x = lane.x(likely)
            lane.stem(likely, y, foot, theme.verdigris)
        lane.window(lines.window, y, theme)
        if likely is not None:
            painter.setPen(QColor(theme.verdigris))
            words = f"likely {edge.clock(likely)}" if likely >= 0.0 else f"was likely {edge.clock(likely)}"
            wide = advance(words, px(_BODY), 600)
            at = x + px(12) if x + px(12) + wide <= lane.box.right() else x - px(12) - wide
            write(painter, at, y + px(34), words, px(_BODY), 600)

    def _stroke(self, painter: QPainter, x: float, foot: float, shade: str, words: str, weight: int = 400) -> None:
        painter.setPen(QPen(QColor(shade), 1.6, Qt.PenStyle.DotLine))
        painter.drawLine(QPointF(x, px(4)), QPointF(x, foot))
        painter.setPen(QColor(shade))
        write(painter, x + px(7), foot - px(13), words, px(_SMALL), weight)


def _oven_range(lines: BakeLines) -> tuple[float, float]:
    """What the oven's lane has to show [K]."""
    ahead = lines.oven_ahead
    seen = ahead.minutes <= lines.end
    past = lines.oven_past.p50[lines.oven_past.minutes >= lines.start]
    heats = [*past.tolist(), *ahead.p50[seen].tolist()]
    if lines.task is not None:
        heats += [lines.task.low, lines.task.high]
    return min(heats) - 8.0, max(heats) + 8.0
