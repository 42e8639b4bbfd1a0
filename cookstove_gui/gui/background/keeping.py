"""What is done for the logbook at quiet moments: the day's backup, the search for damage, the other window's rows."""

from collections.abc import Callable

from PySide6.QtCore import QObject

from cookstove_gui.desk import Desk
from cookstove_gui.errors import Problem
from cookstove_gui.gui.background.job import Job
from cookstove_gui.logbook.logbook import Logbook

_LISTED = 5  # damaged rows named in one message


class Keeping(QObject):
    """Keeps a window's logbook; whatever the cook should know goes to `tell`."""

    def __init__(self, parent: QObject, desk: Desk, tell: Callable[[str], None]) -> None:
        super().__init__(parent)
        self._desk = desk
        self._tell = tell
        self._clock_told = ""
        self._job = Job(self, lambda: desk.logbook, self._look_over, self._say, tell)
        desk.logbook.on_file_trouble(tell)

    def start(self) -> None:
        """Once after the start: the day's backup, and every row read."""
        self._job.ask()

    def quiet_moment(self) -> None:
        """Fold the side file in, see that the file is still there, and take up what another window has written."""
        try:
            self._desk.logbook.look_after_file()
            self._desk.catch_up()
            told, self._clock_told = self._clock_told, self._desk.clock_trouble()
        except Problem as problem:
            self._tell(problem.sentence)
        else:
            if self._clock_told and not told:
                self._tell(self._clock_told)

    def close(self) -> None:
        """The backup of the session that ends."""
        self._job.close()
        try:
            self._desk.logbook.look_after_file()
            self._desk.logbook.back_up_if_due(self._desk.clock())
        except Problem as problem:
            self._tell(problem.sentence)

    def _look_over(self, logbook: Logbook) -> str:
        damage = [one.sentence for one in logbook.damage()]
        if not damage:
            logbook.back_up_if_due(self._desk.clock())  # of a damaged one no new backup may push out an older one
            return ""
        more = f" And {len(damage) - _LISTED} more." if len(damage) > _LISTED else ""
        return f"{' '.join(damage[:_LISTED])}{more} A backup may still hold it: Logbook, Backups."

    def _say(self, sentence: str) -> None:
        if sentence:
            self._tell(sentence)
