"""Two parts beside each other, or one below the other where both do not fit."""

from PySide6.QtCore import QEvent, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QLayout, QWidget


class SideBySide(QWidget):
    """Left and right share the width as `shares` says, one without the other has it all.

    It never asks for more width than the wider one.
    """

    def __init__(
        self, left: QLayout, right: QLayout, *, shares: tuple[int, int], apart: int, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._sides, self._shares = (left, right), shares
        self._box = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(apart)
        for side in self._sides:
            self._box.addLayout(side)

    def minimumSizeHint(self) -> QSize:
        """Room for the wider of the two."""
        return QSize(max(side.minimumSize().width() for side in self._sides), self._box.minimumSize().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Beside each other if there is room."""
        super().resizeEvent(event)
        self._turn()

    def event(self, event: QEvent) -> bool:
        """Look again when a part is shown, hidden or grows."""
        done = super().event(event)
        if event.type() is QEvent.Type.LayoutRequest:
            self._turn()
        return done

    def _turn(self) -> None:
        for side, share in zip(self._sides, self._shares, strict=True):
            self._box.setStretchFactor(side, 0 if side.isEmpty() else share)
        needed = sum(side.minimumSize().width() for side in self._sides) + self._box.spacing()
        ways = QBoxLayout.Direction
        way = ways.LeftToRight if needed <= self.width() else ways.TopToBottom
        if way != self._box.direction():
            self._box.setDirection(way)
            self.updateGeometry()
