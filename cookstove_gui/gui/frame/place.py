"""Where the window stood, how large it was and which page was open, kept in the logbook and never off the screen."""

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMainWindow

from cookstove_gui.gui.frame.page_words import PAGES
from cookstove_gui.logbook.logbook import Logbook

_MAXIMISED = Qt.WindowState.WindowMaximized
USUAL = (1280, 750)  # px of the inside


class Place:
    """Kept when the window closes, taken up when it opens."""

    def __init__(self, window: QMainWindow, logbook: Logbook) -> None:
        self._window = window
        self._logbook = logbook

    @property
    def page(self) -> str:
        """The page that was open."""
        kept = self._logbook.setting("page", "cook")
        return kept if kept in {key for key, _, _ in PAGES} else "cook"

    def restore(self) -> None:
        """Size and place as they were, as far as the screens of today hold them."""
        kept = _rectangle(self._logbook.setting("window", ""))
        screens = [screen.availableGeometry() for screen in QGuiApplication.screens()]
        room = self._window.screen().availableGeometry()
        if kept is not None:
            room = next((screen for screen in screens if screen.contains(kept.center())), room)
        size = kept.size() if kept is not None else None
        wide, high = (size.width(), size.height()) if size is not None else USUAL
        wide, high = min(wide, room.width()), min(high, room.height())
        self._window.resize(wide, high)
        if kept is not None:
            left = min(max(kept.left(), room.left()), room.right() + 1 - wide)
            top = min(max(kept.top(), room.top()), room.bottom() + 1 - high)
            self._window.move(left, top)
        if self._logbook.setting("window_state", "") == "maximised":
            self._window.setWindowState(self._window.windowState() | _MAXIMISED)

    def keep(self, page: str) -> None:
        """Keep them for the next time; the place is that of the frame, which `move` takes."""
        usual = self._window.normalGeometry() if self._window.isMaximized() else self._window.geometry()
        usual.translate(self._window.pos() - self._window.geometry().topLeft())
        self._logbook.set_setting("window", f"{usual.x()} {usual.y()} {usual.width()} {usual.height()}")
        self._logbook.set_setting("window_state", "maximised" if self._window.isMaximized() else "")
        self._logbook.set_setting("page", page)


def _rectangle(words: str) -> QRect | None:
    try:
        left, top, wide, high = (int(number) for number in words.split())
    except ValueError:
        return None
    return QRect(left, top, wide, high) if wide > 0 and high > 0 else None
