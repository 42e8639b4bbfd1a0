"""Start of the window: arguments, logbook, application; the window appears before the plot is loaded."""

import argparse
import gc
import os
import sys
import traceback
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from types import TracebackType
from typing import NoReturn

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QApplication, QFileDialog

from cookstove_gui.desk import Desk
from cookstove_gui.desk.practice import Practice
from cookstove_gui.errors import Problem, SurroundingsProblem
from cookstove_gui.gui.background.garbage import GarbageInTheWindowsThread
from cookstove_gui.gui.background.job import some_hang
from cookstove_gui.gui.fault_log import FaultLog
from cookstove_gui.gui.frame.problem_pane import ProblemPane
from cookstove_gui.gui.ways_out import details_of, latest_backup, restored, saved, ways_out
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.logbook.logbook import Logbook, default_path
from cookstove_gui.resource_files import has_own_tables, use_own_tables

_SAMPLES = "sample_sessions"


class _Arguments(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        """One clear line and exit code 2."""
        sys.stderr.write(f"cookstove-gui: {message}; see cookstove-gui --help.\n")
        sys.exit(2)


def parse_arguments(arguments: Sequence[str]) -> argparse.Namespace:
    """The window's arguments; a wrong one ends the program with exit code 2."""
    parser = _Arguments(prog="cookstove-gui", description="A companion for cooking on a wood-fired cookstove.")
    parser.add_argument("--practice", nargs="?", const="", metavar="FOLDER", help="play a sample session as if live")
    parser.add_argument("--pace", type=float, default=60.0, help="how many times faster than real time practice runs")
    parser.add_argument("--logbook", type=Path, metavar="PATH", help="a logbook other than your usual one")
    parser.add_argument("--unit", choices=("F", "C"), help="show and type temperatures in this unit")
    parser.add_argument("--quit-when-painted", action="store_true", help="close once the whole window is painted")
    return parser.parse_args(arguments)


class Program:
    """The application with its one window, or the pane that says why there is none."""

    def __init__(self, app: QApplication, options: argparse.Namespace) -> None:
        self._app = app
        self._options = options
        self._logbook: Logbook | None = None
        self._faults: FaultLog | None = None
        self.pane: ProblemPane | None = None
        self.look = Look(app)
        self.window: MainWindow | None = None
        self.practice: MainWindow | None = None  # over the window, while a practice session is watched

    def open(self) -> None:
        """Open the logbook and show the window, or say what prevents it and what can be done."""
        use_own_tables(self.place.parent)
        try:
            desk, practice = self._desk()
        except Problem as problem:
            if self._options.practice is not None or self._options.quit_when_painted:
                raise
            self._say(problem.sentence)
            return
        except Exception as error:
            # Whatever is stored wrongly must not end on a terminal that nobody sees.
            self.note_fault(traceback.format_exc())
            self._say(f"The logbook cannot be used because of an error in the program ({error!r}).")
            return
        if self._options.unit:
            desk.set_unit(self._options.unit)
        self.look.set_mode(desk.setting("theme", "system"))
        self.look.set_still(desk.setting("motion", "") == "still")
        self.look.set_text_size(_number(desk.setting("text_size", "1")))
        self.window = MainWindow(desk, self.look, practice)
        self.window.painted.connect(partial(collect_again, self.window))
        self.window.painted.connect(self._tell_of_own_tables)
        if self._options.quit_when_painted:
            self.window.painted.connect(self._app.quit)
        self.window.link.restore_wanted.connect(self._restore)
        self.window.practice_wanted.connect(self.practise)
        self.window.practice_left.connect(self._leave_practice)
        self.window.show()
        self._keep_faults()

    def practise(self) -> None:
        """An invented session in a window of its own, over a logbook in memory; the real one waits behind it."""
        real = self.window
        if real is None or self.practice is not None or self._options.practice is not None:
            return
        from cookstove_gui.desk.practice_session import practice_desk
        from cookstove_gui.resource_files import folder

        desk, practice = practice_desk(first_sample(folder(_SAMPLES)), self._options.pace)
        desk.set_unit(real.desk.unit)
        self.practice = MainWindow(desk, self.look, practice)
        self.practice.setGeometry(real.geometry())
        self.practice.practice_left.connect(self.practice.close)
        self.practice.closed.connect(self._back_to_the_real_one)
        self.practice.show()
        real.hide()

    def _back_to_the_real_one(self) -> None:
        practice, self.practice = self.practice, None
        if self.window is not None:
            self.window.show()
        if practice is not None:
            practice.desk.logbook.close()
            practice.deleteLater()

    def _leave_practice(self) -> None:
        """End of a practice that the program was started with: on to the real logbook."""
        practice, logbook = self.window, self._logbook
        self._options.practice = None
        self.open()
        if practice is not None and practice is not self.window:
            practice.close()
            practice.deleteLater()
        if logbook is not None and logbook is not self._logbook:
            logbook.close()

    def close(self) -> None:
        """Close the window and the logbook."""
        if self.practice is not None:
            self.practice.close()
        if self.window is not None:
            self.window.close()
        if self._logbook is not None:
            self._logbook.close()
        if self._faults is not None:
            self._faults.close()

    def note_fault(self, details: str) -> None:
        """Keep the details of a fault where they can be found later."""
        if self._faults is not None:
            self._faults.write(details)
        else:
            FaultLog(self.place.parent).write(details)

    @property
    def place(self) -> Path:
        """Where the logbook lies."""
        return self._options.logbook or default_path()

    def _desk(self) -> tuple[Desk, Practice | None]:
        if self._options.practice is not None:
            from cookstove_gui.desk.practice_session import practice_desk
            from cookstove_gui.resource_files import folder

            chosen = self._options.practice
            place = Path(chosen) if chosen else first_sample(folder(_SAMPLES))
            desk, practice = practice_desk(place, self._options.pace)
            self._logbook = desk.logbook
            return desk, practice
        self._logbook = Logbook.open(self._options.logbook)
        return Desk(self._logbook), None

    def _keep_faults(self) -> None:
        if self._faults is not None or self._options.practice is not None:
            return
        self._faults = FaultLog(self.place.parent)
        self._faults.open()
        if self.window is not None:
            self.window.painted.connect(partial(QTimer.singleShot, 0, self._tell_of_the_last_end))

    def _tell_of_the_last_end(self) -> None:
        told = self._faults.lock() if self._faults is not None else ""
        if told and self.window is not None:
            self.window.show_problem(told)

    def _tell_of_own_tables(self) -> None:
        """What of the cook's own tasks, foods and words cannot be used; the program goes on without it."""
        if not has_own_tables():
            return
        from cookstove_gui.cooking.own import own_sentences

        told = " ".join(own_sentences())
        if told and self.window is not None:
            self.window.show_problem(told)

    def _restore(self, backup: Path) -> None:
        """Close the window and the logbook, put the backup in its place, and open again."""
        window, self.window = self.window, None
        if window is None or self._logbook is None or self._logbook.path is None:
            return
        place = self._logbook.path
        window.close()
        self._logbook.close()
        try:
            told = restored(place, backup)
        except Problem as problem:
            told = problem.sentence
        self._open_and_tell(told)
        window.deleteLater()

    def _open_and_tell(self, told: str) -> None:
        self.open()
        if told and self.window is not None:
            self.window.show_problem(told)

    def _say(self, sentence: str) -> None:
        self.pane = ProblemPane(sentence, ways_out(self.place))
        collect_again(self.pane)
        self.pane.setWindowTitle("Cookstove companion")
        self.pane.resize(900, 480)
        self.pane.chosen.connect(self._take_way_out)
        self.pane.show()

    def _take_way_out(self, key: str) -> None:
        pane = self.pane
        if key == "quit":
            self._app.quit()
            return
        if key == "copy":
            self._app.clipboard().setText(details_of(self.place, pane.sentence if pane else ""))
            return
        if key == "other":
            chosen, _ = QFileDialog.getSaveFileName(
                pane, "Another logbook", "", "Logbook (*.sqlite *.db);;All files (*)",
                options=QFileDialog.Option.DontConfirmOverwrite,
            )  # fmt: skip
            if not chosen:
                return
            self._options.logbook = Path(chosen)
        told = ""
        if self._logbook is not None:
            self._logbook.close()
            self._logbook = None
        try:
            if key in ("restore", "save"):
                told = restored(self.place, latest_backup(self.place)) if key == "restore" else saved(self.place)
        except Problem as problem:
            self._say(problem.sentence)
        else:
            self._open_and_tell(told)
        if pane is not None:
            pane.close()
            pane.deleteLater()


def collect_again(parent: QObject) -> None:
    """Collect garbage while `parent` lives, but what the start has made: it stays as long as the window does."""
    gc.freeze()
    GarbageInTheWindowsThread(parent)


def first_sample(samples: Path) -> Path:
    """The folder practice uses when none is named."""
    folders = sorted(path.parent for path in samples.glob("*/stove.toml"))
    if not folders:
        raise SurroundingsProblem(f"There are no sample sessions in {samples}; install the program again.")
    return folders[0]


def open_window(arguments: Sequence[str]) -> int:
    """Run the program with its window; returns the exit code."""
    options = parse_arguments(arguments)
    app = QApplication.instance()
    if not isinstance(app, QApplication):
        app = QApplication(["cookstove-gui"])
    app.setApplicationName("cookstove-gui")
    program = Program(app, options)
    sys.excepthook = tell_faults(program)
    try:
        program.open()
    except Problem as problem:
        sys.stderr.write(f"cookstove-gui: {problem.sentence}\n")
        return 2
    code = app.exec()
    program.close()
    if some_hang():
        os._exit(code)  # Python would wait for the thread that never ends
    return code


def tell_faults(
    program: Program,
) -> Callable[[type[BaseException], BaseException, TracebackType | None], None]:
    """Errors no view has handled are reported in the window, which carries on; our own are kept as well."""

    def tell(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        if isinstance(error, Problem) and program.window is not None:
            program.window.show_problem(error.sentence)
            return
        details = "".join(traceback.format_exception(kind, error, trace))
        program.note_fault(details)
        if program.window is not None and isinstance(error, Exception):
            program.window.show_fault(f"{kind.__name__}: {error}", details)

    return tell


def _number(kept: str) -> float:
    try:
        return float(kept)
    except ValueError:
        return 1.0
