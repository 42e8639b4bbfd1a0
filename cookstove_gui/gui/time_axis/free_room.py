"""Where words may stand on the plot: clear of its lines, of what was read and of each other."""

from collections.abc import Callable
from itertools import pairwise
from typing import Protocol

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRectF

from cookstove_gui.gui.time_axis.span import TimeSpan
from cookstove_gui.gui.widgets.steps import px

Heights = Callable[[float, float], list[tuple[float, float]]]  # start, end [min] -> lowest and highest of each line
_SLICES = (0.0, 0.25, 0.5, 0.75, 1.0)  # of words, in which they are held against the lines


class Drawn(Protocol):
    """What the words stand on."""

    def width(self) -> int:
        """[px]."""

    def height(self) -> int:
        """[px]."""

    def height_of(self, value: float) -> float:
        """Where a value lies [px]."""


class FreeRoom:
    """Keeps what is taken during one painting."""

    def __init__(self, span: TimeSpan, over: Drawn, lines: Heights, fan: Heights) -> None:
        self._span, self._over, self._lines, self._fan = span, over, lines, fan
        self._box = QRectF()
        self._marks: tuple[NDArray[np.float64], NDArray[np.float64]] = (np.empty(0), np.empty(0))  # x and y [px]
        self._edges: tuple[float, ...] = ()
        self._taken: list[QRectF] = []

    @property
    def taken(self) -> tuple[QRectF, ...]:
        """What stands so far."""
        return tuple(self._taken)

    def clear(self, box: QRectF, marked: list[tuple[float, float]], edges: tuple[float, ...]) -> None:
        """Begin anew in a box; `marked` are places and values of what was read, `edges` values with a level line."""
        self._box, self._edges, self._taken = box, edges, []
        places, values = np.array(marked, dtype=np.float64).reshape(-1, 2).T
        low, per_minute = self._span.x(0.0, self._over.width()), self._span.x(1.0, self._over.width())
        zero, per_degree = self._over.height_of(0.0), self._over.height_of(1.0)
        self._marks = low + (per_minute - low) * places, zero + (per_degree - zero) * values

    def take(self, box: QRectF) -> None:
        """Something stands there."""
        self._taken.append(box)

    def _is_free(self, box: QRectF, *, of_fan: bool = False) -> bool:
        """Whether words may stand there: inside the plot, clear of other words and of the lines."""
        if not self._box.contains(box) or any(box.intersects(other) for other in self._taken):
            return False
        if any(box.top() < self._over.height_of(edge) < box.bottom() for edge in self._edges):
            return False
        if self._is_marked(box):
            return False
        lines = self._fan if of_fan else self._lines
        ends = [self._span.minute(box.left() + share * box.width(), self._over.width()) for share in _SLICES]
        heights = [height for start, end in pairwise(ends) for height in lines(start, end)]
        return not any(
            self._over.height_of(high) < box.bottom() and self._over.height_of(low) > box.top() for low, high in heights
        )

    def _is_marked(self, box: QRectF) -> bool:
        """Whether something that was read stands in it."""
        room, (x, y) = box.adjusted(-px(2), -px(4), px(2), px(4)), self._marks
        inside = (x >= room.left()) & (x <= room.right()) & (y >= room.top()) & (y <= room.bottom())
        return bool(np.any(inside))

    def put(self, boxes: list[QRectF], *, of_fan: bool = False) -> QRectF:
        """The first of these that is free, else one clear of other words and readings, else the first; it is taken."""
        found = next((box for box in boxes if self._is_free(box, of_fan=of_fan)), None)
        found = found or next((box for box in boxes if self._is_free(box)), None)
        if found is None:
            clear = [box for box in boxes if not any(box.intersects(other) for other in self._taken)]
            inside = [box for box in clear if self._box.contains(box)]
            found = next((box for box in inside if not self._is_marked(box)), next(iter(inside), boxes[0]))
        self._taken.append(found)
        return found

    def column(self, x: float, width: float, height: float, tops: tuple[float, ...]) -> list[QRectF]:
        """Boxes at these tops, then at every few pixels from the foot of the plot up."""
        step = max(px(8), 1)
        rest = range(round(self._over.height() - height - px(6)), 0, -step)
        return [QRectF(x, top, width, height) for top in (*tops, *map(float, rest))]
