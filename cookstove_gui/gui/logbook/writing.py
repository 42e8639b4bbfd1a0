"""Sessions written to files: the log, a report, a table. Where to is asked; the work is done in the background."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from cookstove_gui.desk import files
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.logbook import moving, reporting
from cookstove_gui.desk.logbook.reporting import Wanted
from cookstove_gui.errors import Problem
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.widgets.printing import ask_and_print

_TABLES = {"Spreadsheet (*.xlsx)": ".xlsx", "CSV table (*.csv)": ".csv", "Parquet (*.parquet)": ".parquet"}
_PAGES = {".pdf": "PDF (*.pdf)", ".html": "Web page (*.html)"}
_Write = Callable[[Path], None]


class Writing(QObject):
    """Asks and writes; tells what became of it."""

    told = Signal(str)
    failed = Signal(str)

    def __init__(self, desk: Desk, over: QWidget) -> None:
        super().__init__(over)
        self._desk, self._over = desk, over
        self._wanted: tuple[_Write, Path] | None = None
        self._to_print: tuple[Wanted, str] | None = None
        # A PDF or a table takes a second or two.
        self._job = Job(self, lambda: self._wanted, self._write, self._tell, self.failed.emit)
        self._printing = Job(self, lambda: self._to_print, self._set, self._print, self.failed.emit)

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

    def report(self, wanted: Wanted, title: str, ending: str) -> None:
        """A dated report, .pdf or .html."""
        path, _ = QFileDialog.getSaveFileName(self._over, "Write the report as", _name(title, ending), _PAGES[ending])
        if path:
            self._ask(partial(reporting.write_report, self._desk, wanted), Path(path), ending)

    def print_report(self, wanted: Wanted, title: str) -> None:
        """A report on the printer that is asked for."""
        self._to_print = (wanted, title)
        self.told.emit("Laying out the pages …")
        self._printing.ask()

    def table(self, number: int, title: str) -> None:
        """The entries as a table; of all sessions for 0."""
        kinds = ";;".join(_TABLES)
        path, chosen = QFileDialog.getSaveFileName(self._over, "Write the table as", _name(title, ".xlsx"), kinds)
        if path:
            self._ask(partial(files.write_table, self._desk, number), Path(path), _TABLES.get(chosen, ".xlsx"))

    def everything(self, title: str) -> None:
        """All sessions of all stoves as one data package."""
        path, _ = QFileDialog.getSaveFileName(
            self._over, "Write everything as", _name(title, ".zip"), "Packages (*.zip)"
        )
        if path:
            self._ask(partial(moving.write_everything, self._desk), Path(path), ".zip")

    def _ask(self, write: _Write, path: Path, ending: str) -> None:
        target = path if path.suffix else path.with_suffix(ending)
        self._wanted = (write, target)
        self.told.emit(f"Writing {target.name} …")
        self._job.ask()

    def _write(self, wanted: tuple[_Write, Path]) -> Path:
        write, path = wanted
        write(path)
        return path

    def _set(self, wanted: tuple[Wanted, str]) -> tuple[bytes, str]:
        return reporting.report_to_print(self._desk, wanted[0]), wanted[1]

    def _print(self, made: tuple[bytes, str]) -> None:
        try:
            done = ask_and_print(*made, self._over)
        except Problem as problem:
            self.failed.emit(problem.sentence)
        else:
            self.told.emit("Sent to the printer." if done else "")

    def _tell(self, path: Path) -> None:
        self.told.emit(f"Written: {path}")


def _name(title: str, ending: str) -> str:
    return f"{title}{ending}".replace("/", "-")
