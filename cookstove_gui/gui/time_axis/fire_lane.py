"""The lane under the clock: what was done, each thing at its time, as a sign with a word."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QEvent, QPointF, QRectF
from PySide6.QtGui import QFontMetricsF, QHelpEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from cookstove_gui.gui.time_axis.lane_signs import SIDE, paint_sign, sign_width
from cookstove_gui.gui.time_axis.span import AXIS_WIDTH, TimeSpan
from cookstove_gui.gui.time_axis.stem import paint_now, paint_stem
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.gui.widgets.type import font
from cookstove_gui.stove.drawn.apart import moved_apart
from cookstove_gui.stove.entries import Kind

HIGH = 50  # [px of the design]
# Kinds that stand in the lane, in the order in which their words are placed.
FIRE_KINDS = (
    Kind.LIT, Kind.OUT, Kind.WOOD, Kind.OVEN_IN, Kind.OVEN_OUT, Kind.BYPASS, Kind.AIR, Kind.OVEN_DOOR,
)  # fmt: skip
_APART = 27  # px of the design from the middle of one sign to the next, at least
_WORD, _REACH = 16, 16


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneMark:
    """One thing done, at a place on the time axis [min]."""

    place: float
    kind: Kind
    words: str  # short, under the sign
    said: str  # in full, with its clock
    opening: float = 0.0
    count: int = 0  # of log ends; 0 where no number was given


def _gaps(marks: Sequence[LaneMark]) -> list[float]:
    sizes = [sign_width(mark.kind, mark.count) for mark in marks]
    return [max(px(_APART), 0.5 * (a + b) + px(5)) for a, b in pairwise(sizes)]


class FireLane(QWidget):
    """Signs that never overlap, as many as there is room for, with words; the rest is told by pointing and read out."""

    def __init__(self, span: TimeSpan, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._span, self._look = span, look
        self._marks: tuple[LaneMark, ...] = ()
        self.setObjectName("fire_lane")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        span.moved.connect(self.update)
        look.changed.connect(self._dress)
        self._dress()
        self.show_marks(())

    def _dress(self) -> None:
        self.setFixedHeight(px(HIGH))
        self.update()

    def show_marks(self, marks: tuple[LaneMark, ...]) -> None:
        """Show these, in order of time."""
        self._marks = marks
        words = ", ".join(mark.said for mark in marks) or "nothing yet"
        self.setAccessibleName(f"Done to the fire: {words}")
        self.update()

    def placed(self) -> list[tuple[LaneMark, float]]:
        """The signs in sight, and where they stand [px] once they are moved apart, none of them past now."""
        width = self.width()
        seen = [mark for mark in self._marks if self._span.low <= mark.place <= self._span.high]
        first, now = px(AXIS_WIDTH) + px(7), self._span.x(self._span.now or 0.0, width) - px(5)
        last = min(now, width - 0.5 * sign_width(seen[-1].kind, seen[-1].count)) if seen else now
        while len(seen) > 1 and sum(_gaps(seen)) > last - first:  # what matters least gives way, the oldest first
            seen.remove(max(seen, key=lambda mark: FIRE_KINDS.index(mark.kind)))
        wanted = [self._span.x(mark.place, width) for mark in seen]
        return list(zip(seen, moved_apart(wanted, _gaps(seen), (first, last)), strict=True))

    def worded(self) -> list[tuple[LaneMark, QRectF]]:
        """The words that there is room for, and where they stand."""
        size, left = QFontMetricsF(font(_WORD)), float(px(AXIS_WIDTH))
        right = min(self._span.x(self._span.now or 0.0, self.width()) - px(4), float(self.width()))
        taken: list[tuple[LaneMark, QRectF]] = []
        for mark, x in sorted(self.placed(), key=lambda one: FIRE_KINDS.index(one[0].kind)):
            width = size.horizontalAdvance(mark.words)
            start = max(min(max(x - width / 2, left), right - width), 0.0)
            box = QRectF(start, self.height() - size.height() - px(2), width, size.height())
            room = box.adjusted(-px(5), 0, px(5), 0)
            if not any(room.intersects(other) for _, other in taken):
                taken.append((mark, box))
        return taken

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Now and the stem behind, then signs, then words."""
        theme = self._look.theme
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint_stem(painter, self._span, theme, self.width(), self.height())
        paint_now(painter, self._span, theme, self.width(), self.height())
        face, size = font(_WORD), QFontMetricsF(font(_WORD))
        painter.setFont(face)
        painter.setPen(colour(theme.soft))
        base = self.height() - px(2) - size.descent()
        painter.drawText(QPointF(px(AXIS_WIDTH) - px(8) - size.horizontalAdvance("fire"), base), "fire")
        for mark, x in self.placed():
            middle = QPointF(x, px(4) + px(SIDE) / 2)
            paint_sign(
                painter, middle, mark.kind, opening=mark.opening, count=mark.count,
                ink=colour(theme.ink), ground=colour(theme.ground),
            )  # fmt: skip
        painter.setFont(face)
        painter.setPen(QPen(colour(theme.ink)))
        for mark, box in self.worded():
            painter.drawText(QPointF(box.left(), base), mark.words)
        painter.end()

    def event(self, event: QEvent) -> bool:
        """Tell what the sign under the pointer is."""
        if event.type() is QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            near = min(self.placed(), key=lambda one: abs(one[1] - event.pos().x()), default=None)
            if near is not None and abs(near[1] - event.pos().x()) <= px(_REACH):
                QToolTip.showText(event.globalPos(), plain_tip(near[0].said), self)
            else:
                QToolTip.hideText()
            return True
        return super().event(event)
