"""Whether to do without the rest of a new stove's first fires: the manual's word first, then two keys."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.gui.widgets.form import row, words
from cookstove_gui.gui.widgets.key import Key, named_key
from cookstove_gui.gui.widgets.theme import STEP

_WAIVE = (
    "Waive them only if the stove’s manual asks for none, or if they were done before this log began. "
    "Until they are done or waived, no food is suggested. "
    "The manual comes first; where it says otherwise, do as it says."
)


def waive_key(name: str = "first_fires_waive") -> Key:
    """Opens the question."""
    return named_key(
        "Waive the rest …", name, "Skip the rest of the first fires", said="Skip the rest of the first fires"
    )


class Waiver(QWidget):
    """Hidden until it is asked; keeping the guide is what has the keyboard."""

    answered = Signal(bool)  # whether they are waived

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("waiver")
        self._keep = named_key("Keep the guide", "first_fires_keep", "Carry on with the first fires")
        sure = named_key("Waive them", "first_fires_sure", "Stop asking for first fires")
        for key, waived in ((sure, True), (self._keep, False)):
            key.clicked.connect(lambda _checked=False, waived=waived: self._answer(waived))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP // 2)
        column.addWidget(words(_WAIVE, name="first_fires_waive_words"))
        column.addLayout(row(sure, self._keep))
        self.hide()

    def ask(self) -> None:
        """Show the question."""
        self.show()
        self._keep.setFocus()

    def _answer(self, waived: bool) -> None:
        self.hide()
        self.answered.emit(waived)
