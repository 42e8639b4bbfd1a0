"""Readings on the trend plot: hollow marks whose shape tells the instrument; a doubted one is struck through."""

from collections.abc import Callable, Collection, Iterable
from datetime import datetime
from typing import Any

import pyqtgraph as pg
from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainterPath

from cookstove_gui.gui.widgets.theme import Theme, colour
from cookstove_gui.stove.entries import Entry, Kind, reading_kelvin
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import degrees

# Oven thermometer, flue thermometer, room thermometer; everything else is read by infrared.
_SHAPES = {SpotKind.OVEN: "o", SpotKind.FLUE: "t1", SpotKind.ROOM: "s"}
_INFRARED = "d"
_LARGE, _SMALL, _STROKE = 13, 9, 24  # pixels


class ReadingMarks:
    """The oven's own readings large, those of its walls and of the cooktop smaller."""

    def __init__(self, plot: Any, depth: int) -> None:
        self.elsewhere, self.oven, self.strokes = (pg.ScatterPlotItem() for _ in range(3))
        for step, item in enumerate((self.elsewhere, self.oven, self.strokes)):
            item.setZValue(depth + 0.1 * step)
            plot.addItem(item)

    def show(
        self,
        entries: Iterable[Entry],
        stove: Stove,
        theme: Theme,
        *,
        unit: str,
        place: Callable[[datetime], float],
        doubted: Collection[int],
        with_cooktop: bool,
    ) -> None:
        """Show the readings among these entries; `place` gives a moment's place on the time axis."""
        kinds = {spot.name: spot.kind for spot in stove.spots}
        centre = stove.oven_spot
        readings = [entry for entry in entries if entry.kind is Kind.READING]
        oven = [row for row in readings if row.spot == centre]
        elsewhere = [
            row for row in readings if row.spot != centre and (with_cooktop or kinds.get(row.spot) is SpotKind.OVEN)
        ]
        for item, rows, ink, size in (
            (self.oven, oven, theme.ink, _LARGE),
            (self.elsewhere, elsewhere, theme.soft, _SMALL),
        ):
            item.setData(
                x=[place(row.at) for row in rows],
                y=[degrees(reading_kelvin(row), unit) for row in rows],
                symbol=[_SHAPES.get(kinds.get(row.spot, SpotKind.TOP), _INFRARED) for row in rows],
                size=size,
                pen=pg.mkPen(ink, width=2),
                brush=pg.mkBrush(colour(theme.ground, 160)),
            )
        struck = [row for row in (*oven, *elsewhere) if row.number in doubted]
        self.strokes.setData(
            x=[place(row.at) for row in struck],
            y=[degrees(reading_kelvin(row), unit) for row in struck],
            symbol=_stroke(),
            size=_STROKE,
            pen=pg.mkPen(theme.ember, width=2.5),
            brush=None,
        )

    def heats(self) -> list[float]:
        """All that is marked, in the unit shown."""
        return [float(heat) for item in (self.oven, self.elsewhere) for heat in item.getData()[1]]


def _stroke() -> QPainterPath:
    """A short slanting stroke, through a mark that is doubted."""
    path = QPainterPath(QPointF(-0.5, 0.35))
    path.lineTo(QPointF(0.5, -0.35))
    return path
