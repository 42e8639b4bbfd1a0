"""Widgets side by side, which go on in a new row when one is full.

No layout of Qt's kind: the items that a Python layout keeps may be destroyed behind its back, which ends the program.
"""

from PySide6.QtCore import QEvent, QPoint, QRect, QSize, Qt
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QSizePolicy, QWidget


class FlowRow(QWidget):
    """As many rows as the width asks for, each part at its own size."""

    def __init__(self, spacing: int, *parts: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._spacing = spacing
        self._parts = parts
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        for part in parts:
            part.setParent(self)

    def hasHeightForWidth(self) -> bool:
        """More rows in less width."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Height of all rows."""
        return self._arrange(width, move=False)

    def sizeHint(self) -> QSize:
        """All in one row, where there is room."""
        sizes = [_size_of(part) for part in self._seen()]
        wide = sum(size.width() for size in sizes) + self._spacing * max(len(sizes) - 1, 0)
        return QSize(wide, max((size.height() for size in sizes), default=0))

    def minimumSizeHint(self) -> QSize:
        """The largest part."""
        size = QSize(0, 0)
        for part in self._seen():
            size = size.expandedTo(_size_of(part))
        return size

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place the parts."""
        super().resizeEvent(event)
        self._arrange(self.width(), move=True)

    def showEvent(self, event: QShowEvent) -> None:
        """While it is hidden nobody is told that a part has another size."""
        super().showEvent(event)
        self.updateGeometry()

    def event(self, event: QEvent) -> bool:
        """A part wants another size, or was hidden or shown."""
        if event.type() is QEvent.Type.LayoutRequest:
            self.updateGeometry()
            self._arrange(self.width(), move=True)
        return super().event(event)

    def _seen(self) -> list[QWidget]:
        was_told = Qt.WidgetAttribute.WA_WState_ExplicitShowHide  # a part not yet shown counts; one hidden does not
        return [part for part in self._parts if not (part.isHidden() and part.testAttribute(was_told))]

    def _arrange(self, width: int, *, move: bool) -> int:
        x, y, high = 0, 0, 0
        for part in self._seen():
            size = _size_of(part)
            if x > 0 and x + size.width() > width:
                x, y, high = 0, y + high + self._spacing, 0
            if move:
                part.setGeometry(QRect(QPoint(x, y), size))
            x += size.width() + self._spacing
            high = max(high, size.height())
        return y + high


def _size_of(part: QWidget) -> QSize:
    return part.sizeHint().expandedTo(part.minimumSize()).boundedTo(part.maximumSize())
