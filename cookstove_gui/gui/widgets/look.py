"""Which theme is on: the system's, or the one the cook chose; tells every painter when it changes."""

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QStyle

from cookstove_gui.gui.widgets.steps import TEXT_SIZES, fitting, scale, set_scale
from cookstove_gui.gui.widgets.theme import DAY, NIGHT, Theme, palette, plainer, style_sheet
from cookstove_gui.gui.widgets.type import fit_widths, font, keep_roles

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
        self._still = False
        self._accessibility: object | None = None
        self.theme: Theme = self._wanted()
        app.setStyle("Fusion")
        app.setFont(font())
        self._dress()
        self._hints = hints = app.styleHints()  # kept, for what belongs to it goes with it
        hints.colorSchemeChanged.connect(self._follow)
        self._accessibility = getattr(hints, "accessibility", lambda: None)()  # from Qt 6.10 on
        if self._accessibility is not None:
            self._accessibility.contrastPreferenceChanged.connect(self._follow)
            self._follow()

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
        fit_widths()
        self.changed.emit()

    @property
    def moves(self) -> bool:
        """Whether marks may slide to a new place: not if the cook, or the system, wants no motion."""
        lasts = QApplication.style().styleHint(QStyle.StyleHint.SH_Widget_Animation_Duration)
        if self._still or lasts == 0:
            return False
        if QGuiApplication.platformName() in ("windows", "cocoa"):  # the others do not pass the system's choice on
            return QApplication.isEffectEnabled(Qt.UIEffect.UI_AnimateMenu)
        return True

    @property
    def still(self) -> bool:
        """Whether the cook wants no motion."""
        return self._still

    def set_still(self, wanted: bool) -> None:
        """No motion, or as the system has it."""
        self._still = wanted

    def _wanted(self) -> Theme:
        dark = self._app.styleHints().colorScheme() is Qt.ColorScheme.Dark if self._mode == "system" else None
        plain = NIGHT if dark or self._mode == "night" else DAY
        return plainer(plain) if self._asks_for_contrast() else plain

    def _asks_for_contrast(self) -> bool:
        asked = getattr(self._accessibility, "contrastPreference", None)
        return asked is not None and asked() is Qt.ContrastPreference.HighContrast

    def _follow(self) -> None:
        wanted = self._wanted()
        if wanted != self.theme:
            self.theme = wanted
            self._dress()
            self.changed.emit()

    def _dress(self) -> None:
        self._app.setPalette(palette(self.theme))
        self._app.setStyleSheet(style_sheet(self.theme))
        keep_roles()
