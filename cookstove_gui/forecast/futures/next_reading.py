"""Which reading would narrow the arrival most, and by when to take it."""

import numpy as np

from cookstove_gui.forecast.answers import (
    HORIZON_MINUTES,
    JUST_READ_MINUTES,
    FloatArray,
    NextReading,
    Projection,
    oven_spot,
)
from cookstove_gui.forecast.futures.outlook import arrivals
from cookstove_gui.forecast.model.observation import noise_deviation
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import SpotKind

WAITS = (0, 5, 10, 15, 20, 30)  # min: when the reading might be taken
PATIENCE = 0.012  # share of narrowing that a minute's earlier answer is worth
DECIDED_MINUTES = 0.5  # min of spread below which the arrival is settled, and the heat in an hour is asked for instead
NOTHING_TO_READ = 15  # min, the wait named for a stove without spots


def next_reading(belief: Belief, projection: Projection, band: HeatBand) -> NextReading:
    """The spot and the time whose reading narrows the arrival window most.

    Parameters
    ----------
    belief : Belief
    projection : Projection
        That belief's futures, as `project` gives them for the band.
    band : HeatBand

    Notes
    -----
    Regression over the futures: if the arrival and a reading to come have correlation r, knowing the reading shrinks
    the arrival's standard deviation to sqrt(1 - r^2), r reduced by the reading's noise. Exact for normal futures.
    An oven that is in the band already asks for its leaving instead; one that cannot decide, for its heat in an hour.
    """
    oven = projection.of(oven_spot(belief.stove, projection))
    enters, stays = arrivals(projection.minutes, oven, band)
    aim = np.minimum(enters if np.mean(enters > 0.0) > 0.5 else stays, float(HORIZON_MINUTES))
    if np.std(aim) < DECIDED_MINUTES:
        aim = oven[:, int(np.searchsorted(projection.minutes, 60.0))]
    best: tuple[float, str, int, float] | None = None
    for wait in WAITS:
        column = int(np.searchsorted(projection.minutes, float(wait)))
        narrowed = _narrowing(projection.kelvin[:, column, :], aim, belief)
        for index, spot in enumerate(belief.stove.spots):
            if spot.kind in (SpotKind.ROOM, SpotKind.WALL) or (wait == 0 and _just_read(belief, spot.name)):
                continue
            worth = float(narrowed[index]) - PATIENCE * wait
            if best is None or worth > best[0]:
                best = (worth, spot.name, wait, float(narrowed[index]))
    if best is None:
        return NextReading(
            spot=belief.stove.spots[0].name if belief.stove.spots else "", in_min=NOTHING_TO_READ, narrows=0.0
        )
    return NextReading(spot=best[1], in_min=best[2], narrows=min(max(best[3], 0.0), 1.0))


def _narrowing(readings: FloatArray, aim: FloatArray, belief: Belief) -> FloatArray:
    """Share (spots,) by which each reading to come shrinks the aim's standard deviation."""
    apart = readings - readings.mean(axis=0)
    off = aim - aim.mean()
    noise = np.array([noise_deviation(spot, float(readings[:, i].mean())) for i, spot in enumerate(belief.stove.spots)])
    spread = np.mean(apart**2, axis=0)
    together = (apart * off[:, None]).mean(axis=0) ** 2
    squared = together / ((spread + noise**2) * max(float(np.mean(off**2)), 1e-12))
    return np.asarray(1.0 - np.sqrt(np.clip(1.0 - squared, 0.0, 1.0)), dtype=np.float64)


def _just_read(belief: Belief, spot: str) -> bool:
    last = belief.last_readings.get(spot)
    return last is not None and (belief.now - last.at).total_seconds() < 60.0 * JUST_READ_MINUTES
