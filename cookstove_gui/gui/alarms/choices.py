"""How alarms are heard and what they call for: bell, voice, quiet hours, a try, and a key for each kind."""

from functools import partial

from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.cooking.supper.alarms import AlarmKind
from cookstove_gui.desk.alarms.kept import (
    alarm_settings,
    choose_bell,
    choose_kind,
    choose_quiet_hours,
    choose_voice,
    quiet_text,
)
from cookstove_gui.gui.alarms.ringer import Ringer
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.form import Field, say, words
from cookstove_gui.gui.widgets.key import Key, named_key
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import set_role
from cookstove_gui.phrases.alarms import heard_words

_KINDS = {
    AlarmKind.TAKE_OUT: "Out",
    AlarmKind.TURN: "Turn",
    AlarmKind.PUT_IN: "In",
    AlarmKind.LOOK_AT: "Look",
    AlarmKind.LEAVING_BAND: "Leaving the heat",
    AlarmKind.RELOAD: "Wood",
    AlarmKind.BAND_REACHED: "Heat reached",
    AlarmKind.STEP: "Other steps",
    AlarmKind.NEXT_READING: "Reading",
}


class AlarmChoices(QFrame):
    """Asked for from the list of what concerns the window."""

    def __init__(self, link: DeskLink, ringer: Ringer, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._ringer = ringer
        self.setObjectName("alarm_choices")
        set_role(self, "strip")
        self._bell = self._toggle("Bell", "alarm_bell", "Alarms ring")
        self._voice = self._toggle("Voice", "alarm_voice", "Alarms are spoken, where this machine has a voice")
        self._bell.clicked.connect(lambda on: choose_bell(self._desk, on))
        self._voice.clicked.connect(lambda on: choose_voice(self._desk, on))
        self._quiet = Field(
            "Quiet from, to",
            "alarm_quiet",
            "No bell and no voice in these hours, such as 22:00-6:30; empty for none",
            width=140,
            caption_width=120,
        )
        self._quiet.edit.setPlaceholderText("22:00-6:30")
        self._quiet.entered.connect(lambda text: self._quiet.takes(partial(choose_quiet_hours, self._desk, text)))
        self._rang = False
        self._heard = words(name="alarm_heard", role="soft")
        say(self._heard, "")
        test = named_key("Try it", "alarm_try", "Hear an alarm now", said="Hear an alarm now")
        close = named_key("Close", "alarm_choices_close", "Close these choices", said="Close these choices")
        test.clicked.connect(self._try)
        ringer.voice_lost.connect(self._show_heard)
        close.clicked.connect(self.hide)
        row, kinds, whole = QHBoxLayout(), QHBoxLayout(), QVBoxLayout(self)
        whole.setContentsMargins(2 * STEP, STEP // 2, 2 * STEP, STEP // 2)
        whole.setSpacing(STEP // 2)
        whole.addLayout(row)
        whole.addLayout(kinds)
        row.setSpacing(STEP)
        kinds.setSpacing(STEP // 2)
        kinds.addWidget(words("Call for", role="strong"))
        self._kinds = {kind: self._kind_key(kind, word) for kind, word in _KINDS.items()}
        for key in self._kinds.values():
            kinds.addWidget(key)
        kinds.addStretch(1)
        for part in (words("Alarms", role="strong"), self._bell, self._voice, self._quiet, test):
            row.addWidget(part)
        row.addWidget(self._heard, 1)
        row.addWidget(close)
        self.hide()
        link.changed.connect(lambda changed: self._show() if changed.settings else None)
        self._show()

    def _kind_key(self, kind: AlarmKind, word: str) -> Key:
        made = self._toggle(word, f"alarm_kind_{kind.name.lower()}", f"Whether there are alarms for: {word.lower()}")
        made.clicked.connect(lambda on: choose_kind(self._desk, kind, on))
        return made

    @staticmethod
    def _toggle(text: str, name: str, what: str) -> Key:
        made = named_key(text, name, what, said=what)
        made.setCheckable(True)
        return made

    def _show(self) -> None:
        settings = alarm_settings(self._desk)
        self._bell.setChecked(settings.bell)
        self._voice.setChecked(settings.voice)
        self._quiet.show_text(quiet_text(settings.quiet))
        for kind, key in self._kinds.items():
            key.setChecked(kind not in settings.left_out)

    def _try(self) -> None:
        self._rang, spoken = self._ringer.try_out()
        say(self._heard, heard_words(self._rang, spoken))

    def _show_heard(self) -> None:
        """A voice that was to be heard and turned out to be none."""
        if self._heard.text():
            say(self._heard, heard_words(self._rang, False))
