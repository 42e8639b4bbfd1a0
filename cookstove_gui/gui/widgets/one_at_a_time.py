"""Several views in one place, of which the one that is shown alone says how much room it needs."""

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QStackedWidget, QWidget


class OneAtATime(QStackedWidget):
    """Qt's own stack asks for the room of its largest view, so that a page would scroll for one that is not shown."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.currentChanged.connect(lambda _place: self.updateGeometry())

    def sizeHint(self) -> QSize:
        """That of the view that is shown."""
        shown = self.currentWidget()
        return super().sizeHint() if shown is None else shown.sizeHint()

    def minimumSizeHint(self) -> QSize:
        """That of the view that is shown."""
        shown = self.currentWidget()
        return super().minimumSizeHint() if shown is None else shown.minimumSizeHint()
