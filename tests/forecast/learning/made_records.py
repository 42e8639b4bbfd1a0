"""Made-up rows of a track record."""

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta

from cookstove_gui.forecast.answers import Quantiles, RecordRow
from cookstove_gui.stove.entries import HeatBand

FIRST = datetime(2026, 10, 24, 14, 0, tzinfo=UTC)
HEATS = tuple(HeatBand(name=name, low=low, high=low + 30.0) for name, low in (("slow", 394.0), ("moderate", 450.0)))


def record_row(
    day: int = 0, likely: float = 60.0, half: float = 20.0, came: float | None = 60.0, heat: int = 0, minute: int = 0,
    title: str = "Bread", watched: float = 200.0, open_end: bool = False,
) -> RecordRow:  # fmt: skip
    """One window, `half` either side of the likely time [min]."""
    return RecordRow(
        session=title,
        made_at=FIRST + timedelta(days=day, minutes=minute),
        offset_minutes=0,
        band=HEATS[heat],
        enters_min=Quantiles(p10=likely - half, p50=likely, p90=None if open_end else likely + half),
        likely_min=likely,
        came_true_min=came,
        watched_min=watched,
    )


def record_rows(sessions: int, held: Sequence[bool], shrink: float = 0.0) -> tuple[RecordRow, ...]:
    """Two windows a session; those of a session hold or come half an hour late."""
    return tuple(
        record_row(
            day=2 * day, half=20.0 - shrink * day, came=65.0 if held[day] else 95.0, heat=heat, title=f"Fire {day}"
        )
        for day in range(sessions)
        for heat in (0, 1)
    )  # fmt: skip
