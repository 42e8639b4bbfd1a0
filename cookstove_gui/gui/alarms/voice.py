"""The voice: Qt TextToSpeech where the machine has a voice, else nothing."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QLocale

if TYPE_CHECKING:
    from PySide6.QtTextToSpeech import QTextToSpeech

_NO_VOICE = ("mock", "none")  # engines without a sound


class Voice:
    """Speaks; never raises, for an alarm is seen in any case."""

    def __init__(self, engine: str = "") -> None:
        """With `engine` another one than the machine's first."""
        self._engine = engine
        self._speech: QTextToSpeech | None = None
        self._was_looked_for = False

    def say(self, words: str) -> bool:
        """Say it, and tell whether there is a voice."""
        speech = self._found()
        if speech is None or speech.state() == type(speech).State.Error:
            return False
        speech.stop()
        speech.say(words)
        return True

    def stop(self) -> None:
        """Not a word more."""
        if self._speech is not None:
            self._speech.stop()

    def _found(self) -> "QTextToSpeech | None":
        if not self._was_looked_for:
            self._was_looked_for = True
            self._speech = _speech(self._engine)
        return self._speech


def _speech(engine: str) -> "QTextToSpeech | None":
    try:
        from PySide6.QtTextToSpeech import QTextToSpeech
    except ImportError:
        return None
    engines = [engine] if engine else [one for one in QTextToSpeech.availableEngines() if one not in _NO_VOICE]
    if not engines:
        return None
    speech = QTextToSpeech(engines[0])
    if speech.state() == QTextToSpeech.State.Error:
        return None
    speech.setLocale(QLocale(QLocale.Language.English))
    return speech
