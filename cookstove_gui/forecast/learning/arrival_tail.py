"""How much of the futures' arrivals a window may leave out on this stove, by how its past windows held."""

from collections.abc import Sequence

import numpy as np

from cookstove_gui.forecast.answers import HORIZON_MINUTES, LEVELS, FloatArray
from cookstove_gui.forecast.futures.forecaster import Forecaster
from cookstove_gui.forecast.futures.outlook import arrivals, outlook_of, oven_ahead
from cookstove_gui.forecast.futures.projection import is_before
from cookstove_gui.forecast.learning.hindsight import OvenPast
from cookstove_gui.forecast.tracking.belief import doubted_readings
from cookstove_gui.stove.entries import HeatBand, Session

PACE = 0.16  # of one session's surplus of misses, by which the share left out changes
MISSED = 1.0 - (LEVELS[-1] - LEVELS[0])  # share of arrivals that the windows shall miss
# The share left out, at least and at most: a past session's heat is known to have come, and such a heat is easier to
# foretell than one that is only wanted, so windows that hold too often there are drawn in no further than to a fifth.
MISSED_RANGE = (0.04, MISSED)

Misses = tuple[list[bool], list[bool]]  # of windows, before and after the band was first reached


def arrival_misses(teller: Forecaster, session: Session, past: OvenPast) -> Misses:
    """Whether the windows told at each moment looked back on would have missed the oven's next arrival.

    The heat is the one that the session seems to have been fired for.
    """
    misses: Misses = ([], [])
    if not past.places:
        return misses
    whole = teller.follow(session.entries, past.rows[-1].at)
    slips = {row.number for row in doubted_readings(whole)}
    sound = np.array([row.number not in slips for row in past.rows])
    for place in past.places:
        waited = next_arrival(past.minutes[sound], past.kelvin[sound], past.minutes[place], past.aim)
        if waited is None:
            continue
        belief = teller.follow(session.entries, past.rows[place].at)
        told = outlook_of(oven_ahead(belief, band=past.aim), belief.stove, past.aim, ()).band.enters_min
        first, last = (np.inf if end is None else end for end in (told.p10, told.p90))
        misses[0 if is_before(belief, past.aim) else 1].append(not first <= waited <= last)
    return misses


def next_arrival(clock: FloatArray, kelvin: FloatArray, now: float, band: HeatBand) -> float | None:
    """Minutes from `now` until readings (readings,) joined by straight lines come into a band.

    Infinite where they end below it or come later than futures reach; none where the oven is in it, and where they end
    above it, on their way there.
    """
    later = clock > now
    if not later.any():
        return None
    path = np.append(np.interp(now, clock, kelvin), kelvin[later])
    enters = float(arrivals(np.append(0.0, clock[later] - now), path[None, :], band)[0][0])
    if enters == 0.0 or (np.isinf(enters) and path[-1] > band.high):
        return None
    return enters if enters <= HORIZON_MINUTES else float("inf")


def next_missed(missed: tuple[float, float], misses: tuple[Sequence[bool], Sequence[bool]]) -> tuple[float, float]:
    """The shares of the futures' arrivals that a window leaves out, before and after, after one more session.

    Source
    ------
    Adaptive conformal inference, Gibbs and Candès 2021.
    """
    before, after = (
        float(np.clip(share + PACE * (MISSED - np.mean(held)), *MISSED_RANGE)) if held else share
        for share, held in zip(missed, misses, strict=True)
    )
    return before, after
