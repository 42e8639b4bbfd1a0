"""The latest entries, newest first: take one back, correct its number, or move it to the right time."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QWidget

from cookstove_gui.cooking.instruments.meant_rows import meant_kelvin
from cookstove_gui.desk import Changed
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.phrases.edge import spot_label
from cookstove_gui.phrases.entries import entry_words, meant_tip, meant_words
from cookstove_gui.stove.entries import Entry
from cookstove_gui.units import clock_text

_SHOWN = 40  # the rest are in the log


class RecentRows(QListWidget):
    """Enter corrects the marked row, Delete takes it back, Escape leaves the list."""

    correction_wanted = Signal(int)  # number of the entry
    take_back_wanted = Signal(int)
    left = Signal()

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("recent_rows")
        self.setAccessibleName("The latest entries")
        self.setToolTip("Enter corrects an entry's number or time, Delete takes it back (Ctrl+R comes here)")
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setUniformItemSizes(True)
        self.itemActivated.connect(self._correct)
        link.changed.connect(self._show)
        self._show_rows()

    def _show(self, changed: Changed) -> None:
        if changed.log or changed.session or changed.stove:
            self._show_rows()

    def _show_rows(self) -> None:
        rows = self._desk.entries[: -_SHOWN - 1 : -1]
        self.blockSignals(True)
        marked = self.currentRow()
        while self.count() > len(rows):
            self.takeItem(self.count() - 1)
        while self.count() < len(rows):
            self.addItem(QListWidgetItem())
        for place, row in enumerate(rows):
            item, meant = self.item(place), meant_kelvin(self._desk.stove, row)
            item.setText(f"{clock_text(row.at, row.offset_minutes)}  {self._words(row, meant)}")
            item.setToolTip(meant_tip(row, self._desk.stove, meant))
            item.setData(Qt.ItemDataRole.UserRole, row.number)
        if marked >= 0 and rows:
            self.setCurrentRow(min(marked, len(rows) - 1))
        self.blockSignals(False)

    def _words(self, row: Entry, meant: float | None) -> str:
        stove = self._desk.stove
        if meant is None:
            return entry_words(row, stove)
        return f"{spot_label(stove, row.spot).removeprefix('top ')} {meant_words(row, meant)}"

    def take_focus(self) -> None:
        """Give the keyboard to the newest row."""
        self.setFocus(Qt.FocusReason.ShortcutFocusReason)
        if self.count():
            self.setCurrentRow(0)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter corrects, Delete takes back, Escape leaves."""
        number = self._number()
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and number is not None:
            self.correction_wanted.emit(number)
        elif event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace) and number is not None:
            self.take_back_wanted.emit(number)
        else:
            super().keyPressEvent(event)

    def _number(self) -> int | None:
        item = self.currentItem()
        return int(item.data(Qt.ItemDataRole.UserRole)) if item is not None else None

    def _correct(self, item: QListWidgetItem) -> None:
        self.correction_wanted.emit(int(item.data(Qt.ItemDataRole.UserRole)))
