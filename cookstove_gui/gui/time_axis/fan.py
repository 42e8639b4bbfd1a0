"""A line with its doubt around it: the past as it is known, the projection, what one step would bring."""

from collections.abc import Sequence
from typing import Any

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import Qt

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.gui.widgets.theme import colour

_OUTER, _INNER = 23, 33  # of 255: 9 and 13 % ink


class Fan:
    """A middle line and pairs of lines around it, the outermost first; its items are made once and given new data."""

    def __init__(self, plot: Any, depth: float, pairs: int = 1) -> None:
        self.middle = pg.PlotCurveItem()
        self.pairs = [(pg.PlotCurveItem(), pg.PlotCurveItem()) for _ in range(pairs)]
        self._fills = [pg.FillBetweenItem(low, high) for low, high in self.pairs]
        lines = [line for pair in self.pairs for line in pair]
        for step, item in enumerate((*self._fills, *lines, self.middle)):
            item.setZValue(depth + 0.05 * step)
            plot.addItem(item)

    def dress(
        self,
        ink: str,
        *,
        width: float,
        style: Qt.PenStyle | Sequence[float] = Qt.PenStyle.SolidLine,
        edge: str | None = None,
        fills: Sequence[int] = (_OUTER, _INNER),
    ) -> None:
        """Take a colour; a sequence as style is the lengths of dashes, `edge` the colour of the outermost lines."""
        pen = pg.mkPen(ink, width=width)
        if isinstance(style, Qt.PenStyle):
            pen.setStyle(style)
        else:
            pen.setDashPattern([length / width for length in style])
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        self.middle.setPen(pen)
        for place, (pair, fill) in enumerate(zip(self.pairs, self._fills, strict=True)):
            for line in pair:
                line.setPen(pg.mkPen(edge, width=1) if edge and not place else pg.mkPen(None))
            fill.setBrush(pg.mkBrush(colour(ink, fills[place])))

    def set(self, x: Sequence[float] | FloatArray, middle: FloatArray, *pairs: tuple[FloatArray, FloatArray]) -> None:
        """Show these, all of one length."""
        for (low, high), (lower, higher) in zip(self.pairs, pairs, strict=True):
            low.setData(x, lower)
            high.setData(x, higher)
        self.middle.setData(x, middle)

    def clear(self) -> None:
        """Show nothing."""
        for line in (self.middle, *(line for pair in self.pairs for line in pair)):
            line.setData([], [])

    def extent(self, start: float, end: float, *, middle_only: bool = False) -> list[float]:
        """Lowest and highest value between two places; empty when nothing is there."""
        found: list[float] = []
        for line in (self.middle,) if middle_only or not self.pairs else self.pairs[0]:
            x, y = line.getData()
            if x is not None and len(x):
                seen = y[(x >= start) & (x <= end)]
                found += [float(np.min(seen)), float(np.max(seen))] if len(seen) else []
        return found

    def heights(self, start: float, end: float, *, middle_only: bool = False) -> tuple[float, float] | None:
        """Lowest and highest value between two places, straight between the points; none when nothing is there."""
        found = []
        for line in (self.middle, *(() if middle_only or not self.pairs else self.pairs[0])):
            x, y = line.getData()
            if x is None or not len(x) or end < x[0] or start > x[-1]:
                continue
            ends = np.clip([start, end], x[0], x[-1])
            found.append(np.interp(np.concatenate((ends, x[(x > start) & (x < end)])), x, y))
        values = np.concatenate(found) if found else None
        return None if values is None else (float(values.min()), float(values.max()))
