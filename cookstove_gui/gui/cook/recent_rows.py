"""The list of entries, newest first, opened over the fire keys: correct one, take it back, or keep it as typed."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt, Signal, SignalInstance
from PySide6.QtGui import QKeyEvent, QPainter, QPalette
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from cookstove_gui.cooking.instruments.meant_rows import meant_kelvin
from cookstove_gui.desk import Changed
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.key import Key, named_key
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.gui.widgets.type import font, set_role
from cookstove_gui.phrases.edge import spot_label
from cookstove_gui.phrases.entries import entry_words, meant_tip, meant_words
from cookstove_gui.stove.entries import Entry
from cookstove_gui.units import clock_text

_SHOWN = 40  # the rest are in the log
_IN_REACH = 6  # rows seen at once
_ROW_HIGH = 40  # [px of the design]
_CLOCK_WIDE = 58
_IN_QUESTION = "in question"
_MARKING = frozenset(
    (Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_PageUp, Qt.Key.Key_PageDown, Qt.Key.Key_Home, Qt.Key.Key_End)
)
_NUMBER, _CLOCK, _ASKED = (Qt.ItemDataRole.UserRole + place for place in range(3))


class RecentRows(QFrame):
    """Enter corrects the marked row, Delete takes it back, Escape closes the list."""

    correction_wanted = Signal(int)  # number of the entry
    take_back_wanted = Signal(int)
    keep_wanted = Signal(int)
    left = Signal()

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("entries_over")
        self.setAutoFillBackground(True)
        self._list = _Rows()
        heading = QLabel("Entries")
        set_role(heading, "heading")
        self._correct = _key("row_correct", "Correct", "Enter", "Correct the marked entry (Enter)")
        self._take_back = _key("row_take_back", "Take back", "Del", "Take back the marked entry (Delete)")
        self._keep = _key("row_keep", "Keep", "Ctrl K", "Keep the marked entry as typed (Ctrl+K)")
        self._close = _key("rows_close", "Close", "Esc", "Close the list (Escape)")
        top = QHBoxLayout()
        top.addWidget(heading, 1)
        top.addWidget(self._close)
        keys = QHBoxLayout()
        keys.setSpacing(0)
        for key in (self._correct, self._take_back, self._keep):
            keys.addWidget(key, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, STEP // 2, 0, 0)
        column.setSpacing(0)
        column.addLayout(top)
        column.addWidget(self._list, 1)
        column.addLayout(keys)
        self._close.clicked.connect(self.left)
        for key, told in (
            (self._correct, self.correction_wanted),
            (self._take_back, self.take_back_wanted),
            (self._keep, self.keep_wanted),
        ):
            key.clicked.connect(lambda _checked=False, told=told: self._tell(told))
        self._list.itemActivated.connect(lambda _item: self._tell(self.correction_wanted))
        self._list.currentRowChanged.connect(lambda _row: self._show_keys())
        link.changed.connect(self._show)
        self.hide()

    def sizeHint(self) -> QSize:
        """Six rows, the heading over them and the keys below."""
        return QSize(px(440), _IN_REACH * px(_ROW_HIGH) + 2 * self._close.sizeHint().height() + STEP)

    def open(self) -> None:
        """Show the list, with the keyboard on its newest row."""
        self._show_rows()
        self.show()
        self.raise_()
        self._list.setFocus(Qt.FocusReason.ShortcutFocusReason)
        if self._list.count():
            self._list.setCurrentRow(0)
        self._show_keys()

    def _show(self, changed: Changed) -> None:
        if self.isVisible() and (changed.log or changed.session or changed.stove or changed.standing):
            self._show_rows()
            self._show_keys()

    def _show_rows(self) -> None:
        rows = self._desk.entries[: -_SHOWN - 1 : -1]
        asked = {question.number: question.sentence for question in self._desk.questions}
        self._list.blockSignals(True)
        marked = self._list.currentRow()
        while self._list.count() > len(rows):
            self._list.takeItem(self._list.count() - 1)
        while self._list.count() < len(rows):
            self._list.addItem(QListWidgetItem())
        for place, row in enumerate(rows):
            item = self._list.item(place)
            clock, words = clock_text(row.at, row.offset_minutes), self._words(row)
            question = asked.get(row.number, "")
            item.setText(words)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, ", ".join(t for t in (f"{clock} {words}", question) if t))
            item.setToolTip(
                plain_tip(question or meant_tip(row, self._desk.stove, meant_kelvin(self._desk.stove, row)))
            )
            item.setData(_NUMBER, row.number)
            item.setData(_CLOCK, clock)
            item.setData(_ASKED, bool(question))
        if marked >= 0 and rows:
            self._list.setCurrentRow(min(marked, len(rows) - 1))
        self._list.blockSignals(False)

    def _words(self, row: Entry) -> str:
        stove = self._desk.stove
        meant = meant_kelvin(stove, row)
        if meant is None:
            return entry_words(row, stove)
        return f"{spot_label(stove, row.spot).removeprefix('top ')} {meant_words(row, meant)}"

    def _show_keys(self) -> None:
        item = self._list.currentItem()
        for key in (self._correct, self._take_back):
            key.setEnabled(item is not None)
        self._keep.setVisible(item is not None and bool(item.data(_ASKED)))

    @property
    def marked(self) -> int | None:
        """Number of the marked entry."""
        item = self._list.currentItem()
        return int(item.data(_NUMBER)) if item is not None else None

    def _tell(self, what: SignalInstance) -> None:
        if self.marked is not None:
            what.emit(self.marked)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter corrects, Delete takes back, Escape closes."""
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._tell(self.correction_wanted)
        elif event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self._tell(self.take_back_wanted)
        else:
            super().keyPressEvent(event)


class _Rows(QListWidget):
    """The rows; Enter, Delete and Escape go to the list around them."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("recent_rows")
        self.setAccessibleName("The entries, newest first")
        self.setToolTip("Enter corrects an entry, Delete takes it back (Ctrl+R comes here)")
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setUniformItemSizes(True)
        self.setItemDelegate(_RowDelegate(self))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows mark; what is done to a row is for the list around."""
        if event.key() in _MARKING:
            super().keyPressEvent(event)
        else:
            event.ignore()


class _RowDelegate(QStyledItemDelegate):
    """A row: its clock, its words, and whether it is in question."""

    def sizeHint(self, _option: QStyleOptionViewItem, _index: QModelIndex | QPersistentModelIndex) -> QSize:
        """High enough to be pressed."""
        return QSize(0, px(_ROW_HIGH))

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Clock in soft, words in ink, and at the right `in question`; a bar of the focus at the marked row's left."""
        painter.save()
        tokens, box = QApplication.palette(), QRectF(option.rect)
        is_marked = bool(option.state & QStyle.StateFlag.State_Selected)
        if is_marked:
            painter.fillRect(box, tokens.color(QPalette.ColorRole.Button))
        if is_marked and option.state & QStyle.StateFlag.State_HasFocus:
            painter.fillRect(QRectF(box.left(), box.top(), 4, box.height()), tokens.color(QPalette.ColorRole.Highlight))
        middle = Qt.AlignmentFlag.AlignVCenter
        inner = box.adjusted(STEP + 4, 0, -STEP, 0)
        painter.setFont(font(18))
        painter.setPen(tokens.color(QPalette.ColorRole.PlaceholderText))
        painter.drawText(inner, int(middle | Qt.AlignmentFlag.AlignLeft), str(index.data(_CLOCK)))
        inner.adjust(px(_CLOCK_WIDE), 0, 0, 0)
        if index.data(_ASKED):
            painter.setFont(font(18, 600))
            painter.setPen(tokens.color(QPalette.ColorRole.BrightText))
            painter.drawText(inner, int(middle | Qt.AlignmentFlag.AlignRight), _IN_QUESTION)
            inner.adjust(0, 0, -painter.fontMetrics().horizontalAdvance(_IN_QUESTION) - STEP, 0)
        painter.setFont(font(20))
        painter.setPen(tokens.color(QPalette.ColorRole.Text))
        words = painter.fontMetrics().elidedText(str(index.data()), Qt.TextElideMode.ElideRight, int(inner.width()))
        painter.drawText(inner, int(middle | Qt.AlignmentFlag.AlignLeft), words)
        painter.restore()


def _key(name: str, text: str, keys: str, what: str) -> Key:
    return named_key(text, name, what, said=what, keys=keys, by_enter=False)
