"""What is asked of something in the oven: what a probe shows, when to look at it, turned, taken out."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.cooking.baking.in_oven import InOven
from cookstove_gui.gui.plan.part import CAPTION_WIDTH, FIELD_WIDTH
from cookstove_gui.gui.widgets.form import Field, button, row, say, words
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.in_oven import inside_rows


class InsideRows(QWidget):
    """The fields and keys of one thing that is in the oven by the log."""

    probed = Signal(str)
    due = Signal(str)
    turned = Signal()
    taken_out = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("bake_inside")
        self.probe = Field(
            "Probe in it", "bake_probe", "What a probe in its core shows now", width=FIELD_WIDTH,
            caption_width=CAPTION_WIDTH,
        )  # fmt: skip
        self.look = Field(
            "Look at it", "bake_look", "When you want to look at it: a clock such as 5:30, or +20", width=FIELD_WIDTH,
            caption_width=CAPTION_WIDTH,
        )  # fmt: skip
        self._rows = words(role="soft", name="bake_rows")
        self._turn = button("Turned", "bake_turned", "Write down that it was turned")
        self._out = button("It is out", "bake_out", "Write down that it is out of the oven", role="main")
        self.probe.entered.connect(lambda text: self.probed.emit(text) if text.strip() else None)
        self.look.entered.connect(lambda text: self.due.emit(text) if text.strip() else None)
        self._turn.clicked.connect(self.turned)
        self._out.clicked.connect(self.taken_out)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        for part in (self.probe, self.look, self._rows):
            column.addWidget(part)
        column.addLayout(row(self._turn, self._out))

    def show_unit(self, unit: str) -> None:
        """The unit that a probe is typed in."""
        self.probe.show_text("", f"°{unit}")

    def show_rows(self, inside: InOven, unit: str, offset_minutes: int, *, can_write: bool) -> None:
        """What the log says of it so far; of a session that is over nothing can be written any more."""
        say(self._rows, inside_rows(inside, unit, offset_minutes))
        for part in (self.probe, self.look, self._turn, self._out):
            part.setEnabled(can_write)
