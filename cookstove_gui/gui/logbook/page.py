"""The page Logbook: what happened, which projections came true, the seasons, files in and out."""

from PySide6.QtCore import Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.desk.logbook.cards import Cards
from cookstove_gui.gui.background.past_study import PastStudy
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.logbook.files import FilesPart
from cookstove_gui.gui.logbook.seasons import SeasonsPart
from cookstove_gui.gui.logbook.sessions import SessionsPart
from cookstove_gui.gui.logbook.track_record import RecordPart
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.sections import Sections


class LogbookPage(QWidget):
    """Sessions, track record, files."""

    session_opened = Signal()  # the window may go to the Cook page

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._studying = PastStudy.of(link)
        self._is_stale = False
        self.setObjectName("page")
        self.setAccessibleName("Logbook")
        cards = Cards(self._desk.logbook)
        self._sessions = SessionsPart(link, look, cards)
        self._seasons = SeasonsPart(link, look, cards)
        self._record = RecordPart(link, look)
        self._files = FilesPart(link)
        self._sections = Sections(look)
        self._sections.add("sessions", "Sessions", self._sessions)
        self._sections.add("record", "Track record", self._record)
        self._sections.add("seasons", "Seasons", self._seasons)
        self._sections.add("files", "Files", self._files)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._sections)
        self._sections.shown.connect(self._show_part)
        self._seasons.opened.connect(self.open_session)
        self._sessions.opened.connect(self.session_opened)
        link.changed.connect(self._show)

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with changes made while hidden, and study sessions added since."""
        super().showEvent(event)
        if self._is_stale:
            self._is_stale = False
            self._show(Changed(session=True, study=True))
        self._show_part(self._sections.key)
        self._studying.start_if_due()

    def _show_part(self, key: str) -> None:
        if key == "files":
            self._files.show_files()
        elif key == "seasons":
            self._seasons.show_seasons()

    def open_session(self, number: int) -> None:
        """Show one session."""
        self._sections.choose("sessions")
        self._sessions.show_session(number)

    def _show(self, changed: Changed) -> None:
        if not self.isVisible():
            self._is_stale = True
            return
        if any((changed.session, changed.stove, changed.log, changed.settings, changed.band, changed.study)):
            self._sessions.show_sessions()
            if self._sections.key == "seasons":
                self._seasons.show_seasons()
        elif changed.standing:
            self._sessions.show_standing()
        if changed.study or changed.stove or changed.settings:
            self._record.show_record()
        if changed.session or changed.stove:
            self._studying.start_if_due()
