"""A text field that leaves the window's keys to the window: the log's undo, not an undo of its own."""

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit

# What a field is expected to do itself: copy, cut, paste, mark everything.
_OWN_KEYS = frozenset({Qt.Key.Key_A, Qt.Key.Key_C, Qt.Key.Key_V, Qt.Key.Key_X})


class ModestField(QLineEdit):
    """Some platforms give Ctrl+K, Ctrl+E and others to the field first; here the window's shortcuts win."""

    def event(self, event: QEvent) -> bool:
        """Claim no letter together with Ctrl but copy, cut, paste and mark all."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            with_ctrl = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
            is_letter = Qt.Key.Key_0 <= event.key() <= Qt.Key.Key_Z
            if with_ctrl and is_letter and event.key() not in _OWN_KEYS:
                event.ignore()
                return False
        return super().event(event)
