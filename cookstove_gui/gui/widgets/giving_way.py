"""A column that scrolls by itself, and is narrower than designed where what stands beside it needs the room."""

from PySide6.QtCore import QEvent, QObject, QSize
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.gui.widgets.sections import ScrollingUp
from cookstove_gui.gui.widgets.steps import px


class GivingWay(ScrollingUp):
    """Never narrower than what stands in it and the bar that scrolls it."""

    def __init__(self, inside: QWidget, wide: float) -> None:
        """`wide` in px of the design."""
        super().__init__(inside)
        self._inside, self._wide = inside, wide
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Ignored)

    def sizeHint(self) -> QSize:
        """As designed."""
        return QSize(max(px(self._wide), self.minimumSizeHint().width()), 0)

    def minimumSizeHint(self) -> QSize:
        """Everything in it can be seen."""
        return QSize(self._inside.minimumSizeHint().width() + self.verticalScrollBar().sizeHint().width(), 0)

    def stand_whole(self, wanted: bool) -> None:
        """As high as what stands in it, where the page scrolls in any case: one bar does for both."""
        whole = self._inside.heightForWidth(self.viewport().width()) if self._inside.hasHeightForWidth() else 0
        self.setMinimumHeight(max(whole, self._inside.sizeHint().height()) if wanted else 0)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """What stands in it has another size."""
        if event.type() is QEvent.Type.LayoutRequest:
            self.updateGeometry()
        return super().eventFilter(watched, event)
