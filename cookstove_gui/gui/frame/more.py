"""What concerns the whole window and needs no place of its own on it: size of text, unit, colours, all keys."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QPoint
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QMenu, QWidget

from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import TEXT_SIZES


@dataclass(frozen=True, slots=True)
class Choice:
    """One line of the list; an empty one parts two groups."""

    words: str = ""
    keys: str = ""
    do: Callable[[], object] | None = None


def next_text_size(now: float, way: int) -> float:
    """The next larger (`way` 1) or smaller (-1) size of text; the same at the ends."""
    beyond = [size for size in TEXT_SIZES if (size - now) * way > 1e-6]
    return (min(beyond) if way > 0 else max(beyond)) if beyond else now


def text_size_words(look: Look) -> str:
    """The size of text as it is now."""
    return f"Text at {100 * look.text_size:.0f} %"


def open_more(choices: list[Choice], under: QWidget) -> QMenu:
    """The list, its right end under the word that was pressed."""
    menu = QMenu(under)
    menu.setObjectName("more_list")
    for choice in choices:
        if choice.do is None:
            menu.addSeparator() if not choice.words else menu.addSection(choice.words)
            continue
        action = menu.addAction(choice.words)
        if choice.keys:
            action.setText(
                f"{choice.words}\t{QKeySequence(choice.keys).toString(QKeySequence.SequenceFormat.NativeText)}"
            )
        action.triggered.connect(lambda _checked=False, do=choice.do: do())
    place = under.mapToGlobal(QPoint(under.width() - menu.sizeHint().width(), under.height()))
    menu.popup(place)
    return menu
