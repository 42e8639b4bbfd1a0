"""The real window, killed while numbers are typed into it: every number it showed as saved is there."""

import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

from cookstove_gui.logbook.logbook import Logbook

_TYPING = """
import sys
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit
from cookstove_gui.gui.start import Program, parse_arguments
app = QApplication(["cookstove-gui"])
program = Program(app, parse_arguments(["--logbook", sys.argv[1]]))
program.open()
window = program.window
field = window.findChild(QLineEdit, "number_field")
book = window.desk.logbook
def type_one():
    field.setFocus()
    field.setText("")
    QTest.keyClicks(field, str(200 + book.entry_count() % 300))
    QTest.keyClick(field, Qt.Key.Key_Return)
    print(book.entry_count(), flush=True)
timer = QTimer()
timer.timeout.connect(type_one)
timer.start(5)
app.exec()
"""


def kill_the_window(place: Path, times: int, seed: int) -> tuple[int, int]:
    """How many entries were told as saved at last, and how many of them were lost in `times` kills."""
    chance = random.Random(seed)
    told = lost = 0
    for _ in range(times):
        program = subprocess.Popen(
            [sys.executable, "-c", _TYPING, str(place)],
            stdout=subprocess.PIPE,
            text=True,
            env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
        )
        assert program.stdout is not None
        first = program.stdout.readline()
        time.sleep(chance.uniform(0.0, 0.8))
        program.send_signal(signal.SIGKILL)
        lines = [first, *program.stdout.read().split("\n")]
        program.wait()
        told = max([told, *(int(line) for line in lines if line.strip().isdecimal())])
        book = Logbook.open(place)
        lost += max(0, told - book.entry_count()) + len(book.damage())
        told = book.entry_count()
        book.close()
    return told, lost
