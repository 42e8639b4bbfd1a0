"""The sounds, recorded to a file and read back: as long, as loud and as high as they should be, and nowhere clipped."""

import wave
from pathlib import Path

import numpy as np
import pytest
from scipy.io import wavfile

from cookstove_gui.gui.alarms.bell import pcm
from cookstove_gui.gui.alarms.tones import PEAK, Tone, samples

_STROKE_S = 0.55  # long enough to be heard, short enough that three of them are one signal
RATES = (22050, 44100, 48000)


@pytest.fixture(params=[(tone, rate) for tone in Tone for rate in RATES], ids=lambda one: f"{one[0].name} {one[1]}")
def recorded(request: pytest.FixtureRequest, tmp_path: Path) -> tuple[Tone, int, np.ndarray]:
    """A sound as it goes to the device, written as a WAV file and read back by another library."""
    tone, rate = request.param
    path = tmp_path / "alarm.wav"
    with wave.open(str(path), "wb") as file:
        file.setnchannels(2)
        file.setsampwidth(2)
        file.setframerate(rate)
        file.writeframes(pcm(tone, rate, 2))
    read_rate, heard = wavfile.read(path)
    assert read_rate == rate
    return tone, rate, heard / 32768.0


def test_it_lasts_as_long_as_its_strokes_and_both_sides_are_alike(recorded: tuple[Tone, int, np.ndarray]) -> None:
    tone, rate, heard = recorded
    assert len(heard) / rate == pytest.approx(_STROKE_S * len(tone.value), abs=0.002)
    assert np.array_equal(heard[:, 0], heard[:, 1])


def test_it_is_loud_and_does_not_clip(recorded: tuple[Tone, int, np.ndarray]) -> None:
    _, rate, heard = recorded
    assert np.abs(heard).max() == pytest.approx(PEAK, abs=0.001)
    struck = heard[: rate // 5, 0]
    loudness = 20 * np.log10(np.sqrt(np.mean(struck**2)))
    assert -20 < loudness < -3  # dB of full scale over the first fifth of a second


def test_each_stroke_has_its_pitch(recorded: tuple[Tone, int, np.ndarray]) -> None:
    tone, rate, heard = recorded
    each = len(heard) // len(tone.value)
    for place, wanted in enumerate(tone.value):
        stroke = heard[place * each : (place + 1) * each, 0]
        pitches = np.fft.rfftfreq(len(stroke), 1 / rate)
        assert pitches[np.abs(np.fft.rfft(stroke)).argmax()] == pytest.approx(wanted, abs=3.0)


def test_it_begins_and_ends_without_a_click(recorded: tuple[Tone, int, np.ndarray]) -> None:
    _, _, heard = recorded
    assert np.abs(heard[:3]).max() < 0.03
    assert np.abs(heard[-3:]).max() < 0.03
    assert np.abs(np.diff(heard[:, 0])).max() < 0.5


def test_floats_and_whole_numbers_are_the_same_sound() -> None:
    whole = np.frombuffer(pcm(Tone.ACT, 22050, 1), "<i2") / 32767.0
    floats = np.frombuffer(pcm(Tone.ACT, 22050, 1, as_float=True), "<f4")
    assert np.abs(whole - floats).max() < 1e-4
    assert np.array_equal(floats, samples(Tone.ACT, 22050))


def test_what_needs_hands_is_told_by_ear_from_what_does_not() -> None:
    assert len(samples(Tone.ACT, 22050)) > 2 * len(samples(Tone.NOTE, 22050))
    assert min(Tone.ACT.value) > max(Tone.NOTE.value)
