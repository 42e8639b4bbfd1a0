"""The one list of the pages: rows of words in columns, walked by arrow keys, found by letters."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QEvent,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    Qt,
    Signal,
)
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QSizePolicy, QTableView, QWidget

from cookstove_gui.gui.widgets.steps import px
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


class _Rows(QAbstractTableModel):
    """The rows as Qt asks for them, one at a time, so that thousands cost nothing until they are seen."""

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
        return None


class RowTable(QTableView):
    """Up, Down, Home and End mark a row, Enter opens it, Tab goes on to what comes next.

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
        self.setModel(self._rows)
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
        self._size_rows()
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
        self.activated.connect(lambda index: self.opened.emit(str(index.data(_KEY))))
        self.selectionModel().currentRowChanged.connect(lambda new, _old: self.chosen.emit(str(new.data(_KEY) or "")))

    def changeEvent(self, event: QEvent) -> None:
        """Grow with the size of the text."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.StyleChange, QEvent.Type.FontChange):
            self._size_rows()
            self._fit()

    def _size_rows(self) -> None:
        self.verticalHeader().setMinimumSectionSize(px(self._row_height))
        self.verticalHeader().setDefaultSectionSize(px(self._row_height))

    @property
    def key(self) -> str:
        """Key of the marked row; empty when none is."""
        return str(self.currentIndex().data(_KEY) or "")

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

    def choose(self, key: str) -> None:
        """Mark the row with this key, or the first one when it is not shown."""
        places = range(self._rows.rowCount())
        place = next((one for one in places if self._rows.index(one, 0).data(_KEY) == key), 0)
        index = self._rows.index(place, 0)
        choice = QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows
        self.selectionModel().setCurrentIndex(index, choice)
        self.scrollTo(index)

    def moveCursor(
        self, action: QAbstractItemView.CursorAction, modifiers: Qt.KeyboardModifier
    ) -> QModelIndex:  # Home and End go up and down a list, not along a row
        """The row that a key leads to."""
        ends = {QAbstractItemView.CursorAction.MoveHome: 0, QAbstractItemView.CursorAction.MoveEnd: -1}
        if action in ends and self._rows.rowCount():
            return self._rows.index(ends[action] % self._rows.rowCount(), 0)
        return super().moveCursor(action, modifiers)

    def _fit(self) -> None:
        """Let rows grow with their words, and the table with its rows where it is to show so many or all of them."""
        if self._wraps:
            self.resizeRowsToContents()
        if self._shown_rows is not None:
            tall = self._shown_rows * px(self._row_height) or max(self.verticalHeader().length(), px(self._row_height))
            header = self.horizontalHeader()
            self.setFixedHeight(tall + (0 if header.isHidden() else header.sizeHint().height()) + _EDGES)
