"""Set-up of the stove: its name, firebox, size, surface and height above the sea. Every change is kept at once."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtWidgets import QButtonGroup, QCheckBox, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from cookstove_gui.desk import describing
from cookstove_gui.errors import Problem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.form import Choice, Field, button, row, say, words
from cookstove_gui.gui.theme import STEP
from cookstove_gui.stove.stove import Firebox

_FIREBOX_WORDS = {Firebox.LEFT: "left of the oven", Firebox.RIGHT: "right of it", Firebox.ABOVE: "above it"}
_NARROW = 130  # px, for a number of a few digits


class StoveSetup(QWidget):
    """Which stove it is, and what it is like."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("stove_setup")
        self._build()
        self._connect()
        self.show_stove()

    def _build(self) -> None:
        self._which = Choice("Stove", "stove_choice", "The stove that is used on all pages")
        self._another = button("Another stove", "another_stove", "Describe one more stove")
        self._which.layout().insertWidget(2, self._another)  # type: ignore[union-attr]
        self._new_name = Field("Name of the new one", "new_stove_name", "Type its name and press Enter")
        self._new_name.hide()
        self._name = Field("Name", "stove_name", "The stove’s name; its sessions go with it")
        self._firebox = QButtonGroup(self)
        self._firebox.setExclusive(True)
        self._width = Field("Cooktop, left to right", "cooktop_width", "Width of the cooktop", width=_NARROW)
        self._depth = Field("Cooktop, front to back", "cooktop_depth", "Depth of the cooktop", width=_NARROW)
        self._surface = Choice("Cooktop surface", "cooktop_surface", "What an infrared thermometer looks at")
        self._altitude = Field("Height above the sea", "altitude", "Water boils cooler up high", width=_NARROW)
        self._is_new = QCheckBox("It is new: it has never had its first fires")
        self._is_new.setObjectName("stove_is_new")
        self._is_new.setToolTip("A new stove gets its first fires before any food")
        self._problem = words(role="problem", name="stove_setup_problem")
        column = QVBoxLayout(self)
        column.setSpacing(2 * STEP)
        column.addWidget(words("The stove", role="heading"))
        for part in (self._which, self._new_name, self._name):
            column.addWidget(part)
        column.addLayout(self._firebox_row())
        for part in (self._width, self._depth, self._surface, self._altitude, self._is_new, self._problem):
            column.addWidget(part)
        column.addStretch(1)

    def _firebox_row(self) -> QHBoxLayout:
        caption = words("Firebox")
        caption.setFixedWidth(210)
        parts: list[QWidget] = [caption]
        for place in Firebox:
            made = QPushButton(_FIREBOX_WORDS[place])
            made.setObjectName(f"firebox_{place}")
            made.setAccessibleName(f"Firebox {_FIREBOX_WORDS[place]}")
            made.setToolTip("Seen from where you stand to cook")
            made.setCheckable(True)
            made.setAutoDefault(True)
            made.clicked.connect(lambda _checked=False, chosen=place: self._choose_firebox(chosen))
            self._firebox.addButton(made)
            parts.append(made)
        return row(*parts)

    def _connect(self) -> None:
        self._which.chosen.connect(lambda name: self._try(lambda: self._desk.choose_stove(name)))
        self._another.clicked.connect(self._ask_name)
        self._new_name.entered.connect(self._add)
        self._name.entered.connect(
            lambda text: self._keep(self._name, lambda: describing.rename_stove(self._desk, text))
        )
        self._width.entered.connect(
            lambda text: self._keep(self._width, lambda: describing.set_size(self._desk, width_text=text))
        )
        self._depth.entered.connect(
            lambda text: self._keep(self._depth, lambda: describing.set_size(self._desk, depth_text=text))
        )
        self._surface.chosen.connect(
            lambda key: self._try(lambda: self._desk.save_stove(replace(self._desk.stove, cooktop_surface=key)))
        )
        self._altitude.entered.connect(
            lambda text: self._keep(self._altitude, lambda: describing.set_altitude(self._desk, text))
        )
        self._is_new.clicked.connect(
            lambda checked: self._try(lambda: self._desk.save_stove(replace(self._desk.stove, is_new=checked)))
        )

    def show_stove(self) -> None:
        """Show the stove as it is kept."""
        desk, stove = self._desk, self._desk.stove
        short = describing.short_unit(desk)
        self._which.show_options([(one.name, one.name) for one in desk.stoves], stove.name)
        self._name.show_text(stove.name)
        for place, made in zip(Firebox, self._firebox.buttons(), strict=True):
            made.setChecked(place is stove.firebox)
        self._width.show_text(describing.length_text(stove.cooktop_width, short), short)
        self._depth.show_text(describing.length_text(stove.cooktop_depth, short), short)
        self._surface.show_options([(key, key) for key in describing.surfaces(stove)], stove.cooktop_surface)
        height = describing.height_unit(desk)
        self._altitude.show_text(describing.length_text(stove.altitude, height), height)
        self._is_new.setChecked(stove.is_new)

    def _choose_firebox(self, place: Firebox) -> None:
        self._try(lambda: self._desk.save_stove(replace(self._desk.stove, firebox=place)))

    def _ask_name(self) -> None:
        self._new_name.show()
        self._new_name.edit.setFocus()

    def _add(self, text: str) -> None:
        if not text.strip() and not self._new_name.edit.hasFocus():
            self._new_name.hide()
        elif self._keep(self._new_name, lambda: describing.add_stove(self._desk, text)):
            self._new_name.clear()
            self._new_name.hide()
            self._name.edit.setFocus()

    def _keep(self, field: Field, change: Callable[[], None]) -> bool:
        try:
            change()
        except Problem as problem:
            field.show_problem(problem.sentence)
            return False
        field.show_problem("")
        self.show_stove()
        return True

    def _try(self, change: Callable[[], None]) -> None:
        try:
            change()
        except Problem as problem:
            say(self._problem, problem.sentence)
        else:
            say(self._problem, "")
        self.show_stove()
