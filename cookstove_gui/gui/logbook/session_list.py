"""The list of sessions: day, title, what came of it, and the oven's curve against the heat wanted, all on one scale."""

from collections.abc import Sequence

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QPersistentModelIndex,
    QPointF,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPainter,
    QPen,
    QPolygonF,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractItemView, QListView, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from cookstove_gui.desk.logbook.cards import Card
from cookstove_gui.gui.logbook.marks import paint_mark
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import Theme
from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.gui.widgets.type import BODY, PLACE, font
from cookstove_gui.stove.entries import HeatBand

ROW = 73  # [px of the design], as all here
_DAY, _TITLE = 16, 114
_SMALLEST = 14  # of words that step down to stay in their room
_CURVE_WIDE, _CURVE_HIGH = 160, 55
_NARROW = 440  # a list narrower than this has narrower curves
_LEAST_MIN, _MOST_MIN = 180.0, 480.0  # min, of the scale all curves share
_FLOOR = 288.0  # K, the foot of all curves
_LEAST_TOP = 500.0  # K, its top at least
_NUMBER, _CARD = Qt.ItemDataRole.UserRole, Qt.ItemDataRole.UserRole + 1
_Index = QModelIndex | QPersistentModelIndex


class _Cards(QAbstractListModel):
    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.cards: tuple[Card, ...] = ()

    def show_cards(self, cards: tuple[Card, ...]) -> None:
        if [one.number for one in cards] == [one.number for one in self.cards]:
            self.cards = cards
            if cards:
                self.dataChanged.emit(self.index(0), self.index(len(cards) - 1))
            return
        self.beginResetModel()
        self.cards = cards
        self.endResetModel()

    def rowCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008 - as Qt spells it
        return 0 if parent.isValid() else len(self.cards)

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        card = self.cards[index.row()]
        if role == _NUMBER:
            return card.number
        if role == _CARD:
            return card
        words = ", ".join(part for part in (card.day, card.line, *card.tags) if part)
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return f"{card.summary.title}\n{words}"
        if role == Qt.ItemDataRole.ToolTipRole:
            return plain_tip(f"{card.summary.title}: {words}")
        return None


class SessionList(QListView):
    """Up and Down choose, Enter opens, Space marks a session for comparing and joining."""

    chosen = Signal()
    opened = Signal()
    marked = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._cards = _Cards(self)
        self._marked: list[int] = []
        self.setModel(self._cards)
        self.setItemDelegate(_Painter(self, look))
        self.setObjectName("session_list")
        self.setAccessibleName("Sessions, the latest first")
        self.setToolTip(
            "Up and down choose a session, Enter puts it on the Cook page; Space marks it for comparing, Ctrl A all"
        )
        self.setUniformItemSizes(True)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerItem)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setMinimumHeight(140)  # two sessions, also below a long caution
        self.selectionModel().currentChanged.connect(lambda _new, _old: self.chosen.emit())
        self.activated.connect(lambda _index: self.opened.emit())
        look.changed.connect(self._dress)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Whole rows alone are shown."""
        super().resizeEvent(event)
        self._fit_rows()

    def _dress(self) -> None:
        self.scheduleDelayedItemsLayout()
        self._fit_rows()

    def _fit_rows(self) -> None:
        room = self.contentsRect().height()
        self.setViewportMargins(0, 0, 0, room % px(ROW) if room >= px(ROW) else 0)

    @property
    def card(self) -> Card | None:
        """The chosen one."""
        found = self.currentIndex().data(_CARD)
        return found if isinstance(found, Card) else None

    @property
    def cards(self) -> tuple[Card, ...]:
        """All that are shown."""
        return self._cards.cards

    @property
    def marked_numbers(self) -> tuple[int, ...]:
        """Sessions marked, in the order in which they were."""
        return tuple(self._marked)

    def show_cards(self, cards: Sequence[Card], band: HeatBand) -> None:
        """Show these; the chosen session stays chosen, or the first one is. Nothing is announced."""
        before = self.card
        self.blockSignals(True)
        self.selectionModel().blockSignals(True)
        self._cards.show_cards(tuple(cards))
        self.choose(before.number if before else 0)
        self.selectionModel().blockSignals(False)
        self.blockSignals(False)
        known = {card.number for card in cards}
        self._marked = [number for number in self._marked if number in known]
        painter = self.itemDelegate()
        assert isinstance(painter, _Painter)
        painter.show_scale(cards, band)
        self.viewport().update()

    def choose(self, number: int) -> None:
        """Choose a session, or the first one where it isn't shown."""
        place = next((at for at, card in enumerate(self._cards.cards) if card.number == number), 0)
        if self._cards.cards:
            self.setCurrentIndex(self._cards.index(place))

    def mark(self, number: int) -> None:
        """Mark a session, or take its mark off."""
        if number in self._marked:
            self._marked.remove(number)
        else:
            self._marked.append(number)
        self.viewport().update()
        self.marked.emit()

    def mark_all(self) -> None:
        """Mark every session that is shown, or none where all are; the chosen one is the first."""
        numbers = [card.number for card in self.cards]
        if set(numbers) <= set(self._marked):
            self.unmark()
            return
        first = [self.card.number] if self.card is not None and not self._marked else []
        self._marked = list(dict.fromkeys([*self._marked, *first, *numbers]))
        self.viewport().update()
        self.marked.emit()

    def unmark(self) -> None:
        """Take all marks off."""
        self._marked.clear()
        self.viewport().update()
        self.marked.emit()

    def place_of(self, number: int) -> int | None:
        """Which mark a session has; none if it has none."""
        return self._marked.index(number) if number in self._marked else None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space marks, Ctrl A marks all."""
        if event.key() == Qt.Key.Key_Space and self.card is not None:
            self.mark(self.card.number)
            return
        if event.matches(QKeySequence.StandardKey.SelectAll):
            self.mark_all()
            return
        super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A press left of the day, or with Ctrl, marks."""
        index = self.indexAt(event.position().toPoint())
        with_ctrl = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        if index.isValid() and (with_ctrl or (self._marked and event.position().x() < px(_DAY + 8))):
            self.mark(int(index.data(_NUMBER)))
            return
        super().mousePressEvent(event)


class _Painter(QStyledItemDelegate):
    def __init__(self, view: SessionList, look: Look) -> None:
        super().__init__(view)
        self._view, self._look = view, look
        self._band: HeatBand | None = None
        self._minutes, self._top = _LEAST_MIN, _LEAST_TOP

    def show_scale(self, cards: Sequence[Card], band: HeatBand) -> None:
        """One scale for all curves."""
        facts = [card.facts for card in cards if card.facts is not None and card.facts.curve]
        longest = max((one.curve[-1][0] for one in facts), default=_LEAST_MIN)
        hottest = max((one.hottest[1] for one in facts if one.hottest), default=_LEAST_TOP)
        self._band = band
        self._minutes = min(max(longest, _LEAST_MIN), _MOST_MIN)
        self._top = max(hottest, band.high, _LEAST_TOP)

    def sizeHint(self, _option: QStyleOptionViewItem, _index: _Index) -> QSize:
        """Two lines."""
        return QSize(px(300), px(ROW))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: _Index) -> None:
        """Plate where it is chosen, bar, mark, words, curve, hairline."""
        card = index.data(_CARD)
        theme, box = self._look.theme, QRectF(option.rect)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._view.currentIndex() == index:
            painter.fillRect(box, QColor(theme.plate))
            bar = theme.cobalt if self._view.hasFocus() else theme.ink
            painter.fillRect(QRectF(box.left(), box.top(), px(4), box.height()), QColor(bar))
        else:
            painter.fillRect(QRectF(box.left(), box.bottom() - 1, box.width(), 1), QColor(theme.faint))
        wide = self._curve_width(card, box.width())
        curve = QRectF(box.right() - px(12) - wide, box.top() + px(9), wide, px(_CURVE_HIGH))
        if wide:
            self._paint_curve(painter, card, curve, theme)
        self._paint_words(
            painter, card, QRectF(box.left(), box.top(), curve.left() - box.left() - px(10), box.height())
        )
        place = self._view.place_of(card.number)
        if place is not None:
            at = QPointF(box.left() + px(_DAY) + px(8), box.top() + px(50))
            paint_mark(painter, place, at, theme, size=1.2)
        painter.restore()

    @staticmethod
    def _curve_width(card: Card, whole: float) -> float:
        """As wide as drawn in the design, narrower in a narrow list, and none before a title or its line is cut."""
        title = QFontMetricsF(font(_SMALLEST, 600)).horizontalAdvance(card.summary.title)
        line = QFontMetricsF(font(_SMALLEST)).horizontalAdvance(_line(card))
        room = whole - px(22) - max(px(_TITLE) + title, px(_DAY) + line)  # a long line begins under the day
        widths = [px(_CURVE_WIDE * share) for share in ((1.0, 0.62, 0.4) if whole >= px(_NARROW) else (0.62, 0.4))]
        return next((wide for wide in widths if wide <= room), 0.0)

    def _paint_words(self, painter: QPainter, card: Card, room: QRectF) -> None:
        theme = self._look.theme
        first, second = room.top() + px(28), room.top() + px(54)
        painter.setFont(font(PLACE))
        painter.setPen(QColor(theme.soft))
        painter.drawText(QPointF(room.left() + px(_DAY), first), card.day)
        left = room.left() + px(_TITLE)
        _fitted(painter, card.summary.title, QPointF(left, first), room.right() - left, BODY, 600, theme.ink)
        line = _line(card)
        ink = theme.ink if card.is_live else theme.soft
        if QFontMetricsF(font(_SMALLEST)).horizontalAdvance(line) > room.right() - left:
            left = room.left() + px(_DAY)  # under the day, where there is more room
        _fitted(painter, line, QPointF(left, second), room.right() - left, PLACE, 400, ink)

    def _paint_curve(self, painter: QPainter, card: Card, box: QRectF, theme: Theme) -> None:
        if self._band is None:
            return

        def level(heat: float) -> float:
            return box.bottom() - (heat - _FLOOR) / (self._top - _FLOOR) * box.height()

        band = QRectF(QPointF(box.left(), level(self._band.high)), QPointF(box.right(), level(self._band.low)))
        painter.fillRect(band, QColor(theme.good if self._view.card is card else theme.good_faint))
        curve = card.facts.curve if card.facts is not None else ()
        points = [
            QPointF(box.left() + minute / self._minutes * box.width(), level(max(heat, _FLOOR)))
            for minute, heat in curve
            if minute <= self._minutes
        ]
        if not points:
            return
        painter.setPen(QPen(QColor(theme.ink), 1.8))
        painter.drawPolyline(QPolygonF(points))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(theme.ink))
        painter.drawEllipse(points[-1], px(3), px(3))


def _line(card: Card) -> str:
    return ", ".join((card.line, *card.tags)) if card.tags else card.line


def _fitted(painter: QPainter, words: str, at: QPointF, room: float, size: int, weight: int, ink: str) -> None:
    """Words that step down in size rather than leave their room; what is longer still ends in dots."""
    face = font(size, weight)
    while size > _SMALLEST and QFontMetricsF(face).horizontalAdvance(words) > room:
        size -= 1
        face = font(size, weight)
    painter.setFont(face)
    painter.setPen(QColor(ink))
    painter.drawText(at, QFontMetricsF(face).elidedText(words, Qt.TextElideMode.ElideRight, room))
