"""The foot of the tab: what to do now, and the steps to come, each under its clock."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QSizePolicy, QWidget

from cookstove_gui.gui.widgets.form import say, words
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import set_role

_MOST = 6


class NextSteps(QWidget):
    """Clocks over words, side by side, as many as there are."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("supper_next")
        self.setAccessibleName("The next steps")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, px(4), 0, 0)
        grid.setHorizontalSpacing(px(14))
        grid.setVerticalSpacing(0)
        self._cells = []
        for place in range(_MOST):
            clock, text = words(role="unit", name=f"next_clock_{place}"), words(role="place", name=f"next_step_{place}")
            set_role(text, "said")
            grid.addWidget(clock, 0, place)
            grid.addWidget(text, 1, place, Qt.AlignmentFlag.AlignTop)
            grid.setColumnStretch(place, 1)
            self._cells.append((clock, text))

    def show_steps(self, steps: tuple[tuple[str, str], ...]) -> None:
        """Show these, the soonest first."""
        for place, (clock, text) in enumerate(self._cells):
            told = steps[place] if place < len(steps) else ("", "")
            say(clock, told[0])
            say(text, told[1])
        self.setAccessibleDescription("; ".join(f"{clock} {text}" for clock, text in steps))
