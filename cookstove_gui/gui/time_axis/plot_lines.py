"""The lines of the plot: the oven as it was and as it may be, what was believed then, and what a step would bring."""

from datetime import datetime
from typing import TypeAlias

import pyqtgraph as pg

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.first_fire_course import FirstFireCourse
from cookstove_gui.desk.cook.oven_lines import OvenFan, oven_fan
from cookstove_gui.desk.cook.pan_course import PanCourse
from cookstove_gui.forecast.answers import FloatArray, Projection, Trace
from cookstove_gui.gui.time_axis.fan import Fan
from cookstove_gui.gui.time_axis.span import TimeSpan
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import Theme
from cookstove_gui.situation import was_read
from cookstove_gui.units import degrees

_BELIEF, _AHEAD, _OTHER = 2.4, 2.4, 2.6  # [px of the design]
DASHES, SHORT_DASHES, _DOTS = (7.0, 5.0), (3.0, 3.0), (2.6, 5.2)

_Drawn: TypeAlias = tuple[FloatArray, FloatArray, tuple[FloatArray, FloatArray], tuple[FloatArray, FloatArray]]


class PlotLines:
    """Each a middle line with what lies around it; made once and set again."""

    def __init__(self, plot: pg.PlotWidget, span: TimeSpan) -> None:
        self._span = span
        self.past, self.ahead = Fan(plot, 1), Fan(plot, 2, pairs=2)
        self.beside = Fan(plot, 2.4, pairs=2)  # of a second spot
        self.then, self.other = Fan(plot, 3, pairs=0), Fan(plot, 4, pairs=0)

    def dress(self, theme: Theme) -> None:
        """In the colours of day or night."""
        self.past.dress(theme.ink, width=px(_BELIEF), fills=(46,))
        self.ahead.dress(theme.ink, width=px(_AHEAD), style=DASHES, edge=theme.line)
        self.beside.dress(theme.ink, width=px(_AHEAD), style=SHORT_DASHES, edge=theme.line)
        self.then.dress(theme.soft, width=1.4)
        self.other.dress(theme.cobalt, width=px(_OTHER), style=_DOTS)

    def show(self, desk: Desk, first: FirstFireCourse | None, *, as_believed: bool) -> None:
        """Show what the desk knows; while first fires run, the course of the hottest spot alone."""
        standing, unit = desk.standing, desk.unit
        self._clear()
        if standing is None or not was_read(desk.entries):
            return
        if first is not None:
            if first.ahead is not None:
                self.ahead.set(*self._drawn(first.ahead, standing.now, unit))
            return
        places, low, middle, high = self._trace(standing.trace, unit)
        self.past.set(places, middle, (low, high))
        if as_believed:
            places, _, middle, _ = self._trace(standing.believed, unit)
            self.then.set(places, middle)
        if not desk.is_live:
            return
        self.ahead.set(*self._futures(desk, standing.projection))
        if standing.alternative is not None:
            ahead, middle, *_ = self._futures(desk, standing.alternative.projection)
            self.other.set(ahead, middle)

    def show_spots(self, desk: Desk, course: PanCourse) -> None:
        """Show where one spot or two are going; what is known of a spot's past is its readings alone."""
        self._clear()
        if desk.standing is not None:
            for fan, spot in zip((self.ahead, self.beside), course.spots, strict=False):
                fan.set(*self._drawn(spot.ahead, desk.standing.now, desk.unit))

    def _clear(self) -> None:
        for fan in (self.past, self.ahead, self.beside, self.then, self.other):
            fan.clear()

    def extent(self) -> list[float]:
        """Lowest and highest heats in the stretch of time that is seen."""
        low, high = self._span.low, self._span.high
        shown = ((self.past, True), (self.ahead, False), (self.beside, False), (self.other, True))
        return [heat for fan, middle_only in shown for heat in fan.extent(low, high, middle_only=middle_only)]

    def middles(self, start: float, end: float) -> list[tuple[float, float]]:
        """Lowest and highest heat of each middle line between two places."""
        return self._heights(start, end, middle_only=True)

    def fans(self, start: float, end: float) -> list[tuple[float, float]]:
        """Lowest and highest heat of each line with all that lies around it."""
        return self._heights(start, end, middle_only=False)

    def _heights(self, start: float, end: float, *, middle_only: bool) -> list[tuple[float, float]]:
        fans = (self.past, self.ahead, self.beside, self.other)
        found = (fan.heights(start, end, middle_only=middle_only) for fan in fans)
        return [one for one in found if one is not None]

    def _trace(self, trace: Trace, unit: str) -> tuple[list[float], FloatArray, FloatArray, FloatArray]:
        low, middle, high = (degrees(line, unit) for line in (trace.p10, trace.p50, trace.p90))
        return [self._span.place(at) for at in trace.at], low, middle, high

    def _futures(self, desk: Desk, projection: Projection) -> _Drawn:
        """Places on the axis, the middle, eight in ten and five in ten of the futures, in the unit shown."""
        return self._drawn(oven_fan(projection, desk.stove.oven_spot), projection.now, desk.unit)

    def _drawn(self, fan: OvenFan, now: datetime, unit: str) -> _Drawn:
        p10, p25, p50, p75, p90 = (degrees(line, unit) for line in (fan.p10, fan.p25, fan.p50, fan.p75, fan.p90))
        return fan.minutes + self._span.place(now), p50, (p10, p90), (p25, p75)
