"""The voice: Qt TextToSpeech where the machine has a voice, else nothing.

An engine may take seconds to begin and asks for all its voices then. It does so in a thread of its own, and is called
there by Qt alone: Python holds the interpreter's lock for as long as a call lasts, and the window would stand still.
"""

import atexit
from typing import TYPE_CHECKING

from PySide6.QtCore import Q_ARG, QLocale, QMetaObject, QObject, Qt, QThread, Signal

from cookstove_gui.gui.background.job import has_ended

if TYPE_CHECKING:
    from PySide6.QtTextToSpeech import QTextToSpeech

_NO_VOICE = ("mock", "none")  # engines without a sound
_HUNG_MS = 2_000  # after which an engine that doesn't end is left behind, so that the window can close
_running: list[tuple[QThread, "QTextToSpeech"]] = []  # neither may be destroyed before its thread has ended


class Voice(QObject):
    """Speaks; never raises, for an alarm is seen in any case."""

    lost = Signal()  # the engine could not begin, or failed
    _said, _stopped, _in_language = Signal(str), Signal(), Signal(QLocale)

    def __init__(self, engine: str = "") -> None:
        """With `engine` another one than the machine's first."""
        super().__init__()
        self._engine = engine
        self._speech: QTextToSpeech | None = None
        self._thread: QThread | None = None
        self._has_failed = False

    @property
    def is_there(self) -> bool:
        """Whether the machine has one, as far as is known."""
        return not self._has_failed and bool(self._engine or _first_engine())

    def get_ready(self) -> None:
        """Let the engine begin, so that it can speak at once later."""
        if self._speech is None and self.is_there:
            self._begin()

    def say(self, words: str) -> None:
        """Say it instead of what is being said, as soon as the engine can; nothing where there is none."""
        if not self.is_there:
            return
        self.get_ready()
        self._stopped.emit()
        self._said.emit(words)

    def stop(self) -> None:
        """Not a word more."""
        self._stopped.emit()

    def close(self) -> None:
        """Not a word more, and no thread left."""
        self.stop()
        if self._thread is not None and self._speech is not None:
            _end(self._thread, self._speech)
        self._speech = self._thread = None

    def _begin(self) -> None:
        from PySide6.QtTextToSpeech import QTextToSpeech

        self._thread, self._speech = QThread(), QTextToSpeech("none")
        self._thread.setObjectName("voice")
        self._speech.moveToThread(self._thread)
        self._thread.finished.connect(self._speech.deleteLater)
        self._said.connect(self._speech.say)
        self._stopped.connect(self._speech.stop)
        self._in_language.connect(self._speech.setLocale)
        self._speech.errorOccurred.connect(self._fail)
        self._thread.start()
        _running.append((self._thread, self._speech))
        engine = Q_ARG(str, self._engine or _first_engine())
        QMetaObject.invokeMethod(self._speech, "setEngine", Qt.ConnectionType.QueuedConnection, engine)
        self._in_language.emit(QLocale(QLocale.Language.English))

    def _fail(self, *_reason: object) -> None:
        self._has_failed = True
        self.lost.emit()


def _end(thread: QThread, speech: "QTextToSpeech") -> None:
    thread.quit()
    if has_ended(thread, _HUNG_MS):
        _running.remove((thread, speech))


def _end_all() -> None:
    """As a script does that never closes its window."""
    for thread, speech in tuple(_running):
        _end(thread, speech)


atexit.register(_end_all)


def _first_engine() -> str:
    """The machine's first engine with a sound; empty where it has none, or lacks Qt TextToSpeech or its libraries."""
    try:
        from PySide6.QtTextToSpeech import QTextToSpeech
    except ImportError:
        return ""
    return next((one for one in QTextToSpeech.availableEngines() if one not in _NO_VOICE), "")
