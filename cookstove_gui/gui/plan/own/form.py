"""The form of one task, food or sentence: a field for each of its blanks, in two columns."""

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QGridLayout, QLineEdit, QVBoxLayout, QWidget

from cookstove_gui.desk.plan.own.sorts import Blank
from cookstove_gui.gui.widgets.form import Choice, Field, button, row, say, words
from cookstove_gui.gui.widgets.theme import STEP

_CAPTION, _WIDTH, _LONG = 124, 220, 420  # px of the design


class OwnForm(QWidget):
    """What was typed stays until it is kept or taken back, also when the form is left."""

    kept = Signal()
    left = Signal()
    undone = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("own_form")
        self.setAccessibleName("A task, a food or a sentence of your own")
        self._parts: dict[str, Field | Choice] = {}
        self._title = words(role="strong", name="own_title")
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(4 * STEP)
        self._grid.setVerticalSpacing(STEP)
        self._grid.setColumnStretch(2, 1)
        self._told = words(role="place", name="own_told")
        self._problem = words(role="problem", name="own_problem")
        keep = button("Keep", "own_keep", "Keep it; it holds at once", role="main")
        keep.clicked.connect(self.kept.emit)
        undo = button("As it was", "own_undo", "Take back what is typed here")
        undo.clicked.connect(self.undone.emit)
        leave = button("Leave it", "own_leave", "Back to the list; what is typed waits here (Escape)", keys="Esc")
        leave.clicked.connect(self.left.emit)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(STEP)
        head = row(self._title, stretch=False)  # the keys stand above, so that a long form never hides them
        for key in (keep, undo, leave):
            head.addWidget(key)
        whole.addLayout(head)
        whole.addWidget(self._told)
        whole.addWidget(self._problem)
        whole.addLayout(self._grid)
        whole.addStretch(1)

    def show_blanks(self, blanks: Sequence[Blank]) -> None:
        """Other fields: those with words take a row of their own, the others stand two in a row."""
        for part in self._parts.values():
            self._grid.removeWidget(part)
            part.setParent(None)
            part.deleteLater()
        self._parts = {}
        place = 0  # counted in halves of a row
        for blank in blanks:
            self._parts[blank.key] = made = _made(blank)
            if blank.is_long:
                place += place % 2
                self._grid.addWidget(made, place // 2, 0, 1, 3)
                place += 2
            else:
                self._grid.addWidget(made, place // 2, place % 2, Qt.AlignmentFlag.AlignTop)
                place += 1

    def show_words(self, said: Mapping[str, str], title: str, told: str = "") -> None:
        """What stands in the fields."""
        self._title.setText(title)
        for key, part in self._parts.items():
            if isinstance(part, Field):
                part.show_text(said.get(key, ""))
            else:
                part.show_key(said.get(key, ""))
        self.tell(told)
        self.show_problem("")

    def tell(self, told: str) -> None:
        """Something about what stands there."""
        say(self._told, told)

    def show_problem(self, sentence: str) -> None:
        """Why it was not kept."""
        say(self._problem, sentence)

    def take_focus(self) -> None:
        """The first field."""
        first = next(iter(self._parts.values()))
        edit: QLineEdit | QComboBox = first.edit if isinstance(first, Field) else first.box
        edit.setFocus(Qt.FocusReason.OtherFocusReason)

    @property
    def said(self) -> dict[str, str]:
        """What stands in the fields."""
        return {key: part.text if isinstance(part, Field) else part.key for key, part in self._parts.items()}


def _made(blank: Blank) -> Field | Choice:
    name = f"own_{blank.key}"
    if blank.options:
        wide = _LONG if blank.is_long else _WIDTH
        made = Choice(blank.caption, name, blank.tip, width=wide, caption_width=_CAPTION)
        made.show_options(blank.options, "")
        return made
    wide = _LONG if blank.is_long else _WIDTH - 40
    return Field(blank.caption, name, blank.tip, unit=blank.unit, width=wide, caption_width=_CAPTION)
