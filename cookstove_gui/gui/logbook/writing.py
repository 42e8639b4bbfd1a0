"""Sessions written to files: the log, a report, a table. Where to is asked; the work is done in the background."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from cookstove_gui.desk import files
from cookstove_gui.desk.desk import Desk
from cookstove_gui.errors import Problem
from cookstove_gui.gui.background.job import Job

_TABLES = {"Spreadsheet (*.xlsx)": ".xlsx", "CSV table (*.csv)": ".csv", "Parquet (*.parquet)": ".parquet"}
_PDF, _HTML, _VISITOR = "PDF (*.pdf)", "Web page (*.html)", "One page for a visitor (*.pdf)"
_Wanted = tuple[Callable[[Desk, int, Path], None], int, Path]  # what writes which session (0: all) where


class Writing(QObject):
    """Asks and writes; tells what became of it."""

    told = Signal(str)
    failed = Signal(str)

    def __init__(self, desk: Desk, over: QWidget) -> None:
        super().__init__(over)
        self._desk, self._over = desk, over
        self._wanted: _Wanted = (files.write_report, 0, Path())
        # A PDF or a table takes a second or two.
        self._job = Job(self, lambda: self._wanted, self._write, self._tell, self.failed.emit)

    def log(self, number: int, title: str) -> None:
        """The log as CSV."""
        path, _ = QFileDialog.getSaveFileName(self._over, "Write the log as", _name(title, ".csv"), "CSV files (*.csv)")
        if not path:
            return
        target = Path(path) if Path(path).suffix else Path(path).with_suffix(".csv")
        try:
            files.export_log(self._desk, number, target)
        except Problem as problem:
            self.failed.emit(problem.sentence)
        else:
            self.told.emit(f"Written: {target}")

    def report(self, number: int, title: str) -> None:
        """A dated report, .pdf or .html, or its first page for a visitor."""
        kinds = f"{_PDF};;{_HTML};;{_VISITOR}"
        path, chosen = QFileDialog.getSaveFileName(self._over, "Write the report as", _name(title, ".pdf"), kinds)
        if path:
            write = partial(files.write_report, one_page=chosen == _VISITOR)
            self._ask(write, number, Path(path), ".html" if chosen == _HTML else ".pdf")

    def table(self, number: int, title: str) -> None:
        """The entries as a table; of all sessions for 0."""
        kinds = ";;".join(_TABLES)
        path, chosen = QFileDialog.getSaveFileName(self._over, "Write the table as", _name(title, ".xlsx"), kinds)
        if path:
            self._ask(files.write_table, number, Path(path), _TABLES.get(chosen, ".xlsx"))

    def everything(self, title: str) -> None:
        """All sessions of all stoves as one data package."""
        path, _ = QFileDialog.getSaveFileName(
            self._over, "Write everything as", _name(title, ".zip"), "Packages (*.zip)"
        )
        if path:
            self._ask(files.write_everything, 0, Path(path), ".zip")

    def _ask(self, write: Callable[[Desk, int, Path], None], number: int, path: Path, ending: str) -> None:
        target = path if path.suffix else path.with_suffix(ending)
        self._wanted = (write, number, target)
        self.told.emit(f"Writing {target.name} …")
        self._job.ask()

    def _write(self, wanted: _Wanted) -> Path:
        write, number, path = wanted
        write(self._desk, number, path)
        return path

    def _tell(self, path: Path) -> None:
        self.told.emit(f"Written: {path}")


def _name(title: str, ending: str) -> str:
    return f"{title}{ending}".replace("/", "-")
