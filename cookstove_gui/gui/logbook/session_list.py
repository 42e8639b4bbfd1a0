"""The list of sessions as Qt's item views want it: quick with a lifetime of them."""

from typing import Any

from PySide6.QtCore import QAbstractListModel, QModelIndex, QPersistentModelIndex, QSize, Qt

from cookstove_gui.logbook.logbook import SessionSummary
from cookstove_gui.phrases.edge import session_day

NUMBER = Qt.ItemDataRole.UserRole
_Index = QModelIndex | QPersistentModelIndex
_ROW_HEIGHT = 68  # px, two lines


class SessionModel(QAbstractListModel):
    """One row a session, the latest first, as the desk lists them."""

    def __init__(self) -> None:
        super().__init__()
        self._rows: tuple[SessionSummary, ...] = ()
        self._open = 0

    def show_sessions(self, rows: tuple[SessionSummary, ...], open_number: int) -> None:
        """Show these; the one on the table is marked."""
        if (rows, open_number) != (self._rows, self._open):
            self.beginResetModel()
            self._rows, self._open = rows, open_number
            self.endResetModel()

    def summary(self, number: int) -> SessionSummary | None:
        """The session of that number."""
        return next((row for row in self._rows if row.number == number), None)

    def rowCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008 - as Qt spells it
        """How many sessions there are."""
        return 0 if parent.isValid() else len(self._rows)

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Title and, on a second line, when it was and how much was entered."""
        row = self._rows[index.row()]
        if role == NUMBER:
            return row.number
        if role == Qt.ItemDataRole.SizeHintRole:
            return QSize(0, _ROW_HEIGHT)
        if role not in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return None
        title = f"{row.title} (on the table)" if row.number == self._open else row.title
        return f"{title}\n{session_day(row.first_at, row.offset_minutes)}"
