"""Projections made again over a past session, knowing only what was known then, and what came true."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime

import numpy as np

from cookstove_gui.forecast.answers import LEAVE, LEVELS, FloatArray
from cookstove_gui.forecast.futures.projection import generic_width
from cookstove_gui.forecast.futures.tending import tended
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.character import CORRECTION_MINUTES, Corrections
from cookstove_gui.forecast.model.observation import oven_readings
from cookstove_gui.forecast.tracking.tracker import OVEN_SPOT, Tracker, rows_in_force
from cookstove_gui.stove.entries import Entry, HeatBand, Session
from cookstove_gui.stove.stove import Stove

AIM_HALF_WIDTH = 14.0  # K, half the band that a past session seems to have been fired for
AIM_LEVEL = 0.75  # of the oven's readings that lie below its middle
LEAST_READINGS = 3  # of the oven, for a session to be looked back on
QUESTIONS = 5  # at most so many moments a session are looked back on
LEADS = (15.0, 30.0, 60.0)  # min ahead that are looked back on
_LONG_AGO = datetime(1970, 1, 1, tzinfo=UTC)
PRIOR_CASTS = 12.0  # so many casts' worth of trust that the generic widths are right
COVERED = LEVELS[-1] - LEVELS[0]  # share of what came true that the windows shall hold
WIDTH_RANGE = (0.9, 1.8)  # factor of the generic widths
LEAST_RATIO = 0.2  # of a miss to half a window, below which misses count no smaller
LEAST_HALF = 1.0  # K, the least half-width that a miss is measured by


@dataclass(frozen=True, slots=True)
class Hindcast:
    """One projection of the oven: how far ahead, its quantiles and what came true [K], and its pinball loss."""

    lead: float
    quantiles: tuple[float, float, float]
    came_true: float
    loss: float


def pinball(values: FloatArray, came_true: float, levels: Sequence[float] = LEVELS) -> float:
    """Mean pinball (quantile) loss of quantiles at some levels.

    Source
    ------
    Koenker and Bassett 1978; checked against scoringrules and scikit-learn.
    """
    miss = came_true - np.asarray(values, dtype=np.float64)
    level = np.asarray(levels, dtype=np.float64)
    return float(np.mean(np.maximum(level * miss, (level - 1.0) * miss)))


def questions(rows: Sequence[Entry], most: int = QUESTIONS) -> list[int]:
    """Places of the readings after which a projection is looked back on: after the second, evenly spread."""
    places = list(range(1, len(rows) - 1))
    if len(places) <= most:
        return places
    return [places[int(at)] for at in np.linspace(0, len(places) - 1, most).round()]


def aimed_band(values: FloatArray) -> HeatBand:
    """The heat that a past session seems to have been fired for: where its hotter oven readings lie."""
    middle = float(np.quantile(values, AIM_LEVEL))
    return HeatBand(name="aimed at", low=middle - AIM_HALF_WIDTH, high=middle + AIM_HALF_WIDTH)


def hindcasts(tracker: Tracker, session: Session) -> list[Hindcast]:
    """Projections of one session's oven against its later readings, without a stove's own corrections."""
    past = oven_past(tracker.stove, session)
    return [cast for place in past.places for cast in hindcasts_at(tracker, session, past, place)]


@dataclass(frozen=True, slots=True, kw_only=True)
class OvenPast:
    """What a past session's oven readings say: the rows, their clock, and their heat."""

    rows: tuple[Entry, ...]
    minutes: FloatArray  # (readings,) since the epoch
    kelvin: FloatArray  # (readings,)
    places: tuple[int, ...]  # of the readings after which a projection is looked back on

    @property
    def aim(self) -> HeatBand:
        """The heat that the session seems to have been fired for: where its hotter readings lie."""
        return aimed_band(self.kelvin)


def oven_past(stove: Stove, session: Session) -> OvenPast:
    """The oven's readings of a session; no places in one with fewer than three of them."""
    standing = rows_in_force(session.entries, max((row.at for row in session.entries), default=_LONG_AGO))
    rows, values = oven_readings(stove, standing, OVEN_SPOT)
    minutes = np.array([row.at.timestamp() / 60.0 for row in rows], dtype=np.float64)
    places = questions(rows) if len(rows) >= LEAST_READINGS else []
    return OvenPast(rows=tuple(rows), minutes=minutes, kelvin=values, places=tuple(places))


def hindcasts_at(tracker: Tracker, session: Session, past: OvenPast, place: int) -> list[Hindcast]:
    """The projections made at one of the session's readings."""
    belief = tracker.follow(session.entries, past.rows[place].at)
    ahead = tended(belief, LEAVE, np.array([0.0, *LEADS]), past.aim)[1:, heat.AIR]
    casts: list[Hindcast] = []
    for lead, futures in zip(LEADS, ahead, strict=True):
        at = past.minutes[place] + lead
        if at > past.minutes[-1]:
            continue
        came_true = float(np.interp(at, past.minutes, past.kelvin))
        p10, p50, p90 = (float(q) for q in np.quantile(futures, LEVELS))
        width = float(generic_width(belief, past.aim, np.array([lead]))[0])
        p10, p90 = p50 + width * (p10 - p50), p50 + width * (p90 - p50)
        casts.append(Hindcast(lead, (p10, p50, p90), came_true, pinball(np.array([p10, p50, p90]), came_true)))
    return casts


def corrections_from(casts: Sequence[Hindcast]) -> Corrections:
    """The width at each lead that would have been right, drawn toward the generic one by PRIOR_CASTS.

    Notes
    -----
    The width is the split-conformal one: the 80 % quantile of |miss| / half-width, shrunk toward 1 on a logarithmic
    scale by the number of casts, and never outside 0.9 to 1.8.
    """
    widths = dict.fromkeys(CORRECTION_MINUTES, 1.0)
    for lead in LEADS:
        chosen = [cast for cast in casts if cast.lead == lead]
        if not chosen:
            continue
        trust = len(chosen) / (len(chosen) + PRIOR_CASTS)
        miss = np.array([cast.came_true - cast.quantiles[1] for cast in chosen])
        half = np.array([max(0.5 * (cast.quantiles[2] - cast.quantiles[0]), LEAST_HALF) for cast in chosen])
        ratio = float(np.quantile(np.abs(miss) / half, COVERED))
        widths[lead] = float(np.clip(np.exp(trust * np.log(max(ratio, LEAST_RATIO))), *WIDTH_RANGE))
    for beyond in CORRECTION_MINUTES:
        if beyond > LEADS[-1]:
            widths[beyond] = widths[LEADS[-1]]
    return Corrections(width=tuple(widths[lead] for lead in CORRECTION_MINUTES))
