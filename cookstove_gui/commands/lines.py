"""The answers to `outlook`, `zones` and `fit`: as JSON, one object a line, or as text to be read."""

import json
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from cookstove_gui.commands.parsing import Request
from cookstove_gui.commands.question import Asked
from cookstove_gui.cooking.baking.under_way import UnderWay
from cookstove_gui.cooking.fit.fit import FitState
from cookstove_gui.forecast.answers import Outlook, Quantiles
from cookstove_gui.one_road import Memory, work_out
from cookstove_gui.phrases.cook import action_words
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.heading import detail, headline
from cookstove_gui.phrases.in_oven import in_oven_line
from cookstove_gui.phrases.printed import fit_row, outlook_lines, zone_row
from cookstove_gui.situation import Standing
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
    lines: list[str] = []
    for typed, action in request.actions:
        other = work_out(replace(asked.inputs, action=action), memory).alternative
        found = other.outlook if other else standing.outlook
        if request.as_json:
            answer = _outlook_object(request, asked, found)
            answer["next_reading"] = _next_reading(standing)
            if standing.bakes:
                answer["in_oven"] = [_in_oven(one, asked) for one in standing.bakes]
            lines.append(one_line(answer | ({"if": typed} if typed else {})))
        else:
            step = f", if: {action_words(action).lower()}" if typed else ""
            lines.append(f"{_heading(asked)}{step}")
            lines.extend(f"  {line}" for line in outlook_lines(found, standing.band, edge))
    if request.as_json:
        return lines
    inside = [in_oven_line(one, standing.stove, edge) for one in standing.bakes]
    advice = [*inside, headline(standing, edge), detail(standing, edge)]
    return [*lines, *(f"  {line}" for line in advice if line), *_caution_lines(standing)]


def _next_reading(standing: Standing) -> dict[str, Any] | None:
    reading = standing.next_reading
    if reading is None:
        return None
    gone = (standing.now - standing.course.asked_at).total_seconds() / 60.0
    return {"spot": reading.spot, "in_min": max(0, round(reading.in_min - gone))}


def _in_oven(one: UnderWay, asked: Asked) -> dict[str, Any]:
    """What is in the oven: clocks of going in, turning and being done; null beyond three hours or where not known."""
    moments = {
        "went_in": one.inside.went_in,
        "turn_at": one.turn_at,
        "done_earliest": one.earliest,
        "done_likely": one.likely,
        "done_latest": one.latest,
    }
    clocks = {name: None if at is None else iso_clock(at, asked.offset_minutes) for name, at in moments.items()}
    return {"name": one.inside.name, **clocks}


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
    return [_heading(asked), *_columns([zone_row(zone, standing.stove, edge) for zone in found])]


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
                    "until_min": _rounded(fit.spots[0].until_min, 1),
                    "chances": [
                        {"min": round((at - standing.now).total_seconds() / 60, 1), "chance": round(chance, 4)}
                        for at, chance in zip(fit.starts, fit.spots[0].chances, strict=True)
                    ],
                }
            )
            for fit in found
        ]
    lines = [_heading(asked)]
    for state in FitState:
        of_state = [fit for fit in found if fit.state is state]
        if of_state:
            lines.append(f"  {str(state).capitalize()}:")
            lines.extend(_columns([fit_row(fit, standing.stove, edge) for fit in of_state], indent="    "))
    return [*lines, *([f"  {headline(standing, edge)}"] if first_fires.next else []), *_caution_lines(standing)]


def _columns(rows: Sequence[Sequence[str]], indent: str = "  ") -> list[str]:
    widths = [max(len(row[place]) for row in rows) for place in range(len(rows[0]))] if rows else []
    return [
        (indent + "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True))).rstrip()
        for row in rows
    ]
