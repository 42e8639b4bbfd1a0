"""Small made-up stoves, logs and projections for the tests of this room."""

from collections.abc import Mapping, Sequence
from datetime import UTC, datetime

import numpy as np

from cookstove_gui.forecast.answers import Projection, Zone
from cookstove_gui.stove.entries import Entry, Session
from cookstove_gui.stove.stove import Stove, stove_with_default_spots
from cookstove_gui.units import kelvin
from tests.rows import rows_of

START = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)
STOVE = stove_with_default_spots("made up")
SESSIONS_STOVE = STOVE.name


def fahrenheit(value: float) -> float:
    """Kelvin of °F."""
    return kelvin(float(value), "F")


def projection(
    heats: Mapping[str, Sequence[float] | np.ndarray], minutes: Sequence[float] | None = None, *, futures: int = 1
) -> Projection:
    """A projection from °F by spot: (times,) for all futures alike, or (futures, times)."""
    columns = [np.atleast_2d(np.asarray(heat, dtype=float)) for heat in heats.values()]
    times = columns[0].shape[1]
    count = max(futures, *(len(column) for column in columns))
    stacked = np.stack([np.broadcast_to(column, (count, times)) for column in columns], axis=2)
    return Projection(
        now=START,
        minutes=np.arange(times) * 5.0 if minutes is None else np.asarray(minutes, dtype=float),
        spots=tuple(heats),
        kelvin=kelvin(stacked, "F"),
    )


def log(*rows: tuple[float, str, str, str, str], start: datetime = START) -> tuple[Entry, ...]:
    """Rows of (minutes from the start, kind, spot, value, unit)."""
    return rows_of(*rows, start=start, offset_minutes=0)


def session(number: int, entries: tuple[Entry, ...], stove: Stove = STOVE) -> Session:
    """A session of the made-up stove."""
    return Session(number=number, stove=stove.name, title=f"session {number}", entries=entries)


def zone(spot: str, degrees_f: float, *, age: float | None = 5.0) -> Zone:
    """A zone known within 10 °F, read `age` minutes ago."""
    heat = fahrenheit(degrees_f)
    return Zone(
        spot=spot,
        p10=heat - 5.0,
        p50=heat,
        p90=heat + 5.0,
        last_reading=None if age is None else heat,
        last_reading_age_min=age,
    )
