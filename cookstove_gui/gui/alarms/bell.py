"""The bell: Qt Multimedia where the machine has it and something to play on, else the system's own beep."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtWidgets import QApplication

from cookstove_gui.gui.alarms.tones import Tone, lasts_s, samples

if TYPE_CHECKING:
    from PySide6.QtMultimedia import QAudioDevice, QAudioFormat, QAudioSink


class Bell:
    """Rings; never raises, for an alarm is seen in any case."""

    def __init__(self) -> None:
        self._sink: QAudioSink | None = None
        self._buffer: QBuffer | None = None

    def ring(self, tone: Tone) -> float:
        """Ring; for how long it sounds [s], 0 where it is the system's own beep."""
        self.stop()
        device = _output()
        if device is None:
            QApplication.beep()
            return 0.0
        from PySide6.QtMultimedia import QAudioFormat, QAudioSink

        form = _format(device)
        as_float = form.sampleFormat() == QAudioFormat.SampleFormat.Float
        sound = pcm(tone, form.sampleRate(), form.channelCount(), as_float=as_float)
        self._buffer = QBuffer()
        self._buffer.setData(QByteArray(sound))
        self._buffer.open(QIODevice.OpenModeFlag.ReadOnly)
        self._sink = QAudioSink(device, form)
        self._sink.setBufferSize(len(sound))  # all of it at once: a window that is at work lets no stroke break off
        self._sink.start(self._buffer)
        return lasts_s(tone)

    def stop(self) -> None:
        """Not a sound more."""
        if self._sink is not None:
            self._sink.stop()
        self._sink = self._buffer = None


def _output() -> "QAudioDevice | None":
    """What to play on; none where the machine lacks Qt Multimedia, one of its libraries, or a loudspeaker."""
    try:
        from PySide6.QtMultimedia import QMediaDevices
    except ImportError:
        return None
    device = QMediaDevices.defaultAudioOutput()
    return None if device.isNull() else device


def _format(device: "QAudioDevice") -> "QAudioFormat":
    """What the device likes best, in a kind of sample that is written here."""
    from PySide6.QtMultimedia import QAudioFormat

    form = device.preferredFormat()
    if form.sampleFormat() not in (QAudioFormat.SampleFormat.Int16, QAudioFormat.SampleFormat.Float):
        form.setSampleFormat(QAudioFormat.SampleFormat.Int16)
    return form


def pcm(tone: Tone, rate: int, channels: int, *, as_float: bool = False) -> bytes:
    """The sound as a device wants it, the same on each channel: 16-bit whole numbers, or 32-bit floats."""
    found = samples(tone, rate).repeat(max(channels, 1))
    return found.astype("<f4").tobytes() if as_float else (found * 32767.0).astype("<i2").tobytes()
