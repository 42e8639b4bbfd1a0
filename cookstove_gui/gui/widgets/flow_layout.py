"""A layout that sets its widgets in rows and starts a new row when one is full."""

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class FlowLayout(QLayout):
    """Rows of widgets at their own size."""

    def __init__(self, spacing: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self.setSpacing(spacing)
        self.setContentsMargins(0, 0, 0, 0)

    def addItem(self, item: QLayoutItem) -> None:
        """Take one more item."""
        self._items.append(item)

    def count(self) -> int:
        """How many items there are."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        """The item at a place, or none."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        """Give up the item at a place."""
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        """It does not ask for more than it needs."""
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        """More rows in less width."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Height of all rows."""
        return self._arrange(QRect(0, 0, width, 0), move=False)

    def setGeometry(self, rect: QRect) -> None:
        """Place the widgets."""
        super().setGeometry(rect)
        self._arrange(rect, move=True)

    def sizeHint(self) -> QSize:
        """At least the largest widget."""
        return self.minimumSize()

    def minimumSize(self) -> QSize:
        """The largest widget."""
        size = QSize()
        for item in self._items:
            size = size.expandedTo(item.minimumSize())
        return size

    def _arrange(self, rect: QRect, *, move: bool) -> int:
        x, y, row_height, gap = rect.x(), rect.y(), 0, self.spacing()
        for item in self._items:
            if item.isEmpty():
                continue
            size = item.sizeHint()
            if x > rect.x() and x + size.width() > rect.x() + rect.width():
                x, y, row_height = rect.x(), y + row_height + gap, 0
            if move:
                item.setGeometry(QRect(QPoint(x, y), size))
            x += size.width() + gap
            row_height = max(row_height, size.height())
        return y + row_height - rect.y()
