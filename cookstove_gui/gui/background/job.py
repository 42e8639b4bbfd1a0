"""Slow work off the screen's thread: whole frozen inputs in, a whole result out, the newest request wins."""

import atexit
import sys
import threading
import time
from collections.abc import Callable
from typing import Any, Generic, TypeVar
from weakref import WeakSet

from PySide6.QtCore import QCoreApplication, QDeadlineTimer, QObject, QThread, QTimer, Signal, Slot

from cookstove_gui.errors import Problem

Asked = TypeVar("Asked")
Found = TypeVar("Found")

# How soon the working thread gives way to the window [s]. Python's own 5 ms, paid at nearly every call into Qt, would
# make typing feel sluggish.
_GIVE_WAY = 0.0005
PATIENCE = 1.0  # s without a result, after which a stale one is better than none
_LATE_MS = 1_000  # after which a job that must be quick is told to be late
_HUNG_MS = 10_000  # and after which it is left behind and begun again
_begun: "WeakSet[_Run[Any, Any]]" = WeakSet()
_left_behind: list[QThread] = []  # hung threads: Qt ends the program if one is destroyed while it runs
_GATHER_MS = 40  # lets the window repaint what was typed before the thread takes its share of the time


class _Run(QThread, Generic[Asked, Found]):
    """One request at work in a thread of its own."""

    def __init__(self, work: Callable[[Asked], Found], asked: Asked, cancelled: threading.Event) -> None:
        super().__init__()
        self.cancelled = cancelled
        self._work = work
        self._asked = asked
        self._found: list[Found] = []
        self._error: Exception | None = None
        self.is_done = False

    def run(self) -> None:
        """Work; whatever goes wrong is kept, to be raised where the window can report it."""
        try:
            self._found.append(self._work(self._asked))
        except Exception as error:
            self._error = error
        self.is_done = True

    def result(self) -> Found:
        """The result, or the exception that the work ended with."""
        if self._error is not None:
            raise self._error
        return self._found[0]


class Job(QObject, Generic[Asked, Found]):
    """One kind of slow work: at most one request runs, one more may wait, and no thread lives longer than its request.

    Parameters
    ----------
    parent : QObject
        What the job belongs to; `close_jobs` finds it there.
    inputs : callable
        The newest inputs, asked for when the thread is free; None means that there is nothing to work on.
    work : callable
        Inputs to result, run in the thread. It may call `report` and look at `is_cancelled`.
    show : callable
        Takes the result, in the window's thread.
    late : callable, optional
        For work that must be quick: called when a result is overdue, with True if the thread has been given up and a
        new one takes its place. Without it the work may take as long as it needs.
    refuse : callable, optional
        Takes the sentence of a `Problem`. Without it, and for any other exception, the exception goes on to the
        window, which reports it.
    """

    progressed = Signal(int, int)  # steps done, of how many

    def __init__(
        self,
        parent: QObject,
        inputs: Callable[[], Asked | None],
        work: Callable[[Asked], Found],
        show: Callable[[Found], object],
        refuse: Callable[[str], None] | None = None,
        late: Callable[[bool], None] | None = None,
    ) -> None:
        super().__init__(parent)
        self._late = late
        self._is_late = False
        self._overdue = QTimer(self)
        self._overdue.setSingleShot(True)
        self._overdue.timeout.connect(self._tell_late)
        self._inputs, self._work, self._show, self._refuse = inputs, work, show, refuse
        self._run: _Run[Asked, Found] | None = None
        self._is_wanted = False
        self._cancelled = threading.Event()
        self._shown_at = time.monotonic()
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(_GATHER_MS)
        self._soon.timeout.connect(self._start)
        app = QCoreApplication.instance()
        if app is not None:
            app.aboutToQuit.connect(self.close)

    @property
    def is_busy(self) -> bool:
        """Whether a request is being worked on or waits."""
        return self._run is not None or self._is_wanted

    def ask(self) -> None:
        """Work on the inputs as they are now; a result under way becomes stale and is dropped."""
        self._is_wanted = True
        if self._run is None and not self._soon.isActive():
            self._soon.start()

    def cancel(self) -> None:
        """Drop a waiting request and ask the work under way to give up; what that returns is shown all the same."""
        self._soon.stop()
        self._is_wanted = False
        self._cancelled.set()

    def is_cancelled(self) -> bool:
        """Whether the work should give up; may be called in the thread."""
        return self._cancelled.is_set()

    def report(self, done: int, total: int) -> None:
        """Tell how far the work is; may be called in the thread."""
        self.progressed.emit(done, total)

    @Slot()
    def close(self) -> None:
        """Cancel, wait for the thread to end and forget its result; the job can be asked again later."""
        self._soon.stop()
        self._overdue.stop()
        self._is_wanted = False
        run, self._run = self._run, None
        if run is not None:
            self._cancelled.set()
            has_ended(run, _HUNG_MS)

    @Slot()
    def _tell_late(self) -> None:
        run = self._run
        if run is None or self._late is None or run.is_done:
            return
        if not self._is_late:
            self._is_late = True
            self._overdue.start(_HUNG_MS - _LATE_MS)
            self._late(False)
            return
        _left_behind.append(run)
        self._run = None
        self._is_wanted = True
        self._late(True)
        self._start()

    @Slot()
    def _start(self) -> None:
        if self._run is not None or not self._is_wanted:
            return
        self._is_wanted = False
        asked = self._inputs()
        if asked is None:
            return
        self._cancelled.clear()
        sys.setswitchinterval(_GIVE_WAY)
        self._run = _Run(self._work, asked, self._cancelled)
        _begun.add(self._run)
        self._run.finished.connect(self._take)
        if self._late is not None:
            self._is_late = False
            self._overdue.start(_LATE_MS)
        self._run.start(QThread.Priority.LowPriority)

    @Slot()
    def _take(self) -> None:
        run = self._run
        if run is None or not run.is_done:
            return  # an earlier run, closed before it was done
        run.wait()
        self._overdue.stop()
        self._run = None
        try:
            found = run.result()
        except Problem as problem:
            if self._refuse is None:
                raise
            self._refuse(problem.sentence)
        else:
            starved = time.monotonic() - self._shown_at > PATIENCE
            if starved or not self._is_wanted:
                self._shown_at = time.monotonic()
                self._show(found)
        finally:
            self._start()


def has_ended(thread: QThread, within_ms: int) -> bool:
    """Wait for a thread that was told to end; one that hangs is left behind, and never destroyed."""
    if thread.wait(QDeadlineTimer(within_ms)):
        return True
    _left_behind.append(thread)
    return False


def some_hang() -> bool:
    """Whether a thread that was given up is still running; the program can then only end without waiting for it."""
    return any(thread.isRunning() for thread in _left_behind)


def close_jobs(inside: QObject) -> None:
    """End all jobs that belong to a window or page; no thread is left running."""
    for job in inside.findChildren(Job):
        job.close()


def end_all() -> None:
    """End every thread there is: a script that never ran the event loop to its end must not leave one to Qt."""
    for run in tuple(_begun):
        run.cancelled.set()
        run.wait(QDeadlineTimer(_HUNG_MS))


atexit.register(end_all)
