"""Import of logs: a clean file at once, otherwise a question first, each problem with its line and field."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from cookstove_gui.desk import files
from cookstove_gui.desk.logbook import moving
from cookstove_gui.errors import Problem
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.form import button, row, say, words
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.logbook.package_tables import ENDING
from cookstove_gui.logbook.sheets import SHEET_ENDINGS
from cookstove_gui.phrases.logbook.imports import import_kept

_HELP = (
    "Logs written by this program come in as they are; a file stove.toml beside them names their stove. For any other "
    "table (a spreadsheet, CSV or Parquet file with the time in one column and heats in others) you say what each "
    "column means, and that is remembered for the next one like it. A whole logbook in one .zip file comes in with "
    "all its stoves, photos and suppers; the stove in use stays."
)
_KINDS = f"Logs, tables, logbooks ({' '.join(f'*{ending}' for ending in (*SHEET_ENDINGS, ENDING))});;All files (*)"
_Offer = files.ImportOffer | moving.PackageOffer


class ImportPart(QWidget):
    """Choose files, see what is wrong with them, decide."""

    table_chosen = Signal(Path)  # no log of this program

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._offer: _Offer | None = None
        self._paths: tuple[Path, ...] = ()
        self.setObjectName("import_part")
        # Reading many files takes a while, so it runs in the background.
        self.reading = Job(
            self,
            lambda: self._paths,
            self._read,
            self._show_offer,
            self._show_failure,
        )
        self._choose_files = button("Choose files …", "import_files", "Log files, or a table of another program")
        self._choose_folder = button("Choose a folder …", "import_folder", "All logs in a folder")
        self._told = words(role="good", name="import_told")
        self._problem = words(role="problem", name="import_problem")
        self._question = words(role="heading", name="import_question")
        self._list = RowTable("import_problems", "What is wrong, by file, line and field", wraps=True, shown_rows=4)
        self._keep = button("Keep the good rows", "import_keep", "Keep every row that can be read", role="main")
        self._nothing = button("Import nothing", "import_nothing", "Leave the logbook as it is")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2 * STEP)
        column.addWidget(words("Bring in", role="heading"))
        column.addWidget(words(_HELP, role="soft"))
        column.addLayout(row(self._choose_files, self._choose_folder))
        column.addWidget(self._told)
        column.addWidget(self._problem)
        column.addWidget(self._question)
        column.addWidget(self._list)
        column.addLayout(row(self._keep, self._nothing))
        column.addStretch(0)
        self._choose_files.clicked.connect(self._ask_files)
        self._choose_folder.clicked.connect(self._ask_folder)
        self._keep.clicked.connect(self._accept)
        self._nothing.clicked.connect(self._drop)
        say(self._told, "")
        say(self._problem, "")
        self._show_question(None)

    def bring_in(self, paths: Sequence[Path]) -> None:
        """Read these files and folders; they are kept at once when nothing is wrong with them."""
        self._show_question(None)
        say(self._problem, "")
        say(self._told, "")
        if files.is_other_table(paths):
            self.table_chosen.emit(paths[0])
            return
        self._paths = tuple(paths)
        say(self._told, "Reading …")
        self.reading.ask()

    def take_focus(self) -> None:
        """Back to the first button, where something is to be chosen again."""
        if self.isVisible():
            self._choose_files.setFocus()

    def _ask_files(self) -> None:
        paths, _ = QFileDialog.getOpenFileNames(self, "Files to bring in", "", _KINDS)
        if paths:
            self.bring_in([Path(path) for path in paths])

    def _ask_folder(self) -> None:
        path = QFileDialog.getExistingDirectory(self, "Folder of logs to import")
        if path:
            self.bring_in([Path(path)])

    def _read(self, paths: tuple[Path, ...]) -> _Offer:
        if len(paths) == 1 and moving.is_package(paths[0]):
            return moving.offer_package(self._desk, paths[0])
        return files.offer_import(self._desk, paths)

    def _show_offer(self, offer: _Offer) -> None:
        if offer.needs_answer:
            say(self._told, "")
            self._show_question(offer)
            (self._keep if _brings(offer) else self._nothing).setFocus()
        else:
            self._offer = offer
            self._accept()

    def _show_failure(self, sentence: str) -> None:
        say(self._told, "")
        say(self._problem, sentence)

    def _show_question(self, offer: _Offer | None) -> None:
        self._offer = offer
        asking = offer is not None
        problems = offer.problems if offer else ()
        say(self._question, offer.question if offer else "")
        self._list.show_rows([TableRow(cells=(sentence,)) for sentence in problems])
        self._list.setVisible(bool(problems))
        self._keep.setVisible(offer is not None and _brings(offer))
        self._keep.setText("Keep the good rows" if problems else "Keep them")
        self._nothing.setVisible(asking)
        self._nothing.setText("Import nothing" if offer is not None and _brings(offer) else "OK")

    def _accept(self) -> None:
        offer = self._offer
        if offer is None:
            return
        try:
            if isinstance(offer, moving.PackageOffer):
                added = moving.accept_package(self._desk, offer)
            else:
                added = files.accept_import(self._desk, offer)
        except Problem as problem:
            say(self._told, "")
            say(self._problem, problem.sentence)
            return
        self._show_question(None)
        own = _own_rows(offer)
        say(self._told, import_kept(added, offer.rows, offer.stoves, self._desk.stove.name, own))
        self._choose_files.setFocus()

    def _drop(self) -> None:
        had_rows = self._offer is not None and _brings(self._offer)
        self._show_question(None)
        say(self._told, "Nothing was imported; the logbook has not changed." if had_rows else "")
        self._choose_files.setFocus()


def _own_rows(offer: _Offer) -> int:
    """How many of the cook's own tasks, bakes, foods and words an offer brings; a log brings none."""
    return offer.own_rows if isinstance(offer, moving.PackageOffer) else 0


def _brings(offer: _Offer) -> bool:
    return bool(offer.sessions or _own_rows(offer))
