"""The window: the next line, four pages behind large buttons and F1 to F4, and the thread that works things out."""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import QEvent, Qt, QTimer, Signal
from PySide6.QtGui import QCloseEvent, QIcon, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from cookstove_gui.desk import Changed, Desk
from cookstove_gui.desk.practice import Practice
from cookstove_gui.gui.alarms.line import DONE, LATER, SILENCE
from cookstove_gui.gui.alarms.ringer import Ringer
from cookstove_gui.gui.alarms.strip import AlarmStrip
from cookstove_gui.gui.background.job import Job, close_jobs
from cookstove_gui.gui.background.keeping import Keeping
from cookstove_gui.gui.background.past_study import PastStudy
from cookstove_gui.gui.background.supper_planning import SupperPlanning
from cookstove_gui.gui.background.working_out import WorkingOut
from cookstove_gui.gui.cook.page import CookPage
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.frame.heading import Heading
from cookstove_gui.gui.frame.left_page import LeftPage
from cookstove_gui.gui.frame.more import Choice, open_more
from cookstove_gui.gui.frame.page_words import PAGES, on_key
from cookstove_gui.gui.frame.place import Place
from cookstove_gui.gui.frame.practice_bar import PracticeBar
from cookstove_gui.gui.frame.problem_pane import FaultStrip
from cookstove_gui.gui.frame.session_strip import SessionStrip
from cookstove_gui.gui.frame.window_choices import WindowChoices
from cookstove_gui.gui.other_pages import made_page
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.resource_files import resource
from cookstove_gui.situation import Standing

_SIDE = 16  # px, margins of a strip
LEAST = (1000, 640)  # px, the smallest inside a page is made for
_LATE = "The projection takes longer than usual; what is shown is from before. Entries are saved as ever."
_GIVEN_UP = "The projection was given up and begun again. Entries are saved as ever."
_TICK_MS = 15_000  # how often ages, the clock and the outlook are updated


class MainWindow(QMainWindow):
    """Shows the desk; computes nothing about stoves."""

    painted = Signal()  # the whole window, plot included, is on the screen
    practice_wanted = Signal()
    practice_left = Signal()
    closed = Signal()

    def __init__(self, desk: Desk, look: Look, practice: Practice | None = None) -> None:
        super().__init__()
        self.desk = desk
        self._look = look
        self._practice = practice
        self._pages: dict[str, QWidget] = {}
        self._plot_is_in = False
        self._is_painted = False
        self._page_key = "cook"
        self.link = DeskLink(desk, self)
        self._work_out = WorkingOut()
        self.working = Job(
            self,
            desk.inputs,
            self._work_out,
            self._take,
            refuse=self.show_problem,
            late=self._late,
        )
        self.setObjectName("window")
        self._build()
        self._connect()
        self._show_title()
        self.show_page(self._place.page)

    def _build(self) -> None:
        # Stated here because wrapping labels ask for absurd heights while the window is still being laid out.
        self.setMinimumSize(*LEAST)
        self._place = Place(self, self.desk.logbook)
        self._place.restore()
        self._look.fit(self.width(), self.height())  # before there is anything that would have to be dressed again
        self.ringer = Ringer(self.link)
        self._next = Heading(self.link, self._look)
        self._stack = QStackedWidget()
        self._cook = CookPage(self.link, self._look)
        self._add_page("cook", self._cook)
        self._fault = FaultStrip()
        page = QWidget()
        page.setObjectName("page")
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._next)
        if self._practice is not None:
            self._bar = PracticeBar(self.desk, self._practice)
            self._bar.ticked.connect(self._tick_practice)
            self._bar.ended.connect(self.practice_left)
            column.addLayout(_inset(self._bar))
        self._alarm_strip = AlarmStrip(self.link, self._look, self.ringer)
        column.addLayout(_inset(self._alarm_strip))
        self._alarm_choices: QWidget | None = None
        self._alarm_place = QVBoxLayout()
        column.addLayout(self._alarm_place)
        self._session_strip = SessionStrip(self.link)
        column.addLayout(_inset(self._session_strip))
        column.addWidget(self._stack, 1)
        column.addLayout(_inset(self._fault))
        self.setCentralWidget(page)

    def _connect(self) -> None:
        self._choices = WindowChoices(self, self.desk, self._look)
        for keys, key in (("F12", "large"), ("Ctrl+H", "keys")):
            on_key(keys, self, partial(self.toggle_page, key))
        for keys, do in ((DONE, self.ringer.done), (LATER, self.ringer.put_off), (SILENCE, self.ringer.silence)):
            on_key(keys, self, do)
        for key, _, keys in PAGES:
            on_key(keys, self, partial(self.show_page, key))
        self._cook.first_start.chosen.connect(self._begin)
        self._next.pages.page_chosen.connect(self.show_page)
        self._next.window_words.large_chosen.connect(partial(self.toggle_page, "large"))
        self._next.window_words.colours_chosen.connect(self._choices.toggle_theme)
        self._next.window_words.more_chosen.connect(self.open_more)
        self.link.changed.connect(self._show)
        self.link.session_wanted.connect(self._open_session)
        self.link.alarm_choices_wanted.connect(self._choose_alarms)
        self._study = PastStudy.of(self.link)
        SupperPlanning.of(self.link)
        self._keeping = Keeping(self, self.desk, self.show_problem)
        self._ticks = QTimer(self)
        self._ticks.setInterval(_TICK_MS)
        self._ticks.timeout.connect(self._tick)

    # --- pages -------------------------------------------------------------------------------------------------

    def show_page(self, key: str) -> None:
        """Show a page; all but the first are built when first asked for."""
        if key not in self._pages:
            self._add_page(key, self._made(key))
        self._next.setVisible(key not in ("large", "keys"))
        self._alarm_strip.set_far(key == "large")
        self._stack.setCurrentWidget(self._pages[key])
        self._next.pages.show_page(key)
        self._page_key = key
        if key == "cook":
            self._cook.take_focus()

    def _open_session(self, number: int) -> None:
        self.show_page("logbook")
        self._pages["logbook"].open_session(number)  # type: ignore[attr-defined]  # imported only now

    def _begin(self, way: str) -> None:
        if way == "draw":
            self.show_page("my_stove")
            self._pages["my_stove"].ask_six()  # type: ignore[attr-defined]  # imported only now
        if way == "practice":
            self.practice_wanted.emit()

    def toggle_page(self, key: str) -> None:
        """The large view or the list of all keys, or back to the Cook page."""
        if key == self._page_key:
            self.show_page("cook")
            return
        self.show_page(key)
        self._pages[key].setFocus(Qt.FocusReason.OtherFocusReason)

    def _made(self, key: str) -> QWidget:
        page = made_page(key, self.link, self._look)
        if isinstance(page, LeftPage):
            page.left.connect(lambda: self.show_page("cook"))
        return page

    def _add_page(self, key: str, page: QWidget) -> None:
        self._pages[key] = page
        self._stack.addWidget(page)

    def _choose_alarms(self) -> None:
        if self._alarm_choices is None:
            from cookstove_gui.gui.alarms.choices import AlarmChoices  # seldom wanted: not before the first paint

            self._alarm_choices = AlarmChoices(self.link, self.ringer)
            self._alarm_place.addLayout(_inset(self._alarm_choices))
        self._alarm_choices.show()

    def open_more(self) -> None:
        """What else concerns the whole window."""
        open_more(
            [
                *self._choices.rows(),
                Choice(),
                Choice("Alarms: bell, voice, quiet hours", "", self._choose_alarms),
                Choice("Entries of this session", "Ctrl+R", lambda: self._on_cook(self._cook.open_entries)),
                Choice("The lit spot on the walk", "Ctrl+J", lambda: self._on_cook(self._cook.ask_walk)),
                Choice("Do again what was undone", "Ctrl+Shift+Z", lambda: self._on_cook(self._cook.redo)),
                Choice(),
                Choice("Watch a practice session", "", self.practice_wanted.emit),
                Choice("All keys", "Ctrl+H", partial(self.toggle_page, "keys")),
            ],
            self._next.window_words.more,
        )

    def _on_cook(self, act: Callable[[], object]) -> None:
        self.show_page("cook")
        act()

    # --- working things out ------------------------------------------------------------------------------------

    def _show_title(self) -> None:
        self.setWindowTitle(f"{self.desk.stove.name} – Cookstove companion")

    def _show(self, changed: Changed) -> None:
        if changed.stove:
            self._show_title()
        if changed.log or changed.session or changed.stove or changed.band or changed.settings or changed.study:
            self.working.ask()

    def _take(self, standing: Standing) -> None:
        self._fault.withdraw(_LATE)
        self.desk.show(standing)

    def _late(self, given_up: bool) -> None:
        if given_up:
            self._work_out.forget()
        elif self.desk.standing is None:
            return  # the first answer takes longer, and nothing is shown that could be from before
        self.show_problem(_GIVEN_UP if given_up else _LATE)

    def _tick(self) -> None:
        self._keeping.quiet_moment()
        if self.desk.is_live and self.desk.entries:
            self.working.ask()
        self.link.time_passed.emit()

    def _tick_practice(self) -> None:
        self.link.time_passed.emit()
        if not self.working.is_busy:
            self.working.ask()

    def show_problem(self, sentence: str) -> None:
        """Report a problem that belongs to no field."""
        self._fault.show_problem(sentence)

    def show_fault(self, summary: str, details: str) -> None:
        """Report an error of our own."""
        self._fault.show_fault(summary, details)

    # --- coming and going --------------------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """The first paint loads the plot; the next one shows the whole window."""
        super().paintEvent(event)
        if not self._plot_is_in:
            self._plot_is_in = True
            QTimer.singleShot(0, self, self._bring_plot)
        elif not self._is_painted and self._cook.has_plot:
            self._is_painted = True
            QTimer.singleShot(0, self, self._tell_painted)

    def _bring_plot(self) -> None:
        self._cook.bring_plot()
        self.update()

    def _tell_painted(self) -> None:
        if self._is_painted:  # else closed meanwhile
            self.painted.emit()
            QTimer.singleShot(0, self, self._start_work)

    def _start_work(self) -> None:
        if not self._is_painted:
            return
        self.setWindowIcon(QIcon(str(resource("icons", "companion.svg"))))
        self._ticks.start()
        self.ringer.start()
        self.working.ask()
        self._keeping.start()
        self._study.start_when_still()
        if self._practice is not None:
            self._study.start_if_due()

    def changeEvent(self, event: QEvent) -> None:
        """Catch up at once when the window comes to the front again."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and self.isActiveWindow() and self._is_painted:
            self._tick()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Type and keys go in steps with the window."""
        self._look.fit(event.size().width(), event.size().height())
        super().resizeEvent(event)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Keep the window's place, end the threads and stop listening."""
        self._place.keep(self._page_key)
        self._is_painted = False  # what comes after this asks nothing any more
        self._ticks.stop()
        if self._practice is not None:
            self._bar.stop()
        self.ringer.close()
        self._study.close()
        close_jobs(self)
        self._keeping.close()
        self.link.close()
        super().closeEvent(event)
        self.closed.emit()


def _inset(strip: QWidget) -> QHBoxLayout:
    """A strip between the margins of the page."""
    made = QHBoxLayout()
    made.setContentsMargins(_SIDE, 0, _SIDE, 0)
    made.addWidget(strip)
    return made
