"""Lessons as plain numbers, texts and lists, so that they can be kept and taken up again."""

from datetime import datetime
from typing import Any

from cookstove_gui.forecast.answers import Quantiles, RecordRow
from cookstove_gui.forecast.learning.hindsight import Hindcast
from cookstove_gui.forecast.learning.learn import Lessons, Looked
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.stove.entries import HeatBand


def to_json(lessons: Lessons) -> dict[str, Any]:
    """As `from_json` takes it."""
    return {
        "sessions": lessons.sessions,
        "learned": lessons.learned.to_json(),
        "generic": lessons.generic.to_json(),
        "looked": [
            {
                "casts": [_cast(cast) for cast in one.casts],
                "generic": [_cast(cast) for cast in one.generic],
                "asked": [_row(row) for row in one.asked],
            }
            for one in lessons.looked
        ],
    }


def from_json(table: dict[str, Any]) -> Lessons:
    """From what `to_json` gave; raises InputProblem when another version of the program wrote it."""
    return Lessons(
        sessions=int(table["sessions"]),
        learned=Character.from_json(table["learned"]),
        generic=Character.from_json(table["generic"]),
        looked=tuple(
            Looked(
                casts=tuple(_cast_of(row) for row in one["casts"]),
                generic=tuple(_cast_of(row) for row in one["generic"]),
                asked=tuple(_row_of(row) for row in one["asked"]),
            )
            for one in table["looked"]
        ),
    )


def _cast(cast: Hindcast) -> list[float]:
    return [cast.lead, *cast.quantiles, cast.came_true, cast.loss]


def _cast_of(row: list[float]) -> Hindcast:
    lead, p10, p50, p90, came_true, loss = row
    return Hindcast(lead, (p10, p50, p90), came_true, loss)


def _row(row: RecordRow) -> dict[str, Any]:
    enters = row.enters_min
    return {
        "session": row.session,
        "made_at": row.made_at.isoformat(),
        "offset_minutes": row.offset_minutes,
        "band": [row.band.name, row.band.low, row.band.high],
        "enters_min": [enters.p10, enters.p50, enters.p90],
        "likely_min": row.likely_min,
        "came_true_min": row.came_true_min,
        "watched_min": row.watched_min,
    }


def _row_of(table: dict[str, Any]) -> RecordRow:
    name, low, high = table["band"]
    p10, p50, p90 = table["enters_min"]
    return RecordRow(
        session=table["session"],
        made_at=datetime.fromisoformat(table["made_at"]),
        offset_minutes=table["offset_minutes"],
        band=HeatBand(name=name, low=low, high=high),
        enters_min=Quantiles(p10=p10, p50=p50, p90=p90),
        likely_min=table["likely_min"],
        came_true_min=table["came_true_min"],
        watched_min=table["watched_min"],
    )
