"""The first fires in place of the rows: a path of numbers, the one under way with what its log shows as lengths."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.desk.cook.stages import Measure, StageRow, stage_rows
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import BODY, font
from cookstove_gui.phrases.my_stove.stages import stage_said

_ROUND, _LINE, _MEASURE, _LENGTH = 32, 46, 42, 8  # px of the design
_INSET, _SMALL, _APART = 14, 18, 4


class FirstFiresPane(QWidget):
    """Nothing in it is pressed: the entries and readings of the log move it on."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._look = link.desk, look
        self._rows: tuple[StageRow, ...] = ()
        self.setObjectName("first_fires")
        link.changed.connect(self._show)
        look.changed.connect(self.update)
        self._show(Changed(standing=True))

    def _show(self, changed: Changed) -> None:
        if changed.standing or changed.session or changed.stove or changed.settings:
            self._rows = stage_rows(self._desk)
            self.setAccessibleName("First fires. " + " ".join(_said(row) for row in self._rows))
            self.update()

    def wanted_height(self) -> int:
        """As high as its rows, without what to watch for below them [px]."""
        return sum(self._high(row) + px(_APART) for row in self._rows)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """One after the other, the one under way on a plate; below them, where there is room, what to watch for."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        top = 0.0
        for number, row in enumerate(self._rows, start=1):
            high = self._high(row)
            if number < len(self._rows):
                middle = px(_ROUND) / 2 + 2
                painter.setPen(QPen(colour(self._look.theme.line), 1.4, Qt.PenStyle.DotLine))
                painter.drawLine(QPointF(middle, top + px(_LINE) / 2), QPointF(middle, top + high + px(10)))
            self._paint_number(painter, number, row, top)
            box = QRectF(px(_ROUND) + px(12), top, self.width() - px(_ROUND) - px(12), high)
            self._paint_stage(painter, row, box)
            top += high + px(_APART)
        self._paint_watch(painter, QRectF(0, top + px(8), self.width(), self.height() - top - px(8)))
        painter.end()

    def _paint_watch(self, painter: QPainter, box: QRectF) -> None:
        watch = next((row.watch for row in self._rows if row.watch), "")
        face, wrapped = font(_SMALL), int(Qt.TextFlag.TextWordWrap)
        if QFontMetricsF(face).boundingRect(box, wrapped, watch).height() <= box.height():
            painter.setFont(face)
            painter.setPen(colour(self._look.theme.soft))
            painter.drawText(box, wrapped, watch)

    def _paint_number(self, painter: QPainter, number: int, row: StageRow, top: float) -> None:
        theme = self._look.theme
        circle = QRectF(2, top + (px(_LINE) - px(_ROUND)) / 2, px(_ROUND), px(_ROUND))
        painter.setPen(QPen(colour(theme.ink if row.is_next else theme.line), 2))
        painter.setBrush(colour(theme.ink if row.is_next else theme.ground))
        painter.drawEllipse(circle)
        painter.setPen(colour(theme.ground if row.is_next else theme.ink))
        if row.is_done:
            middle = circle.center()
            painter.setPen(QPen(colour(theme.verdigris), px(2.6)))
            painter.drawPolyline([middle + QPointF(px(x), px(y)) for x, y in ((-7, 0), (-2, 5), (7, -6))])
            return
        painter.setFont(font(_SMALL, 600))
        painter.drawText(circle, Qt.AlignmentFlag.AlignCenter, str(number))

    def _paint_stage(self, painter: QPainter, row: StageRow, box: QRectF) -> None:
        theme = self._look.theme
        if row.is_next:
            painter.fillRect(box, colour(theme.plate))
        strong, plain = font(BODY, 600), font(_SMALL)
        size, small = QFontMetricsF(strong), QFontMetricsF(plain)
        base = box.top() + px(_LINE) / 2 + size.capHeight() / 2
        left = box.left() + px(_INSET)
        painter.setFont(strong)
        painter.setPen(colour(theme.ink))
        painter.drawText(QPointF(left, base), row.title)
        left += size.horizontalAdvance(row.title) + px(14)
        painter.setFont(plain)
        painter.setPen(colour(theme.soft))
        room = box.right() - px(_INSET) - left
        clauses = row.state.split(", ")
        shorter = (", ".join(clauses[:count]) for count in range(len(clauses), 0, -1))
        fitting = next((one for one in shorter if small.horizontalAdvance(one) <= room), "")
        painter.drawText(QPointF(left, base), fitting)
        count, column = self._columns(row)
        for place, measure in enumerate(row.measures):
            x = box.left() + px(_INSET) + (place % count) * (column + px(_INSET))
            top = box.top() + px(_LINE) + (place // count) * px(_MEASURE)
            self._paint_measure(painter, measure, QRectF(x, top, column, px(_MEASURE)))

    def _columns(self, row: StageRow) -> tuple[int, float]:
        """How many measures stand side by side, and how wide each is [px]: one where two would touch."""
        room = self.width() - px(_ROUND) - px(12)
        half = (room - 3 * px(_INSET)) / 2
        wanted, shown = QFontMetricsF(font(_SMALL)), QFontMetricsF(font(_SMALL, 600))
        widest = max(
            (wanted.horizontalAdvance(one.wanted) + shown.horizontalAdvance(one.shown) for one in row.measures),
            default=0.0,
        )
        return (2, half) if widest + px(10) <= half else (1, room - 2 * px(_INSET))

    def _high(self, row: StageRow) -> int:
        lines = -(-len(row.measures) // self._columns(row)[0])
        return px(_LINE) + (lines * px(_MEASURE) + px(8) if row.is_next else 0)

    def _paint_measure(self, painter: QPainter, measure: Measure, box: QRectF) -> None:
        """What is wanted, what is shown, and the length of it."""
        theme, plain, strong = self._look.theme, font(_SMALL), font(_SMALL, 600)
        size = QFontMetricsF(strong)
        base = box.top() + size.ascent()
        painter.setPen(colour(theme.ink))
        painter.setFont(plain)
        painter.drawText(QPointF(box.left(), base), measure.wanted)
        painter.setFont(strong)
        painter.drawText(QPointF(box.right() - size.horizontalAdvance(measure.shown), base), measure.shown)
        frame = QRectF(box.left(), base + px(5), box.width(), px(_LENGTH))
        painter.setPen(QPen(colour(theme.line), 1))
        painter.setBrush(colour(theme.raised))
        painter.drawRoundedRect(frame, px(4), px(4))
        if measure.share > 0.0:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(colour(theme.ink if measure.is_limit else theme.verdigris))
            filled = QRectF(frame.left(), frame.top(), measure.share * frame.width(), frame.height())
            painter.drawRoundedRect(filled, px(4), px(4))
        if measure.is_limit:
            end = QRectF(frame.right() - px(3), frame.top() - px(3), px(3), frame.height() + px(6))
            painter.fillRect(end, colour(theme.ember))


def _said(row: StageRow) -> str:
    measures = tuple((one.wanted, one.shown) for one in row.measures)
    return stage_said(row.title, row.state, measures)
