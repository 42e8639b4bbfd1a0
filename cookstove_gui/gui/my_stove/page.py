"""The page My stove: what the stove is like, as its owner says and as its past shows."""

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.gui.background.past_study import PastStudy
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.my_stove.air import AirPart
from cookstove_gui.gui.my_stove.checks import ChecksPart
from cookstove_gui.gui.my_stove.draw.part import DrawPart
from cookstove_gui.gui.my_stove.fire import FirePart
from cookstove_gui.gui.my_stove.first_fires import FirstFiresGuide
from cookstove_gui.gui.my_stove.flue import FluePart
from cookstove_gui.gui.my_stove.hot_side import HotSidePart
from cookstove_gui.gui.my_stove.known import KnownAbilities
from cookstove_gui.gui.my_stove.surroundings import SurroundingsPart
from cookstove_gui.gui.widgets.form import words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.sections import Sections
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import local_day
from cookstove_gui.phrases.my_stove.drawing import foot_words


class MyStovePage(QWidget):
    """Set-up, spots, hot side, fire, thermometers, flue, surroundings, height and weather, first fires."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._studying = PastStudy.of(link)
        self._missed: Changed | None = Changed(stove=True, study=True, log=True)  # all, when it is first seen
        self.setObjectName("page")
        self.setAccessibleName("My stove")
        past = PastSessions(link.desk)
        known = KnownAbilities(link, past, self)
        self._draw = DrawPart(link, look, past)
        self._hot_side = HotSidePart(link, look, past, known)
        self._fire = FirePart(link, look, known)
        self._checks = ChecksPart(link, look)
        self._air = AirPart(link)
        self._flue = FluePart(link, look)
        self._surroundings = SurroundingsPart(link, look)
        self._first_fires = FirstFiresGuide(link, look)
        self._sections = Sections(look, rail=True)
        self._sections.shown.connect(self._show_part)
        self._sections.add("hot_side", "Hot side", self._hot_side)
        self._sections.add("setup", "Set-up", self._draw)
        self._sections.add("spots", "Spots", self._draw)
        self._sections.add("fire", "Fire", self._fire)
        self._sections.add("checks", "Thermometers", self._checks)
        self._sections.add("flue", "Flue, draught", self._flue)
        self._sections.add("surroundings", "Touch, walls", self._surroundings)
        self._sections.add("air", "Height, weather", self._air)
        self._sections.add("first_fires", "First fires", self._first_fires)
        self._name = words(role="strong", name="stove_foot_name")
        self._foot = words(role="note", name="stove_foot")
        foot = QWidget()
        below = QVBoxLayout(foot)
        below.setContentsMargins(2 * STEP, STEP, 0, 0)
        below.setSpacing(0)
        for part in (self._name, self._foot):
            below.addWidget(part)
        self._sections.add_foot(foot)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._sections)
        self._show_foot()
        self._hot_side.figure_wanted.connect(self._open_figure)
        link.changed.connect(self._show)
        if self._desk.first_fires.next is not None:
            self._sections.choose("first_fires")
        elif not self._desk.sessions:
            self._sections.choose("setup")

    def ask_six(self) -> None:
        """Ask what the stove is like, as a newcomer wished who draws it."""
        self._sections.choose("setup")
        self._draw.ask()

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with changes made while hidden, and learn from sessions added since."""
        super().showEvent(event)
        missed, self._missed = self._missed, None
        if missed is not None:
            self._show(missed)
        self._studying.learn_if_due()

    def _open_figure(self, key: str) -> None:
        self._sections.choose("fire")
        self._fire.open_figure(key)

    def _show_part(self, key: str) -> None:
        if key == "setup":
            self._draw.select("")
        if key == "spots":
            self._draw.select_first()
        if key == "fire":
            self._fire.show_past()
        if key == "hot_side":
            self._hot_side.show_past()

    def _show_foot(self) -> None:
        stove = self._desk.stove
        days = [local_day(one.first_at, one.offset_minutes) for one in self._desk.sessions if one.first_at is not None]
        self._name.setText(stove.name)
        self._foot.setText(foot_words(stove, min(days, default=None)))

    def _show(self, changed: Changed) -> None:
        if not self.isVisible():
            self._missed = Changed(stove=True, study=True, log=True)
            return
        if changed.stove or changed.session:
            self._show_foot()
        if changed.stove or changed.settings:
            self._draw.show_stove()
            self._checks.show_stove()
            self._air.show_stove()
        if changed.standing or changed.log or changed.stove or changed.settings or changed.session:
            self._flue.show_flue()
            self._surroundings.show_heat()
        if changed.stove or changed.settings or changed.session or changed.band:
            self._hot_side.show_past()
        if changed.stove or changed.log or changed.session:
            self._first_fires.show_progress()
        if changed.stove or changed.session or changed.settings or changed.band:
            self._fire.show_past()
        if changed.stove or changed.session:
            self._studying.learn_if_due()
