"""The field for “when”: empty means now; `7:05` or `-10` back-dates, and the clock stays pinned until it is changed."""

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from cookstove_gui.gui.widgets.modest_field import ModestField
from cookstove_gui.gui.widgets.signs import paint_pin
from cookstove_gui.gui.widgets.steps import px

_PIN = 24  # width that the pin takes, and that a click on it has [px of the design]
_NAME = "When it was: empty for now, a clock time, or minutes ago"
_TIP = "When: empty for now, 7:05, or -10 for ten minutes ago (Ctrl+T). It stays until you change it; Esc is now again."


class WhenField(ModestField):
    """A clock time or minutes ago; Escape, or a click on the pin, goes back to now."""

    left = Signal()

    def __init__(self, name: str = "when_field", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._is_pinned = False
        self.setObjectName(name)
        self.setPlaceholderText("now")
        self.setToolTip(_TIP)
        self.setMaxLength(12)
        self.textEdited.connect(lambda _text: self._show_pin(False))
        self._show_pin(False)

    @property
    def is_pinned(self) -> bool:
        """Whether the clock in it is kept for the entries to come."""
        return self._is_pinned

    def pin(self, clock: str) -> None:
        """Keep a clock for the entries to come."""
        self.setText(clock)
        self._show_pin(True)

    def release(self) -> None:
        """Back to now."""
        self.clear()
        self._show_pin(False)

    def take_over(self, other: "WhenField") -> None:
        """Say what another one says."""
        self.setText(other.text())
        self._show_pin(other.is_pinned)

    def _show_pin(self, wanted: bool) -> None:
        self._is_pinned = wanted
        self.setTextMargins(px(_PIN) - 8 if wanted else 0, 0, 0, 0)
        self.setAccessibleName(f"{_NAME}; {self.text()} stays until changed" if wanted else _NAME)
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape goes back to now."""
        if event.key() == Qt.Key.Key_Escape:
            self.release()
            self.left.emit()
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click on the pin goes back to now."""
        if self._is_pinned and event.position().x() < px(_PIN):
            self.release()
            self.left.emit()
        else:
            super().mousePressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The field, and the pin in it."""
        super().paintEvent(event)
        if self._is_pinned:
            side = px(16)
            box = QRectF(px(6), (self.height() - side) / 2, side, side)
            painter = QPainter(self)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint_pin(painter, box, self.palette().color(self.palette().ColorRole.Text))
