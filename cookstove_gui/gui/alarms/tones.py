"""The sounds of alarms, worked out when they are needed: struck bars that fade, as samples between -1 and 1."""

from enum import Enum

import numpy as np
from numpy.typing import NDArray

PEAK = 0.7  # of full scale, so that no player clips
_FADE_IN_S = 0.004  # no click at the stroke
_LASTS_S = 0.55  # one stroke
_DECAY_S = 0.16
_PARTIALS = ((1.0, 1.0), (2.76, 0.35), (5.40, 0.12))  # (frequency, loudness) of a free bar's first three modes


class Tone(Enum):
    """What is heard: strokes as frequencies in Hz, in order."""

    ACT = (880.0, 1174.7, 880.0)  # food or fire needs the cook
    NOTE = (659.3,)  # a reading, a heat reached


def lasts_s(tone: Tone) -> float:
    """How long the sound lasts [s]."""
    return _LASTS_S * len(tone.value)


def samples(tone: Tone, rate: int) -> NDArray[np.float32]:
    """The sound at a sample rate [Hz], shape (samples,).

    Source: frequencies of the modes of a free uniform bar, 1 : 2.756 : 5.404 (Fletcher and Rossing, The Physics of
    Musical Instruments, 1991), from memory; the rest is chosen by ear.
    """
    one = np.concatenate([_stroke(frequency, rate) for frequency in tone.value])
    return np.asarray(PEAK * one / np.max(np.abs(one)), dtype=np.float32)


def _stroke(frequency: float, rate: int) -> NDArray[np.float64]:
    at = np.arange(round(_LASTS_S * rate)) / rate
    made = np.zeros_like(at)
    for place, (ratio, loud) in enumerate(_PARTIALS):
        if frequency * ratio < rate / 2:
            made += loud * np.exp(-at * (1 + place) / _DECAY_S) * np.sin(2 * np.pi * frequency * ratio * at)
    rise = np.minimum(at / _FADE_IN_S, 1.0)
    fall = np.minimum((_LASTS_S - at) / _FADE_IN_S, 1.0)
    return np.asarray(made * rise * fall)
