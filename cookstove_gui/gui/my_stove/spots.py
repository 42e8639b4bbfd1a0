"""The stove's own spots: add, name, place and remove them, with the stove drawn beside the list."""

from collections.abc import Callable

from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from cookstove_gui.desk.my_stove import describing
from cookstove_gui.errors import Problem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.my_stove.sketch import Patch, StoveSketch
from cookstove_gui.gui.widgets.form import Choice, Field, button, row, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.stove.stove import Spot, SpotKind, Stove
from cookstove_gui.units import tidy

_NARROW = 110
_SHOWN_SPOTS = 6
_PLACED = (SpotKind.TOP, SpotKind.OVEN)  # the other kinds have a fixed place in the drawing


class StoveSpots(QWidget):
    """Every spot that is read, in the order of the walk."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._look = look
        self._before_removal: Stove | None = None
        self.setObjectName("stove_spots")
        self._build()
        self._connect()
        self.show_stove()

    def _build(self) -> None:
        self._list = RowTable("spot_list", "Spots in the order of the walk", shown_rows=_SHOWN_SPOTS)
        self._list.setToolTip("Up and down choose a spot")
        self._sketch = StoveSketch(self._look, "spots_sketch")
        self._sketch.setFixedHeight(self._list.height())
        self._label = Field("Name", "spot_label", "The spot’s name in the drawing; its readings stay with it")
        self._across = Field("From the left", "spot_across", "Distance from the left edge", width=_NARROW)
        self._deep = Field("From the front", "spot_deep", "Distance from the front edge", width=_NARROW)
        self._earlier = button("Read it earlier", "spot_earlier", "One place earlier on the walk")
        self._later = button("Read it later", "spot_later", "One place later on the walk")
        self._remove = button("Remove this spot", "spot_remove", "Its readings stay in the log")
        self._restore = button("Put it back", "spot_restore", "Put back the spot just removed")
        self._restore.hide()
        self._told = words(role="soft", name="spot_told")
        self._problem = words(role="problem", name="spot_problem")
        self._new = Field("A spot of your own", "new_spot", "Type its name and press Enter to add it")
        self._where = Choice("It lies", "new_spot_kind", "What part of the stove it belongs to")
        self._where.show_options(list(describing.kinds_to_add().items()), "top")
        side_by_side = QGridLayout()
        side_by_side.setSpacing(2 * STEP)
        side_by_side.addWidget(self._list, 0, 0)
        side_by_side.addWidget(self._sketch, 0, 1)
        side_by_side.setColumnStretch(0, 2)
        side_by_side.setColumnStretch(1, 3)
        column = QVBoxLayout(self)
        column.setSpacing(2 * STEP)
        column.addWidget(words("Spots that are read, in the order of the walk", role="heading"))
        column.addLayout(side_by_side)
        for part in (self._label, self._across, self._deep):
            column.addWidget(part)
        column.addLayout(row(self._earlier, self._later, self._remove, self._restore))
        column.addWidget(self._told)
        column.addWidget(self._problem)
        column.addWidget(words("Add a spot", role="heading"))
        column.addWidget(self._where)
        column.addWidget(self._new)
        column.addStretch(1)
        say(self._told, "")
        say(self._problem, "")

    def _connect(self) -> None:
        self._list.chosen.connect(lambda _key: self._show_spot())
        self._label.entered.connect(
            lambda text: self._keep(self._label, lambda: describing.rename_spot(self._desk, self._name, text))
        )
        self._across.entered.connect(
            lambda text: self._keep(
                self._across, lambda: describing.place_spot(self._desk, self._name, across_text=text)
            )
        )
        self._deep.entered.connect(
            lambda text: self._keep(self._deep, lambda: describing.place_spot(self._desk, self._name, deep_text=text))
        )
        self._earlier.clicked.connect(lambda: self._move(-1))
        self._later.clicked.connect(lambda: self._move(1))
        self._remove.clicked.connect(self._take_off)
        self._restore.clicked.connect(self._put_back)
        self._new.entered.connect(self._add)

    @property
    def _name(self) -> str:
        return self._list.key

    def show_stove(self) -> None:
        """Show the spots as kept."""
        spots = enumerate(self._desk.stove.spots, start=1)
        self._list.show_rows([TableRow(cells=(f"{place}  {spot.label}",), key=spot.name) for place, spot in spots])
        self._show_spot()

    def _show_spot(self) -> None:
        stove = self._desk.stove
        spot = stove.spot(self._name)
        if spot is None:
            return
        self._label.show_text(spot.label)
        across, deep, unit = describing.span_of(self._desk, spot)
        self._across.show_text(tidy(spot.x * across), unit)
        self._deep.show_text(tidy(spot.y * deep), unit)
        for field in (self._across, self._deep):
            field.setVisible(spot.kind in _PLACED)
        self._sketch.show_stove(stove, _patches(stove, spot), f"Drawing of the stove, {spot.label} marked")

    def _add(self, text: str) -> None:
        if text.strip():
            self._keep(self._new, lambda: self._added(text))

    def _added(self, text: str) -> None:
        spot = describing.add_spot(self._desk, text, SpotKind(self._where.key))
        self._new.clear()
        self.show_stove()
        self._list.choose(spot.name)
        say(self._told, f"“{spot.label}” is read last on the walk. In the log it is called {spot.name}.")

    def _move(self, steps: int) -> None:
        describing.move_spot(self._desk, self._name, steps)
        self.show_stove()

    def _take_off(self) -> None:
        spot = self._desk.stove.spot(self._name)
        if spot is None:
            return
        try:
            self._before_removal = describing.remove_spot(self._desk, spot.name)
        except Problem as problem:
            say(self._problem, problem.sentence)
            return
        say(self._problem, "")
        say(self._told, f"“{spot.label}” has been removed; its readings stay in the log.")
        self._restore.show()
        self.show_stove()

    def _put_back(self) -> None:
        before = self._before_removal
        if before is not None and before.name == self._desk.stove.name:
            self._desk.save_stove(before)
            say(self._told, "It is back.")
        self._restore.hide()
        self._before_removal = None
        self.show_stove()
        self._list.setFocus()

    def _keep(self, field: Field, change: Callable[[], object]) -> None:
        if field.takes(change):
            # A change made later than a removal would be undone with it, so the way back ends here.
            self._restore.hide()
            self.show_stove()


def _patches(stove: Stove, chosen: Spot) -> dict[str, Patch]:
    """Each spot's number on the walk."""
    return {
        spot.name: Patch(number=str(place), is_chosen=spot.name == chosen.name)
        for place, spot in enumerate(stove.spots, start=1)
    }
