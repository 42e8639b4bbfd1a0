"""Walls and floors beside the stove: they say nothing about the fire, and are as hot as they were last read.

From then on they drift toward the room with growing doubt; a wall never read is as warm as the room.
"""

import numpy as np

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.forecast.model.observation import LastReading, noise_deviation, read
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import Spot, SpotKind, Stove

DRIFT_MINUTES = 120.0  # in which a wall's rise falls to a third once nothing is read; common practice, no source
LOST_DEVIATION = 15.0  # K, one standard deviation of a wall that nobody read; common practice, no source


def apart(stove: Stove, standing: tuple[Entry, ...]) -> tuple[tuple[Entry, ...], dict[str, LastReading]]:
    """The rows about the stove itself, and the latest usable reading of every spot beside it."""
    beside = {spot.name: index for index, spot in enumerate(stove.spots) if spot.kind is SpotKind.WALL}
    if not beside:
        return standing, {}
    rows = [row for row in standing if row.kind is Kind.READING and row.spot in beside]
    found = {
        row.spot: LastReading(row.at, reading.value)
        for row in rows
        if (reading := read(row, stove, beside[row.spot], 0.0)) is not None and reading.possible
    }
    return tuple(row for row in standing if row.kind is not Kind.READING or row.spot not in beside), found


def heat_beside(
    spot: Spot, last: LastReading | None, age_min: FloatArray | float, room: FloatArray, deviates: FloatArray
) -> FloatArray:
    """Equally likely heats [K] of a spot beside the stove.

    Parameters
    ----------
    spot : Spot
    last : LastReading or None
        Its latest reading, if there is one.
    age_min : float or array, shape (...)
        Minutes since that reading.
    room, deviates : array, shape (members, ...)
        The room [K], and standard normal deviates.
    """
    if last is None:
        return np.asarray(room + LOST_DEVIATION * deviates, dtype=np.float64)
    kept = np.exp(-np.maximum(age_min, 0.0) / DRIFT_MINUTES)
    noise = noise_deviation(spot, last.value)
    deviation = np.sqrt(noise**2 + ((1.0 - kept) * LOST_DEVIATION) ** 2)
    return np.asarray(room + kept * (last.value - room) + deviation * deviates, dtype=np.float64)
