"""What the forecast answers with: plain frozen records, temperatures in kelvin, times in minutes from `now`.

A quantile that falls beyond the horizon of three hours is None.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from math import exp
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Stove

FloatArray: TypeAlias = NDArray[np.float64]
AHEAD = (15, 30, 60)  # min from now, unless others are asked for
JUST_READ_MINUTES = 3.0  # min since a reading within which the same spot is not asked for at once
HORIZON_MINUTES = 180  # min that answers look ahead
EVEN_CHANCE = 0.5  # from which on a heat is said to come, and a bake is called for; common practice, no source
LEVELS = (0.1, 0.5, 0.9)  # of p10, p50 and p90
# Of the futures' arrivals, the share that a window leaves out on a stove never seen, on the way to a band not yet
# reached and after it was; the first, which is less than a fifth, found on invented stoves.
ARRIVAL_MISSED = (0.14, 0.2)
NORMAL_P90 = 1.2815515655446004  # ninetieth percentile of the standard normal


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantiles:
    """Tenth, fiftieth and ninetieth percentile."""

    p10: float | None
    p50: float | None
    p90: float | None

    @classmethod
    def of(cls, values: FloatArray | Sequence[float]) -> "Quantiles":
        """Of equally likely finite values."""
        p10, p50, p90 = (float(value) for value in np.quantile(values, LEVELS))
        return cls(p10=p10, p50=p50, p90=p90)

    @classmethod
    def lognormal(cls, median: float, log_sd: float) -> "Quantiles":
        """Of a lognormal belief."""
        spread = exp(NORMAL_P90 * log_sd)
        return cls(p10=median / spread, p50=median, p90=median * spread)

    def times(self, factor: float) -> "Quantiles":
        """In another unit: each multiplied by a factor above 0."""
        p10, p50, p90 = (None if value is None else value * factor for value in (self.p10, self.p50, self.p90))
        return Quantiles(p10=p10, p50=p50, p90=p90)


@dataclass(frozen=True, slots=True, kw_only=True)
class Projection:
    """Equally likely futures of every spot."""

    now: datetime
    minutes: FloatArray  # (times,), rising from 0 to HORIZON_MINUTES
    spots: tuple[str, ...]  # (spots,)
    kelvin: FloatArray  # (futures, times, spots)
    arrival_missed: float = ARRIVAL_MISSED[1]  # share of the futures' arrivals that a window leaves out

    def of(self, spot: str) -> FloatArray:
        """Futures (futures, times) of one spot [K]."""
        return np.asarray(self.kelvin[:, :, self.spots.index(spot)], dtype=np.float64)


def oven_spot(stove: Stove, projection: Projection) -> str:
    """The spot that stands for the oven: its centre, else its first, else the hottest part there is."""
    return stove.oven_spot if stove.oven_spot in projection.spots else projection.spots[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptFire:
    """A fire that is fed to hold one heat of the oven after the other, and let go after the last."""

    heats: tuple[tuple[float, HeatBand], ...]  # until how many minutes from now, rising, and the heat held until then

    @property
    def until(self) -> float:
        """Minutes from now to which it is fed."""
        return self.heats[-1][0]

    def at(self, minutes: float) -> HeatBand:
        """The heat wanted so many minutes from now; after the last, the last one's."""
        return next((band for until, band in self.heats if minutes < until), self.heats[-1][1])


@dataclass(frozen=True, slots=True, kw_only=True)
class Trace:
    """The oven up to now, for drawing: as it is known now, or as it was believed then."""

    at: tuple[datetime, ...]  # (times,)
    p10: FloatArray  # (times,) K
    p50: FloatArray
    p90: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class Ahead:
    """The oven some minutes from now."""

    minutes: int
    p10: float
    p50: float
    p90: float
    chance_in_band: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BandOutlook:
    """Arrival in the band, and how long the oven stays once it is there.

    The line is the median of the futures' heats at each time, as the plot draws it: only where it is in the band is
    the oven likely there. `enters_min` counts the futures instead, and half of them may have been in the band before
    the line enters, or without its ever entering.
    """

    low: float
    high: float
    chance_reached_3h: float
    enters_min: Quantiles  # of the futures, never reached counting as later than the horizon
    stays_min: Quantiles
    line_enters_min: float | None  # when the drawn median line first is in the band; none: not within the horizon
    line_leaves_min: float | None  # when it first leaves again; none: beyond the horizon, or it never enters


@dataclass(frozen=True, slots=True, kw_only=True)
class Outlook:
    """The oven now and ahead."""

    now: datetime
    oven: Quantiles
    ahead: tuple[Ahead, ...]
    band: BandOutlook


@dataclass(frozen=True, slots=True, kw_only=True)
class Zone:
    """One spot's heat now with its doubt."""

    spot: str
    p10: float
    p50: float
    p90: float
    last_reading: float | None
    last_reading_age_min: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class NextReading:
    """The reading that would narrow the arrival most, and by when to take it."""

    spot: str
    in_min: int
    narrows: float  # expected share (0 to 1) by which the arrival window shrinks


@dataclass(frozen=True, slots=True, kw_only=True)
class DoubtedReading:
    """A reading that looks like a slip, with what was expected there [K]."""

    number: int  # of the entry
    typed: float
    expected_p10: float
    expected_p50: float
    expected_p90: float


class ActionKind(StrEnum):
    """What the cook might do now."""

    LEAVE = "leave"
    WOOD = "wood"  # value: kg
    KINDLING = "kindling"  # value: kg; it lights a fire that went out
    AIR = "air"  # value: fraction open
    BYPASS = "bypass"  # value: fraction open


@dataclass(frozen=True, slots=True, kw_only=True)
class Action:
    """One thing that might be done now, for a what-if outlook."""

    kind: ActionKind = ActionKind.LEAVE
    value: float = 0.0

    @property
    def is_fuel(self) -> bool:
        """Whether something is put into the fire."""
        return self.kind in (ActionKind.WOOD, ActionKind.KINDLING)


LEAVE = Action()


class TurnKind(StrEnum):
    """Moments at which the cook should act."""

    RELOAD_DUE = "reload due"
    FIRE_OUT = "fire out"
    DOOR_OPEN = "oven door open"
    AIR_OPEN = "air wide open"


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """A turn of the fire: how likely, and in how many minutes it needs the cook (0: now)."""

    kind: TurnKind
    chance: float
    in_min: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotPattern:
    """How much hotter (+) or cooler (-) a spot runs than the cooktop's mean, or the oven's centre [K].

    `usual` is the heat it had on the middle one of all walks; none before the first.
    """

    spot: str
    mean: float
    p10: float
    p90: float
    readings: int
    usual: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TrackRecord:
    """How the arrival windows given at least 30 minutes ahead turned out."""

    stove: str
    sessions: int
    projections: int
    inside_window: int
    typical_miss_min: float | None  # median absolute error of the arrivals said to be likely
    rows: tuple["RecordRow", ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordRow:
    """One projection and what came true; minutes from the moment it was made."""

    session: str
    made_at: datetime
    offset_minutes: int  # of the session's clock from UTC
    band: HeatBand
    enters_min: Quantiles
    likely_min: float | None  # when the drawn line entered the band; none: not within the horizon
    came_true_min: float | None  # none if no reading saw the heat come
    watched_min: float = 0.0  # until the session's last oven reading


class Verdict(StrEnum):
    """What came of a window."""

    INSIDE = "inside"
    EARLIER = "earlier"
    LATER = "later"
    NOT_REACHED = "not reached"  # the window closed before the last reading, and the heat had not come
    NEVER_AS_SAID = "never, as said"  # the window's end was open, and the heat did not come
    NO_CLAIM = "no claim"  # “not within three hours”, and indeed not: too little was said to count
    OPEN = "open"  # the readings ended before the window did
