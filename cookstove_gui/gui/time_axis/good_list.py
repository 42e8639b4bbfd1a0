"""The rows of “Good for”: left of now what, where and how hot; right of it the chance over time as a hill."""

from collections.abc import Sequence

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QFont, QFontMetricsF, QPainter, QPainterPath, QPen, QPolygonF
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from cookstove_gui.desk.cook.good_rows import GoodRow
from cookstove_gui.gui.time_axis.hill_words import LOWERED, Stand, place_words, strong_parts
from cookstove_gui.gui.time_axis.span import AXIS_WIDTH, NOW_SHARE, TimeSpan
from cookstove_gui.gui.time_axis.stem import paint_now, paint_stem
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.gui.widgets.type import BODY, SMALL, font
from cookstove_gui.stove.drawn.heat_colours import heat_colour

ROW = 40  # px of the design
_PLACE = 18
_ROW_DATA = Qt.ItemDataRole.UserRole
_SQUARE, _EDGE, _HEAT, _BAR = 14, 8, 52, 4  # px of the design
_TOP = 3  # above a certain hill
_AROUND = ((-1, 0), (1, 0), (0, -1), (0, 1), (-0.7, -0.7), (0.7, -0.7), (-0.7, 0.7), (0.7, 0.7))


class HillPainter(QStyledItemDelegate):
    """Paints one row."""

    def __init__(self, span: TimeSpan, look: Look, parent: QListWidget) -> None:
        super().__init__(parent)
        self._span, self._look, self._list = span, look, parent

    def sizeHint(self, _option: QStyleOptionViewItem, _index: QModelIndex | QPersistentModelIndex) -> QSize:
        """One height for all."""
        return QSize(200, px(ROW))

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Names at the left, the hill at the right; now and the stem run through."""
        row: GoodRow = index.data(_ROW_DATA)
        theme, box = self._look.theme, QRectF(option.rect)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.translate(box.topLeft())
        width, height = box.width(), box.height()
        now = names_width(width)
        if row.is_wanted:
            painter.fillRect(QRectF(0, 0, now, height - 1), colour(theme.plate))
        self._paint_names(painter, row, now, height)
        painter.setPen(QPen(colour(theme.faint), 1))
        painter.drawLine(QPointF(0, height - 0.5), QPointF(width, height - 0.5))
        painter.save()
        painter.setClipRect(QRectF(now, 0, width - now, height))
        self._paint_hill(painter, row, now, width, height)
        painter.setClipRect(QRectF(now - 1, 0, width - now + 1, height))  # never through the names, where it is moved
        paint_now(painter, self._span, theme, width, height)
        painter.restore()
        if option.state & QStyle.StateFlag.State_Selected:
            ink = theme.cobalt if self._list.hasFocus() else theme.ink
            painter.fillRect(QRectF(0, 2, px(_BAR), height - 5), colour(ink))
        painter.restore()

    def _paint_names(self, painter: QPainter, row: GoodRow, now: float, height: float) -> None:
        """Name and place as far as there is room; the heat and its colour always."""
        theme = self._look.theme
        middle = 0.5 * (height - 1)
        right = now - px(_EDGE) - px(_SQUARE)
        square = QRectF(right, middle - px(_SQUARE) / 2, px(_SQUARE), px(_SQUARE))
        if row.kelvin is not None:
            painter.setPen(QPen(colour(theme.line), 1))
            painter.setBrush(colour(heat_colour(row.kelvin)))
            painter.drawRoundedRect(square, px(3), px(3))
        face = font(_PLACE)
        size = QFontMetricsF(face)
        base = middle + 0.5 * size.capHeight()
        right -= px(8)
        painter.setFont(face)
        painter.setPen(colour(theme.ink))
        painter.drawText(QPointF(right - size.horizontalAdvance(row.heat), base), row.heat)
        right -= px(_HEAT)
        room = right - px(_EDGE)
        name_face, lines = fitted(row.name, room, 600 if row.is_wanted else 400)
        name_size = QFontMetricsF(name_face)
        painter.setFont(name_face)
        top = middle - 0.5 * (len(lines) - 1) * name_size.height()
        for place, line in enumerate(lines):
            painter.drawText(QPointF(px(_EDGE), top + place * name_size.height() + 0.5 * name_size.capHeight()), line)
        room -= max(map(name_size.horizontalAdvance, lines)) + px(10)
        where = row.place if size.horizontalAdvance(row.place) <= room else ""
        painter.setFont(face)
        painter.setPen(colour(theme.soft))
        painter.drawText(QPointF(right - size.horizontalAdvance(where), base), where)

    def _paint_hill(self, painter: QPainter, row: GoodRow, now: float, width: float, height: float) -> None:
        theme, foot = self._look.theme, height - 1.0
        tall = foot - px(_TOP)
        first, last = (self._span.x(self._span.place(at), width) for at in (row.hill[0][0], row.hill[-1][0]))
        began, length = row.hill[0][0], max((row.hill[-1][0] - row.hill[0][0]).total_seconds(), 1.0)
        points = [
            (first + (last - first) * (at - began).total_seconds() / length, chance) for at, chance in row.hill
        ]  # fmt: skip
        if len(points) > 1:
            tops = [QPointF(x, foot - tall * chance) for x, chance in points]
            line = QPolygonF(tops)
            area = QPainterPath()
            area.addPolygon(QPolygonF([QPointF(points[0][0], foot), *tops, QPointF(points[-1][0], foot)]))
            area.closeSubpath()
            painter.fillPath(area, colour(theme.good_faint))
            for start, end in strong_parts(points):
                painter.save()
                painter.setClipRect(QRectF(start, 0, end - start, height), Qt.ClipOperation.IntersectClip)
                painter.fillPath(area, colour(theme.good))
                painter.restore()
            paint_stem(painter, self._span, theme, width, height)
            painter.setPen(QPen(colour(theme.verdigris), px(1.8)))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawPolyline(line)
        else:
            paint_stem(painter, self._span, theme, width, height)
        strong, plain = font(_PLACE, 600), font(_PLACE)
        sizes = (QFontMetricsF(strong), QFontMetricsF(plain))
        leads = sizes[0].horizontalAdvance(row.when)
        ends, chance = (max(now, points[0][0]), width), row.chance
        x, stands = place_words(points, leads + px(8) + sizes[1].horizontalAdvance(chance), ends, px(10))
        if stands is Stand.OVER:  # the hill says how likely; when is what must be read
            alone = place_words(points, leads, ends, px(10))
            if alone[1] is not Stand.OVER:
                (x, stands), chance = alone, ""
        base = 0.5 * foot + 0.5 * sizes[0].capHeight() + px(LOWERED[stands])
        around = _AROUND if stands in (Stand.OVER, Stand.ABOVE) else ()  # clear of stem and hill
        for right, down in (*around, (0, 0)):
            painter.setPen(colour(theme.ground if right or down else theme.ink))
            for words, face, start in ((row.when, strong, x), (chance, plain, x + leads + px(8))):
                painter.setFont(face)
                painter.drawText(QPointF(start + right * px(2), base + down * px(2)), words)


class GoodList(QListWidget):
    """Rows for keyboard and pointer; Enter asks for the heat of an oven row, or where a pan for another goes."""

    marked = Signal(object)  # the row that is chosen, or none

    def __init__(self, span: TimeSpan, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._span = span
        self.setObjectName("good_for_rows")
        self.setAccessibleName("Good for")
        self.setToolTip(
            "Up and Down choose a row and light its places; Enter asks for an oven row's heat, or where a pan goes"
        )
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QListWidget.ScrollMode.ScrollPerItem)
        self.setUniformItemSizes(True)
        self.setItemDelegate(HillPainter(span, look, self))
        self.itemSelectionChanged.connect(lambda: self.marked.emit(self.chosen()))
        span.moved.connect(self.viewport().update)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Whoever comes by Tab sees where: at the first row, if none is chosen."""
        super().focusInEvent(event)
        if event.reason() is not Qt.FocusReason.MouseFocusReason and self.chosen() is None and self.count():
            self.setCurrentRow(0)

    def show_rows(self, rows: Sequence[GoodRow]) -> None:
        """Show these; the row that was chosen stays chosen as long as it is there."""
        before = self.chosen()
        self.blockSignals(True)
        while self.count() > len(rows):
            self.takeItem(self.count() - 1)
        while self.count() < len(rows):
            self.addItem(QListWidgetItem())
        for place, row in enumerate(rows):
            item = self.item(place)
            item.setData(_ROW_DATA, row)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, row.said)
            item.setToolTip(plain_tip(row.said))
        self.choose(before.key if before else "")
        self.blockSignals(False)
        self.viewport().update()

    def chosen(self) -> GoodRow | None:
        """The row that is chosen."""
        items = self.selectedItems()
        return items[0].data(_ROW_DATA) if items else None

    def rows(self) -> list[GoodRow]:
        """All of them, in order."""
        return [self.item(place).data(_ROW_DATA) for place in range(self.count())]

    def choose(self, key: str) -> None:
        """Choose the row of that key; none if there is none."""
        place = next((number for number, row in enumerate(self.rows()) if row.key == key), None)
        self.clearSelection()
        if place is not None:
            self.setCurrentRow(place)


def fitted(name: str, room: float, weight: int) -> tuple[QFont, list[str]]:
    """The face and the lines in which a name goes into a row: smaller, then on two lines; cut only as a last resort."""
    for size in (BODY, _PLACE):
        face = font(size, weight)
        if QFontMetricsF(face).horizontalAdvance(name) <= room:
            return face, [name]
    face = font(SMALL, weight)
    advance = QFontMetricsF(face).horizontalAdvance
    words = name.split()
    halves = [(" ".join(words[:cut]), " ".join(words[cut:])) for cut in range(1, len(words))] or [(name, "")]
    first, second = min(halves, key=lambda pair: max(map(advance, pair)))
    lines = [first, second] if second else [first]
    return face, [QFontMetricsF(face).elidedText(line, Qt.TextElideMode.ElideRight, room) for line in lines]


def names_width(width: float) -> float:
    """Where the names end and the hills begin [px]: where now stands as long as the axis is not moved."""
    return px(AXIS_WIDTH) + NOW_SHARE * (width - px(AXIS_WIDTH))
