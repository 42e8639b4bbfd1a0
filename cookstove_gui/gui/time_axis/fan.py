"""A line with the band around it on the trend plot: belief, projection, or what one step would bring."""

from collections.abc import Sequence
from typing import Any

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import Qt

from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.gui.widgets.theme import colour


class Fan:
    """Tenth, fiftieth and ninetieth percentile over time; its items are made once and given new data."""

    def __init__(self, plot: Any, depth: int) -> None:
        self.low, self.middle, self.high = (pg.PlotCurveItem() for _ in range(3))
        self._fill = pg.FillBetweenItem(self.low, self.high)
        for step, item in enumerate((self._fill, self.low, self.high, self.middle)):
            item.setZValue(depth + 0.1 * step)
            plot.addItem(item)

    def dress(
        self, ink: str, *, style: Qt.PenStyle, width: float, edge: Qt.PenStyle = Qt.PenStyle.NoPen, fill: int = 0
    ) -> None:
        """Take a colour; `fill` from 0 (none) to 255 is how thickly the band is filled."""
        self.middle.setPen(pg.mkPen(ink, width=width, style=style))
        for line in (self.low, self.high):
            line.setPen(pg.mkPen(ink, width=1.5, style=edge))
        self._fill.setBrush(pg.mkBrush(colour(ink, fill)))

    def set(self, x: Sequence[float] | FloatArray, low: FloatArray, middle: FloatArray, high: FloatArray) -> None:
        """Show these, all of one length."""
        self.low.setData(x, low)
        self.middle.setData(x, middle)
        self.high.setData(x, high)

    def clear(self) -> None:
        """Show nothing."""
        for line in (self.low, self.middle, self.high):
            line.setData([], [])

    def extent(self, start: float, end: float, *, middle_only: bool = False) -> list[float]:
        """Lowest and highest value between two places; empty when nothing is there."""
        found: list[float] = []
        for line in (self.middle,) if middle_only else (self.low, self.high):
            x, y = line.getData()
            if x is not None and len(x):
                seen = y[(x >= start) & (x <= end)]
                found += [float(np.min(seen)), float(np.max(seen))] if len(seen) else []
        return found
