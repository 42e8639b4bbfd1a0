"""The names of the pages, each a word with a bar under the one that is shown, and what concerns the whole window."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QWidget

from cookstove_gui.gui.widgets.key import Word
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px

PAGES = (("cook", "Cook", "F1"), ("plan", "Plan", "F2"), ("my_stove", "My stove", "F3"), ("logbook", "Logbook", "F4"))
_APART = 16  # px of the design, beside the room each word has round it


class PageWords(QWidget):
    """F1 to F4."""

    page_chosen = Signal(str)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._words: dict[str, Word] = {}
        self._group = QButtonGroup(self)
        self.setObjectName("page_words")
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        for key, word, keys in PAGES:
            made = worded(f"page_{key}", word, keys, f"Page {word}", soft=False)
            made.setCheckable(True)
            made.clicked.connect(lambda _checked=False, wanted=key: self.page_chosen.emit(wanted))
            self._group.addButton(made)
            self._words[key] = made
            self._row.addWidget(made)
        look.changed.connect(self._fit)
        self._fit()

    def show_page(self, key: str) -> None:
        """Mark the page shown."""
        if key in self._words:
            self._words[key].setChecked(True)

    def _fit(self) -> None:
        self._row.setSpacing(px(_APART))
        for word in self._words.values():
            word.updateGeometry()

    def set_tight(self, wanted: bool) -> None:
        """Leave the names of the keys out."""
        for word in self._words.values():
            word.set_tight(wanted)


class WindowWords(QWidget):
    """The large view, the colours, and more that concerns the whole window."""

    large_chosen = Signal()
    colours_chosen = Signal()
    more_chosen = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.setObjectName("window_words")
        self._large = worded("large", "Large", "F12", "Large view, to read from across the kitchen")
        self._colours = worded("colours", "", "Ctrl D", "")
        self._more = worded("more", "More", "", "Size of the text, units, colours, all keys, practice")
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        for word, signal in (
            (self._large, self.large_chosen),
            (self._colours, self.colours_chosen),
            (self._more, self.more_chosen),
        ):
            word.clicked.connect(signal)
            self._row.addWidget(word)
        look.changed.connect(self._show)
        self._show()

    @property
    def more(self) -> Word:
        """What the list of more opens under."""
        return self._more

    def _show(self) -> None:
        self._row.setSpacing(px(_APART))
        other = "Day" if self._look.theme.name == "night" else "Night"
        self._colours.setText(other)
        self._colours.setAccessibleName(f"{other} colours")
        self._colours.setToolTip(f"{other} colours (Ctrl+D)")
        for word in (self._large, self._colours, self._more):
            word.updateGeometry()

    def set_tight(self, wanted: bool) -> None:
        """Leave the names of the keys out."""
        for word in (self._large, self._colours, self._more):
            word.set_tight(wanted)


def worded(name: str, word: str, keys: str, what: str, *, soft: bool = True) -> Word:
    """A word to press, with what it does."""
    made = Word(word, keys, soft=soft)
    made.setObjectName(name)
    made.setAccessibleName(what)
    made.setToolTip(f"{what} ({keys})" if keys else what)
    return made


def on_key(keys: str, inside: QWidget, do: Callable[[], object]) -> None:
    """Do something at a key, wherever in the window the keyboard is."""
    QShortcut(QKeySequence(keys), inside).activated.connect(do)
