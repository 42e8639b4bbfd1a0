"""A bake as its picture shows it: oven and core as they were and as projected, in kelvin over minutes from now."""

from dataclasses import dataclass
from datetime import datetime

import numpy as np

from cookstove_gui.cooking.baking.under_way import UnderWay
from cookstove_gui.cooking.fit.tasks import Task, task_of
from cookstove_gui.desk.cook.oven_lines import OvenFan, oven_fan
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import Kind, reading_kelvin

_BEFORE_MIN, _AFTER_MIN, _LEAST_MIN = 5.0, 13.0, 60.0  # round the bake and its window, and the least that is shown


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line with its doubt; arrays of one length."""

    minutes: FloatArray
    p10: FloatArray  # K
    p50: FloatArray
    p90: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeLines:
    """Everything on one clock axis; minutes from now."""

    start: float
    end: float
    goes_in: float
    oven_past: Line
    oven_ahead: OvenFan
    oven_read: tuple[tuple[float, float], ...]  # minute, K
    task: Task | None  # whose band the oven should be in
    core: Line
    probes: tuple[tuple[float, float], ...]
    done_at: float  # K
    safe_at: float | None  # K
    window: tuple[float | None, float | None, float | None]  # earliest, likely, latest
    turn: float | None


def bake_lines(found: UnderWay, standing: Standing) -> BakeLines | None:
    """The picture's lines; none for what the catalogue does not know, or of which nothing can be said."""
    answer = found.answer
    if answer is None or answer.core is None:
        return None
    now = standing.now
    shift = _minutes(found.asked_at, now)
    done = answer.done_min
    window = tuple(None if at is None else at + shift for at in (done.p10, done.p50, done.p90))
    goes_in = _minutes(found.inside.went_in, now)
    last = max([0.0, *(at for at in window if at is not None)])
    past = standing.trace
    oven = standing.stove.oven_spot
    return BakeLines(
        start=goes_in - _BEFORE_MIN,
        end=max(last + _AFTER_MIN, goes_in - _BEFORE_MIN + _LEAST_MIN),
        goes_in=goes_in,
        oven_past=Line(
            minutes=np.array([_minutes(at, now) for at in past.at]), p10=past.p10, p50=past.p50, p90=past.p90
        ),
        oven_ahead=oven_fan(standing.projection, oven),
        oven_read=tuple(
            (_minutes(row.at, now), reading_kelvin(row))
            for row in standing.rows
            if row.kind is Kind.READING and row.spot == oven
        ),
        task=task_of(answer.bake.task),
        core=Line(minutes=answer.core.minutes + shift, p10=answer.core.p10, p50=answer.core.p50, p90=answer.core.p90),
        probes=tuple((_minutes(one.at, now), one.core) for one in found.inside.probes),
        done_at=answer.done_at,
        safe_at=answer.safe.temperature if answer.safe else None,
        window=(window[0], window[1], window[2]),
        turn=None if found.turn is None else found.turn.in_min + shift,
    )


def _minutes(at: datetime, now: datetime) -> float:
    return (at - now).total_seconds() / 60.0
