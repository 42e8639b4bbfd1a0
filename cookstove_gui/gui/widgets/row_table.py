"""The one list of the pages: rows of words in columns, walked by arrow keys, found by letters, some to tick."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    QSortFilterProxyModel,
    Qt,
    Signal,
)
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QSizePolicy, QTableView, QWidget

from cookstove_gui.gui.widgets.theme import TARGET_PIXELS
from cookstove_gui.gui.widgets.tips import plain_tip

_Index = QModelIndex | QPersistentModelIndex
_KEY = Qt.ItemDataRole.UserRole
_EDGES = 8  # pixels of frame and focus ring above and below the rows


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRow:
    """One row: its words, a column each, and the key it stands for."""

    cells: tuple[str, ...]
    key: str = ""
    is_ticked: bool | None = None  # None: the row has no box to tick


class _Rows(QAbstractTableModel):
    """The rows as Qt asks for them, one at a time, so that thousands cost nothing until they are seen."""

    ticked = Signal()

    def __init__(self, headers: Sequence[str], columns: int, parent: QWidget) -> None:
        super().__init__(parent)
        self._headers, self._columns = tuple(headers), columns
        self.rows: tuple[TableRow, ...] = ()

    def show_rows(self, rows: tuple[TableRow, ...]) -> None:
        self.beginResetModel()
        self.rows = rows
        self.endResetModel()

    def rowCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008 - as Qt spells it
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        return 0 if parent.isValid() else self._columns

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole and self._headers:
            return self._headers[section]
        return None

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        row = self.rows[index.row()]
        if role == _KEY:
            return row.key
        if role == Qt.ItemDataRole.DisplayRole:
            return row.cells[index.column()]
        if role == Qt.ItemDataRole.ToolTipRole and self._columns > 1:
            return plain_tip(row.cells[index.column()])
        if role == Qt.ItemDataRole.CheckStateRole and row.is_ticked is not None and index.column() == 0:
            return Qt.CheckState.Checked if row.is_ticked else Qt.CheckState.Unchecked
        return None

    def flags(self, index: _Index) -> Qt.ItemFlag:
        known = super().flags(index)
        has_box = index.isValid() and index.column() == 0 and self.rows[index.row()].is_ticked is not None
        return known | Qt.ItemFlag.ItemIsUserCheckable if has_box else known

    def setData(self, index: _Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        if role != Qt.ItemDataRole.CheckStateRole:
            return False
        place = index.row()
        changed = replace(self.rows[place], is_ticked=Qt.CheckState(value) is Qt.CheckState.Checked)
        self.rows = (*self.rows[:place], changed, *self.rows[place + 1 :])
        self.dataChanged.emit(index, index, [role])
        self.ticked.emit()
        return True


class RowTable(QTableView):
    """Up, Down, Home and End mark a row, Enter opens it, Space ticks it, Tab goes on to what comes next.

    Parameters
    ----------
    name, reads_as : str
        Object name, and what a screen reader calls the table.
    headers : sequence of str
        A heading a column; none for a plain list of one column.
    stretch : int
        The column that takes the room that is left.
    row_height : int
        Pixels of one row.
    shown_rows : int, optional
        How many rows are seen at once; 0 makes the table as tall as its rows, none lets it take the room there is.
    wraps : bool
        Long words go on in a second line, and the row grows.
    """

    chosen = Signal(str)  # key of the row that is marked now
    opened = Signal(str)  # key of the row that Enter or a double click asked for
    ticked = Signal()  # a box was ticked or cleared

    def __init__(
        self,
        name: str,
        reads_as: str,
        headers: Sequence[str] = (),
        *,
        stretch: int = 0,
        row_height: int = TARGET_PIXELS,
        shown_rows: int | None = None,
        wraps: bool = False,
    ) -> None:
        super().__init__()
        self._shown_rows, self._row_height, self._wraps = shown_rows, row_height, wraps
        self._rows = _Rows(headers, max(len(headers), 1), self)
        self._found = QSortFilterProxyModel(self)
        self._found.setSourceModel(self._rows)
        self._found.setFilterCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        self._found.setFilterKeyColumn(-1)
        self.setModel(self._found)
        self.setObjectName(name)
        self.setAccessibleName(reads_as)
        self.setShowGrid(False)
        self.setWordWrap(wraps)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.verticalHeader().hide()
        self.verticalHeader().setMinimumSectionSize(row_height)
        self.verticalHeader().setDefaultSectionSize(row_height)
        header = self.horizontalHeader()
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(stretch, QHeaderView.ResizeMode.Stretch)
        header.setSectionsClickable(False)
        header.setHighlightSections(False)
        header.setVisible(bool(headers))
        if wraps:
            header.sectionResized.connect(lambda *_: self._fit())
        if shown_rows is None:
            self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Ignored)
        else:
            self._fit()
        self._rows.ticked.connect(self.ticked)
        self.activated.connect(lambda index: self.opened.emit(str(index.data(_KEY))))
        self.selectionModel().currentRowChanged.connect(lambda new, _old: self.chosen.emit(str(new.data(_KEY) or "")))

    @property
    def key(self) -> str:
        """Key of the marked row; empty when none is."""
        return str(self.currentIndex().data(_KEY) or "")

    @property
    def ticked_keys(self) -> tuple[str, ...]:
        """Keys of the rows whose box is ticked, in their order."""
        return tuple(row.key for row in self._rows.rows if row.is_ticked)

    def show_rows(self, rows: Sequence[TableRow]) -> None:
        """Show these. A row marked before stays marked; of rows with keys one always is. Nothing is announced."""
        if tuple(rows) == self._rows.rows:
            return
        kept = self.key
        self.blockSignals(True)
        self._rows.show_rows(tuple(rows))
        if rows and rows[0].key:
            self.choose(kept)
        self.blockSignals(False)
        self._fit()

    def show_only(self, text: str) -> None:
        """The rows with these letters in any column, all of them for no letters."""
        self._found.setFilterFixedString(text)

    def choose(self, key: str) -> None:
        """Mark the row with this key, or the first one when it is not shown."""
        places = range(self._found.rowCount())
        place = next((one for one in places if self._found.index(one, 0).data(_KEY) == key), 0)
        index = self._found.index(place, 0)
        choice = QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows
        self.selectionModel().setCurrentIndex(index, choice)
        self.scrollTo(index)

    def moveCursor(
        self, action: QAbstractItemView.CursorAction, modifiers: Qt.KeyboardModifier
    ) -> QModelIndex:  # Home and End go up and down a list, not along a row
        """The row that a key leads to."""
        ends = {QAbstractItemView.CursorAction.MoveHome: 0, QAbstractItemView.CursorAction.MoveEnd: -1}
        if action in ends and self._found.rowCount():
            return self._found.index(ends[action] % self._found.rowCount(), 0)
        return super().moveCursor(action, modifiers)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space ticks the marked row; the other keys as in any list."""
        first = self.currentIndex().siblingAtColumn(0)
        if event.key() == Qt.Key.Key_Space and first.flags() & Qt.ItemFlag.ItemIsUserCheckable:
            state = Qt.CheckState(first.data(Qt.ItemDataRole.CheckStateRole))
            other = Qt.CheckState.Unchecked if state is Qt.CheckState.Checked else Qt.CheckState.Checked
            self._found.setData(first, other, Qt.ItemDataRole.CheckStateRole)
        else:
            super().keyPressEvent(event)

    def _fit(self) -> None:
        """Let rows grow with their words, and the table with its rows where it is to show so many or all of them."""
        if self._wraps:
            self.resizeRowsToContents()
        if self._shown_rows is not None:
            tall = self._shown_rows * self._row_height or max(self.verticalHeader().length(), self._row_height)
            header = self.horizontalHeader()
            self.setFixedHeight(tall + (0 if header.isHidden() else header.sizeHint().height()) + _EDGES)
