"""Which theme is on: the system's, or the one the cook chose; tells every painter when it changes."""

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QApplication

from cookstove_gui.gui.widgets.steps import TEXT_SIZES, fitting, scale, set_scale
from cookstove_gui.gui.widgets.theme import DAY, NIGHT, Theme, palette, style_sheet
from cookstove_gui.gui.widgets.type import font

MODES = ("system", "day", "night")


class Look(QObject):
    """The theme in use; one for the whole program, handed to every view."""

    changed = Signal()

    def __init__(self, app: QApplication, mode: str = "system") -> None:
        super().__init__(app)
        self._app = app
        self._mode = mode if mode in MODES else "system"
        self._text_size = 1.0
        self._inside = (1280, 750)
        self.theme: Theme = self._wanted()
        app.setStyle("Fusion")
        app.setFont(font())
        self._dress()
        app.styleHints().colorSchemeChanged.connect(self._follow)

    @property
    def mode(self) -> str:
        """`system`, `day` or `night`."""
        return self._mode

    def set_mode(self, mode: str) -> None:
        """Follow the system, or keep to day or night."""
        self._mode = mode if mode in MODES else "system"
        self._follow()

    @property
    def text_size(self) -> float:
        """The size of text the cook chose; 1 as designed."""
        return self._text_size

    def set_text_size(self, wanted: float) -> None:
        """Type and keys larger or smaller; within the sizes there are."""
        self._text_size = min(max(wanted, TEXT_SIZES[0]), TEXT_SIZES[-1])
        self.fit(*self._inside)

    def fit(self, width: int, height: int) -> None:
        """Draw at the step for the window's inside of that size [px]."""
        self._inside = (width, height)
        self.set_scale(fitting(width, height, self._text_size))

    def set_scale(self, wanted: float) -> None:
        """Draw type and keys at that many pixels for one of the design; every view is told."""
        if wanted == scale():
            return
        set_scale(wanted)
        self._dress()
        self.changed.emit()

    def _wanted(self) -> Theme:
        if self._mode == "system":
            dark = self._app.styleHints().colorScheme() is Qt.ColorScheme.Dark
            return NIGHT if dark else DAY
        return NIGHT if self._mode == "night" else DAY

    def _follow(self) -> None:
        wanted = self._wanted()
        if wanted is not self.theme:
            self.theme = wanted
            self._dress()
            self.changed.emit()

    def _dress(self) -> None:
        self._app.setPalette(palette(self.theme))
        self._app.setStyleSheet(style_sheet(self.theme))
