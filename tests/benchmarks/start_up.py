"""From the start of the process to the first fully painted window, as a ratio to a bare window of the same libraries.

Run by hand: `python -m tests.benchmarks.start_up [TIMES]`. The minimum of several starts of each kind is compared,
the kinds taking turns, because other work on the machine can only add time; processor time is given beside it, which
suffers less from that. Bytecode is compiled first, as an installer does.
"""

import compileall
import os
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from tests.benchmarks.long_logbook import long_logbook

ROOT = Path(__file__).resolve().parents[2]
GOAL = 1.35  # ratio to the bare window with a plot

BARE = """
import sys
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QMainWindow
{plot_import}
class Window(QMainWindow):
    def event(self, event):
        done = super().event(event)
        if event.type() == event.Type.UpdateRequest:  # all that was to be painted is painted now
            QTimer.singleShot(0, app.quit)
        return done
app = QApplication([])
window = Window()
window.resize(1280, 800)
{plot}
window.show()
sys.exit(app.exec())
"""
BARE_QT = BARE.format(plot_import="", plot="")
BARE_PLOT = BARE.format(
    plot_import="import pyqtgraph",
    plot="window.setCentralWidget(pyqtgraph.PlotWidget()); window.centralWidget().plot([1, 2, 3])",
)


def seconds(arguments: list[str]) -> tuple[float, float]:
    """Wall and processor time of one process from start to exit."""
    began, used = time.perf_counter(), _children()
    subprocess.run([sys.executable, *arguments], cwd=ROOT, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - began, _children() - used


def _children() -> float:
    """Processor time of the processes that have ended [s]; to the microsecond, which os.times is not."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def main(times: int) -> None:
    """Measure and print."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    compileall.compile_dir(ROOT / "cookstove_gui", quiet=1)
    with tempfile.TemporaryDirectory() as place:
        empty, long = Path(place) / "empty.sqlite", Path(place) / "long.sqlite"
        long_logbook(long)
        opening = ["-m", "cookstove_gui", "--quit-when-painted", "--logbook"]
        kinds = {
            "bare window, Qt only": ["-c", BARE_QT],
            "bare window with a plot": ["-c", BARE_PLOT],
            "this program, new logbook": [*opening, str(empty)],
            "this program, 200 sessions and 500 readings": [*opening, str(long)],
        }
        for arguments in kinds.values():
            seconds(arguments)  # warms the disk cache and makes the new logbook
        found = _in_turns(kinds, times)
    best = {name: tuple(min(column) for column in zip(*pairs, strict=True)) for name, pairs in found.items()}
    yardstick = best["bare window with a plot"]
    for name, (wall, used) in best.items():
        print(
            f"{name:46s} {1000 * wall:6.0f} ms   {wall / yardstick[0]:4.2f} x"
            f"    processor {1000 * used:6.0f} ms   {used / yardstick[1]:4.2f} x"
        )
    print(f"goal: at most {GOAL} x")


def _in_turns(kinds: dict[str, list[str]], times: int) -> dict[str, list[tuple[float, float]]]:
    found: dict[str, list[tuple[float, float]]] = {name: [] for name in kinds}
    for _ in range(times):
        for name, arguments in kinds.items():
            found[name].append(seconds(arguments))
    return found


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 5)
