"""How far out an arrival window must reach on this stove, by where its past arrivals fell among the futures'."""

from collections.abc import Sequence

import numpy as np

from cookstove_gui.forecast.answers import ARRIVAL_TAIL, LEVELS
from cookstove_gui.forecast.futures.forecaster import Forecaster
from cookstove_gui.forecast.futures.outlook import arrivals, oven_ahead
from cookstove_gui.forecast.learning.hindsight import OvenPast
from cookstove_gui.forecast.learning.track_record import arrival
from cookstove_gui.forecast.tracking.belief import doubted_readings
from cookstove_gui.stove.entries import Session

PACE = 0.08  # of one session's surplus of misses, by which the tail shrinks
# At least and at most: a heat that is known to have come is easier to foretell than one that is only wanted, so that
# windows which hold too often there are not drawn in.
TAILS = (0.04, ARRIVAL_TAIL)
MISSED = 1.0 - (LEVELS[-1] - LEVELS[0])  # share of arrivals that the windows shall miss


def arrival_ranks(teller: Forecaster, session: Session, past: OvenPast) -> list[float]:
    """Share of the futures that were there before the oven was, at each moment looked back on before it was.

    The heat is the one that the session seems to have been fired for.
    """
    if not past.places:
        return []
    last = teller.follow(session.entries, past.rows[-1].at)
    slips = {row.number for row in doubted_readings(last)}
    sound = np.array([row.number not in slips for row in past.rows])
    came = arrival(past.minutes[sound], past.kelvin[sound], past.aim.low)
    ranks = []
    for place in past.places:
        if came is None or past.minutes[place] >= came:
            break
        belief = teller.follow(session.entries, past.rows[place].at)
        ahead = oven_ahead(belief, band=past.aim)
        enters, _ = arrivals(ahead.minutes, ahead.kelvin[:, :, 0], past.aim)
        ranks.append(float(np.mean(enters < came - past.minutes[place])))
    return ranks


def next_tail(tail: float, ranks: Sequence[float]) -> float:
    """The share of the futures that a window leaves out at either end, after one more session.

    Source
    ------
    Adaptive conformal inference, Gibbs and Candès 2021.
    """
    if not ranks:
        return tail
    missed = float(np.mean([not tail <= rank <= 1.0 - tail for rank in ranks]))
    return float(np.clip(tail + PACE * (MISSED - missed), *TAILS))
