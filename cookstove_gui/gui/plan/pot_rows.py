"""A row for each pot: its name and chance, a sentence, and its place through the next two hours as a strip."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.gui.drawn_stove.lettering import advance, fitting, write
from cookstove_gui.gui.time_axis.clock_axis import clock_ticks
from cookstove_gui.gui.widgets.key import RING, named_key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, RIGHT, draw_words
from cookstove_gui.gui.widgets.signs import paint_caution
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import BODY, PLACE, SMALL
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.pots import PotLine
from cookstove_gui.stove.drawn.heat_colours import heat_colour, heat_ink

AHEAD_MIN = 120.0
_HIGH, _AXIS, _STRIP = 74, 24, 18  # of a row, of the clocks above them, of a strip [px of the design]
_INSET, _EDGE = 10, 4  # of the words, of the marked row's bar at the left [px of the design]


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownPot:
    """One pot as its row shows it."""

    number: int
    name: str
    line: PotLine
    moves: bool = False
    from_min: float = 0.0
    until_min: float | None = None  # none: as far as the strip goes
    place: str = ""  # written on the strip
    heat: float | None = None  # K of that place


class PotRows(QWidget):
    """Up and down mark a row; its × takes the pot off."""

    marked = Signal(str)  # the number of a pot
    taken_off = Signal(str)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._group = QButtonGroup(self)
        self._rows: list[_PotRow] = []
        self.setObjectName("pots_table")
        self._axis = _Axis(look)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._column.addWidget(self._axis)

    @property
    def key(self) -> str:
        """The number of the marked pot; empty when there is none."""
        return next((str(row.shown.number) for row in self._rows if row.button.isChecked()), "")

    @property
    def pots(self) -> tuple[ShownPot, ...]:
        """What the rows show."""
        return tuple(row.shown for row in self._rows)

    def show_pots(self, pots: Sequence[ShownPot], edge: Edge) -> None:
        """Show these; the one marked before stays marked."""
        kept = self.key
        while len(self._rows) > len(pots):
            gone = self._rows.pop()
            self._group.removeButton(gone.button)
            self._column.removeWidget(gone)
            gone.hide()
            gone.deleteLater()
        while len(self._rows) < len(pots):
            made = _PotRow(self._look)
            self._group.addButton(made.button)
            made.button.toggled.connect(lambda on, row=made: self.marked.emit(str(row.shown.number)) if on else None)
            made.off.clicked.connect(lambda _checked=False, row=made: self.taken_off.emit(str(row.shown.number)))
            self._column.addWidget(made)
            self._rows.append(made)
        for row, pot in zip(self._rows, pots, strict=True):
            row.show_pot(pot)
        self._axis.show_clocks(edge)
        if self._rows:
            self.choose(kept)

    def choose(self, key: str) -> None:
        """Mark the pot of that number, or the first one."""
        wanted = next((row for row in self._rows if str(row.shown.number) == key), self._rows[0])
        wanted.button.setChecked(True)

    @property
    def controls(self) -> list[QWidget]:
        """What Tab goes through, from above."""
        return [part for row in self._rows for part in (row.button, row.off)]

    def take_focus(self) -> None:
        """Give the keyboard to the marked row."""
        for row in self._rows:
            if row.button.isChecked():
                row.button.setFocus(Qt.FocusReason.OtherFocusReason)


class _PotRow(QWidget):
    def __init__(self, look: Look) -> None:
        super().__init__()
        self.shown = ShownPot(number=0, name="", line=PotLine(where="", chance="", on_pot="", has_place=False))
        self.button = _RowButton(look)
        self.off = named_key("×", "pots_off", "Take this pot off the stove")
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(0)
        line.addWidget(self.button, 1)
        line.addWidget(self.off)

    def show_pot(self, pot: ShownPot) -> None:
        self.shown = pot
        self.button.show_pot(pot)
        self.off.setObjectName(f"pots_off_{pot.number}")
        self.off.setAccessibleName(f"Take {pot.name} off the stove")


class _RowButton(QPushButton):
    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self._pot: ShownPot | None = None
        self.setCheckable(True)
        self.setAutoDefault(False)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)

    def sizeHint(self) -> QSize:
        """Three lines: name, sentence, strip."""
        return QSize(px(280), px(_HIGH))

    def minimumSizeHint(self) -> QSize:
        """The same height; the words step down in a narrow row."""
        return QSize(px(200), px(_HIGH))

    def show_pot(self, pot: ShownPot) -> None:
        self._pot = pot
        self.setObjectName(f"pots_row_{pot.number}")
        self.setAccessibleName(f"{pot.name}: {pot.line.where}, {pot.line.chance}")
        self.setToolTip("Up and down mark a pot, Delete takes it off, left and right give it another spot")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        pot, theme = self._pot, self._look.theme
        if pot is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        whole = QRectF(self.rect())
        if self.isChecked():
            painter.fillRect(whole.adjusted(0, 0, 0, -1), QColor(theme.plate))
            painter.fillRect(QRectF(0, 0, px(_EDGE), whole.height() - 1), QColor(theme.cobalt))
        painter.fillRect(QRectF(0, whole.height() - 1, whole.width(), 1), QColor(theme.faint))
        inner = whole.adjusted(px(_INSET), 0, -px(_INSET), 0)
        chance = QRectF(inner.left(), px(4), inner.width(), px(26))
        draw_words(painter, chance, pot.line.chance, theme.ink, side=RIGHT, size=PLACE)
        room = inner.width() - advance(pot.line.chance, px(PLACE)) - px(12)
        size = fitting(pot.name, room, [px(BODY), px(PLACE), px(SMALL)], 600)
        painter.setPen(QColor(theme.ink))
        write(painter, inner.left(), px(17), pot.name, size, 600)
        self._sentence(painter, pot, inner)
        self._strip(painter, pot, QRectF(inner.left(), px(52), inner.width(), px(_STRIP)))
        if self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(theme.cobalt), 3))
            painter.drawRect(whole.adjusted(2, 2, -2, -3))
        painter.end()

    def _sentence(self, painter: QPainter, pot: ShownPot, inner: QRectF) -> None:
        theme, x = self._look.theme, inner.left()
        ink, weight = (theme.ink, 600) if pot.moves else (theme.soft, 400)
        if not pot.line.has_place:
            ink, side = theme.ember, px(18)
            paint_caution(painter, QRectF(x, px(40) - side / 2, side, side), QColor(ink), QColor(theme.ground))
            x += side + px(6)
        size = fitting(pot.line.where, inner.right() - x, [px(PLACE), px(17), px(SMALL), px(14), px(13)], weight)
        painter.setPen(QColor(ink))
        write(painter, x, px(40), pot.line.where, size, weight)

    def _strip(self, painter: QPainter, pot: ShownPot, box: QRectF) -> None:
        theme = self._look.theme
        if not pot.line.has_place or pot.heat is None:
            pen = QPen(QColor(theme.line), 1.6)
            pen.setDashPattern([1.0, 3.0])
            painter.setPen(pen)
            painter.drawLine(QPointF(box.left(), box.center().y()), QPointF(box.right(), box.center().y()))
            return
        first = box.left() + box.width() * min(pot.from_min, AHEAD_MIN) / AHEAD_MIN
        ends = AHEAD_MIN if pot.until_min is None else min(max(pot.until_min, 0.0), AHEAD_MIN)
        last = max(box.left() + box.width() * ends / AHEAD_MIN, first + px(6))
        painter.setPen(QPen(QColor(theme.line), 1))
        painter.setBrush(QColor(heat_colour(pot.heat)))
        painter.drawRoundedRect(QRectF(first, box.top(), last - first, box.height()), px(2), px(2))
        wide = advance(pot.place, px(SMALL), 600) + px(12)
        inside = wide <= last - first
        ink = heat_ink(pot.heat) if inside else theme.soft
        after = last + px(8) if last + px(8) + wide <= box.right() else first - wide
        words = QRectF(first + px(7) if inside else after, box.top(), wide, box.height())
        draw_words(painter, words, pot.place, ink, side=LEFT, size=SMALL, weight=600 if inside else 400)


class _Axis(QWidget):
    """The clocks of the strips."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self._edge: Edge | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)

    def sizeHint(self) -> QSize:
        return QSize(px(280), px(_AXIS))

    def show_clocks(self, edge: Edge) -> None:
        self._edge = edge
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self._edge is None:
            return
        painter = QPainter(self)
        theme, edge = self._look.theme, self._edge
        off = px(44) + 2 * RING  # the keys beside the rows
        left, right = float(px(_INSET)), self.width() - off - px(_INSET)
        painter.setPen(QColor(theme.ink))
        taken = left + write(painter, left, px(11), "now", px(SMALL), 600) + px(8)
        most = max(int((right - left) / px(90)), 1)
        painter.setPen(QColor(theme.soft))
        for minute, told in clock_ticks(edge.now, edge.offset_minutes, 0.0, AHEAD_MIN, most):
            wide = advance(told, px(SMALL))
            x = min(left + (right - left) * minute / AHEAD_MIN - wide / 2, right - wide)
            if x >= taken:
                write(painter, x, px(11), told, px(SMALL))
        painter.fillRect(QRectF(0, self.height() - 1, self.width(), 1), QColor(theme.faint))
        painter.end()
