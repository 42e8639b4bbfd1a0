"""Faults leave a trace on the disk, native crashes too, and the next start says that there was one.

Two files beside the logbook: `faults.log`, of which one older part is kept, and a lock that says whether a window has
the logbook open; a lock that was left behind means that the last one did not end properly.
"""

import faulthandler
import sys
from datetime import UTC, datetime
from pathlib import Path
from typing import TextIO

from PySide6.QtCore import QLockFile

_LARGEST = 256_000  # bytes, after which a new file is begun
_BADLY_ENDED = (
    "The program did not end properly last time, by a power cut or a fault. Everything that was saved is there."
)
_SECOND = "This logbook is open in another window too. Both may write; each shows the other's rows."


class FaultLog:
    """The trace of one logbook's faults; every method works without a disk that can be written to."""

    def __init__(self, folder: Path) -> None:
        self.path = folder / "faults.log"
        self._lock = QLockFile(str(folder / "window.lock"))
        self._stream: TextIO | None = None

    def open(self) -> None:
        """Begin to keep faults."""
        try:
            if self.path.exists() and self.path.stat().st_size > _LARGEST:
                self.path.replace(self.path.with_name("faults.old.log"))
            self._stream = self.path.open("a", encoding="utf-8", errors="backslashreplace")
            faulthandler.enable(self._stream)
        except OSError:
            self._stream = None

    def lock(self) -> str:
        """Say that a window is open; what the cook is told of the last end or of another window, if anything.

        It waits for the disk, so not before the window is painted; nothing can be lost before that.
        """
        was_left = Path(self._lock.fileName()).exists()
        if not self._lock.tryLock(0):
            # Without the right to write there is no lock either, and no other window to speak of.
            return _SECOND if self._lock.error() is QLockFile.LockError.LockFailedError else ""
        return _BADLY_ENDED if was_left else ""

    def write(self, details: str) -> None:
        """Keep a fault, and print it where there is a terminal; a closed one harms nothing."""
        line = f"{datetime.now(UTC):%Y-%m-%d %H:%M:%S} UTC\n{details}\n"
        for stream in (self._stream, sys.stderr):
            try:
                if stream is not None:
                    stream.write(line if stream is self._stream else details)
                    stream.flush()
            except (OSError, ValueError):
                continue

    def close(self) -> None:
        """End properly."""
        if self._stream is not None:
            if faulthandler.is_enabled():
                faulthandler.disable()
            self._stream.close()
            self._stream = None
        self._lock.unlock()
