"""Below the choice of where a pan goes: its lid, how much water is in it, and Enter."""

import re

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.modest_field import ModestField
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role

_NUMBER = re.compile(r"\d*[.,]?\d+")
_LOW = 36  # of a key [px of the design]
_LIDS = (("on", "lid"), ("off", "no lid"))  # word, and what is noted


class PanLine(QWidget):
    """Nothing is noted of what the cook leaves open."""

    entered = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("pan_line")
        self._unit = ""
        lid = QLabel("lid")
        set_role(lid, "soft")
        self._lids: dict[str, Key] = {}
        for word, noted in _LIDS:
            key = Key(word, high=_LOW)
            key.setObjectName(f"lid_{word}")
            key.setCheckable(True)
            key.setAccessibleName(f"Lid {word}")
            key.setToolTip(f"The pan's lid is {word} (L changes it)")
            key.clicked.connect(lambda checked, one=noted: self._choose(one if checked else ""))
            self._lids[noted] = key
        self._water = ModestField()
        self._water.setObjectName("pan_water")
        self._water.setMinimumWidth(0)
        self._water.returnPressed.connect(self.entered)
        self._enter = Key("Enter", high=_LOW)
        self._enter.setObjectName("pan_enter")
        self._enter.setAccessibleName("Put the pan on the marked spot, or take it off")
        self._enter.setToolTip("Put the pan on the marked spot, or take it off (Enter)")
        set_role(self._enter, "main")
        self._enter.clicked.connect(self.entered)
        means = QLabel("The number of its spot then means the iron beside it.")
        means.setWordWrap(True)
        set_role(means, "small")
        line = QHBoxLayout()
        line.setSpacing(0)
        line.addWidget(lid)
        line.addSpacing(STEP // 2)
        for key in self._lids.values():
            line.addWidget(key)
        line.addSpacing(STEP // 2)
        line.addWidget(self._water, 1)
        line.addSpacing(STEP // 2)
        line.addWidget(self._enter)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(line)
        column.addWidget(means)
        shortcut = QShortcut(QKeySequence(Qt.Key.Key_L), self)
        shortcut.activated.connect(self._change_lid)

    @property
    def note(self) -> str:
        """What is noted of the pan: `2 quarts, lid`."""
        lids = [noted for noted, key in self._lids.items() if key.isChecked()]
        typed = self._water.text().strip()
        water = f"{typed} {self._unit}" if _NUMBER.fullmatch(typed) else typed
        return ", ".join(part for part in (water, *lids) if part)

    def begin(self, unit: str) -> None:
        """Nothing is said yet; `unit` is what a number alone is of."""
        self._unit = unit
        self._choose("")
        self._water.clear()
        self._water.setPlaceholderText(f"water, as 2 {unit}")
        self._water.setAccessibleName(f"How much water is in the pan, as 2 {unit}")
        self._water.setToolTip(f"How much water is in the pan, as 2 {unit}; “boils” noted later teaches the pan")

    def _choose(self, noted: str) -> None:
        for one, key in self._lids.items():
            key.setChecked(one == noted)

    def _change_lid(self) -> None:
        on, off = self._lids.values()
        self._choose("no lid" if on.isChecked() else "" if off.isChecked() else "lid")
