"""The cooktop by itself, with minutes in the place of degrees: when the water is there on each spot."""

from dataclasses import replace

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QWidget

from cookstove_gui.desk.plan.water import WaterPlan
from cookstove_gui.gui.drawn_stove.face import Face
from cookstove_gui.gui.drawn_stove.stove_view import StoveView
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.water import spot_captions, spot_minutes, water_rungs
from cookstove_gui.stove.drawn.heat_colours import HOTTEST_AT_LEAST, heat_colour, heat_ink
from cookstove_gui.stove.stove import SpotKind, Stove

_LEAST = QSize(260, 150)  # px


class WaterOnTop(StoveView):
    """A ring round the spot asked about; another one is asked for by a press."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, "water_on_top", parent, cooktop_alone=True)
        self.setAccessibleName("The cooktop: when the water is there on each spot")

    def minimumSizeHint(self) -> QSize:
        """Room for minutes and their window."""
        return _LEAST

    def sizeHint(self) -> QSize:
        """No more than that, so that the page fits a low window; it takes the room there is."""
        return _LEAST

    def show_water(self, stove: Stove, plan: WaterPlan, edge: Edge) -> None:
        """Show each spot's minutes in the colour of its heat."""
        self.show_stove(replace(stove, spots=stove.spots_of(SpotKind.TOP)))
        hottest = max([HOTTEST_AT_LEAST, *(row.heat for row in plan.rows)])
        asked = plan.asked.spot if plan.asked is not None else ""
        faces: dict[str, Face] = {}
        for row in plan.rows:
            number, unit = spot_minutes(row.answer)
            faces[row.spot] = Face(
                number=number,
                unit=unit,
                is_strong=row.spot == asked,
                captions=spot_captions(row.answer, row.simmer, edge),
                fill=heat_colour(row.heat, hottest),
                ink=heat_ink(row.heat, hottest),
                is_lit=row.spot == asked,
            )
            said = water_rungs(row.label, row.answer, edge, is_soonest=False)[0]
            self.patch(row.spot).say(f"{row.label}, {edge.heat(row.heat)}", said)
        self.show_faces(faces)
