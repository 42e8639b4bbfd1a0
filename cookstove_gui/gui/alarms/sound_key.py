"""How alarms are heard, in a word beside a plan; pressed, it asks for the choices."""

from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from cookstove_gui.desk.alarms.kept import alarm_settings, is_quiet
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.signs import Sign
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.phrases.alarms import sound_words

_LOW = 18  # of a key that stands in a line of words [px of the design]


class SoundKey(QWidget):
    """A bell, and what is heard when it rings."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._key = Key(high=_LOW)
        set_role(self._key, "quiet")
        self._key.setObjectName("sound_key")
        self._key.setToolTip("How alarms are heard: bell, voice, quiet hours, and which there are")
        self._key.clicked.connect(link.alarm_choices_wanted)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Preferred)
        row.addWidget(Sign("bell", look))
        row.addWidget(self._key)
        link.changed.connect(lambda changed: self._show() if changed.settings else None)
        link.time_passed.connect(self._show)
        self._show()

    def _show(self) -> None:
        settings = alarm_settings(self._desk)
        sounds = sound_words(settings.bell, settings.voice, is_quiet(self._desk, self._desk.clock()))
        self._key.setText(sounds)
        self._key.setAccessibleName(f"Alarms: {sounds}")
