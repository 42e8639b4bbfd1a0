"""The desk as Qt sees it: what changed in one turn of the event loop, announced once."""

from PySide6.QtCore import QObject, QTimer, Signal

from cookstove_gui.desk import Changed, Desk


class DeskLink(QObject):
    """Gathers the desk's announcements; views connect to `changed` and redraw only what it names."""

    changed = Signal(object)  # Changed
    restore_wanted = Signal(object)  # Path of a backup; whoever opened the logbook closes it first
    session_wanted = Signal(int)  # its number: the Logbook opens it
    alarm_choices_wanted = Signal()  # how alarms are heard is to be chosen
    time_passed = Signal()  # whatever shows the time of day shows it again

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self._gathered = Changed()
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
        self._gathered = self._gathered | changed
        if not self._turn.isActive():
            self._turn.start()

    def _tell(self) -> None:
        gathered, self._gathered = self._gathered, Changed()
        self.changed.emit(gathered)
