"""Heat over every window of a given length, for all futures and spots at once: a task is then a few comparisons."""

from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from cookstove_gui.forecast.answers import FloatArray, Projection

_ORIGIN = 400.0  # K; heats are kept from here in single precision: half the time, and under 0.001 K of rounding
_ROUNDING = 0.002  # K; a heat exactly on the edge of a band is in it, whatever single precision does to a mean

_Single: TypeAlias = NDArray[np.float32]


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """How far a band has to reach to hold a window's heat, for the window that opens at each start."""

    starts: FloatArray  # (starts,) min
    least: _Single  # (starts, spots, futures) K from the origin; the band's low end may be no higher
    most: _Single  # and its high end no lower
    difference: _Single | None  # K, mean difference across the place; None where too few spots are known

    def holds(self, low: float, high: float) -> NDArray[np.bool_]:
        """Which futures a band [K] holds, from which start: (starts, spots, futures)."""
        good: NDArray[np.bool_] = self.least >= low - _ORIGIN - _ROUNDING
        good &= self.most <= high - _ORIGIN + _ROUNDING
        return good

    def even(self, evenness: float) -> NDArray[np.bool_] | np.bool_:
        """Which futures differ across the place by no more than this [K]; true where none is known."""
        return np.True_ if self.difference is None else self.difference <= evenness + _ROUNDING


class WindowedHeat:
    """Window minimum, maximum and mean of a projection, prepared once for all tasks of one place."""

    def __init__(self, projection: Projection, names: tuple[str, ...], difference: NDArray[np.floating] | None) -> None:
        columns = [projection.spots.index(name) for name in names]
        self._minutes = projection.minutes
        self._heat, self._integral = self._with_integral(_time_first(projection.kelvin[:, :, columns] - _ORIGIN))
        self._coldest = _RunExtremes(self._heat, np.minimum)
        self._hottest = _RunExtremes(self._heat, np.maximum)
        self._difference = None if difference is None else self._with_integral(_time_first(difference))
        self._windows: dict[tuple[bytes, float, float], Window] = {}

    def window(self, duration: float, *, below: float, above: float, judged_share: float) -> Window:
        """The windows of one duration [min].

        A window closes at the first time of the projection at or after its end, or at the horizon. Starts that see less
        than `judged_share` of their duration are left out (never the first one). `below` and `above` [K] are how far
        the heat may stray from the band.
        """
        minutes = self._minutes
        count = max(1, int(np.sum(minutes + judged_share * duration <= minutes[-1] + 1e-9)))
        last = np.minimum(np.searchsorted(minutes, minutes[:count] + duration - 1e-9), len(minutes) - 1)
        key = (last.tobytes(), below, above)  # durations that close at the same times are the same window
        if key not in self._windows:
            self._windows[key] = self._compute(last, below, above)
        return self._windows[key]

    def _compute(self, last: NDArray[np.intp], below: float, above: float) -> Window:
        count = len(last)
        start, mean = self._heat[:count], self._mean(self._heat, self._integral, last)
        least = self._coldest.between(last)
        least += np.float32(below)
        np.minimum(least, start, out=least)
        np.minimum(least, mean, out=least)
        most = self._hottest.between(last)
        most -= np.float32(above)
        np.maximum(most, start, out=most)
        np.maximum(most, mean, out=most)
        difference = None if self._difference is None else self._mean(*self._difference, last)
        return Window(starts=self._minutes[:count], least=least, most=most, difference=difference)

    def _with_integral(self, values: _Single) -> tuple[_Single, _Single]:
        """The values, and their integral up to each time [K min] by the trapezoidal rule."""
        half_steps = (0.5 * np.diff(self._minutes)).astype(np.float32)[:, None, None]
        integral = np.zeros_like(values)
        np.cumsum(half_steps * (values[1:] + values[:-1]), axis=0, out=integral[1:])
        return values, integral

    def _mean(self, values: _Single, integral: _Single, last: NDArray[np.intp]) -> _Single:
        """Mean over the windows that open at the first times and close at `last`; of one without length, its value."""
        count = len(last)
        length = (self._minutes[last] - self._minutes[:count]).astype(np.float32)
        steady = _steady_starts(last)
        mean = np.empty_like(values[:count])
        np.subtract(integral[last[0] : last[0] + steady], integral[:steady], out=mean[:steady])
        np.subtract(integral[last[steady:]], integral[steady:count], out=mean[steady:])
        mean *= (1.0 / np.where(length > 0, length, 1.0)).astype(np.float32)[:, None, None]
        mean[length <= 0] = values[:count][length <= 0]
        return mean


def _time_first(values: NDArray[np.floating]) -> _Single:
    """(futures, times, spots) as contiguous (times, spots, futures): windows are runs of rows, chances sums of rows."""
    return np.ascontiguousarray(values.transpose(1, 2, 0), dtype=np.float32)


def _steady_starts(last: NDArray[np.intp]) -> int:
    """How many of the first windows have as many rows as the very first: they are taken in one slice."""
    same = last - np.arange(len(last)) == last[0]
    return int(len(same) if same.all() else same.argmin())


class _RunExtremes:
    """Least or greatest row of any run of rows, from those of every run of 1, 2, 4 ... rows.

    Two overlapping runs of one such length cover a run of any length.
    """

    def __init__(self, values: _Single, pick: np.ufunc) -> None:
        self._pick = pick
        self._levels = [values]  # added as they are needed
        self._to_end = values.copy()  # of all rows from each one on
        for row in range(len(values) - 2, -1, -1):  # row by row is many times faster than the ufunc's accumulate
            pick(values[row], self._to_end[row + 1], out=self._to_end[row])

    def between(self, last: NDArray[np.intp]) -> _Single:
        """The extreme row from each of the first rows to its last one, both included."""
        found = np.empty_like(self._to_end[: len(last)])
        steady = _steady_starts(last)
        level = int(last[0] + 1).bit_length() - 1
        runs, tail = self._runs(level), int(last[0]) + 1 - (1 << level)
        self._pick(runs[:steady], runs[tail : tail + steady], out=found[:steady])
        to_end = int(np.argmax(last == len(self._to_end) - 1)) if last[-1] == len(self._to_end) - 1 else len(last)
        cut = max(steady, to_end)
        found[cut:] = self._to_end[cut : len(last)]
        for first in range(steady, cut):  # only where the times are not evenly spaced
            level = int(last[first] - first + 1).bit_length() - 1
            runs = self._runs(level)
            self._pick(runs[first], runs[last[first] + 1 - (1 << level)], out=found[first])
        return found

    def _runs(self, level: int) -> _Single:
        """Extremes of runs of 2^level rows, by their first row; runs that would pass the end stop at it."""
        while len(self._levels) <= level:
            half, shorter = 1 << (len(self._levels) - 1), self._levels[-1]
            longer = np.empty_like(shorter)
            self._pick(shorter[:-half], shorter[half:], out=longer[:-half])
            longer[-half:] = shorter[-half:]
            self._levels.append(longer)
        return self._levels[level]
