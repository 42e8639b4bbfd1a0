"""What is known of the oven at one moment of the time axis, behind or ahead: for whoever points at it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

import numpy as np

from cookstove_gui.desk.cook.oven_lines import oven_fan
from cookstove_gui.desk.cook.spot_heats import STANDS
from cookstove_gui.forecast.answers import oven_spot
from cookstove_gui.phrases.cook import step_in_short
from cookstove_gui.phrases.figures import estimate_text, temperature_text
from cookstove_gui.phrases.plot import ahead_words, curve_words
from cookstove_gui.situation import was_read
from cookstove_gui.stove.entries import Kind

if TYPE_CHECKING:
    from cookstove_gui.desk.desk import Desk


@dataclass(frozen=True, slots=True, kw_only=True)
class OvenAt:
    """The oven at a moment, and for one to come the chance that it is at the heat wanted."""

    at: datetime
    p10: float  # K
    p50: float
    p90: float
    in_band: float | None  # share of the futures; none for a moment that is past


def oven_at(desk: Desk, at: datetime) -> OvenAt | None:
    """The oven at a moment; none before the log began, beyond the futures, or when nothing is worked out."""
    standing = desk.standing
    if standing is None:
        return None
    trace = standing.trace
    if at <= standing.now:
        if not trace.at or at < trace.at[0]:
            return None
        places = [(moment - at).total_seconds() for moment in trace.at]
        p10, p50, p90 = (float(np.interp(0.0, places, line)) for line in (trace.p10, trace.p50, trace.p90))
        return OvenAt(at=at, p10=p10, p50=p50, p90=p90, in_band=None)
    minutes = (at - standing.now).total_seconds() / 60.0
    projection = standing.projection
    if minutes > projection.minutes[-1] or not desk.is_live:
        return None
    fan = oven_fan(projection, desk.stove.oven_spot)
    p10, p50, p90 = (float(np.interp(minutes, fan.minutes, line)) for line in (fan.p10, fan.p50, fan.p90))
    from cookstove_gui.forecast.futures.outlook import oven_at as futures_at  # not before the first paint

    heats = futures_at(projection.minutes, projection.of(oven_spot(desk.stove, projection)), minutes)
    inside = (heats >= desk.band.low) & (heats <= desk.band.high)
    return OvenAt(at=at, p10=p10, p50=p50, p90=p90, in_band=float(np.mean(inside)))


def curve_said(desk: Desk) -> str:
    """The drawn line in two sentences, for whoever cannot see it; empty before anything was read."""
    standing, edge = desk.standing, desk.edge
    if standing is None or not standing.trace.at or not was_read(standing.rows):
        return ""
    trace = standing.trace
    past = curve_words((trace.at[0], float(trace.p50[0])), (trace.at[-1], float(trace.p50[-1])), edge)
    if not desk.is_live:
        return past
    fan = oven_fan(standing.projection, desk.stove.oven_spot)
    line = [
        (standing.now + timedelta(minutes=minutes), heat)
        for minutes, heat in zip(fan.minutes.tolist(), fan.p50.tolist(), strict=True)
    ]
    top = max(line, key=lambda point: point[1])
    return f"{past} {ahead_words(None if top in (line[0], line[-1]) else top, line[-1], edge)}"


def step_outcome(desk: Desk) -> str:
    """What the step asked about would bring, short; empty where none is asked about."""
    standing = desk.standing
    other = standing.alternative if standing and desk.is_live else None
    if standing is None or other is None or desk.action != other.action:
        return ""
    return step_in_short(other.action, other.outlook, desk.band, desk.edge)


def oven_number(desk: Desk) -> str | None:
    """The oven now as it is written: exact while it was just read, else about; none before it is worked out."""
    standing = desk.standing
    if standing is None or not desk.is_live or not was_read(standing.rows) or standing.outlook.oven.p50 is None:
        return None
    asked = {question.number for question in desk.questions}
    read = [row for row in standing.rows if row.kind is Kind.READING and row.spot == desk.stove.oven_spot]
    is_fresh = bool(read) and read[-1].number not in asked and standing.now - read[-1].at < STANDS
    oven = standing.outlook.oven.p50
    return temperature_text(oven, desk.unit) if is_fresh else estimate_text(oven, desk.unit)
