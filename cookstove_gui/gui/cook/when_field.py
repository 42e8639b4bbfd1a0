"""The field for “when”: empty means now; `7:05` or `-10` back-dates the next entry."""

from PySide6.QtWidgets import QWidget

from cookstove_gui.gui.widgets.modest_field import ModestField


class WhenField(ModestField):
    """A clock time or minutes ago."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("when_field")
        self.setPlaceholderText("now")
        self.setAccessibleName("When it was: empty for now, a clock time, or minutes ago")
        self.setToolTip("When: empty for now, 7:05, or -10 for ten minutes ago (Ctrl+T)")
        self.setMaxLength(12)
