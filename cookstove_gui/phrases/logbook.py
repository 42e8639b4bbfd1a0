"""The sentences of the Logbook: when sessions were, what an import brings, how past projections turned out."""

from datetime import datetime

from cookstove_gui.forecast.answers import Quantiles, RecordRow, TrackRecord
from cookstove_gui.phrases.edge import (
    Edge,
    duration,
    entries_count,
    full_date,
    local_day,
    sessions_count,
    short_date,
    weekday,
)
from cookstove_gui.units import clock_text


def session_span(first_at: datetime | None, last_at: datetime | None, offset_minutes: int) -> str:
    """When a session was: its day and its clocks."""
    if first_at is None or last_at is None:
        return "nothing entered yet"
    day = local_day(first_at, offset_minutes)
    began, ended = clock_text(first_at, offset_minutes), clock_text(last_at, offset_minutes)
    return f"{weekday(day)} {full_date(day)}, {began}" + (f" to {ended}" if ended != began else "")


def dated(title: str, at: datetime, offset_minutes: int) -> str:
    """A session's title behind its day, which is what is left of it where there is little width."""
    return f"{short_date(local_day(at, offset_minutes))}, {title}"


def import_question(problems: int, rows: int, files: int) -> str:
    """What an import would bring, and what is wrong with it."""
    wrong = "One thing is wrong" if problems == 1 else f"{problems} things are wrong"
    if files == 0:
        return f"{wrong}, and there is nothing that could be kept."
    return f"{wrong} or doubtful. {entries_count(rows).capitalize()} in {sessions_count(files)} can be kept."


def track_record_words(record: TrackRecord) -> str:
    """How past projections turned out, in one sentence."""
    if record.projections == 0:
        return "No projection given at least 30 minutes ahead has run its course yet."
    sentence = (
        f"Of {record.projections} projections given at least 30 minutes ahead, "
        f"{record.inside_window} came true inside their window"
    )
    if record.typical_miss_min is None:
        return sentence + "."
    return f"{sentence}; typical miss {duration(record.typical_miss_min)}."


def record_behind(record: TrackRecord) -> str:
    """What a track record was made from."""
    return (
        f"From {sessions_count(record.sessions)}, each projected as on its day, with what the earlier ones had taught; "
        "eight in ten should come true inside their window."
    )


def arrival_window(enters: Quantiles, edge: Edge) -> str:
    """An arrival window as a pair of clocks."""
    if enters.p10 is None:
        return "not within three hours"
    latest = "later than 3 h" if enters.p90 is None else edge.clock(enters.p90)
    return f"{edge.clock(enters.p10)} to {latest}"


def came_true(row: RecordRow, edge: Edge) -> str:
    """What came of a projection."""
    if row.came_true_min is None:
        return "not reached"
    at, enters = edge.clock(row.came_true_min), row.enters_min
    if enters.p10 is not None and row.came_true_min < enters.p10 - 0.5:
        return f"{at}, earlier"
    if enters.p90 is not None and row.came_true_min > enters.p90 + 0.5:
        return f"{at}, later"
    return f"{at}, inside"


def recalibrated(factor: float) -> str:
    """What past sessions did to the doubt of a projection an hour ahead; empty if nothing."""
    if abs(factor - 1.0) < 0.05:
        return ""
    often = "less" if factor > 1 else "more"
    return (
        f"An hour ahead the oven was inside its range {often} often than eight times in ten, so that range is "
        f"now {factor:.1f} times as wide."
    )
