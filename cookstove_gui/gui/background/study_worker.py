"""The study of a stove's past, in the background: started when it is due, its progress shown, given up on request."""

import threading
from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, QObject, Signal

from cookstove_gui.desk import Study, StudyInputs, study
from cookstove_gui.desk.studying import learning_is_due, study_is_due, study_reader
from cookstove_gui.errors import Problem
from cookstove_gui.gui.background.worker import Worker
from cookstove_gui.gui.desk_link import DeskLink


class StudyWorker(QObject):
    """One study at a time, of the desk's stove; every page of a window shares it."""

    changed = Signal()  # began, went on or ended
    _progressed = Signal(int, int)

    @classmethod
    def of(cls, link: DeskLink) -> "StudyWorker":
        """The one that belongs to a link, made when it is first asked for."""
        return link.findChild(cls) or cls(link)

    def __init__(self, link: DeskLink) -> None:
        super().__init__(link)
        self._desk = link.desk
        self._cancelled = threading.Event()
        self._given_up_for = ""  # the stove whose study the cook stopped; it starts again only when asked
        self._worker = Worker(lambda: study_reader(self._desk), self._study, self)
        self._worker.finished.connect(self._take)
        self._worker.failed.connect(self._fail)
        self._progressed.connect(self._show_progress)
        self.done, self.total = 0, 0
        self.problem = ""
        app = QCoreApplication.instance()
        if app is not None:
            app.aboutToQuit.connect(self.close)

    @property
    def is_running(self) -> bool:
        """Whether a study is under way."""
        return self._worker.is_busy

    def start_if_due(self) -> None:
        """Study the past if it has changed since the latest study and the cook did not stop that."""
        if not self.is_running and self._given_up_for != self._desk.stove.name and study_is_due(self._desk):
            self.start()

    def learn_if_due(self) -> None:
        """Study the past if the forecast lacks a session; the rest of a study waits for the pages that show it."""
        if not self.is_running and learning_is_due(self._desk):
            self.start()

    def start(self) -> None:
        """Study the past now."""
        self._given_up_for = ""
        self._cancelled.clear()
        self.done, self.total, self.problem = 0, 0, ""
        self._worker.ask()
        self.changed.emit()

    def cancel(self) -> None:
        """Give the study up."""
        self._given_up_for = self._desk.stove.name
        self._cancelled.set()
        self.changed.emit()

    def close(self) -> None:
        """Give up and end the thread."""
        self._cancelled.set()
        self._worker.close()

    def _study(self, read: Callable[[], StudyInputs]) -> Study | None:
        return study(read(), self._progressed.emit, self._cancelled.is_set)

    def _show_progress(self, done: int, total: int) -> None:
        self.done, self.total = done, total
        self.changed.emit()

    def _take(self, found: Study | None) -> None:
        self._worker.close()  # no thread is kept between studies, which are hours apart
        # A stove chosen meanwhile wants its own study; this one is kept for its own stove all the same.
        if found is not None and found.stove_name in {stove.name for stove in self._desk.stoves}:
            self._desk.show_study(found)
        self.changed.emit()
        if found is not None:
            self.start_if_due()

    def _fail(self, error: Exception) -> None:
        self._worker.close()
        if not isinstance(error, Problem):
            raise error
        self.problem = error.sentence
        self.changed.emit()
