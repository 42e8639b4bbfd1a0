"""The study of a stove's past: started when it is due and the cook's hands are still, its progress shown, stoppable."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from cookstove_gui.desk.studying import learning_is_due, study_is_due, study_reader
from cookstove_gui.gui.background.job import Job

if TYPE_CHECKING:
    from cookstove_gui.desk import Changed
    from cookstove_gui.gui.desk_link import DeskLink
    from cookstove_gui.study import Study, StudyInputs

STILL_MS = 60_000  # without an entry, so that studying never slows what is being typed


class PastStudy(QObject):
    """One study at a time, of the desk's stove; every page of a window shares it."""

    changed = Signal()  # began, went on or ended

    @classmethod
    def of(cls, link: DeskLink) -> PastStudy:
        """The one that belongs to a link, made when it is first asked for."""
        return link.findChild(cls) or cls(link)

    def __init__(self, link: DeskLink) -> None:
        super().__init__(link)
        self._desk = link.desk
        self._stopped_for = ""  # the stove whose study the cook stopped; it starts again only when asked
        self._job = Job(self, lambda: study_reader(self._desk), self._study, self._take, self._refuse)
        self._job.progressed.connect(self._show_progress)
        self.done, self.total = 0, 0
        self.problem = ""
        self._still = QTimer(self)
        self._still.setSingleShot(True)
        self._still.setInterval(STILL_MS)
        self._still.timeout.connect(self.start_if_due)
        link.changed.connect(self._wait_on)

    @property
    def is_running(self) -> bool:
        """Whether a study is under way."""
        return self._job.is_busy

    def start_when_still(self) -> None:
        """Study, if it is due, once nothing has been entered for a minute."""
        self._still.start()

    def start_if_due(self) -> None:
        """Study the past if it has changed since the latest study and the cook did not stop that."""
        if not self.is_running and self._stopped_for != self._desk.stove.name and study_is_due(self._desk):
            self.start()

    def learn_if_due(self) -> None:
        """Study the past if the forecast lacks a session; the rest of a study waits for the pages that show it."""
        if not self.is_running and learning_is_due(self._desk):
            self.start()

    def start(self) -> None:
        """Study the past now."""
        self._stopped_for = ""
        self.done, self.total, self.problem = 0, 0, ""
        self._job.ask()
        self.changed.emit()

    def cancel(self) -> None:
        """Stop the study."""
        self._stopped_for = self._desk.stove.name
        self._job.cancel()
        self.changed.emit()

    def close(self) -> None:
        """Stop waiting and studying."""
        self._still.stop()
        self._job.close()

    def _wait_on(self, changed: Changed) -> None:
        if changed.log or changed.session or changed.stove:
            self.start_when_still()

    def _study(self, read: Callable[[], StudyInputs]) -> Study | None:
        from cookstove_gui.study import study  # brings all of the learning: not before the first paint

        return study(read(), self._job.report, self._job.is_cancelled)

    def _show_progress(self, done: int, total: int) -> None:
        self.done, self.total = done, total
        self.changed.emit()

    def _take(self, found: Study | None) -> None:
        # A stove chosen meanwhile wants its own study; this one is kept for its own stove all the same.
        if found is not None and found.stove_name in {stove.name for stove in self._desk.stoves}:
            self._desk.show_study(found)
        self.changed.emit()
        if found is not None:
            self.start_if_due()

    def _refuse(self, sentence: str) -> None:
        self.problem = sentence
        self.changed.emit()
