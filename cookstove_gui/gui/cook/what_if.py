"""What if: a button for each step that could be taken now; what it would bring is drawn beside the projection."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QLabel, QWidget

from cookstove_gui.cooking.fires.steps import relighting, steps
from cookstove_gui.desk.cook.oven_at import step_outcome
from cookstove_gui.forecast.answers import LEAVE, Action
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.key_row import KeyRow
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.phrases.cook import action_in_short, action_words
from cookstove_gui.situation import fire_is_out

if TYPE_CHECKING:
    from cookstove_gui.desk import Changed
    from cookstove_gui.gui.desk_link import DeskLink


class WhatIf(QWidget):
    """A row of keys; what the step chosen would bring is drawn on the plot, and said in words at its foot."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._actions: tuple[Action, ...] = ()
        self._buttons: list[Key] = []
        self.setObjectName("what_if")
        self._is_tight = False
        self._keys = KeyRow()
        self._group = QButtonGroup(self)
        self._if = QLabel("if")
        set_role(self._if, "soft")
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

    def set_tight(self, wanted: bool) -> None:
        """Where it is narrow, the keys alone."""
        self._is_tight = wanted
        self._if.setFixedHeight(self._keys.sizeHint().height())
        self._show_whether_over()

    def _show(self, changed: Changed) -> None:
        if changed.log or changed.session or changed.stove or changed.standing:
            self._show_steps()
        if changed.band or changed.standing or changed.session:
            self._show_choice()
        self._show_whether_over()

    def _show_whether_over(self) -> None:
        """Nothing can be done any more about a session that is over."""
        self._keys.setVisible(self._desk.is_live)
        self._if.setVisible(self._desk.is_live and not self._is_tight)

    def _show_steps(self) -> None:
        standing, rows = self._desk.standing, self._desk.entries
        is_out = standing is not None and fire_is_out(standing.turns)
        actions = (LEAVE, *(relighting(rows) if is_out else steps(rows)))
        if actions == self._actions:
            return
        self._actions = actions
        for old in self._buttons:
            self._group.removeButton(old)
        self._buttons = []
        for number, action in enumerate(actions):
            words = action_words(action)
            button = Key(action_in_short(action))
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
            button.setAccessibleDescription(step_outcome(self._desk) if button.isChecked() else "")

    def _press(self, number: int) -> None:
        if number < len(self._buttons) and self._desk.is_live:
            self._buttons[number].click()
