"""Set-up of the stove: its name, firebox, size, surface and height above the sea. Every change is kept at once."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.my_stove import describing
from cookstove_gui.desk.my_stove.site import keep_height
from cookstove_gui.errors import Problem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.form import Choice, Either, Field, button, say, words
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.stove.stove import Firebox

_FIREBOX = ((Firebox.LEFT, "left of the oven"), (Firebox.RIGHT, "right of it"), (Firebox.ABOVE, "above it"))
_FIRED = (("used", "yes, it has been in use"), ("new", "no, it is new"))
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
        self._another = button("Another stove", "another_stove", "Describe another stove")
        self._which = Choice("Stove", "stove_choice", "The stove that all pages show", beside=(self._another,))
        self._new_name = Field("Name of the new one", "new_stove_name", "Type its name and press Enter")
        self._new_name.hide()
        self._name = Field("Name", "stove_name", "The stove’s name; its sessions go with it")
        self._firebox = Either(
            "Firebox", "firebox", "Seen from where you stand to cook", [(str(key), text) for key, text in _FIREBOX]
        )
        self._width = Field("Cooktop, left to right", "cooktop_width", "Width of the cooktop", width=_NARROW)
        self._depth = Field("Cooktop, front to back", "cooktop_depth", "Depth of the cooktop", width=_NARROW)
        self._surface = Choice("Cooktop surface", "cooktop_surface", "What an infrared thermometer looks at")
        self._shiny = words(name="surface_warning", role="caution")
        self._altitude = Field("Height above the sea", "altitude", "Water boils cooler up high", width=_NARROW)
        self._is_new = Either("Fired before", "fired", "A new stove needs its first fires before any food", _FIRED)
        self._problem = words(role="problem", name="stove_setup_problem")
        column = QVBoxLayout(self)
        column.setSpacing(2 * STEP)
        column.addWidget(words("The stove", role="heading"))
        parts: tuple[QWidget, ...] = (
            self._which, self._new_name, self._name, self._firebox, self._width, self._depth, self._surface,
            self._shiny, self._altitude, self._is_new, self._problem,
        )  # fmt: skip
        for part in parts:
            column.addWidget(part)
        column.addStretch(1)

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
        self._altitude.entered.connect(lambda text: self._keep(self._altitude, lambda: keep_height(self._desk, text)))
        self._is_new.chosen.connect(
            lambda key: self._try(lambda: self._desk.save_stove(replace(self._desk.stove, is_new=key == "new")))
        )
        self._firebox.chosen.connect(
            lambda key: self._try(lambda: self._desk.save_stove(replace(self._desk.stove, firebox=Firebox(key))))
        )

    def show_stove(self) -> None:
        """Show the stove as kept."""
        desk, stove = self._desk, self._desk.stove
        short = describing.short_unit(desk)
        self._which.show_options([(one.name, one.name) for one in desk.stoves], stove.name)
        self._name.show_text(stove.name)
        self._firebox.show_key(stove.firebox)
        self._width.show_text(describing.length_text(stove.cooktop_width, short), short)
        self._depth.show_text(describing.length_text(stove.cooktop_depth, short), short)
        self._surface.show_options([(key, key) for key in describing.surfaces(stove)], stove.cooktop_surface)
        say(self._shiny, describing.surface_warning(stove))
        height = describing.height_unit(desk)
        self._altitude.show_text(describing.length_text(stove.altitude, height), height)
        self._is_new.show_key("new" if stove.is_new else "used")

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
        taken = field.takes(change)
        if taken:
            self.show_stove()
        return taken

    def _try(self, change: Callable[[], None]) -> None:
        try:
            change()
        except Problem as problem:
            say(self._problem, problem.sentence)
        else:
            say(self._problem, "")
        self.show_stove()
