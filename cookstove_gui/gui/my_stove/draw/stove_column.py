"""The stove itself: which one, its name, whether it was fired, size, plates, surface, height above the sea."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from cookstove_gui.desk.my_stove import describing
from cookstove_gui.desk.my_stove.redrawing import Redrawing
from cookstove_gui.desk.my_stove.site import keep_height
from cookstove_gui.desk.my_stove.stove_files import USUAL_NAME, give_stove, take_stove
from cookstove_gui.errors import Problem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.my_stove.draw.photo import PhotoOfStove
from cookstove_gui.gui.my_stove.draw.stove_words import CLOSET, FIRED, LIDS, PIPE, TANK
from cookstove_gui.gui.widgets.flow_row import FlowRow
from cookstove_gui.gui.widgets.form import Choice, Either, Field, button, row, say, words
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.my_stove.drawing import taken_words
from cookstove_gui.stove.drawn.above import flue_place
from cookstove_gui.stove.stove import FluePlace, TankPlace

_CAPTION, _WIDE, _NARROW = 104, 212, 84  # px; beside one another in the column at every size of text


class StoveColumn(QWidget):
    """Which stove it is, and what it is like; every change is kept at once."""

    questions_wanted = Signal()

    def __init__(self, link: DeskLink, redrawing: Redrawing, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._redrawing = redrawing
        self.setObjectName("stove_setup")
        self._build()
        self._connect()
        self.show_stove()

    def _build(self) -> None:
        self._six = button("Six questions", "six_ask", "Describe this stove by six questions, one after the other")
        self._another = button("Another stove", "another_stove", "Describe another stove")
        self._which = Choice(
            "Stove", "stove_choice", "The stove that all pages show", width=_WIDE, caption_width=_CAPTION
        )
        self._new_name = self._field("Its name", "new_stove_name", "Type the new stove’s name and press Enter", _WIDE)
        self._new_name.hide()
        self._is_new = self._either("Fired before", "fired", "A new stove needs its first fires before food", FIRED)
        self._name = self._field("Name", "stove_name", "The stove’s name; its sessions go with it", _WIDE)
        self._width = self._field("Top, across", "cooktop_width", "Width of the cooktop", _NARROW)
        self._depth = self._field("Top, deep", "cooktop_depth", "Depth of the cooktop", _NARROW)
        self._lids = self._either("Plates", "has_lids", "Whether its plates have lids", LIDS)
        self._pipe = self._either("Pipe", "flue_place", "Where the pipe leaves the stove", PIPE)
        self._tank = self._either("Water tank", "water_tank", "A tank for hot water that hangs on the stove", TANK)
        self._closet = self._either("Closet", "warming_closet", "A warming closet above the cooktop", CLOSET)
        self._surface = Choice(
            "Surface", "cooktop_surface", "What an infrared thermometer looks at", width=_WIDE, caption_width=_CAPTION
        )
        self._shiny = words(name="surface_warning", role="caution")
        self._altitude = self._field("Above the sea", "altitude", "Water boils cooler up high", _NARROW)
        self._give = button("Give it on …", "stove_give", "Write this stove’s description to a file for somebody else")
        self._take = button("Take one in …", "stove_take", "Add a stove from somebody else’s file")
        self._told = words(role="soft", name="stove_file_told")
        self._show_taken = button("Show it", "stove_show_taken", "Show the stove that was taken in on all pages")
        self._show_taken.hide()
        self._taken = ""
        self._photo = PhotoOfStove(self._desk)
        self._problem = words(role="problem", name="stove_setup_problem")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        keys = FlowRow(STEP, self._six, self._another, self._photo.choose, self._photo.drop)
        parts: tuple[QWidget, ...] = (
            self._photo, self._which, keys, self._new_name, self._is_new, self._name, self._width, self._depth,
            self._lids, self._pipe, self._tank, self._closet, self._surface, self._shiny, self._altitude,
        )  # fmt: skip
        for part in parts:
            column.addWidget(part)
        column.addLayout(row(self._give, self._take))
        column.addWidget(self._told)
        column.addWidget(self._show_taken)
        column.addWidget(self._problem)
        say(self._told, "")
        say(self._problem, "")
        column.addStretch(1)

    @staticmethod
    def _field(caption: str, name: str, tip: str, width: int) -> Field:
        return Field(caption, name, tip, width=width, caption_width=_CAPTION)

    @staticmethod
    def _either(caption: str, name: str, tip: str, options: Sequence[tuple[str, str]]) -> Either:
        return Either(caption, name, tip, options, _CAPTION)

    def _connect(self) -> None:
        self._which.chosen.connect(self._show_other)
        self._another.clicked.connect(self._ask_name)
        self._six.clicked.connect(self.questions_wanted)
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
        self._surface.chosen.connect(lambda key: self._draw(cooktop_surface=key))
        self._altitude.entered.connect(lambda text: self._keep(self._altitude, lambda: keep_height(self._desk, text)))
        self._is_new.chosen.connect(lambda key: self._draw(is_new=key == "new"))
        self._lids.chosen.connect(lambda key: self._draw(has_lids=key == "lids"))
        self._pipe.chosen.connect(lambda key: self._draw(flue_place=FluePlace(key)))
        self._tank.chosen.connect(lambda key: self._draw(water_tank=TankPlace(key)))
        self._closet.chosen.connect(lambda key: self._draw(has_warming_closet=key == "closet"))

        self._give.clicked.connect(self._give_on)
        self._take.clicked.connect(self._take_in)
        self._show_taken.clicked.connect(lambda: self._show_other(self._taken))

    def show_stove(self) -> None:
        """Show the stove as kept."""
        desk, stove = self._desk, self._desk.stove
        short = describing.short_unit(desk)
        self._which.show_options([(one.name, one.name) for one in desk.stoves], stove.name)
        self._name.show_text(stove.name)
        self._width.show_text(describing.length_text(stove.cooktop_width, short), short)
        self._depth.show_text(describing.length_text(stove.cooktop_depth, short), short)
        surfaces = [(key, key.removesuffix(" spot")) for key in describing.surfaces(stove)]
        self._surface.show_options(surfaces, stove.cooktop_surface)
        say(self._shiny, describing.surface_warning(stove))
        height = describing.height_unit(desk)
        self._altitude.show_text(describing.length_text(stove.altitude, height), height)
        self._photo.show_photo()
        self._is_new.show_key("new" if stove.is_new else "used")
        self._lids.show_key("lids" if stove.has_lids else "plate")
        self._pipe.show_key(flue_place(stove))
        self._tank.show_key(stove.water_tank)
        self._closet.show_key("closet" if stove.has_warming_closet else "none")

    def say_drawn(self) -> None:
        """After the six questions."""
        say(self._told, "It is drawn. Press or drag a spot to change it; everything here can be changed at any time.")

    def _give_on(self) -> None:
        path, _ = QFileDialog.getSaveFileName(self, "Write the stove as", USUAL_NAME, "Stoves (*.toml)")
        if path:
            self._try(lambda: give_stove(self._desk, Path(path)))
            self._say_done(f"“{self._desk.stove.name}” is written to {Path(path).name}.")

    def _take_in(self) -> None:
        path, _ = QFileDialog.getOpenFileName(self, "Take in a stove", "", "Stoves (*.toml)")
        if path:
            self._taken = ""
            self._try(lambda: self._taken_in(Path(path)))
            self._say_done(taken_words(self._taken, self._desk.stove.name))
            self._show_taken.setVisible(self._taken not in ("", self._desk.stove.name))

    def _taken_in(self, path: Path) -> None:
        self._taken = take_stove(self._desk, path)

    def _show_other(self, name: str) -> None:
        self._try(lambda: self._desk.choose_stove(name))
        self._show_taken.hide()
        say(self._told, "")

    def _say_done(self, sentence: str) -> None:
        say(self._told, "" if self._problem.text() else sentence)

    def _ask_name(self) -> None:
        self._new_name.show()
        self._new_name.edit.setFocus()

    def _add(self, text: str) -> None:
        if not text.strip() and not self._new_name.edit.hasFocus():
            self._new_name.hide()
        elif self._keep(self._new_name, lambda: describing.add_stove(self._desk, text)):
            self._new_name.clear()
            self._new_name.hide()
            self.questions_wanted.emit()

    def _keep(self, field: Field, change: Callable[[], None]) -> bool:
        taken = field.takes(lambda: self._redrawing.change(change))
        if taken:
            self.show_stove()
        return taken

    def _draw(self, **changed: object) -> None:
        self._try(lambda: self._redrawing.draw(replace(self._desk.stove, **changed)))  # type: ignore[arg-type]

    def _try(self, change: Callable[[], None]) -> None:
        try:
            change()
        except Problem as problem:
            say(self._problem, problem.sentence)
        else:
            say(self._problem, "")
        self.show_stove()
