"""Unreachable objects are collected in the window's thread alone.

Python collects in whichever thread happens to allocate. A widget destroyed in a working thread holds Qt's lock of its
connections while it waits for Python, and the window, which has Python and waits for that lock, stands still for ever.
"""

import gc

from PySide6.QtCore import QObject, QTimer, Slot

_EVERY_MS = 1_000


class GarbageInTheWindowsThread(QObject):
    """While it lives, garbage is looked for once a second, as thoroughly as Python itself would by then."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        gc.disable()
        self._next = QTimer(self)
        self._next.setSingleShot(True)
        self._next.setInterval(_EVERY_MS)
        self._next.timeout.connect(self.look)
        self._next.start()

    @Slot()
    def look(self) -> None:
        """Collect the oldest generation that is due, and with it all younger ones."""
        counts, most = gc.get_count(), gc.get_threshold()
        due = [generation for generation in range(3) if counts[generation] > most[generation]]
        if due:
            gc.collect(due[-1])
        self._next.start()
