"""What this session's earlier futures have proved of the next ones: how wide they are, and whom they lean toward.

Each sound reading of the oven is put beside what was foretold of it from earlier ones. Misses larger than the futures
allowed make the next futures wider; and their middle leans toward plain forecasters by the share each has earned
(`merit.py`). MODEL.md has the equations.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

import numpy as np

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.forecast.model.merit import DONE_BY, LEADS, Merit, shares, shares_at
from cookstove_gui.forecast.model.plain import MINUTES, NO_RISES, Plain, Rises, climbing, continued

WIDTH_LEADS = (8.0, 45.0)  # min from a saying to the reading by which it tells of the width
FADES = 120.0  # min in which what a reading proved counts half
REMEMBERED = 240.0  # min after which it no longer counts
USUAL = 2.0  # so many readings' worth of trust that the usual widths are right
WIDTHS = (0.9, 2.5)  # factor of the widths, at least and at most
WORST = 4.5  # deviations of a miss that count at most, for the width
WORST_MERIT = 3.0  # the same, for the shares
READ_NOISE = 4.0  # K, of a reading that proves


@dataclass(frozen=True, slots=True)
class Held:
    """How one reading compares with what was foretold of it."""

    merit: Merit
    miss: float | None  # mean squared miss in foretold deviations; none if nothing was foretold in time


@dataclass(frozen=True, slots=True, eq=False)
class Said:
    """What was foretold of the oven's thermometer at one of its readings, at MINUTES from then."""

    at: datetime
    read: float  # K, of that reading
    middle: FloatArray  # (times,) K, by the physics
    deviation: FloatArray  # (times,) K
    apart: FloatArray  # (forecasters, times) K that the plain forecasters stand from that middle
    lean: FloatArray  # (times,) K that the middle was moved toward them
    held: Held


@dataclass(frozen=True, slots=True)
class Lean:
    """How far the oven's futures are moved, from the reading at which that was found."""

    at: datetime
    kelvin: tuple[float, ...]  # (times,) K at MINUTES


@dataclass(frozen=True, slots=True)
class Proof:
    """What the session has proved of its futures so far."""

    width: float = 1.0  # factor of their width
    lean: Lean | None = None


def say(
    before: Sequence[Said],
    at: datetime,
    read: float,
    foretold: tuple[FloatArray, FloatArray],
    since_lit: float,
    rises: Rises = NO_RISES,
    known: Merit | None = None,
) -> Said:
    """What is foretold at a sound reading, after the ones before it.

    Parameters
    ----------
    before : sequence of Said
        At the session's earlier sound readings, in order.
    foretold : (middle, deviation), arrays (times,)
        The physics' futures of the thermometer [K] at MINUTES.
    since_lit : float
        [min]
    known : Merit, optional
        What earlier sessions of this stove proved.
    """
    middle, deviation = foretold
    recent = [one for one in before if _minutes(one.at, at) <= REMEMBERED]
    minutes = np.array([_minutes(at, one.at) for one in recent] + [0.0])
    kelvin = np.array([one.read for one in recent] + [read])
    apart = np.nan_to_num(continued(minutes, kelvin, since_lit, rises) - middle)
    apart[Plain.RISES] *= climbing(minutes, kelvin)
    held = _held(recent, at, read)
    merit = _faded([*((one.at, one.held) for one in recent), (at, held)])
    found = shares(merit if known is None else merit.plus(known))
    lean = (shares_at(found, MINUTES) * apart).sum(axis=0)
    return Said(at, read, middle, deviation, apart, lean, held)


def proof_of(said: Sequence[Said]) -> Proof:
    """What sayings, in order of time, have proved by the last of them; until the next reading it stays so."""
    misses, trust = 0.0, 0.0
    for one in said:
        if one.held.miss is not None:
            weight = _weight(one.at, said[-1].at)
            misses += weight * one.held.miss
            trust += weight
    width = math.sqrt((USUAL + misses) / (USUAL + trust))
    lean = Lean(said[-1].at, tuple(said[-1].lean.tolist())) if said else None
    return Proof(min(max(width, WIDTHS[0]), WIDTHS[1]), lean)


def merit_of(said: Sequence[Said]) -> Merit:
    """What a session's sayings have proved, all counting alike."""
    merit = Merit()
    for one in said:
        merit = merit.plus(one.held.merit)
    return merit


def leaning(proof: Proof, now: datetime, minutes: FloatArray) -> FloatArray:
    """How far (times,) [K] the oven's futures are moved at `minutes` from now, whatever is done now."""
    if proof.lean is None:
        return np.zeros(len(minutes))
    since = _minutes(proof.lean.at, now) + minutes
    last = float(MINUTES[-1])
    fading = np.clip((DONE_BY - since) / (DONE_BY - last), 0.0, 1.0)
    return np.interp(since, MINUTES, proof.lean.kelvin) * fading


def _held(before: Sequence[Said], at: datetime, read: float) -> Held:
    """A reading beside what was foretold of it from earlier ones."""
    gaps = np.array([_minutes(one.at, at) for one in before])
    misses: list[float] = []
    apart, towards = np.array(Merit().apart), np.array(Merit().towards)
    for lead, (least, most) in enumerate(LEADS):
        tried = [one for one, gap in zip(before, gaps, strict=True) if least <= gap < most]
        for one in tried:
            gap = _minutes(one.at, at)
            miss = read - float(np.interp(gap, MINUTES, one.middle))
            variance = float(np.interp(gap, MINUTES, one.deviation)) ** 2 + READ_NOISE**2
            distance = np.array([np.interp(gap, MINUTES, row) for row in one.apart])
            weight = min(1.0, WORST_MERIT**2 * variance / max(miss * miss, 1e-9)) / variance / len(tried)
            apart[lead] += weight * np.outer(distance, distance)
            towards[lead] += weight * miss * distance
            if WIDTH_LEADS[0] <= gap <= WIDTH_LEADS[1]:
                left = miss - float(np.interp(gap, MINUTES, one.lean))
                misses.append(min(left * left / variance, WORST**2))
    return Held(Merit(apart, towards), sum(misses) / len(misses) if misses else None)


def _faded(held: Sequence[tuple[datetime, Held]]) -> Merit:
    merit = Merit()
    for at, one in held:
        merit = merit.plus(one.merit, _weight(at, held[-1][0]))
    return merit


def _weight(at: datetime, now: datetime) -> float:
    ago = _minutes(at, now)
    return float(0.5 ** (ago / FADES)) if ago <= REMEMBERED else 0.0


def _minutes(start: datetime, end: datetime) -> float:
    return (end - start).total_seconds() / 60.0
