"""Several views in one place, of which the one that is shown alone says how much room it needs."""

from PySide6.QtWidgets import QVBoxLayout, QWidget


class OneAtATime(QWidget):
    """Qt's own stack asks for the room of its largest view, so that a page would scroll for one that is not shown."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._views: list[QWidget] = []
        self._place = 0
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)

    def addWidget(self, view: QWidget) -> None:
        """One more view; the first one is shown."""
        self._views.append(view)
        self._column.addWidget(view)
        view.setVisible(len(self._views) == 1)

    def currentIndex(self) -> int:
        """Place of the view that is shown."""
        return self._place

    def setCurrentIndex(self, place: int) -> None:
        """Show another view; the one that is shown keeps the keyboard."""
        if place == self._place:
            return
        self._views[self._place].hide()
        self._place = place
        self._views[place].show()
