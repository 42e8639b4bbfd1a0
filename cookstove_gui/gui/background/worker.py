"""Slow work in a thread of its own: whole frozen inputs in, a whole result out, the newest request wins."""

import sys
import time
from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, QThread, QTimer, Signal, Slot

# How soon the working thread gives way to the window [s]; Python's own 5 ms, paid at nearly every call into Qt, would
# show as a sluggish field.
_GIVE_WAY = 0.0005
PATIENCE = 1.0  # s without a result, after which a stale one is better than none
_GATHER_MS = 40  # lets the window repaint what was typed before the thread takes its share of the time


class _Bench(QObject):
    """Lives in the thread and does the work there."""

    done = Signal(int, object)
    failed = Signal(int, object)

    def __init__(self, work: Callable[[Any], Any]) -> None:
        super().__init__()
        self._work = work

    @Slot(int, object)
    def do(self, number: int, inputs: Any) -> None:
        """Work on one set of inputs. Whatever goes wrong is raised again where the window can tell of it."""
        try:
            result = self._work(inputs)
        except Exception as error:
            self.failed.emit(number, error)
        else:
            self.done.emit(number, result)


class Worker(QObject):
    """Asks for inputs when its thread is free, so that only the newest state of things is worked on."""

    finished = Signal(object)  # the result
    failed = Signal(object)  # the exception
    _sent = Signal(int, object)  # the number of the request and its inputs

    def __init__(self, supply: Callable[[], Any], work: Callable[[Any], Any], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._supply = supply
        self._is_busy = False
        self._is_wanted = False
        self._number = 0
        self._told_at = time.monotonic()
        self._bench = _Bench(work)
        self._thread = QThread()
        self._bench.moveToThread(self._thread)
        self._sent.connect(self._bench.do)
        self._bench.done.connect(self._take)
        self._bench.failed.connect(self._fail)
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(_GATHER_MS)
        self._soon.timeout.connect(self._send)

    @property
    def is_busy(self) -> bool:
        """Whether something is being worked on or waits for it."""
        return self._is_busy or self._is_wanted

    def ask(self) -> None:
        """Work on the state of things as it is now; a result under way becomes stale and is dropped."""
        self._is_wanted = True
        if not self._is_busy and not self._soon.isActive():
            self._soon.start()

    def close(self) -> None:
        """End the thread; what is under way is finished and forgotten."""
        self._soon.stop()
        self._is_wanted = self._is_busy = False
        self._number += 1  # what still comes back, or was never begun, belongs to no request any more
        self._thread.quit()
        self._thread.wait()

    def _send(self) -> None:
        if not self._is_wanted:
            return
        self._is_wanted = False
        self._is_busy = True
        if not self._thread.isRunning():
            sys.setswitchinterval(_GIVE_WAY)
            self._thread.start(QThread.Priority.LowPriority)
        self._number += 1
        self._sent.emit(self._number, self._supply())

    @Slot(int, object)
    def _take(self, number: int, result: Any) -> None:
        if number != self._number:
            return
        self._is_busy = False
        starved = time.monotonic() - self._told_at > PATIENCE
        if starved or not self._is_wanted:
            self._told_at = time.monotonic()
            self.finished.emit(result)
        self._send()

    @Slot(int, object)
    def _fail(self, number: int, error: Exception) -> None:
        if number != self._number:
            return
        self._is_busy = False
        self.failed.emit(error)
        self._send()
