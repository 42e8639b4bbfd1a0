"""The desk as Qt sees it: what changed in one turn of the event loop, told once, to whoever draws."""

from dataclasses import fields

from PySide6.QtCore import QObject, QTimer, Signal

from cookstove_gui.desk import Changed, Desk


class DeskLink(QObject):
    """Gathers the desk's announcements; views connect to `changed` and redraw only what it names."""

    changed = Signal(object)  # Changed

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self._gathered: Changed | None = None
        self._turn = QTimer(self)
        self._turn.setSingleShot(True)
        self._turn.setInterval(0)
        self._turn.timeout.connect(self._tell)
        self._unsubscribe = desk.subscribe(self._gather)

    def close(self) -> None:
        """Stop listening to the desk."""
        self._turn.stop()
        self._unsubscribe()

    def _gather(self, changed: Changed) -> None:
        self._gathered = either(self._gathered, changed)
        if not self._turn.isActive():
            self._turn.start()

    def _tell(self) -> None:
        gathered, self._gathered = self._gathered, None
        if gathered is not None:
            self.changed.emit(gathered)


def either(one: Changed | None, other: Changed) -> Changed:
    """What changed in one announcement or the other."""
    if one is None:
        return other
    return Changed(**{field.name: getattr(one, field.name) or getattr(other, field.name) for field in fields(Changed)})
