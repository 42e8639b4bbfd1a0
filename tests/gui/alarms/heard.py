"""A bell and a voice that keep what was to be heard, for tests and for evenings played at speed."""

import wave
from pathlib import Path

from cookstove_gui.gui.alarms.bell import Bell, pcm
from cookstove_gui.gui.alarms.tones import Tone
from cookstove_gui.gui.alarms.voice import Voice

RATE = 22050  # Hz of the file


class HeardBell(Bell):
    """Rings without a sound; each ring lasts as long as it is told."""

    def __init__(self, lasts_s: float = 0.0) -> None:
        super().__init__()
        self.heard: list[Tone] = []
        self.lasts_s = lasts_s

    def ring(self, tone: Tone) -> float:
        self.heard.append(tone)
        return self.lasts_s

    def write(self, path: Path) -> None:
        """All that was heard, one after the other, as a file that any player opens."""
        with wave.open(str(path), "wb") as file:
            file.setnchannels(1)
            file.setsampwidth(2)
            file.setframerate(RATE)
            for tone in self.heard:
                file.writeframes(pcm(tone, RATE, 1))


class HeardVoice(Voice):
    """Says nothing, and keeps what it was to say."""

    def __init__(self) -> None:
        super().__init__("none")
        self.heard: list[str] = []
        self.is_ready = False

    def get_ready(self) -> None:
        self.is_ready = True

    def say(self, words: str) -> None:
        self.heard.append(words)
