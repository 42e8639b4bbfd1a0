"""Flue and draught: how warm the flue is, how the chimney draws today, and what to mind before lighting."""

from collections.abc import Callable

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove import chimney as chimney_here
from cookstove_gui.desk.my_stove import describing, flue, told_once
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.caution_line import CautionLine
from cookstove_gui.gui.widgets.form import Choice, Field, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import as_it_stood
from cookstove_gui.phrases.my_stove.flue import draught_caution, flue_band_lines, flue_decides
from cookstove_gui.units import degrees, tidy

_NARROW = 130


class FluePart(QWidget):
    """The chimney as it is described, and what it does."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("stove_flue")
        self._heat = words(name="flue_heat")
        self._as_of = words(role="soft", name="flue_as_of")
        self._draught = words(name="flue_draught", role="heading")
        self._caution = CautionLine(look, "flue_caution")
        self._decides = CautionLine(look, "flue_decides")
        self._bands = words(name="flue_bands", role="soft")
        self._height = Field("Chimney height", "chimney_height", "From the stove’s outlet to the top", width=_NARROW)
        self._width = Field("Flue’s inside width", "chimney_width", "Across the inside of the flue", width=_NARROW)
        self._wall = Choice("Chimney is", "chimney_wall", "How well it keeps its heat")
        self._wall.show_options([(key, text) for key, (text, _loss) in chimney_here.WALLS.items()], "masonry")
        self._outdoors = Field("Outdoors now", "outdoors", "Temperature of the air outdoors", width=_NARROW)
        self._reading = Choice("The flue is read at", "flue_reading", "What the flue thermometer reads")
        self._water = Choice(
            "Water-back or coil", "water_back", "Whether the fire heats water in or behind the firebox"
        )
        column = QVBoxLayout(self)
        column.setSpacing(2 * STEP)
        column.addWidget(words("Flue and draught", role="heading"))
        parts: tuple[QWidget, ...] = (
            self._as_of, self._heat, self._draught, self._caution,
            self._decides, words("The chimney", role="heading"), self._reading, self._water,
            self._height, self._width, self._wall, self._outdoors,
            words("How warm a flue should be", role="heading"), self._bands,
        )  # fmt: skip
        for part in parts:
            column.addWidget(part)
        column.addStretch(1)
        self._typed(self._height, chimney_here.keep_height)
        self._typed(self._width, chimney_here.keep_diameter)
        self._typed(self._outdoors, chimney_here.keep_outdoors)
        self._wall.chosen.connect(self._choose_wall)
        self._reading.chosen.connect(lambda key: self._choose(told_once.keep_flue_reading, key))
        self._water.chosen.connect(lambda key: self._choose(told_once.keep_water_back, key))
        self.show_flue()

    def _choose_wall(self, key: str) -> None:
        self._choose(chimney_here.keep_wall, key)

    def _choose(self, keep: Callable[[Desk, str], None], key: str) -> None:
        keep(self._desk, key)
        self.show_flue()

    def show_flue(self) -> None:
        """Show the chimney as kept, and how it draws."""
        desk = self._desk
        here = chimney_here.chimney_here(desk)
        tall, short = describing.height_unit(desk), describing.short_unit(desk)
        self._height.show_text(describing.length_text(here.chimney.height, tall), tall)
        self._width.show_text(describing.length_text(here.chimney.diameter, short), short)
        self._wall.show_options([(key, text) for key, (text, _loss) in chimney_here.WALLS.items()], here.wall)
        self._reading.show_options(told_once.FLUE_READINGS, str(desk.stove.flue_reading))
        self._water.show_options(told_once.WATER_BACKS, "yes" if desk.stove.has_water_back else "no")
        self._outdoors.show_text(tidy(degrees(here.outdoors, desk.unit), 0), f"°{desk.unit}")
        old = desk.standing is not None and bool(desk.entries) and not desk.is_live
        shown_at = desk.standing.now if desk.standing is not None else desk.clock()
        say(self._as_of, as_it_stood(shown_at, desk.rows[-1].offset_minutes) if old else "")
        self._heat.setText(flue.heat_line(desk))
        self._draught.setText(flue.draught_line(desk))
        caution = draught_caution(flue.draught_here(desk))  # which says who decides, too
        self._caution.say(caution)
        self._decides.say("" if caution else flue_decides())
        self._bands.setText(flue_band_lines(desk.unit))

    def _typed(self, field: Field, keep: Callable[..., None]) -> None:
        field.entered.connect(lambda text: self._keep(field, lambda: keep(self._desk, text)))

    def _keep(self, field: Field, change: Callable[[], None]) -> None:
        if field.takes(change):
            self.show_flue()
