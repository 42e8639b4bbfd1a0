"""Backups: how old the last good one is, and a button for a new one."""

from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from cookstove_gui.errors import Problem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.form import button, row, say, words
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import ago

_WHY = (
    "A backup is a complete copy of the logbook, opened and checked before it counts as one. "
    "Keep one on another disk too: a copy beside the logbook would be lost with it."
)


class BackupsPart(QWidget):
    """The age of the last good backup, and the button for the next."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("backups_part")
        self._age = words(role="heading", name="backup_age")
        self._place = words(role="soft", name="backup_place")
        self._now = button("Back up now", "backup_now", "Copy the logbook into its backup folder", role="main")
        self._elsewhere = button("Back up to another folder …", "backup_elsewhere", "A copy on another disk")
        self._told = words(role="good", name="backup_told")
        self._problem = words(role="problem", name="backup_problem")
        column = QVBoxLayout(self)
        column.setSpacing(2 * STEP)
        column.addWidget(words("Backups of the logbook", role="heading"))
        column.addWidget(self._age)
        column.addWidget(words(_WHY))
        column.addLayout(row(self._now, self._elsewhere))
        column.addWidget(self._told)
        column.addWidget(self._problem)
        column.addWidget(self._place)
        column.addStretch(1)
        self._now.clicked.connect(lambda: self.back_up(None))
        self._elsewhere.clicked.connect(self._ask_where)
        say(self._told, "")
        say(self._problem, "")
        self.show_backups()

    def show_backups(self) -> None:
        """Show how old the last good one is."""
        taken = self._desk.logbook.backups()
        latest = taken[-1].taken_at if taken else None
        self._age.setText(
            f"The last good backup was made {ago(latest, self._desk.clock())}." if latest else "There is no backup yet."
        )
        path = self._desk.logbook.path
        say(self._place, f"The logbook is at {path}" if path else "")

    def back_up(self, folder: Path | None) -> None:
        """Make one now, in a folder or beside the logbook."""
        try:
            made = self._desk.logbook.back_up(self._desk.clock(), folder)
        except Problem as problem:
            say(self._told, "")
            say(self._problem, problem.sentence)
        else:
            say(self._problem, "")
            say(self._told, f"Backed up and checked: {made}")
        self.show_backups()

    def _ask_where(self) -> None:
        path = QFileDialog.getExistingDirectory(self, "Folder for the backup")
        if path:
            self.back_up(Path(path))
