"""Backups: how old the last good one is, and a button for a new one."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QFileDialog, QMessageBox, QVBoxLayout, QWidget

from cookstove_gui.errors import Problem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.form import button, row, say, words
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.logbook.backups import check_backup
from cookstove_gui.phrases.edge import ago, entries_count, local_moment, sessions_count

_WHY = (
    "A backup is made once a day and after each session, and every row of it is read back before it counts. "
    "Keep one on another disk too: a copy beside the logbook would be lost with it. A backup is the whole logbook in "
    "one file: restored on another computer, everything is there."
)
_BACK = "A backup is copied into the logbook's place; it stays as it is, and nothing else is deleted."


class BackupsPart(QWidget):
    """The age of the last good backup, and the button for the next."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._link = link
        self.setObjectName("backups_part")
        self._age = words(role="heading", name="backup_age")
        self._place = words(role="soft", name="backup_place")
        self._now = button("Back up now", "backup_now", "Copy the logbook into its backup folder", role="main")
        self._elsewhere = button("Back up to another folder …", "backup_elsewhere", "A copy on another disk")
        self._which = QComboBox()
        self._which.setObjectName("backup_which")
        self._which.setAccessibleName("Backup to go back to")
        self._which.setToolTip("Backup to go back to, the newest first")
        self._restore = button("Restore it …", "backup_restore", "Put this backup in the logbook's place")
        self._file = button("Restore another file …", "backup_restore_file", "A backup on another disk")
        self._told = words(role="good", name="backup_told")
        self._problem = words(role="problem", name="backup_problem")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2 * STEP)
        column.addWidget(words("Backups of the logbook", role="heading"))
        column.addWidget(self._age)
        column.addWidget(words(_WHY))
        column.addLayout(row(self._now, self._elsewhere))
        column.addWidget(words("Go back to a backup", role="heading"))
        column.addWidget(words(_BACK))
        column.addLayout(row(self._which, self._restore, self._file))
        column.addWidget(self._told)
        column.addWidget(self._problem)
        column.addWidget(self._place)
        column.addStretch(1)
        self._restore.clicked.connect(lambda: self._ask_for(self._which.currentData()))
        self._file.clicked.connect(self._ask_which)
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
        chosen = self._which.currentData()
        self._which.clear()
        for one in reversed(taken):
            self._which.addItem(local_moment(one.taken_at), one.path)
        self._which.setCurrentIndex(max(0, self._which.findData(chosen)) if chosen else 0)
        self._restore.setEnabled(bool(taken))
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

    def _ask_which(self) -> None:
        path, _ = QFileDialog.getOpenFileName(self, "Backup", "", "Logbook (*.sqlite);;All files (*)")
        if path:
            self._ask_for(Path(path))

    def _ask_for(self, backup: Path) -> None:
        """Restore after a question; the window opens again with what the backup holds."""
        try:
            sessions, entries = check_backup(backup)
        except Problem as problem:
            say(self._problem, problem.sentence)
            return
        asked = QMessageBox(self)
        asked.setObjectName("restore_question")
        asked.setText(f"Go back to {sessions_count(sessions)} with {entries_count(entries)}?")
        asked.setInformativeText(
            "The logbook as it is now is kept beside the backups, and the window opens again with the backup."
        )
        asked.setStandardButtons(QMessageBox.StandardButton.Yes | QMessageBox.StandardButton.Cancel)
        asked.setDefaultButton(QMessageBox.StandardButton.Cancel)
        asked.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        asked.accepted.connect(lambda: self._link.restore_wanted.emit(backup))
        asked.open()

    def _ask_where(self) -> None:
        path = QFileDialog.getExistingDirectory(self, "Folder for the backup")
        if path:
            self.back_up(Path(path))
