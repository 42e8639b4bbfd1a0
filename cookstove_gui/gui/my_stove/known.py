"""What the stove can do, worked out off the screen's thread for all parts of the page that show it."""

from PySide6.QtCore import QObject, Signal

from cookstove_gui.cooking.fires.burn_times import FALL
from cookstove_gui.desk.my_stove.abilities import UNASKED, Abilities, AbilitiesAsked, abilities_asked, stove_abilities
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink


class KnownAbilities(QObject):
    """One search of the past at a time; the latest result is kept."""

    changed = Signal()

    def __init__(self, link: DeskLink, past: PastSessions, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._fall = FALL
        self._found = UNASKED
        self._job: Job[AbilitiesAsked, Abilities] = Job(
            self,
            lambda: abilities_asked(self._desk, self._fall),
            lambda asked: stove_abilities(asked, past),
            self.show,
        )

    @property
    def found(self) -> Abilities:
        """What is known of the stove in use; nothing of another one."""
        asked = self._found.asked
        return self._found if asked is not None and asked.stove.name == self._desk.stove.name else UNASKED

    @property
    def fall(self) -> float:
        """How far a shut-down load is followed down [K]."""
        return self._fall

    def set_fall(self, fall: float) -> None:
        """Follow shut-down loads until another fall [K]."""
        self._fall = fall
        self.ask()

    def ask(self) -> None:
        """Search the past."""
        self._job.ask()

    def show(self, found: Abilities) -> None:
        """What a search has found."""
        self._found = found
        self.changed.emit()
