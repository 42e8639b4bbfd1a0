"""A frame of panning the time axis, with 500 readings on the table and 200 past sessions in the logbook.

Run by hand: `python -m tests.benchmarks.panning [FRAMES]`. Each frame is one movement of a drag, of the wheel or of the
arrow keys, to the end of the painting it asks for. The yardstick of the same run is a bare window whose plot of as many
points is moved as far. Processor time is that of the window's thread: other work on the machine does not lengthen it.
"""

import os
import statistics
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMainWindow, QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.window import MainWindow
from cookstove_gui.logbook.logbook import Logbook
from tests.benchmarks.enter_to_paint import Repaint, clocks, rest, since, wait
from tests.benchmarks.long_logbook import READINGS, long_logbook

GOAL_MS = 16.0  # median
_STEP = 7  # px of one movement of a drag
_TURN = 30  # frames one way, then as many back, so that the whole session passes by

Frame = tuple[float, float]  # wall and processor time of the window's thread [ms]


def frames(window: QWidget, move: Callable[[int], None], count: int) -> list[Frame]:
    """What each movement costs until all that it changes is painted."""
    repaint = Repaint(window)
    found = []
    for number in range(count):
        repaint.seen = False
        began = clocks()
        move(number)
        wait(lambda: repaint.seen)
        QApplication.processEvents()
        found.append(since(began))
    return found


def _way(number: int) -> int:
    """Back for a while, then ahead again."""
    return 1 if number // _TURN % 2 == 0 else -1


def of_bare_window(app: QApplication, count: int) -> list[Frame]:
    """The same of a plot alone."""
    import pyqtgraph

    window, plot = QMainWindow(), pyqtgraph.PlotWidget()
    window.setCentralWidget(plot)
    window.resize(1280, 800)
    plot.plot([300.0 + number % 50 for number in range(READINGS)], symbol="o")
    window.show()
    app.processEvents()
    low = [200.0]

    def move(number: int) -> None:
        low[0] -= _way(number) * 1.0
        plot.setXRange(low[0], low[0] + 100.0, padding=0)

    return frames(window, move, count)[1:]


def of_program(window: MainWindow, count: int) -> dict[str, list[Frame]]:
    """A drag, the wheel and the arrow keys over the plot."""
    plot = window.findChild(QWidget, "trend_plot")
    assert plot is not None
    middle = QPointF(plot.width() / 2, plot.height() / 2)
    held = [middle.x()]

    def send(kind: QMouseEvent.Type, x: float, button: Qt.MouseButton) -> None:
        at = QPointF(x, middle.y())
        spot = QPointF(plot.mapToGlobal(at))
        buttons = Qt.MouseButton.NoButton if kind is QMouseEvent.Type.MouseButtonRelease else Qt.MouseButton.LeftButton
        QApplication.sendEvent(plot, QMouseEvent(kind, at, spot, button, buttons, Qt.KeyboardModifier.NoModifier))

    def drag(number: int) -> None:
        held[0] += _STEP * _way(number)
        send(QMouseEvent.Type.MouseMove, held[0], Qt.MouseButton.NoButton)

    def turn(number: int) -> None:
        spot, notch = QPointF(plot.mapToGlobal(middle)), QPoint(0, 120 * _way(number))
        wheel = QWheelEvent(
            middle, spot, QPoint(), notch, Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier,
            Qt.ScrollPhase.NoScrollPhase, False,
        )  # fmt: skip
        QApplication.sendEvent(plot, wheel)

    def read_out(number: int) -> None:
        QTest.keyClick(plot, Qt.Key.Key_Left if _way(number) > 0 else Qt.Key.Key_Right)

    send(QMouseEvent.Type.MouseButtonPress, held[0], Qt.MouseButton.LeftButton)
    found = {"dragging": frames(window, drag, count)}
    send(QMouseEvent.Type.MouseButtonRelease, held[0], Qt.MouseButton.LeftButton)
    found["turning the wheel"] = frames(window, turn, count)
    QTest.keyClick(plot, Qt.Key.Key_Home)
    rest(100)
    found["reading out by the arrow keys"] = frames(window, read_out, count)
    return found


def main(count: int) -> None:
    """Measure and print."""
    app = QApplication.instance() or QApplication([])
    assert isinstance(app, QApplication)
    with tempfile.TemporaryDirectory() as place:
        path = Path(place) / "long.sqlite"
        long_logbook(path)
        logbook = Logbook.open(path)
        window = MainWindow(Desk(logbook), Look(app, "day"))
        window.resize(1280, 750)
        painted: list[bool] = []
        window.painted.connect(lambda: painted.append(True))
        window.show()
        wait(lambda: bool(painted) and not window.working.is_busy and window.desk.standing is not None)
        rest(1000)
        wait(lambda: not window.working.is_busy)
        found = of_program(window, count)
        window.close()
        logbook.close()
    bare = of_bare_window(app, count)
    yardstick = statistics.median(thread for _, thread in bare)
    for name, each in (("bare window with a plot", bare), *found.items()):
        wall, thread = zip(*each, strict=True)
        middle = statistics.median(thread)
        late = sorted(thread)[int(0.95 * (len(thread) - 1))]
        print(
            f"{name:32s} processor: median {middle:5.1f} ms  {middle / yardstick:5.2f} x  95 %: {late:5.1f} ms"
            f"   wall: median {statistics.median(wall):5.1f} ms"
        )
    print(f"goal: a frame in {GOAL_MS:.0f} ms at the median, with both cores free")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 120)
