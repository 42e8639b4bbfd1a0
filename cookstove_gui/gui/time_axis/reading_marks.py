"""Readings on the plot: hollow circles of the oven, small diamonds of any other place; a doubted one is struck.

Where two spots stand beside each other, circles are the first's and squares the second's.
"""

from collections.abc import Callable, Collection, Iterable
from datetime import datetime
from typing import Any

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainterPath

from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import Theme, colour
from cookstove_gui.stove.entries import Entry, Kind, reading_kelvin
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import degrees

_LARGE, _SMALL, _STROKE = 10, 9, 18  # [px of the design]


class ReadingMarks:
    """The oven's own readings, those of its walls, and of the whole stove where that is asked for."""

    def __init__(self, plot: Any, depth: int) -> None:
        self.elsewhere, self.beside, self.oven, self.strokes = (pg.ScatterPlotItem() for _ in range(4))
        for step, item in enumerate((self.elsewhere, self.beside, self.oven, self.strokes)):
            item.setZValue(depth + 0.1 * step)
            plot.addItem(item)
        self._drawn: dict[str, tuple[object, ...]] = {}  # by symbol; what is the same is not laid out again
        self._struck: tuple[list[float], list[float]] = ([], [])
        self._theme: Theme | None = None

    def show(
        self,
        entries: Iterable[Entry],
        stove: Stove,
        theme: Theme,
        *,
        unit: str,
        place: Callable[[datetime], float],
        doubted: Collection[int],
        of: Collection[SpotKind],
        centre: str,
        beside: str = "",
    ) -> None:
        """Show the readings of one spot large, and of another beside it, and those of some kinds.

        `place` gives a moment's place on the axis.
        """
        kinds = {spot.name: spot.kind for spot in stove.spots}
        readings = [entry for entry in entries if entry.kind is Kind.READING]
        sure = [row for row in readings if row.number not in doubted]
        oven = [row for row in sure if row.spot == centre]
        second = [row for row in sure if row.spot == beside]
        elsewhere = [row for row in sure if row.spot not in (centre, beside) and kinds.get(row.spot) in of]
        for item, rows, ink, size, symbol in (
            (self.oven, oven, theme.ink, _LARGE, "o"),
            (self.beside, second, theme.ink, _LARGE, "s"),
            (self.elsewhere, elsewhere, theme.soft, _SMALL, "d"),
        ):
            x = [place(row.at) for row in rows]
            y = [float(degrees(reading_kelvin(row), unit)) for row in rows]
            drawn = (x, y, ink, theme.ground, px(size))
            if drawn == self._drawn.get(symbol):
                continue
            self._drawn[symbol] = drawn
            item.setData(
                x=x,
                y=y,
                symbol=symbol,
                size=px(size),
                pen=pg.mkPen(ink, width=px(1.8)),
                brush=pg.mkBrush(colour(theme.ground)),
            )
        struck = [
            row
            for row in readings
            if row.number in doubted and (row.spot in (centre, beside) or kinds.get(row.spot) in of)
        ]
        self._struck = (
            [place(row.at) for row in struck],
            [float(degrees(reading_kelvin(row), unit)) for row in struck],
        )
        self._theme = theme

    def strike(self, low: float, high: float) -> None:
        """Draw the doubted readings; one outside what is seen stands at its edge, for a slip may be far off."""
        if self._theme is None:
            return
        room = 0.02 * (high - low)
        x, y = self._struck
        if not x and not len(self.strokes.data):
            return
        self.strokes.setData(
            x=x,
            y=np.clip(y, low + room, high - room) if y else [],
            symbol=_struck(),
            size=px(_STROKE),
            pen=pg.mkPen(self._theme.ember, width=px(2)),
            brush=None,
        )

    def spots(self) -> list[tuple[float, float]]:
        """Where something is marked: places and heats in the unit shown."""
        return [
            (float(x), float(y))
            for item in (self.oven, self.beside, self.elsewhere, self.strokes)
            for x, y in zip(*item.getData(), strict=True)
        ]

    def heats(self) -> list[float]:
        """What is marked and not doubted, in the unit shown."""
        return [float(heat) for item in (self.oven, self.beside, self.elsewhere) for heat in item.getData()[1]]


def _struck() -> QPainterPath:
    """A small circle with a short slanting stroke through it."""
    path = QPainterPath()
    path.addEllipse(QPointF(0, 0), 0.26, 0.26)
    path.moveTo(-0.4, 0.4)
    path.lineTo(0.4, -0.4)
    return path
