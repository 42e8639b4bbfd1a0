"""Seasons: fires and wood of a winter or of all years, and how rise, heats, misses and thermometers went."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.desk.logbook.cards import Cards
from cookstove_gui.desk.logbook.reporting import About
from cookstove_gui.desk.logbook.seasons import SeasonAsked, season, season_asked
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.logbook.cautions import SeasonCautions
from cookstove_gui.gui.logbook.course_picture import Course, CoursePicture
from cookstove_gui.gui.logbook.hills_picture import HillsPicture
from cookstove_gui.gui.logbook.hours_picture import HoursPicture
from cookstove_gui.gui.logbook.report_panel import ReportPanel
from cookstove_gui.gui.logbook.wood_picture import WoodPicture
from cookstove_gui.gui.widgets.form import Answer, Choice, button, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.one_at_a_time import OneAtATime
from cookstove_gui.gui.widgets.picture import Picture, ways_out_key
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import heat_name, measured_time, whole
from cookstove_gui.phrases.logbook.seasons import rise_words, season_behind, season_headline, season_name
from cookstove_gui.reports.season_figures import ALL_YEARS, Season
from cookstove_gui.units import degrees_difference

_NOTHING = "No session yet; after the first few fires this page shows the winter."
_TIMES = (10.0, 20.0, 30.0, 60.0, 120.0, 240.0)  # min
_DEGREES = (1.0, 2.0, 5.0, 10.0, 20.0, 50.0)


class SeasonsPart(QWidget):
    """One sentence and the pictures behind it; the rest by scrolling."""

    opened = Signal(int)  # a session chosen in a picture

    def __init__(self, link: DeskLink, look: Look, cards: Cards, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._cards = cards
        self._year: int | None = None  # none: the latest
        self.setObjectName("seasons_part")
        self.working = Job(self, self._asked, self._work_out, self._show_found)
        self._sentence = Answer(name="season_sentence")
        self._behind = words(name="season_behind", role="soft")
        self._which = Choice("Season", "season_which", "Which winter, or all years", width=190, caption_width=66)
        self._more = ways_out_key("season_more", self.pictures)
        self._report = button("Report …", "season_report", "A dated page of this season or of the stove")
        self._hours, self._wood, self._hills = HoursPicture(look), WoodPicture(look), HillsPicture(look)
        self._rises = CoursePicture("rises_picture", look)
        self._misses = CoursePicture("misses_picture", look)
        self._drifts = CoursePicture("drift_picture", look)
        self._cautions = SeasonCautions(self._desk, look)
        top = QHBoxLayout()
        top.addWidget(self._sentence, 1)
        top.addWidget(self._which)
        top.addWidget(self._report)
        top.addWidget(self._more)
        self._reporting = ReportPanel("season", self._desk)
        shown = QWidget()
        column = QVBoxLayout(shown)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        column.addLayout(top)
        column.addWidget(self._behind)
        column.addWidget(self._hours, 5)
        column.addWidget(self._wood, 3)
        for left, right in ((self._rises, self._hills), (self._misses, self._drifts)):
            both = QHBoxLayout()
            both.setSpacing(5 * STEP)
            both.addWidget(left, 2)
            both.addWidget(right, 3)
            column.addLayout(both, 4)
        column.addWidget(self._cautions)
        column.addStretch(0)
        self._stack = OneAtATime()
        self._stack.addWidget(shown)
        self._stack.addWidget(self._reporting)
        whole = QVBoxLayout(self)
        whole.addWidget(self._stack)
        self._which.chosen.connect(self._choose)
        self._report.clicked.connect(self._open_report)
        self._reporting.closed.connect(self._leave_report)
        self._hours.opened.connect(self.opened)
        self._show_nothing()

    def show_seasons(self) -> None:
        """Work out the season that is chosen."""
        if not self._desk.sessions:
            self._show_nothing()
            return
        if self._which.isHidden():
            self._sentence.setText("Adding up the sessions …")
        self.working.ask()

    def _show_nothing(self) -> None:
        self._sentence.setText(_NOTHING)
        self._behind.setText("")
        for part in (*self._pictures(), self._which, self._more, self._report, self._cautions):
            part.hide()

    def pictures(self) -> dict[str, Picture]:
        """The pictures that are shown, by what they are called."""
        names = ("Hours lit", "Wood", "Rise", "Oven heats", "Misses", "Thermometers", "Cautions")
        named = zip(names, self._pictures(), strict=True)
        return {name: picture for name, picture in named if picture.isVisibleTo(self)}

    def _pictures(self) -> tuple[Picture, ...]:
        return (self._hours, self._wood, self._rises, self._hills, self._misses, self._drifts, self._cautions.bars)

    def _choose(self, key: str) -> None:
        self._year = int(key)
        self.show_seasons()

    def _asked(self) -> SeasonAsked | None:
        return season_asked(self._desk, self._year) if self._desk.sessions else None

    def _work_out(self, asked: SeasonAsked) -> Season:
        return season(asked, self._cards.worked_out(asked.cards))

    def _show_found(self, found: Season) -> None:
        unit, of_years = self._desk.unit, found.first_year == ALL_YEARS
        options = [(str(year), season_name(year)) for year in found.years]
        self._which.show_options([*options, (str(ALL_YEARS), season_name(ALL_YEARS))], str(found.first_year))
        sentence = season_headline(found.total, unit) if found.years else _NOTHING
        self._sentence.setText(sentence)
        behind = season_behind(found.total, found.rise_medians, found.band, all_years=of_years)
        self._behind.setText(behind if found.rows else "")
        self._hours.show_season(found, unit, sentence)
        self._wood.show_season(found, unit)
        self._hills.show_season(found, unit)
        self._rises.show_course(
            Course(
                title=f"Match to {heat_name(found.band)}", beside=rise_words(found.rise_medians), values=found.rises,
                words=measured_time, steps=_TIMES, smooth=found.course, column="minutes",
            )
        )  # fmt: skip
        self._misses.show_course(
            Course(
                title="Misses of the projections", beside="min later than said", values=found.misses, words=whole,
                steps=_TIMES, zero="as said", column="minutes later than said",
            )
        )  # fmt: skip
        self._show_drift(found)
        self._cautions.show_sessions(tuple(row.session for row in found.rows))
        self._cautions.setVisible(bool(found.rows))
        self._which.setVisible(bool(found.years))
        self._more.setVisible(bool(found.rows))
        self._report.setVisible(bool(found.rows))
        for picture, has in (
            (self._hours, found.lit), (self._wood, found.total.weighed), (self._rises, found.rises),
            (self._hills, any(hill.heats for hill in found.hills)), (self._misses, found.misses),
            (self._drifts, found.drifts),
        ):  # fmt: skip
            picture.setVisible(bool(has))

    def _show_drift(self, found: Season) -> None:
        """The thermometer with the most checks; the others are on the page My stove."""
        name, checks = max(found.drifts, key=lambda drift: len(drift[1]), default=("", ()))
        unit = self._desk.unit
        self._drifts.show_course(
            Course(
                title=name.capitalize(), beside=f"° {unit} too high when checked".replace("° ", "°"),
                values=tuple((day, float(degrees_difference(error, unit))) for day, error in checks), words=whole,
                steps=_DEGREES, zero="right", joined=True, column=f"too high °{unit}",
            )
        )  # fmt: skip

    def _open_report(self) -> None:
        year, stove = int(self._which.key), self._desk.stove.name
        abouts = ((season_name(year), About(season=year)), (f"{stove}, the whole stove", About()))
        self._reporting.show_about(abouts, self._cautions.counted)
        self._stack.setCurrentIndex(1)
        self._reporting.take_focus()

    def _leave_report(self) -> None:
        self._stack.setCurrentIndex(0)
        self._report.setFocus()
