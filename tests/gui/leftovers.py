"""What a test has left behind: windows on the screen, threads and repeating timers still running."""

from collections.abc import Iterable

from PySide6.QtCore import QThread, QTimer
from PySide6.QtWidgets import QApplication


def left_behind(started: Iterable[QThread | QTimer]) -> list[str]:
    """Names of what is still there, of all that was started."""
    left = [f"window {widget.objectName()}" for widget in QApplication.topLevelWidgets() if widget.isVisible()]
    for one in started:
        try:
            running = one.isRunning() if isinstance(one, QThread) else one.isActive() and not one.isSingleShot()
        except RuntimeError:  # it went with its parent
            continue
        if running:
            left.append(f"running {type(one).__name__} {one.objectName()}".strip())
    return left
