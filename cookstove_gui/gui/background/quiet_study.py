"""Starts the study of past sessions when the cook's hands are still, so that it never slows what is being typed."""

from PySide6.QtCore import QObject, QTimer

from cookstove_gui.desk import Changed
from cookstove_gui.gui.background.study_worker import StudyWorker
from cookstove_gui.gui.desk_link import DeskLink

STILL_MS = 60_000  # without an entry


class QuietStudy(QObject):
    """Waits until nothing was entered for a minute, then studies if a study is due."""

    def __init__(self, link: DeskLink, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._link = link
        self._still = QTimer(self)
        self._still.setSingleShot(True)
        self._still.setInterval(STILL_MS)
        self._still.timeout.connect(self.start_if_due)
        link.changed.connect(self._show)

    def wait(self) -> None:
        """Begin to wait for still hands."""
        self._still.start()

    def stop(self) -> None:
        """Wait no more."""
        self._still.stop()

    def start_if_due(self) -> None:
        """Study now if it is due."""
        if self._link.desk.sessions:
            StudyWorker.of(self._link).start_if_due()

    def _show(self, changed: Changed) -> None:
        if changed.log or changed.session or changed.stove:
            self.wait()
