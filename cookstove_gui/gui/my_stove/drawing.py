"""A drawn stove between words: it takes the height they leave it, and asks for no more than it can be read at."""

from PySide6.QtCore import QSize
from PySide6.QtGui import QContextMenuEvent, QKeyEvent

from cookstove_gui.gui.drawn_stove.stove_view import StoveView
from cookstove_gui.gui.widgets.picture import WaysOut
from cookstove_gui.gui.widgets.steps import px

_LOWEST = 250  # px of the design


class DrawingBesideWords(StoveView):
    """The stove, in what room there is."""

    def sizeHint(self) -> QSize:
        """The least, so that the page scrolls only where even that has no room."""
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        """The least at which its numbers can be read."""
        return QSize(px(300), px(_LOWEST))


class DrawingToKeep(DrawingBesideWords, WaysOut):
    """A drawing that shows something known, which can be copied and saved as every picture can."""

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """By the right button or the menu key."""
        self.offer_ways_out(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Copy and save by the usual keys, on any spot."""
        if not self.takes(event):
            super().keyPressEvent(event)
