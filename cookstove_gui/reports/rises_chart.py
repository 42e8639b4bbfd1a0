"""The oven of every firing of a stove on paper, thin lines over each other, against the heat wanted."""

from collections.abc import Sequence

from cookstove_gui.phrases.edge import heat_name, measured_time
from cookstove_gui.reports.svg import BAND, INK, LINE, SOFT, VERDIGRIS, WIDE, box, line, path, picture, words
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import TemperatureUnit, degrees, kelvin

_LEFT, _HIGH, _FOOT = 38.0, 150.0, 20.0
_FLOOR = 288.0  # K
_LONGEST = 360.0  # min shown
_HEAT_STEPS = {"F": 100, "C": 50}


def rises_chart(
    curves: Sequence[Sequence[tuple[float, float]]], band: HeatBand, unit: TemperatureUnit, said: str
) -> str:
    """Curves of minutes since lighting and K; empty without any that has two readings."""
    shown = [[(minute, heat) for minute, heat in curve if 0 <= minute <= _LONGEST] for curve in curves]
    shown = [curve for curve in shown if len(curve) > 1]
    if not shown:
        return ""
    last = max(curve[-1][0] for curve in shown)
    top = max([band.high, *(heat for curve in shown for _, heat in curve)]) + 8.0

    def x(minute: float) -> float:
        return _LEFT + minute / last * (WIDE - _LEFT - 4)

    def y(heat: float) -> float:
        return _HIGH * (1 - (min(max(heat, _FLOOR), top) - _FLOOR) / (top - _FLOOR))

    parts = [box((_LEFT, y(band.high)), WIDE - _LEFT, y(band.low) - y(band.high), BAND)]
    parts += [line((_LEFT, y(heat)), (WIDE, y(heat)), ink=VERDIGRIS) for heat in (band.low, band.high)]
    middle = (y(band.low) + y(band.high)) / 2
    parts.append(words((_LEFT + 6, middle + 4.5), heat_name(band), ink=VERDIGRIS, weight=700))
    step = _HEAT_STEPS[unit]
    low, high = (float(degrees(heat, unit)) for heat in (_FLOOR, top))
    for tick in range(int(low // step + 1) * step, int(high) + 1, step):
        level = y(float(kelvin(float(tick), unit)))
        parts.append(words((_LEFT - 8, level + 4), str(tick), ink=SOFT, anchor="end"))
        parts.append(line((_LEFT - 5, level), (_LEFT, level), ink=LINE))
    parts += [path([(x(minute), y(heat)) for minute, heat in curve], ink=INK, wide=0.8) for curve in shown]
    parts.append(line((_LEFT, _HIGH), (WIDE, _HIGH), ink=LINE))
    each = 30 if last <= 240 else 60
    for minute in range(0, int(last) + 1, each):
        anchor = "start" if minute == 0 else "end" if x(minute) > WIDE - 24 else "middle"
        told = "match" if minute == 0 else measured_time(minute)
        parts.append(line((x(minute), _HIGH), (x(minute), _HIGH + 4), ink=LINE))
        parts.append(words((x(minute), _HIGH + 16), told, ink=SOFT, anchor=anchor))
    return picture(parts, WIDE, _HIGH + _FOOT, said)
