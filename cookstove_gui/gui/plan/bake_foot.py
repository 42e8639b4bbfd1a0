"""Below the picture: what the window of done hangs on, and what a probe reading would do to it, on one scale."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.cooking.baking.doneness import Doneness
from cookstove_gui.gui.drawn_stove.lettering import advance
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, draw_line, draw_words
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import BODY, PLACE
from cookstove_gui.phrases.edge import Edge, duration
from cookstove_gui.phrases.plan.bake import gain_words, source_words, together_words, window_length

_HEADING, _ROW = 30, 26  # [px of the design]
_HANGS, _GAINS = "What the window hangs on", "What a probe reading would do"
_STANDS = "as it stands"
_LEAST_MIN = 1.0  # what hangs on less is left out
_GAINS_AT_MOST = 0.9  # of the window: what a reading leaves that is longer is not worth a reading


@dataclass(frozen=True, slots=True)
class _Line:
    words: str
    minutes: float
    told: str


class BakeFoot(QWidget):
    """Each doubt alone as a whisker, the longest first; the window now and after a reading as bars."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._hangs: tuple[_Line, ...] = ()
        self._gains: tuple[_Line, ...] = ()
        self._together = ""
        self.setObjectName("bake_foot")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)

    def sizeHint(self) -> QSize:
        """A line for each, and one for all of them together."""
        lines = max(len(self._hangs) + bool(self._together), len(self._gains))
        return QSize(px(420), px(_HEADING + _ROW * lines))

    def show_answer(self, answer: Doneness, edge: Edge) -> None:
        """Show both; nothing where the window has no end."""
        window = window_length(answer)
        self._hangs, self._gains, self._together = (), (), ""
        if window is not None and answer.hangs_on:
            self._hangs = tuple(
                _Line(source_words(one.source), one.window_min, duration(one.window_min))
                for one in answer.hangs_on
                if one.window_min >= _LEAST_MIN
            )
            self._together = together_words(answer)
            gains = [gain for gain in answer.probe_gains if gain.window_min < _GAINS_AT_MOST * window]
            if gains:
                told = [(gain_words(gain, edge), gain.window_min) for gain in gains]
                self._gains = (
                    _Line(_STANDS, window, f"window {duration(window)}"),
                    *(_Line(when, minutes, about) for (when, about), minutes in told),
                )
        said = [f"{one.words} {one.told}" for one in (*self._hangs, *self._gains)]
        self.setAccessibleName("; ".join([f"{_HANGS}: {self._together}", *said]))
        self.setVisible(bool(self._hangs))
        self.updateGeometry()
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The two columns."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        lines = (*self._hangs, *self._gains)
        longest = max([1.0, *(one.minutes for one in lines)])
        both, apart = bool(self._gains), px(24)
        half = (self.width() - apart) / 2 if both else float(self.width())
        self._column(painter, QRectF(0, 0, half, self.height()), _HANGS, self._hangs, longest)
        if self._together:
            below = QRectF(0, px(_HEADING + _ROW * len(self._hangs)), half, px(_ROW))
            draw_words(painter, below, self._together, self._look.theme.soft, side=LEFT, size=PLACE)
        if both:
            right = QRectF(half + apart, 0, half, self.height())
            self._column(painter, right, _GAINS, self._gains, longest, as_bars=True)
        painter.end()

    def _column(
        self,
        painter: QPainter,
        box: QRectF,
        heading: str,
        lines: tuple[_Line, ...],
        longest: float,
        *,
        as_bars: bool = False,
    ) -> None:
        theme = self._look.theme
        title = QRectF(box.left(), 0, box.width(), px(_HEADING - 4))
        draw_words(painter, title, heading, theme.ink, side=LEFT, size=BODY, weight=600)
        names = max((advance(one.words, px(PLACE), 600) for one in lines), default=0.0) + px(16)
        after = max((advance(one.told, px(PLACE)) for one in lines), default=0.0) + px(18)
        room = min(max(box.width() - names - after, px(30)), px(190))
        for place, one in enumerate(lines):
            y = px(_HEADING) + px(_ROW) * (place + 0.5)
            row = QRectF(box.left(), y - px(_ROW) / 2, names, px(_ROW))
            is_first = place == (1 if as_bars else 0)
            draw_words(painter, row, one.words, theme.ink, side=LEFT, size=PLACE, weight=600 if is_first else 400)
            start, end = box.left() + names, box.left() + names + room * one.minutes / longest
            if as_bars:
                self._bar(painter, start + px(5), max(end - px(5), start + px(6)), y)
            else:
                draw_line(painter, theme.ink, 2.0, QPointF(start, y), QPointF(end, y))
                for x in (start, end):
                    draw_line(painter, theme.ink, 2.0, QPointF(x, y - px(5)), QPointF(x, y + px(5)))
            told = QRectF(max(end, start + px(14)) + px(10), row.top(), after, row.height())
            draw_words(painter, told, one.told, theme.soft, side=LEFT, size=PLACE)

    def _bar(self, painter: QPainter, start: float, end: float, y: float) -> None:
        theme = self._look.theme
        pen = QPen(QColor(theme.verdigris), px(9))
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        painter.drawLine(QPointF(start, y), QPointF(end, y))
        painter.setPen(QPen(QColor(theme.verdigris), px(3)))
        painter.setBrush(QColor(theme.ground))
        painter.drawEllipse(QPointF((start + end) / 2, y), px(6), px(6))
