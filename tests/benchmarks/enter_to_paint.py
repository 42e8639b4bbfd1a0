"""From Enter to the repainted window, with 500 readings on the table and 200 past sessions in the logbook.

Run by hand: `python -m tests.benchmarks.enter_to_paint [ENTRIES]`. The yardstick of the same run is a bare window whose
plot of as many points is set anew on Enter. The logbook lies on disk, so the time to save the entry is in the figure.
Processor time is that of the window's thread, which other work on the machine does not lengthen.
"""

import os
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEvent, QEventLoop, QObject, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QMainWindow, QVBoxLayout, QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.logbook.logbook import Logbook
from tests.benchmarks.long_logbook import READINGS, long_logbook

GOAL_MS = 16.0  # median
GOAL_LATE_MS = 33.0  # 95th percentile
_PATIENCE = 120.0  # s, for a machine that is busy with other work


class Repaint(QObject):
    """Sees the window being painted again."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self.seen = False
        window.installEventFilter(self)

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        """Note each request to paint what has changed."""
        self.seen = self.seen or event.type() == QEvent.Type.UpdateRequest
        return False


def wait(until: Callable[[], bool]) -> None:
    """Let the event loop run until something is true; asleep between events, as a program's own loop is."""
    ends = time.perf_counter() + _PATIENCE
    while not until():
        QApplication.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)
        if time.perf_counter() > ends:
            raise TimeoutError("the window did not get there")


def rest(milliseconds: int) -> None:
    """Let the event loop run for a while; QTest.qWait would keep the threads from working."""
    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


def clocks() -> tuple[float, float]:
    """Wall clock and processor time of this thread [ms]."""
    return 1000 * time.perf_counter(), 1000 * time.thread_time()


def since(began: tuple[float, float]) -> tuple[float, float]:
    """How far both went since then [ms]."""
    wall, thread = clocks()
    return wall - began[0], thread - began[1]


def of_bare_window(app: QApplication, entries: int) -> list[tuple[float, float]]:
    """From Enter to repaint of a field and a plot alone."""
    import pyqtgraph

    window, page, field, plot = QMainWindow(), QWidget(), QLineEdit(), pyqtgraph.PlotWidget()
    column = QVBoxLayout(page)
    column.addWidget(plot)
    column.addWidget(field)
    window.setCentralWidget(page)
    window.resize(1280, 800)
    points = [300.0 + number % 50 for number in range(READINGS)]
    curve = plot.plot(points, symbol="o")

    def take() -> None:
        points.append(float(field.text()))
        field.clear()
        curve.setData(points)

    field.returnPressed.connect(take)
    window.show()
    app.processEvents()
    repaint = Repaint(window)
    found = []
    for number in range(entries):
        QTest.keyClicks(field, str(380 + number % 20))
        app.processEvents()
        repaint.seen = False
        began = clocks()
        QTest.keyClick(field, Qt.Key.Key_Return)
        wait(lambda: repaint.seen)
        app.processEvents()
        found.append(since(began))
    window.close()
    return found


def of_program(window: MainWindow, entries: int, *, hurried: bool) -> tuple[list[tuple[float, float]], ...]:
    """From Enter to the entry on the screen, and to the outlook that knows of it."""
    field = window.findChild(QLineEdit, "number_field")
    assert field is not None
    repaint = Repaint(window)
    told: list[object] = []
    window.link.changed.connect(told.append)
    shown, worked_out = [], []
    for number in range(entries):
        if not hurried:
            wait(lambda: not window.working.is_busy)
            rest(30)
        QTest.keyClicks(field, str(380 + number % 20))
        QApplication.processEvents()
        told.clear()
        before = window.desk.standing
        began = clocks()
        QTest.keyClick(field, Qt.Key.Key_Return)
        wait(lambda: bool(told))
        repaint.seen = False
        wait(lambda: repaint.seen)
        shown.append(since(began))
        if not hurried:
            wait(lambda before=before: window.desk.standing is not before and not window.working.is_busy)
            worked_out.append(since(began))
    return shown, worked_out


def main(entries: int) -> None:
    """Measure and print."""
    app = QApplication.instance() or QApplication([])
    assert isinstance(app, QApplication)
    with tempfile.TemporaryDirectory() as place:
        path = Path(place) / "long.sqlite"
        long_logbook(path)
        logbook = Logbook.open(path)
        window = MainWindow(Desk(logbook), Look(app, "day"))
        painted: list[bool] = []
        window.painted.connect(lambda: painted.append(True))
        window.show()
        wait(lambda: bool(painted) and not window.working.is_busy and window.desk.standing is not None)
        calm, worked_out = of_program(window, entries, hurried=False)
        hurried, _ = of_program(window, entries, hurried=True)
        window.close()
        logbook.close()
    bare = of_bare_window(app, entries)
    yardstick = statistics.median(wall for wall, _ in bare)
    for name, found in (
        ("bare window with a plot", bare),
        ("entry on the screen", calm),
        ("entry on the screen, the last still worked on", hurried),
        ("outlook that knows of it on the screen", worked_out),
    ):
        wall, thread = (sorted(column) for column in zip(*found, strict=True))
        middle, late = statistics.median(wall), int(0.95 * (len(wall) - 1))
        print(
            f"{name:48s} median {middle:6.1f} ms   {middle / yardstick:5.2f} x   95 %: {wall[late]:6.1f} ms"
            f"    processor {statistics.median(thread):5.1f} ms, 95 %: {thread[late]:5.1f} ms"
        )
    print(f"goal: entry on the screen in {GOAL_MS:.0f} ms, 95 % in {GOAL_LATE_MS:.0f} ms, with both cores free")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 40)
