"""The answers to `outlook`, `zones` and `fit`: as JSON, one object a line, or as text to be read."""

import json
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from cookstove_gui.commands.parsing import Request
from cookstove_gui.commands.question import Asked
from cookstove_gui.cooking.fit.fit import FitState, TaskFit
from cookstove_gui.forecast.answers import Action, Outlook, Quantiles
from cookstove_gui.phrases.cook import action_words, arrival, next_reading_words, stay, stay_length
from cookstove_gui.phrases.edge import Edge, heat_name
from cookstove_gui.situation import Memory, Standing, work_out
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import degrees, iso_clock


def lines_of(request: Request, asked: Asked) -> list[str]:
    """The lines to print for one log."""
    match request.command:
        case "outlook":
            return _outlook_lines(request, asked)
        case "zones":
            return _zone_lines(request, asked)
        case _:
            return _fit_lines(request, asked)


def one_line(answer: dict[str, Any]) -> str:
    """A JSON object on one line; never NaN, which is not JSON."""
    return json.dumps(answer, allow_nan=False)


def quantiles(found: Quantiles, places: int = 1) -> dict[str, float | None]:
    """Minutes at the three levels; null beyond the horizon."""
    return {level: _rounded(getattr(found, level), places) for level in ("p10", "p50", "p90")}


def _rounded(value: float | None, places: int) -> float | None:
    return None if value is None else round(float(value), places)


def _heat(kelvin_value: float | None, unit: str) -> float | None:
    return None if kelvin_value is None else round(float(degrees(kelvin_value, unit)), 1)


def _heats(found: Any, unit: str) -> dict[str, float | None]:
    return {level: _heat(getattr(found, level), unit) for level in ("p10", "p50", "p90")}


def _heading(asked: Asked) -> str:
    return f"{asked.log}, {iso_clock(asked.inputs.now, asked.offset_minutes)[:16].replace('T', ' ')}"


def _edge(request: Request, asked: Asked) -> Edge:
    return Edge(unit=request.unit, now=asked.inputs.now, offset_minutes=asked.offset_minutes)


# Outlook


def _outlook_lines(request: Request, asked: Asked) -> list[str]:
    memory, edge = Memory(), _edge(request, asked)
    standing = work_out(asked.inputs, memory)
    reading = standing.next_reading
    lines: list[str] = []
    for typed, action in request.actions:
        other = work_out(replace(asked.inputs, action=action), memory).alternative
        found = other.outlook if other else standing.outlook
        if request.as_json:
            answer = _outlook_object(request, asked, found)
            answer["next_reading"] = {"spot": reading.spot, "in_min": reading.in_min} if reading else None
            lines.append(one_line(answer | ({"if": typed} if typed else {})))
        else:
            lines.extend(_outlook_text(asked, found, standing.band, edge, action if typed else None))
            if reading:
                lines.append(f"  {next_reading_words(reading, standing.stove, edge)}")
    return lines if request.as_json else lines + _caution_lines(standing)


def _caution_lines(standing: Standing) -> list[str]:
    """The urgent cautions that are due, for people; a script gets numbers only."""
    return [f"  Caution, {caution.title.lower()}: {caution.text}" for caution in standing.cautions if caution.urgent]


def _outlook_object(request: Request, asked: Asked, found: Outlook) -> dict[str, Any]:
    unit = request.unit
    return {
        "log": str(asked.log),
        "now": iso_clock(asked.inputs.now, asked.offset_minutes),
        "unit": unit,
        "oven": _heats(found.oven, unit),
        "ahead": [
            {"min": step.minutes, **_heats(step, unit), "chance_in_band": round(float(step.chance_in_band), 4)}
            for step in found.ahead
        ],
        "band": {
            "low": _heat(found.band.low, unit),
            "high": _heat(found.band.high, unit),
            "chance_reached_3h": round(float(found.band.chance_reached_3h), 4),
            "enters_min": quantiles(found.band.enters_min),
            "stays_min": quantiles(found.band.stays_min),
        },
    }


def _outlook_text(asked: Asked, found: Outlook, band: HeatBand, edge: Edge, action: Action | None) -> list[str]:
    step = f", if: {action_words(action).lower()}" if action else ""
    lines = [f"{_heading(asked)}{step}"]
    oven = found.oven
    if oven.p10 is not None and oven.p50 is not None and oven.p90 is not None:
        lines.append(f"  The oven is at about {edge.heat(oven.p50)} ({edge.range(oven.p10, oven.p90)}).")
    in_band = oven.p50 is not None and band.holds(oven.p50)
    if in_band:
        lines.append(f"  The oven is at {heat_name(band)}. {stay(band, found.band.stays_min, edge)}")
    else:
        lines.append(f"  {arrival(band, found.band.enters_min, edge)}")
        if found.band.enters_min.p50 is not None:
            lines.append(f"  {stay_length(found.band.stays_min)}")
    for ahead in found.ahead:
        lines.append(
            f"  {edge.clock(ahead.minutes):>5}  {edge.heat(ahead.p50):>7}  ({edge.range(ahead.p10, ahead.p90)}), "
            f"in the band {ahead.chance_in_band:.0%}"
        )
    return lines


# Zones


def _zone_lines(request: Request, asked: Asked) -> list[str]:
    standing = work_out(asked.inputs)
    found = tuple(standing.zones.values())
    unit = request.unit
    if request.as_json:
        return [
            one_line(
                {
                    "log": str(asked.log),
                    "spot": zone.spot,
                    **_heats(zone, unit),
                    "last_reading": _heat(zone.last_reading, unit),
                    "last_reading_age_min": _rounded(zone.last_reading_age_min, 1),
                }
            )
            for zone in found
        ]
    edge = _edge(request, asked)
    rows = []
    for zone in found:
        read = "not read yet"
        if zone.last_reading is not None and zone.last_reading_age_min is not None:
            read = f"read {edge.heat(zone.last_reading)} {zone.last_reading_age_min:.0f} min ago"
        rows.append((_label(standing.stove, zone.spot), edge.heat(zone.p50), edge.range(zone.p10, zone.p90), read))
    return [_heading(asked), *_columns(rows)]


# Fit


def _fit_lines(request: Request, asked: Asked) -> list[str]:
    standing, edge = work_out(asked.inputs), _edge(request, asked)
    found, first_fires = standing.fits, standing.first_fires
    if request.as_json:
        return [
            one_line(
                {
                    "log": str(asked.log),
                    "task": fit.task.key,
                    "state": str(fit.state),
                    "spot": fit.spots[0].spot,
                    "chance_now": round(fit.spots[0].chance_now, 4),
                    "in_min": _rounded(fit.spots[0].in_min, 1),
                    "chance_then": round(fit.spots[0].chance_then, 4),
                }
            )
            for fit in found
        ]
    lines = [_heading(asked)]
    for state in FitState:
        of_state = [fit for fit in found if fit.state is state]
        if of_state:
            lines.append(f"  {str(state).capitalize()}:")
            lines.extend(_columns([_fit_row(fit, standing.stove, edge) for fit in of_state], indent="    "))
    return [*lines, *([f"  {first_fires.line}"] if first_fires.line else []), *_caution_lines(standing)]


def _fit_row(fit: TaskFit, stove: Stove, edge: Edge) -> tuple[str, ...]:
    best = fit.spots[0]
    when = ""
    if best.in_min is not None:
        now = best.in_min < 1
        when = f"now ({best.chance_now:.0%})" if now else f"about {edge.clock(best.in_min)} ({best.chance_then:.0%})"
    return (fit.task.name, _label(stove, best.spot) if when else "", when)


def _label(stove: Stove, spot: str) -> str:
    known = stove.spot(spot)
    return known.label if known else spot.replace("_", " ")


def _columns(rows: Sequence[Sequence[str]], indent: str = "  ") -> list[str]:
    widths = [max(len(row[place]) for row in rows) for place in range(len(rows[0]))] if rows else []
    return [
        (indent + "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True))).rstrip()
        for row in rows
    ]
