"""A drawn stove between words: it takes the height they leave it, and asks for no more than it can be read at."""

from PySide6.QtCore import QSize

from cookstove_gui.gui.drawn_stove.stove_view import StoveView
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
