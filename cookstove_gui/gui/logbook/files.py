"""Files: logs brought in, all entries written as a table, backups."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.logbook.backups import BackupsPart
from cookstove_gui.gui.logbook.log_import import ImportPart
from cookstove_gui.gui.logbook.sheet_import import SheetPart
from cookstove_gui.gui.logbook.writing import Writing
from cookstove_gui.gui.widgets.form import button, row, say, words
from cookstove_gui.gui.widgets.theme import STEP


class FilesPart(QWidget):
    """What goes out of the logbook and comes into it."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("files_part")
        self._backups = BackupsPart(link)
        self._all = button(
            "All as a table …", "sessions_table", "Every entry of all sessions, for a spreadsheet or other programs"
        )
        self._package = button(
            "Everything as a data package …",
            "everything_package",
            "All stoves and sessions, for other programs to read",
        )
        self._told = words(role="good", name="files_told")
        self._problem = words(role="problem", name="files_problem")
        self._writing = Writing(self._desk, self)
        column = QVBoxLayout(self)
        column.setSpacing(3 * STEP)
        logs, tables = ImportPart(link), SheetPart(link)
        column.addWidget(logs)
        column.addWidget(tables)
        column.addWidget(words("Write all sessions", role="heading"))
        column.addLayout(row(self._all, self._package))
        column.addWidget(self._told)
        column.addWidget(self._problem)
        column.addWidget(self._backups)
        column.addStretch(1)
        logs.table_chosen.connect(tables.bring_in)
        tables.closed.connect(logs.take_focus)
        self._all.clicked.connect(lambda: self._writing.table(0, self._desk.stove.name))
        self._package.clicked.connect(lambda: self._writing.everything("logbook"))
        self._writing.told.connect(lambda text: self._say(told=text))
        self._writing.failed.connect(lambda text: self._say(problem=text))
        self._say()
        self.show_files()

    def show_files(self) -> None:
        """Show how old the last backup is, and whether there is anything to write."""
        self._backups.show_backups()
        for key in (self._all, self._package):
            key.setEnabled(any(one.entry_count for one in self._desk.sessions))

    def _say(self, *, told: str = "", problem: str = "") -> None:
        say(self._told, told)
        say(self._problem, problem)
