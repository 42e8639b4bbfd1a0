"""Plain forecasters of the oven, which know no physics: a line, a half hour's straight fit, this stove's earlier rises.

Each continues the oven's sound readings, at MINUTES from the latest of them.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import IntEnum
from typing import Any

import numpy as np

from cookstove_gui.forecast.answers import FloatArray

MINUTES = np.linspace(0.0, 75.0, 16)  # min ahead that a saying tells of
LINE_GAP = (6.0, 60.0)  # min between the two readings that make the line, least and most
LINE_BEND = 40.0  # min in which the line bends off
FIT_BACK = 30.0  # min of readings that the straight fit goes through
FIT_LEAST = 3  # readings of it
FIT_BEND = 60.0  # min in which the straight fit bends off
SLOPE_BACK = 12.0  # min over which a rise's slope is taken
NEAR_HEAT = 35.0  # K by which two moments count as alike, one standard deviation
NEAR_SLOPE = 1.0  # K/min, the same
NEAR_CLOCK = 40.0  # min since lighting, the same
FEW_ALIKE = 0.3  # moments' worth of doubt that any earlier one is like this
CLIMBS = 1.0  # K/min of slope from which the oven is on a rise altogether


class Plain(IntEnum):
    """The plain forecasters, by their row."""

    LINE = 0  # through the latest two readings
    FIT = 1  # through the last half hour
    RISES = 2  # what this stove did before from such a heat, so long after lighting


@dataclass(frozen=True, slots=True, eq=False)
class Rise:
    """The oven over one past session."""

    since_lit: FloatArray  # (readings,) min
    kelvin: FloatArray  # (readings,)

    def to_json(self) -> dict[str, Any]:
        """As plain numbers."""
        return {"since_lit": self.since_lit.tolist(), "kelvin": self.kelvin.tolist()}

    @staticmethod
    def from_json(table: dict[str, Any]) -> "Rise":
        """From what `to_json` gave."""
        return Rise(np.asarray(table["since_lit"], dtype=np.float64), np.asarray(table["kelvin"], dtype=np.float64))


@dataclass(frozen=True, slots=True, eq=False)
class Rises:
    """Moments of a stove's past sessions, and how the oven went on from each."""

    since_lit: FloatArray  # (moments,) min
    kelvin: FloatArray  # (moments,)
    slope: FloatArray  # (moments,) K/min
    gained: FloatArray  # (moments, times) K over the moment's heat at MINUTES; NaN after the last reading

    @staticmethod
    def of(sessions: Sequence[Rise]) -> "Rises":
        """From past sessions; one with fewer than two readings tells nothing."""
        step = float(MINUTES[1])
        clocks, heats, slopes, gains = [np.zeros(0)], [np.zeros(0)], [np.zeros(0)], [np.zeros((0, len(MINUTES)))]
        for one in sessions:
            if len(one.since_lit) < 2:
                continue
            clock = np.arange(one.since_lit[0], one.since_lit[-1], step)
            heat = np.interp(clock, one.since_lit, one.kelvin)
            later = clock[:, None] + MINUTES
            gained = np.interp(later, one.since_lit, one.kelvin) - heat[:, None]
            clocks.append(clock)
            heats.append(heat)
            slopes.append((heat - np.interp(clock - SLOPE_BACK, one.since_lit, one.kelvin)) / SLOPE_BACK)
            gains.append(np.where(later <= one.since_lit[-1], gained, np.nan))
        return Rises(np.concatenate(clocks), np.concatenate(heats), np.concatenate(slopes), np.vstack(gains))


NO_RISES = Rises.of(())


def continued(minutes: FloatArray, kelvin: FloatArray, since_lit: float, rises: Rises) -> FloatArray:
    """What each plain forecaster says (forecasters, times) [K]; NaN where it has nothing to go by.

    Parameters
    ----------
    minutes, kelvin : arrays (readings,)
        Sound readings of the oven in order, at least one; minutes on any clock.
    since_lit : float
        Minutes from lighting to the latest of them.
    """
    said = np.full((len(Plain), len(MINUTES)), np.nan)
    ago = minutes - minutes[-1]
    slope = _latest_slope(ago, kelvin)
    if slope is not None:
        said[Plain.LINE] = kelvin[-1] + slope * _bent(LINE_BEND)
        gained = _gained_before(float(kelvin[-1]), slope, since_lit, rises)
        said[Plain.RISES] = kelvin[-1] + gained
    recent = ago >= -FIT_BACK
    if recent.sum() >= FIT_LEAST:
        pace, level = np.polyfit(ago[recent], kelvin[recent], 1)
        said[Plain.FIT] = level + pace * _bent(FIT_BEND)
    return said


def climbing(minutes: FloatArray, kelvin: FloatArray) -> float:
    """How far (0 to 1) the oven is on its first rise: at its hottest so far, and getting hotter."""
    slope = _latest_slope(minutes - minutes[-1], kelvin)
    if slope is None or kelvin[-1] < kelvin.max():
        return 0.0
    return min(max(slope / CLIMBS, 0.0), 1.0)


def _latest_slope(ago: FloatArray, kelvin: FloatArray) -> float | None:
    """[K/min] from the latest reading back to the one before it that is long enough ago."""
    least, most = LINE_GAP
    before = np.flatnonzero((ago <= -least) & (ago >= -most))
    return float((kelvin[before[-1]] - kelvin[-1]) / ago[before[-1]]) if len(before) else None


def _bent(bend: float) -> FloatArray:
    """Minutes (times,) that a straight line has gone on at MINUTES, if its slope fades with time constant `bend`."""
    return np.asarray(-bend * np.expm1(-MINUTES / bend), dtype=np.float64)


def _gained_before(kelvin: float, slope: float, since_lit: float, rises: Rises) -> FloatArray:
    """Mean gain (times,) [K] from earlier moments like this one (Nadaraya 1964, Watson 1964); NaN without any."""
    off = (
        ((rises.kelvin - kelvin) / NEAR_HEAT) ** 2
        + ((rises.slope - slope) / NEAR_SLOPE) ** 2
        + ((rises.since_lit - since_lit) / NEAR_CLOCK) ** 2
    )
    alike = np.exp(-0.5 * off)[:, None] * np.isfinite(rises.gained)
    total = alike.sum(axis=0)
    gained = (alike * np.nan_to_num(rises.gained)).sum(axis=0) / (total + FEW_ALIKE)
    return np.where(total > FEW_ALIKE, gained, np.nan)
