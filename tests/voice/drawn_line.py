"""When a drawn line is first between two heats, and when it leaves them; told from its points alone."""

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.forecast.answers import FloatArray


def entering(minutes: FloatArray, kelvin: FloatArray, low: float, high: float) -> float | None:
    """Minutes until a line is first between two heats; None where it never is."""
    if low <= kelvin[0] <= high:
        return 0.0
    comes_from_below = bool(kelvin[0] < low)
    edge = low if comes_from_below else high
    return _passing(minutes, kelvin, edge, kelvin >= low if comes_from_below else kelvin <= high)


def leaving(minutes: FloatArray, kelvin: FloatArray, low: float, high: float) -> float | None:
    """Minutes until a line that is between two heats leaves them; None where it stays, 0 where it is not there."""
    outside = (kelvin < low) | (kelvin > high)
    if outside[0] or not outside.any():
        return 0.0 if outside[0] else None
    edge = low if kelvin[int(np.argmax(outside))] < low else high
    return _passing(minutes, kelvin, edge, outside)


def _passing(minutes: FloatArray, kelvin: FloatArray, edge: float, beyond: NDArray[np.bool_]) -> float | None:
    if not beyond.any():
        return None
    place = int(np.argmax(beyond))
    return float(np.interp(0.0, *_rising(kelvin[place - 1 : place + 1] - edge, minutes[place - 1 : place + 1])))


def _rising(heights: FloatArray, minutes: FloatArray) -> tuple[FloatArray, FloatArray]:
    return (heights, minutes) if heights[0] <= heights[1] else (heights[::-1], minutes[::-1])
