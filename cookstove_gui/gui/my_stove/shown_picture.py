"""The firings behind one figure, each a ring, against their day, the air outdoors or the wood that went on."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPen
from PySide6.QtWidgets import QWidget

from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, MIDDLE, RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import SMALL

_LEFT, _FOOT, _TOP, _IN = 78, 26, 12, 16  # px of the design
_RING, _REACH = 5, 16


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownMark:
    """One firing: where it lies across and up, and the same in words."""

    session: int
    across: float
    up: float
    is_least: bool  # at least so much
    is_latest: bool
    said: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownScale:
    """What both ways mean: words at places."""

    across: tuple[tuple[float, str], ...]
    up: tuple[tuple[float, str], ...]
    low: float | None = None  # the range
    middle: float | None = None
    high: float | None = None


class ShownPicture(Picture):
    """Rings on two scales; a click on one opens its firing."""

    opened = Signal(int)  # session

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__("shown_picture", look, (260, 120), parent)
        self.marks: tuple[ShownMark, ...] = ()
        self._scale = ShownScale(across=(), up=())

    def show_marks(self, marks: Sequence[ShownMark], scale: ShownScale, said: str) -> None:
        """Draw these; `said` reads the picture out."""
        self.marks, self._scale = tuple(marks), scale
        self.setAccessibleName(said)
        self.update()

    def place(self, mark: ShownMark) -> QPointF:
        """Where a firing lies in the picture."""
        ups = [value for value, _ in self._scale.up] + [one.up for one in self.marks]
        acrosses = [value for value, _ in self._scale.across] + [one.across for one in self.marks]
        box = self._box()
        x = _share(mark.across, acrosses) * (box.width() - px(2 * _IN)) + px(_IN)
        return QPointF(box.left() + x, box.bottom() - _share(mark.up, ups) * box.height())

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The firing under the mouse."""
        if event.button() is not Qt.MouseButton.LeftButton:
            return
        near = [(mark, (self.place(mark) - event.position()).manhattanLength()) for mark in self.marks]
        mark, away = min(near, key=lambda one: one[1], default=(None, 0.0))
        if mark is not None and away <= px(_REACH):
            self.opened.emit(mark.session)

    def draw(self, painter: QPainter, _whole: QRectF) -> None:
        """Range, scales, rings."""
        if not self.marks:
            return
        theme, box, scale = self.look.theme, self._box(), self._scale

        def level(value: float) -> float:
            probe = ShownMark(session=0, across=0.0, up=value, is_least=False, is_latest=False, said="")
            return min(max(self.place(probe).y(), box.top() - px(4)), box.bottom())

        if scale.low is not None and scale.high is not None:
            upper, lower = level(scale.high), level(scale.low)
            painter.fillRect(QRectF(box.left(), upper, box.width(), lower - upper), QColor(theme.plate))
        if scale.middle is not None:
            at = level(scale.middle)
            draw_line(painter, theme.ink, 1.6, QPointF(box.left(), at), QPointF(box.right(), at))
        for value, words in scale.up:
            words_box = QRectF(0, level(value) - px(12), box.left() - px(8), px(24))
            draw_words(painter, words_box, words, theme.soft, side=RIGHT, size=SMALL)
        draw_line(painter, theme.line, 1.4, box.bottomLeft(), box.bottomRight())
        for number, (value, words) in enumerate(scale.across):
            probe = ShownMark(session=0, across=value, up=0.0, is_least=False, is_latest=False, said="")
            x = self.place(probe).x()
            side = LEFT if number == 0 else RIGHT if number == len(scale.across) - 1 else MIDDLE
            left = x - px(_IN) if side is LEFT else x + px(_IN) - px(160) if side is RIGHT else x - px(80)
            draw_words(
                painter, QRectF(left, box.bottom() + px(3), px(160), px(22)), words, theme.soft, side=side, size=SMALL
            )
        for mark in self.marks:
            self._paint_mark(painter, mark)

    def _paint_mark(self, painter: QPainter, mark: ShownMark) -> None:
        theme, at = self.look.theme, self.place(mark)
        painter.setPen(QPen(QColor(theme.ink), 2.0))
        painter.setBrush(QColor(theme.ink if mark.is_latest else theme.ground))
        if mark.is_least:  # it went on beyond the log
            painter.drawLine(at, at + QPointF(0, -px(14)))
            for side in (-4, 4):
                painter.drawLine(at + QPointF(0, -px(14)), at + QPointF(px(side), -px(9)))
        painter.drawEllipse(at, px(_RING), px(_RING))
        painter.setBrush(Qt.BrushStyle.NoBrush)

    def _box(self) -> QRectF:
        return QRectF(px(_LEFT), px(_TOP), self.width() - px(_LEFT), self.height() - px(_TOP + _FOOT))


def _share(value: float, values: Sequence[float]) -> float:
    low, high = min(values), max(values)
    return 0.5 if high <= low else (value - low) / (high - low)
