"""The page Plan: when the water boils, when the bake is done, how much wood it takes."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.look import Look
from cookstove_gui.gui.plan_bake import BakePart
from cookstove_gui.gui.plan_water import WaterPart
from cookstove_gui.gui.sections import Sections


class PlanPage(QWidget):
    """Its parts, each a question with its answer."""

    def __init__(self, link: DeskLink, _look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("page")
        self.setAccessibleName("Plan")
        self._bake = BakePart(link)
        self._water = WaterPart(link)
        self._parts = (self._bake, self._water)
        self._sections = Sections()
        self._sections.add("bake", "In the oven", self._bake)
        self._sections.add("water", "Water and pans", self._water)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._sections)
        link.changed.connect(self._show)

    def close_workers(self) -> None:
        """End the threads of all parts."""
        for part in self._parts:
            part.close_worker()

    def _show(self, changed: Changed) -> None:
        if changed.settings:
            for part in self._parts:
                part.show_unit()
        if changed.standing or changed.stove or changed.session or changed.settings:
            for part in self._parts:
                part.show_standing()
