"""Touch and surroundings: how soon hot surfaces burn, and walls near the stove against what heaters are tested to."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QVBoxLayout, QWidget

from cookstove_gui.desk.my_stove.surroundings import (
    choose_side_material,
    side_material,
    side_materials,
    surface_lines,
    walls_here,
)
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.caution_line import CautionLine
from cookstove_gui.gui.widgets.form import Choice, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import as_it_stood
from cookstove_gui.phrases.my_stove.surroundings import (
    ALWAYS,
    GUARD_DECIDES,
    NO_HEAT,
    NO_WALL,
    clearance_decides,
    wall_lines,
)

_PARTS = 3  # cooktop, sides, glass
_PART_WIDTH = 150  # px


class SurroundingsPart(QWidget):
    """Cautions, never a clearance."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("stove_surroundings")
        self._as_of = words(role="soft", name="touch_as_of")
        self._surfaces: list[tuple[QLabel, QLabel]] = []
        grid = QGridLayout()
        grid.setHorizontalSpacing(2 * STEP)
        grid.setVerticalSpacing(STEP)
        grid.setColumnMinimumWidth(0, _PART_WIDTH)
        grid.setColumnStretch(1, 1)
        for place in range(_PARTS):
            part, text = words(role="heading", name=f"touch_part_{place}"), words(name=f"touch_text_{place}")
            grid.addWidget(part, place, 0, Qt.AlignmentFlag.AlignTop)
            grid.addWidget(text, place, 1, Qt.AlignmentFlag.AlignTop)
            self._surfaces.append((part, text))
        self._side = Choice("Sides are of", "side_material", "What the sides are made of", width=292)
        self._side.show_options([(name, name) for name in side_materials()], "")
        self._side.chosen.connect(self._choose_side)
        self._walls = words(name="wall_rises")
        self._wall_decides = CautionLine(look, "wall_decides")
        always = CautionLine(look, "touch_decides")
        column = QVBoxLayout(self)
        column.setSpacing(2 * STEP)
        column.addWidget(words("Hot surfaces", role="heading"))
        column.addWidget(self._as_of)
        column.addLayout(grid)
        column.addWidget(self._side)
        column.addWidget(always)
        always.say(f"{ALWAYS} {GUARD_DECIDES}")  # once it stands here: shown before, it would be a window of its own
        column.addWidget(words("Walls and floors near the stove", role="heading"))
        column.addWidget(self._walls)
        column.addWidget(self._wall_decides)
        column.addStretch(1)
        self.show_heat()

    def _choose_side(self, name: str) -> None:
        choose_side_material(self._desk, name)
        self.show_heat()

    def show_heat(self) -> None:
        """Show the surfaces as they may well be now, and the walls as they were last read."""
        desk = self._desk
        self._side.show_options([(name, name) for name in side_materials()], side_material(desk))
        lines = surface_lines(desk)
        for place, (part, text) in enumerate(self._surfaces):
            say(part, lines[place].part if place < len(lines) else "")
            say(text, lines[place].text if place < len(lines) else "")
        if not lines:
            say(self._as_of, NO_HEAT)
        elif desk.standing is not None and not desk.is_live:
            say(self._as_of, as_it_stood(desk.standing.now, desk.rows[-1].offset_minutes))
        else:
            say(self._as_of, "")
        *walls, decides = wall_lines(walls_here(desk), desk.unit) or (NO_WALL, clearance_decides())
        say(self._walls, "\n\n".join(walls))
        self._wall_decides.say(decides)
