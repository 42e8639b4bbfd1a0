"""How the whole window shows things: unit, colours, motion and size of text, each kept in the logbook."""

from functools import partial

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.gui.frame.more import Choice, next_text_size, text_size_words
from cookstove_gui.gui.frame.page_words import on_key
from cookstove_gui.gui.widgets.look import Look


class WindowChoices(QObject):
    """Changed by keys anywhere in the window, and in its list of more."""

    def __init__(self, window: QWidget, desk: Desk, look: Look) -> None:
        super().__init__(window)
        self._desk, self._look = desk, look
        on_key("Ctrl+U", window, self.toggle_unit)
        on_key("Ctrl+D", window, self.toggle_theme)
        for keys, way in (("Ctrl++", 1), ("Ctrl+=", 1), ("Ctrl+-", -1), ("Ctrl+0", 0)):
            on_key(keys, window, partial(self.change_text_size, way))

    def rows(self) -> list[Choice]:
        """What can be chosen now."""
        other = "C" if self._desk.unit == "F" else "F"
        return [
            Choice(text_size_words(self._look)),
            Choice("Larger", "Ctrl++", lambda: self.change_text_size(1)),
            Choice("Smaller", "Ctrl+-", lambda: self.change_text_size(-1)),
            Choice("As designed", "Ctrl+0", lambda: self.change_text_size(0)),
            Choice(),
            Choice(f"Show °{other}", "Ctrl+U", self.toggle_unit),
            Choice("Colours as the system has them", "", lambda: self.set_theme("system")),
            Choice("Let marks slide again" if self._look.still else "Let nothing move", "", self.toggle_motion),
        ]

    def toggle_unit(self) -> None:
        """The other unit of temperature."""
        self._desk.set_unit("C" if self._desk.unit == "F" else "F")

    def toggle_theme(self) -> None:
        """Night by day, day by night."""
        self.set_theme("day" if self._look.theme.name == "night" else "night")

    def set_theme(self, mode: str) -> None:
        """The colours of day or night, or those of the system."""
        self._look.set_mode(mode)
        self._desk.set_setting("theme", mode)

    def toggle_motion(self) -> None:
        """Marks slide to their new place, or stand there at once."""
        self._look.set_still(not self._look.still)
        self._desk.set_setting("motion", "still" if self._look.still else "")

    def change_text_size(self, way: int) -> None:
        """A size of text up or down; 0: as designed."""
        self._look.set_text_size(next_text_size(self._look.text_size, way) if way else 1.0)
        self._desk.set_setting("text_size", f"{self._look.text_size:g}")
