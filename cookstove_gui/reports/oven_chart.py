"""The oven over one session as an SVG picture: readings, belief, what was said and what came, stages, the fire lane."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta, timezone

from cookstove_gui.forecast.answers import RecordRow, Trace
from cookstove_gui.phrases.edge import heat_name
from cookstove_gui.phrases.lane import LaneRow
from cookstove_gui.phrases.report import ReportClock, came_at, said_lines
from cookstove_gui.reports.lane_on_paper import HIGH as LANE
from cookstove_gui.reports.lane_on_paper import fire_lane
from cookstove_gui.reports.stages import Stage
from cookstove_gui.reports.svg import (
    BAND,
    DOUBT,
    INK,
    LINE,
    SOFT,
    VERDIGRIS,
    WIDE,
    Point,
    box,
    line,
    path,
    picture,
    ring,
    shape,
    width_of,
    words,
)
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, reading_kelvin
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import TemperatureUnit, degrees, kelvin

_LEFT, _RIGHT, _TOP, _GROUND = 38.0, WIDE - 2, 4.0, 172.0  # px, of the plot
_STAGES, _LANE = 32.0, 54.0  # px below its ground
_TICK_STEPS = (15, 30, 60, 120, 240, 480)  # min
_MOST_TICKS = 10
_HEAT_STEPS = {"F": (100, 200, 400), "C": (50, 100, 200)}
_MOST_HEATS = 7


@dataclass(frozen=True, slots=True, kw_only=True)
class Charted:
    """What the picture is made of."""

    stove: Stove
    rows: Sequence[Entry]  # in force
    slips: frozenset[int]  # numbers of readings taken for slips
    stages: Sequence[Stage]
    lane: Sequence[LaneRow]
    belief: Trace
    unit: TemperatureUnit
    band: HeatBand
    clock: ReportClock
    foretold: RecordRow | None = None  # a projection to show against what came


def oven_chart(found: Charted, said: str) -> str:
    """The picture as SVG text, or nothing when the oven was never read; `said` is what is read out."""
    readings = [
        row for row in found.rows if row.kind is Kind.READING and found.stove.kind_of(row.spot) is SpotKind.OVEN
    ]
    if not readings:
        return ""
    high = _GROUND + _LANE + LANE
    return picture(_Chart(found, readings).parts(), WIDE, high, said)


class _Chart:
    """Places on the page, and what stands there."""

    def __init__(self, found: Charted, readings: Sequence[Entry]) -> None:
        self._found, self._unit = found, found.unit
        self._good = [row for row in readings if row.number not in found.slips]
        self._struck = [row for row in readings if row.number in found.slips]
        self._first = found.rows[0].at
        self._last = max(found.rows[-1].at, self._first + timedelta(minutes=1))
        heats = [reading_kelvin(row) for row in self._good]
        self._low: float = min([*heats, *found.belief.p10.tolist(), found.band.low]) - 8.0
        self._high: float = max([*heats, *found.belief.p90.tolist(), found.band.high]) + 8.0

    def parts(self) -> Iterable[str]:
        yield from self._band()
        yield from self._heats()
        yield from self._belief()
        yield from self._in_and_out()
        yield from self._readings()
        yield from self._foretold()
        yield from self._clocks()
        yield from self._stages()
        yield from fire_lane(self._found.lane, self._x, (_LEFT + 8, _RIGHT - 8), _GROUND + _LANE)

    def _x(self, at: datetime) -> float:
        whole: float = (self._last - self._first).total_seconds()
        return _LEFT + 10 + (at - self._first).total_seconds() / whole * (_RIGHT - _LEFT - 20)

    def _y(self, heat: float) -> float:
        share = (heat - self._low) / (self._high - self._low)
        return _GROUND - min(max(share, 0.0), 1.0) * (_GROUND - _TOP)

    def _band(self) -> Iterable[str]:
        band = self._found.band
        top, foot = self._y(band.high), self._y(band.low)
        yield box((_LEFT, top), _RIGHT - _LEFT, foot - top, BAND)
        yield line((_LEFT, top), (_RIGHT, top), ink=VERDIGRIS)
        yield line((_LEFT, foot), (_RIGHT, foot), ink=VERDIGRIS)
        low, high = (f"{degrees(heat, self._unit):.0f}" for heat in (band.low, band.high))
        name = heat_name(band)
        told = name if low in name else f"{name} {low}–{high}"
        yield words((_LEFT + 6, min((top + foot) / 2 + 4.5, foot - 3)), told, ink=VERDIGRIS, weight=700)

    def _heats(self) -> Iterable[str]:
        low, high = (float(degrees(heat, self._unit)) for heat in (self._low, self._high))
        steps = _HEAT_STEPS[self._unit]
        step = next((one for one in steps if (high - low) / one <= _MOST_HEATS), steps[-1])
        for tick in range(int(low // step + 1) * step, int(high) + 1, step):
            y = self._y(float(kelvin(float(tick), self._unit)))
            yield words((_LEFT - 8, y + 4), f"{tick}", ink=SOFT, anchor="end")
            yield line((_LEFT - 5, y), (_LEFT, y), ink=LINE)

    def _belief(self) -> Iterable[str]:
        trace = self._found.belief
        across = [self._x(at) for at in trace.at]
        upper = [(x, self._y(heat)) for x, heat in zip(across, trace.p90.tolist(), strict=True)]
        lower = [(x, self._y(heat)) for x, heat in zip(across, trace.p10.tolist(), strict=True)]
        yield shape([*upper, *reversed(lower)], DOUBT)
        yield path([(x, self._y(heat)) for x, heat in zip(across, trace.p50.tolist(), strict=True)], wide=2.0)

    def _in_and_out(self) -> Iterable[str]:
        """What went into the oven and came out, as stems in the empty room under the curve."""
        taken = _LEFT
        for row in self._found.lane:
            if row.kind in (Kind.OVEN_IN, Kind.OVEN_OUT):
                x, up = self._x(row.at), 66.0 if row.kind is Kind.OVEN_IN else 84.0
                yield line((x, _GROUND - up), (x, _GROUND), dots="2 3", wide=1.4)
                if x + 5 + width_of(row.words) <= _RIGHT and x >= taken:
                    yield words((x + 5, _GROUND - up + 18), row.words, weight=600)
                    taken = x + 8 + width_of(row.words)

    def _readings(self) -> Iterable[str]:
        centre = self._found.stove.oven_spot
        for row in self._good:
            at = (self._x(row.at), self._y(reading_kelvin(row)))
            if row.spot == centre:
                yield ring(at, 4.2)
            else:
                yield shape(_diamond(at, 3.2), SOFT)
        for row in self._struck:  # far outside it stands at the picture's edge
            x, y = self._x(row.at), self._y(reading_kelvin(row))
            yield ring((x, y), 4.2)
            yield line((x - 6, y + 6), (x + 6, y - 6), wide=1.4)

    def _foretold(self) -> Iterable[str]:
        row, clock = self._found.foretold, self._found.clock
        if row is None or row.likely_min is None or row.came_true_min is None or row.enters_min.p10 is None:
            return
        y = self._y(row.band.low)
        first, likely, came = (
            self._place(row, minute) for minute in (row.enters_min.p10, row.likely_min, row.came_true_min)
        )
        last = _RIGHT - 4 if row.enters_min.p90 is None else self._place(row, row.enters_min.p90)
        yield line((first, y), (last, y), ink=VERDIGRIS, wide=7.0)
        yield ring((likely, y), 5.4, ink=VERDIGRIS, wide=2.2)
        yield shape([(came, y - 7), (came - 6, y - 16), (came + 6, y - 16)], INK)
        told = came_at(row, clock)
        left = came - 10 - width_of(told)
        yield words((max(left, _LEFT + 4), y - 8), told, weight=600)
        lines = said_lines(row, clock)
        wide = max(width_of(one) for one in lines)
        start = min(likely + 8, _RIGHT - wide)
        foot = min(max(y + 8, self._lowest(start - 6, start + wide)), _GROUND - 34)
        for number, one in enumerate(lines):
            yield words((start, foot + 14 + 15 * number), one, ink=VERDIGRIS)

    def _lowest(self, left: float, right: float) -> float:
        """How far down [px] the curve and its rings reach between two places."""
        trace = self._found.belief
        curve = [(self._x(at), self._y(heat)) for at, heat in zip(trace.at, trace.p10.tolist(), strict=True)]
        rings = [(self._x(row.at), self._y(reading_kelvin(row)) + 5) for row in self._good]
        return max((y for x, y in (*curve, *rings) if left <= x <= right), default=_TOP)

    def _place(self, row: RecordRow, minute: float) -> float:
        x = self._x(row.made_at + timedelta(minutes=minute))
        return min(max(x, _LEFT + 4), _RIGHT - 4)

    def _clocks(self) -> Iterable[str]:
        yield line((_LEFT, _GROUND), (_RIGHT, _GROUND), ink=LINE)
        whole = (self._last - self._first).total_seconds() / 60
        step = next(
            (size for size in _TICK_STEPS if whole / size <= _MOST_TICKS), 1440 * -(-whole // (1440 * _MOST_TICKS))
        )
        local = self._first.astimezone(timezone(timedelta(minutes=self._found.clock.offset_minutes)))
        start = -((local.hour * 60 + local.minute) % step) - local.second / 60
        for tick in (start + place * step for place in range(int(whole // step) + 2)):
            if 0 <= tick <= whole:
                at = self._first + timedelta(minutes=tick)
                x, told = self._x(at), self._found.clock.short(at)
                yield line((x, _GROUND), (x, _GROUND + 4), ink=LINE)
                half = width_of(told) / 2
                yield words(
                    (min(max(x, _LEFT + half - 8), _RIGHT - half), _GROUND + 16), told, ink=SOFT, anchor="middle"
                )

    def _stages(self) -> Iterable[str]:
        y = _GROUND + _STAGES - 8
        for stage in self._found.stages:
            left, right = self._x(stage.begins_at) + 1, self._x(stage.ends_at) - 1
            if right > left:
                yield line((left + 1.5, y), (max(right - 1.5, left + 1.5), y), wide=3.0)
            if width_of(str(stage.name)) <= right - left:
                yield words((left, y + 15), str(stage.name), weight=600)


def _diamond(at: Point, half: float) -> list[Point]:
    x, y = at
    return [(x, y - half), (x + half, y), (x, y + half), (x - half, y)]
