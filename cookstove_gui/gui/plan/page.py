"""The page Plan: a supper on its clock, a bake, water, which pot goes where, how much wood; tasks and foods."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.bake import BakePart
from cookstove_gui.gui.plan.own.part import OwnPart
from cookstove_gui.gui.plan.pots import PotsPart
from cookstove_gui.gui.plan.supper.part import SupperPart
from cookstove_gui.gui.plan.water import WaterPart
from cookstove_gui.gui.plan.wood import WoodPart
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.sections import Sections


class PlanPage(QWidget):
    """Five questions, each with its answer, and what they are asked about."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("page")
        self.setAccessibleName("Plan")
        self._bake = BakePart(link, look)
        past = PastSessions(link.desk)
        self._water = WaterPart(link, past, look)
        self._wood = WoodPart(link, past, look)
        self._supper = SupperPart(link, look)
        self._pots = PotsPart(link, look)
        self._own = OwnPart(link)
        self._parts = (self._supper, self._bake, self._water, self._pots, self._wood, self._own)
        self._sections = Sections(look)
        self._sections.add("supper", "Supper", self._supper)
        self._sections.add_tools("supper", self._supper.tools)
        self._sections.add("bake", "In the oven", self._bake)
        self._sections.add("water", "Water and pans", self._water)
        self._sections.add("pots", "Several pots", self._pots)
        self._sections.add("wood", "Wood", self._wood)
        self._sections.add("own", "Tasks", self._own)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._sections)
        link.changed.connect(self._show)

    def _show(self, changed: Changed) -> None:
        if changed.settings:
            for part in self._parts:
                part.show_unit()
        # A band or a log that changed brings a new standing; the wood is asked for without one too.
        if changed.standing or changed.stove or changed.session or changed.settings or changed.band:
            for part in self._parts:
                part.show_standing()
