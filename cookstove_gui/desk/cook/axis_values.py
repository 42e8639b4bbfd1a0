"""What the plot shows as a table for a spreadsheet: tab-separated, heats in the unit on the screen."""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from cookstove_gui.desk.cook.first_fire_course import first_fire_course
from cookstove_gui.desk.cook.good_rows import GoodRow
from cookstove_gui.desk.cook.oven_lines import OvenFan, oven_fan
from cookstove_gui.desk.cook.pan_course import pan_course
from cookstove_gui.desk.desk import Desk
from cookstove_gui.phrases.edge import spot_label
from cookstove_gui.stove.entries import Kind, reading_kelvin
from cookstove_gui.units import degrees, iso_clock

_Row = tuple[datetime, str, str, Sequence[float | None]]  # when, of what spot, what, p10 to p90 [K]


def values_text(desk: Desk, pan: GoodRow | None = None, pan_spot: str = "") -> str:
    """Clock, spot, tenth percentile, median, ninetieth: the oven as known and projected; of other spots the readings.

    While it is asked where a pan for a row goes they are the spots that the plot shows, the one marked first; while
    first fires run, the hottest of the top.
    """
    unit = desk.unit
    lines = [f"clock\tspot\twhat\tp10 °{unit}\tp50 °{unit}\tp90 °{unit}"]
    for at, spot, what, heats in _rows(desk, pan, pan_spot):
        written = ("" if heat is None else f"{float(degrees(heat, unit)):.1f}" for heat in heats)
        lines.append("\t".join((iso_clock(at, desk.offset_minutes), spot, what, *written)))
    return "\n".join(lines) + "\n"


def _rows(desk: Desk, pan: GoodRow | None, pan_spot: str) -> Iterator[_Row]:
    first = first_fire_course(desk)
    course = pan_course(desk, pan, pan_spot) if pan is not None and first is None else None
    if first is not None:
        yield from _of_spot(desk, first.spot, first.ahead)
    elif course is not None:
        for one in course.spots:
            yield from _of_spot(desk, one.spot, one.ahead)
    else:
        yield from _of_oven(desk)


def _of_oven(desk: Desk) -> Iterator[_Row]:
    standing = desk.standing
    if standing is None:
        return
    oven = spot_label(desk.stove, desk.stove.oven_spot)
    trace = standing.trace
    for at, *heats in zip(trace.at, trace.p10, trace.p50, trace.p90, strict=True):
        yield at, oven, "known", heats
    if desk.is_live:
        yield from _projected(standing.now, oven, oven_fan(standing.projection, desk.stove.oven_spot))


def _of_spot(desk: Desk, spot: str, ahead: OvenFan | None) -> Iterator[_Row]:
    """What was read there, then what may come."""
    label = spot_label(desk.stove, spot)
    for row in desk.entries:
        if row.kind is Kind.READING and row.spot == spot:
            yield row.at, label, "read", (None, reading_kelvin(row), None)
    if ahead is not None and desk.standing is not None:
        yield from _projected(desk.standing.now, label, ahead)


def _projected(now: datetime, spot: str, fan: OvenFan) -> Iterator[_Row]:
    for minutes, *heats in zip(fan.minutes.tolist(), fan.p10, fan.p50, fan.p90, strict=True):
        yield now + timedelta(minutes=minutes), spot, "projected", heats
