"""What a fire key, a name or a row asks before anything is entered: a choice in the place of the block."""

from PySide6.QtCore import QObject, Signal

from cookstove_gui.desk import Desk
from cookstove_gui.gui.cook.entry_block import EntryBlock
from cookstove_gui.gui.cook.fire_choices import Ask, Enter
from cookstove_gui.gui.cook.when_field import WhenField
from cookstove_gui.units import volume_unit


class Asking(QObject):
    """Puts a choice, and hands on what an answer enters."""

    answered = Signal(object)  # takes a clock, gives the Receipt of what is entered, or the Ask that comes next
    left = Signal()
    pan_asked = Signal(bool)  # a choice of where a pan goes is there, or is no more

    def __init__(self, block: EntryBlock, desk: Desk) -> None:
        super().__init__(block)
        self._block, self._desk = block, desk
        self._ask: Ask | None = None
        chooser = block.chooser
        chooser.chosen.connect(lambda value: self._answer(value, in_words=False))
        chooser.typed.connect(lambda text: self._answer(text, in_words=True))
        chooser.left.connect(self._leave)
        block.pan_line.entered.connect(chooser.choose_marked)
        block.chooser_when.left.connect(chooser.take_focus)

    @property
    def is_open(self) -> bool:
        """Whether a choice is there."""
        return self._ask is not None

    @property
    def is_of_pan(self) -> bool:
        """Whether it is asked where a pan goes."""
        return self._ask is not None and self._ask.put is not None

    @property
    def when(self) -> WhenField:
        """The field for the clock that is meant, of the choice or of the block."""
        return self._block.chooser_when if self.is_open else self._block.when

    def show(self, ask: Ask) -> None:
        """Put a choice, in the place of the block or of the choice before."""
        if self._ask is None:
            self._block.chooser_when.take_over(self._block.when)
        self._ask = ask
        self._block.chooser.ask(ask.choice)
        if ask.put is not None:
            self._block.pan_line.begin(volume_unit(self._desk.unit))
        self._block.show_chooser(True)
        self.pan_asked.emit(ask.put is not None)

    def close(self) -> None:
        """The block comes back."""
        self._ask = None
        self._block.show_chooser(False)
        self.pan_asked.emit(False)

    def _leave(self) -> None:
        self.close()
        self.left.emit()

    def _answer(self, text: str, *, in_words: bool) -> None:
        ask = self._ask
        if ask is not None and ask.put is not None:
            put, note = ask.put, self._block.pan_line.note
            self.answered.emit(lambda at: put(text, note, at))
        elif ask is not None:
            enter: Enter = ask.enter_text if in_words else ask.enter
            self.answered.emit(lambda at: enter(text, at))
