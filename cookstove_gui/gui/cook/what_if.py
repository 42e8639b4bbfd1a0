"""What if: a button for each step that could be taken now; what it would bring is drawn beside the projection."""

from PySide6.QtCore import QTimer
from PySide6.QtGui import QKeySequence, QPalette, QShortcut
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QLabel, QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.key_row import KeyRow
from cookstove_gui.gui.widgets.one_line import OneLine
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.phrases.cook import action_words, step_to_take
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.situation import steps


class WhatIf(QWidget):
    """A row of keys; the page puts the sentence about the step chosen, `outcome`, at the foot of the plot."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._actions: tuple[Action, ...] = ()
        self._buttons: list[Key] = []
        self.setObjectName("what_if")
        self._keys = KeyRow()
        self._group = QButtonGroup(self)
        self.outcome = OneLine(weight=600, colour=QPalette.ColorRole.Highlight)
        self.outcome.setObjectName("what_if_outcome")
        self.outcome.hide()
        self._if = QLabel("if")
        set_role(self._if, "soft")
        self._if.setFixedHeight(self._keys.sizeHint().height())
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(STEP // 2)
        row.addStretch(1)
        row.addWidget(self._if)
        row.addWidget(self._keys)
        for number in range(6):
            shortcut = QShortcut(QKeySequence(f"Ctrl+{number + 1}"), self)
            shortcut.activated.connect(lambda wanted=number: self._press(wanted))
        link.changed.connect(self._show)
        link.time_passed.connect(self._show_whether_over)
        self._show_steps()
        self._show_whether_over()

    def _show(self, changed: Changed) -> None:
        if changed.log or changed.session or changed.stove:
            self._show_steps()
        if changed.band or changed.standing or changed.session:
            self._show_choice()
        self._show_whether_over()

    def _show_whether_over(self) -> None:
        """Nothing can be done any more about a session that is over."""
        for part in (self._if, self._keys):
            part.setVisible(self._desk.is_live)
        if not self._desk.is_live:
            self.outcome.hide()

    def _show_steps(self) -> None:
        actions = (LEAVE, *steps(self._desk.entries))
        if actions == self._actions:
            return
        self._actions = actions
        for old in self._buttons:
            self._group.removeButton(old)
        self._buttons = []
        for number, action in enumerate(actions):
            words = action_words(action)
            button = Key(_short_words(action))
            button.setObjectName(f"what_if_{number}")
            button.setCheckable(True)
            button.setAutoDefault(False)
            button.setAccessibleName(f"What if: {words}")
            button.setToolTip(f"{words}: show what this would do (Ctrl+{number + 1})")
            button.clicked.connect(lambda _checked=False, wanted=action: self._desk.choose_action(wanted))
            self._group.addButton(button)
            self._buttons.append(button)
        self._keys.show_keys(self._buttons)
        if self._desk.action not in actions:
            # After this turn: the desk is still announcing the change that brought us here.
            QTimer.singleShot(0, self, lambda: self._desk.choose_action(LEAVE))
        self._show_choice()

    def _show_choice(self) -> None:
        for action, button in zip(self._actions, self._buttons, strict=True):
            button.setChecked(action == self._desk.action)
        standing = self._desk.standing
        other = standing.alternative if standing else None
        if standing is None or other is None or self._desk.action == LEAVE:
            self.outcome.hide()
            return
        edge = Edge(unit=self._desk.unit, now=standing.now, offset_minutes=self._desk.offset_minutes)
        self.outcome.show_rungs((step_to_take(other.action, other.outlook, self._desk.band, edge),))
        self.outcome.show()

    def _press(self, number: int) -> None:
        if number < len(self._buttons) and self._desk.is_live:
            self._buttons[number].click()


def _short_words(action: Action) -> str:
    """A step in two words; the tooltip has it in full."""
    match action.kind:
        case ActionKind.LEAVE:
            return "Leave it"
        case ActionKind.WOOD:
            return action_words(action).removeprefix("Add ").capitalize()
        case ActionKind.AIR:
            return "Open the air" if action.value >= 0.95 else "Shut the air"
        case ActionKind.BYPASS:
            return "Open bypass" if action.value >= 0.5 else "Close bypass"
