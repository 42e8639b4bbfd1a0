"""The picture beside the answer: above the oven against the heat it wants, below the core on its way to done."""

from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.desk.plan.bake_lines import BakeLines
from cookstove_gui.gui.drawn_stove.lettering import advance, lettering, write
from cookstove_gui.gui.plan.lane import CLOCK, Lane, dashed
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.signs import paint_caution, paint_turn
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.phrases.edge import Edge, whole
from cookstove_gui.units import degrees

_OVEN_SHARE = 0.29  # of the height
_LEFT, _TOP = 48, 20  # width of the numbers, height of the words above [px of the design]
_SMALL, _BODY, _LIKELY = 16, 18, 22
_LEAST_WORDS = 190  # width in which the reason for turning can be read [px of the design]


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeWords:
    """What is written into the picture."""

    wants: str = ""  # the heat it wants: `bread heat`
    between: str = ""  # the window: `between 5:16 and 5:47`
    why_turn: str = ""  # why it is turned


class BakePicture(QWidget):
    """Drawn only; the words beside it say the same."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._lines: BakeLines | None = None
        self._edge: Edge | None = None
        self._words = BakeWords()
        self.setObjectName("bake_picture")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        look.changed.connect(self.update)

    def sizeHint(self) -> QSize:
        """Room for both lanes; it takes all there is."""
        return QSize(px(320), px(250))

    def show_lines(self, lines: BakeLines | None, edge: Edge, words: BakeWords) -> None:
        """The lines of a bake; none hides the picture."""
        self._lines, self._edge, self._words = lines, edge, words
        self.setVisible(lines is not None)
        self.setAccessibleName(f"Oven and core over time. {words.why_turn}".strip())
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
        oven = Lane(painter, lines.start, lines.end, QRectF(left, px(_TOP), wide, parted - px(_TOP + 6)), low, high)
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
        wide = advance("oven", px(_SMALL), 600) + px(8)
        x = _clear_of_now(lane, wide + advance(self._words.wants, px(_SMALL), 600))
        painter.setPen(QColor(theme.ink))
        write(painter, x, px(9), "oven", px(_SMALL), 600)
        painter.setPen(QColor(theme.verdigris))
        write(painter, x + wide, px(9), self._words.wants, px(_SMALL), 600)

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
        # At the left, where the core is still far below: window and core would run through a word at the right.
        write(painter, _clear_of_now(lane, advance("done", px(_SMALL), 600)), y - px(11), "done", px(_SMALL), 600)
        painter.setPen(QColor(theme.ink))
        write(painter, _clear_of_now(lane, advance("core", px(_SMALL), 600)), y + px(16), "core", px(_SMALL), 600)
        if lines.safe_at is not None and lines.safe_at < lines.done_at - 0.5:
            safe = lane.y(lines.safe_at)
            painter.setPen(QPen(QColor(theme.ember), 1.4))
            painter.drawLine(QPointF(lane.box.left(), safe), QPointF(lane.box.right(), safe))
            x, side = lane.box.left() + px(52), px(16)
            paint_caution(painter, QRectF(x, safe + px(4), side, side), QColor(theme.ember), QColor(theme.ground))
            painter.setPen(QColor(theme.ember))
            write(painter, x + side + px(4), safe + px(13), f"safe from {edge.heat(lines.safe_at)}", px(_SMALL))

    def _moments(self, painter: QPainter, lane: Lane, lines: BakeLines, edge: Edge, foot: float) -> None:
        """Going in, turning, and the window on the line of done with its stem."""
        theme, words_at = self._look.theme, foot - px(14)
        goes_in = lane.x(lines.goes_in)
        lane.stem(lines.goes_in, px(_TOP), foot, theme.ink)
        painter.setPen(QColor(theme.soft))
        told = f"in {edge.clock(lines.goes_in)}"
        write(painter, goes_in + px(7), words_at, told, px(_SMALL))
        ends = goes_in + px(7) + advance(told, px(_SMALL))  # of the words at the foot
        if lines.turn is not None and lines.turn > 0.0:
            lane.stem(lines.turn, px(_TOP), foot, theme.ink)
            x, side = lane.x(lines.turn) + px(8), px(18)
            paint_turn(painter, QRectF(x, words_at - side / 2, side, side), QColor(theme.ink))
            painter.setPen(QColor(theme.ink))
            told = f"turn {edge.clock(lines.turn)}"
            write(painter, x + side + px(4), words_at, told, px(_SMALL), 600)
            ends = x + side + px(4) + advance(told, px(_SMALL), 600)
        y, likely = lane.y(lines.done_at), lines.window[1]
        if likely is not None:
            is_clear = lane.x(likely) > ends + px(3)  # else it would run through the words
            lane.stem(likely, y, foot if is_clear else words_at - px(12), theme.verdigris)
        lane.window(lines.window, y, theme)
        if likely is not None:
            self._likely(painter, lane, likely, y, edge)

    def _likely(self, painter: QPainter, lane: Lane, likely: float, y: float, edge: Edge) -> None:
        """Beside the stem: the likely time, its window, and why to turn it where there is room."""
        theme, x, gap = self._look.theme, lane.x(likely), px(12)
        told = f"likely {edge.clock(likely)}" if likely >= 0.0 else f"was likely {edge.clock(likely)}"
        beside = lane.box.right() - x - gap
        ways = (self._words.between, self._words.between.removeprefix("between ").replace(" and ", " to "), "")
        between = next(way for way in ways if advance(way, px(_BODY)) <= beside)
        wide = max(advance(told, px(_LIKELY), 600), advance(between, px(_BODY)))
        is_right = wide <= beside
        at = x + gap if is_right else x - gap - wide
        middle = y + 0.36 * (lane.box.bottom() - y)
        painter.setPen(QColor(theme.verdigris))
        write(painter, at, middle, told, px(_LIKELY), 600)
        write(painter, at, middle + px(24), between, px(_BODY))
        room = lane.box.right() - at
        if is_right and room >= px(_LEAST_WORDS) and self._words.why_turn:
            painter.setPen(QColor(theme.soft))
            painter.setFont(lettering(px(_BODY), 400))
            box = QRectF(at, middle + px(40), room, lane.box.bottom() - middle - px(40))
            wraps = int(Qt.TextFlag.TextWordWrap)
            if painter.boundingRect(box, wraps, self._words.why_turn).height() <= box.height():
                painter.drawText(box, wraps, self._words.why_turn)


def _clear_of_now(lane: Lane, wide: float) -> float:
    """Where words begin at the left, not across the line at now."""
    left, now = lane.box.left() + px(6), lane.x(0.0)
    return now + px(8) if left - px(4) < now < left + wide + px(4) else left


def _oven_range(lines: BakeLines) -> tuple[float, float]:
    """What the oven's lane has to show [K]."""
    ahead = lines.oven_ahead
    seen = ahead.minutes <= lines.end
    past = lines.oven_past.p50[lines.oven_past.minutes >= lines.start]
    heats = [*past.tolist(), *ahead.p50[seen].tolist()]
    if lines.task is not None:
        heats += [lines.task.low, lines.task.high]
    return min(heats) - 8.0, max(heats) + 8.0
