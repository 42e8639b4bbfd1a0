"""How well what this session's earlier futures said has held, and what that tells of the next: how wide, how straight.

Each sound reading of the oven is put beside what was foretold of it from earlier ones. Misses larger than the futures
allowed make the next futures wider; and where a straight line through the latest readings, bent off, foretold them
better than the physics did, the middle of the futures leans toward that line. MODEL.md has the equations.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

import numpy as np

from cookstove_gui.forecast.answers import FloatArray

LEADS = (8.0, 45.0)  # min from a saying to the reading that proves it
SAID_MINUTES = np.linspace(0.0, LEADS[1], 10)  # min ahead that a saying tells of
FADES = 120.0  # min in which what a reading proved counts half
USUAL = 2.0  # so many readings' worth of trust that the usual widths are right
WIDTHS = (0.9, 2.5)  # factor of the widths, at least and at most
WORST = 4.5  # deviations of a miss that count at most
READ_NOISE = 4.0  # K, of a reading that proves
TREND_GAP = 6.0  # min, the least between the two readings that make the line
TREND_BEND = 80.0  # min in which the line bends off
REACH_MINUTES, REACH = (0.0, 15.0, 30.0, 60.0, 120.0), (0.5, 0.4, 0.25, 0.1, 0.0)  # share of the line in the middle
LINE_CHANCE = 0.05  # that the line is the better forecaster, before anything was proved
TAILS = 6.0  # degrees of freedom of a miss's Student t


@dataclass(frozen=True, slots=True)
class Said:
    """What was foretold of the oven's thermometer at one of its readings, at SAID_MINUTES from then."""

    at: datetime
    read: float  # K, of that reading
    middle: FloatArray  # (times,) K
    deviation: FloatArray  # (times,) K


@dataclass(frozen=True, slots=True)
class Line:
    """The straight line through the latest readings, bent off."""

    at: datetime
    level: float  # K
    slope: float  # K/min

    def ahead(self, minutes: FloatArray) -> FloatArray:
        """The line (times,) [K] so many minutes after its last reading."""
        return np.asarray(self.level + self.slope * TREND_BEND * -np.expm1(-minutes / TREND_BEND), dtype=np.float64)


@dataclass(frozen=True, slots=True)
class Proof:
    """What the session has proved of its futures so far."""

    width: float = 1.0  # factor of their width
    chance: float = LINE_CHANCE  # that the line is the better forecaster
    line: Line | None = None


def proof_of(said: Sequence[Said]) -> Proof:
    """What sayings, in order of time, have proved by the last of them; until the next reading it stays so."""
    misses, gains, trust = 0.0, 0.0, 0.0
    lines = [_line(said[: place + 1]) for place in range(len(said))]
    for place, one in enumerate(said):
        pairs = [
            (before, lines[number])
            for number, before in enumerate(said[:place])
            if LEADS[0] <= _minutes(before.at, one.at) <= LEADS[1]
        ]
        if not pairs:
            continue
        weight = 0.5 ** (_minutes(one.at, said[-1].at) / FADES)
        tried = [_tried(before, line, one) for before, line in pairs]
        misses += weight * sum(miss for miss, _ in tried) / len(tried)
        gains += weight * sum(gain for _, gain in tried) / len(tried)
        trust += weight
    width = math.sqrt((USUAL + misses) / (USUAL + trust))
    odds = LINE_CHANCE / (1.0 - LINE_CHANCE) * math.exp(gains)
    return Proof(min(max(width, WIDTHS[0]), WIDTHS[1]), odds / (1.0 + odds), lines[-1] if lines else None)


def leaning(proof: Proof, now: datetime, minutes: FloatArray, middle: FloatArray) -> FloatArray:
    """How far (times,) [K] the middle of the oven's futures, at `minutes` from now, leans toward the line."""
    if proof.line is None:
        return np.zeros(len(minutes))
    since = _minutes(proof.line.at, now) + minutes
    return np.asarray(proof.chance * _reach(since) * (proof.line.ahead(since) - middle), dtype=np.float64)


def _tried(before: Said, line: Line | None, one: Said) -> tuple[float, float]:
    """The squared miss of a saying in its own deviations, and how much likelier its line made the reading."""
    gap = np.array([_minutes(before.at, one.at)])
    middle = np.interp(gap, SAID_MINUTES, before.middle)
    variance = float(np.interp(gap[0], SAID_MINUTES, before.deviation)) ** 2 + READ_NOISE**2
    miss = one.read - float(middle[0])
    gain = 0.0
    if line is not None:
        lean = float((_reach(gap) * (line.ahead(gap) - middle))[0])
        gain = _log_likelihood(miss - lean, variance) - _log_likelihood(miss, variance)
    return min(miss * miss / variance, WORST**2), gain


def _log_likelihood(miss: float, variance: float) -> float:
    """Logarithm of Student's t of a miss, but for its constant."""
    return -0.5 * (TAILS + 1.0) * math.log1p(miss * miss / (TAILS * variance))


def _line(said: Sequence[Said]) -> Line | None:
    """Through the latest reading and the one before it that is long enough ago."""
    latest = said[-1]
    for before in reversed(said[:-1]):
        gap = _minutes(before.at, latest.at)
        if gap >= TREND_GAP:
            return Line(latest.at, latest.read, (latest.read - before.read) / gap)
    return None


def _reach(minutes: FloatArray) -> FloatArray:
    return np.interp(minutes, REACH_MINUTES, REACH)


def _minutes(start: datetime, end: datetime) -> float:
    return (end - start).total_seconds() / 60.0
