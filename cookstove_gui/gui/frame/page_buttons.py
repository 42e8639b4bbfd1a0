"""The large buttons: four pages, the large view and the colours, in a block or in one row."""

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QPushButton, QWidget

from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import STEP

PAGES = (("cook", "Cook", "F1"), ("plan", "Plan", "F2"), ("my_stove", "My stove", "F3"), ("logbook", "Logbook", "F4"))
_COLOURS = {"system": "auto", "day": "day", "night": "night"}


class PageButtons(QWidget):
    """F1 to F4 for the pages, F12 for the large view, Ctrl+D for the colours."""

    page_chosen = Signal(str)
    large_chosen = Signal()
    colours_chosen = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._in_row: bool | None = None
        self._pages: dict[str, QPushButton] = {}
        self._group = QButtonGroup(self)
        self.setObjectName("page_buttons")
        for key, word, keys in PAGES:
            button = self._made(f"page_{key}", f"{word} {keys}", f"Page {word}", keys)
            button.setCheckable(True)
            button.clicked.connect(lambda _checked=False, wanted=key: self.page_chosen.emit(wanted))
            self._group.addButton(button)
            self._pages[key] = button
        large = self._made("large", "Large F12", "Large view, to read from across the kitchen", "F12")
        large.clicked.connect(self.large_chosen)
        self._colours = self._made("colours", "", "", "Ctrl+D")
        self._colours.clicked.connect(self.colours_chosen)
        self._all = [*self._pages.values(), large, self._colours]
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(STEP // 2)
        self.set_in_row(False)
        self.show_colours()

    def _made(self, name: str, text: str, what: str, keys: str) -> QPushButton:
        button = Key(text, parent=self)
        button.setObjectName(name)
        button.setAutoDefault(False)
        button.setAccessibleName(what)
        button.setToolTip(f"{what} ({keys})")
        QShortcut(QKeySequence(keys), self).activated.connect(button.click)
        return button

    def show_page(self, key: str) -> None:
        """Mark the page shown."""
        if key in self._pages:
            self._pages[key].setChecked(True)

    def show_colours(self) -> None:
        """Show which colours are in use."""
        words = _COLOURS[self._look.mode]
        self._colours.setText(f"Colours: {words}")
        self._colours.setAccessibleName(f"Colours: {words}")
        self._colours.setToolTip("Day or night colours, or the system's (auto) (Ctrl+D)")

    def set_in_row(self, wanted: bool) -> None:
        """One row, or a block of three rows."""
        if wanted is self._in_row:
            return
        self._in_row = wanted
        for number, button in enumerate(self._all):
            self._grid.removeWidget(button)
            self._grid.addWidget(button, *((0, number) if wanted else (number // 2, number % 2)))
