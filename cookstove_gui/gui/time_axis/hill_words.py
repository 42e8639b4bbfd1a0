"""Where the words of a hill stand: in its strong part, or where its line leaves them room."""

from collections.abc import Sequence
from enum import Enum, auto
from itertools import pairwise

import numpy as np

from cookstove_gui.cooking.fit.fit import GOOD_CHANCE

_LOW = 0.48  # of the row: words stand clear above a hill lower than this
_HIGH = 0.58  # words stand clear below a hill higher than this
_TOP_OF_WORDS = 0.78  # those in the middle of a row stand clear below one higher than this
_PROBE = 4.0  # px from one place where words are tried to the next


class Stand(Enum):
    """How words stand to the line of a hill."""

    INSIDE = auto()  # in its strong part, in the middle of the row
    ABOVE = auto()
    BELOW = auto()
    OVER = auto()  # it crosses them


LOWERED = {Stand.INSIDE: 0, Stand.ABOVE: -6, Stand.BELOW: 6, Stand.OVER: -6}  # lowered by [px of the design]


def strong_parts(points: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Where a hill (place, chance) is at least GOOD_CHANCE, from edge to edge, straight between its points."""
    found: list[tuple[float, float]] = []
    start = points[0][0] if points and points[0][1] >= GOOD_CHANCE else None
    for (x, chance), (later, then) in pairwise(points):
        if (chance >= GOOD_CHANCE) == (then >= GOOD_CHANCE):
            continue
        crossing = x + (GOOD_CHANCE - chance) / (then - chance) * (later - x)
        if start is None:
            start = crossing
        else:
            found.append((start, crossing))
            start = None
    if start is not None:
        found.append((start, points[-1][0]))
    return found


def place_words(
    points: Sequence[tuple[float, float]], wide: float, ends: tuple[float, float], gap: float
) -> tuple[float, Stand]:
    """Where words of a width begin, and how they stand to the hill's line.

    In the first strong part if they fit; else where the hill is low, after it or before; else at the right end.
    """
    left, right = ends
    strong = strong_parts(points)
    for start, end in strong:
        first, last = max(start, left), min(end, right)
        if last - first >= wide + 1.5 * gap:
            lowest, _ = _heights(points, first + gap, first + gap + wide)
            return first + gap, Stand.INSIDE if lowest >= _TOP_OF_WORDS else Stand.BELOW  # never struck through
    begin = max(strong[0][1] if strong else left, left) + gap
    low = _first_low(points, begin, right, wide)
    if low is not None:
        return low, Stand.ABOVE
    before = (strong[0][0] if strong else right) - gap - wide
    if before >= left + gap and _heights(points, before, before + wide)[1] <= _LOW:
        return before, Stand.ABOVE
    x = max(right - wide - gap / 2, left + gap)
    return x, Stand.BELOW if _heights(points, x, x + wide)[0] >= _HIGH else Stand.OVER


def _first_low(points: Sequence[tuple[float, float]], begin: float, right: float, wide: float) -> float | None:
    """The first place from `begin` on where the hill is low over a width; none if there is none."""
    count = int(wide // _PROBE) + 2
    places = np.arange(begin, right, _PROBE)
    if begin + wide > right or not points:
        return begin if not points and begin + wide <= right else None
    x, chances = zip(*points, strict=True)
    low = np.interp(places, x, chances) <= _LOW
    runs = np.convolve(low, np.ones(count), mode="valid") >= count - 0.5 if len(low) >= count else np.array([])
    found = [float(places[place]) for place in np.flatnonzero(runs)]
    return next((place for place in found if place + wide <= right), None)


def _heights(points: Sequence[tuple[float, float]], start: float, end: float) -> tuple[float, float]:
    """The lowest and the highest chance of a hill between two places, straight between its points."""
    if not points:
        return 0.0, 0.0
    inside = [chance for x, chance in points if start < x < end]
    x, chances = zip(*points, strict=True)
    found = [*inside, *(float(chance) for chance in np.interp((start, end), x, chances))]
    return min(found), max(found)
