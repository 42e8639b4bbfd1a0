"""`track-record`: how the projections over a folder of sessions would have turned out."""

from collections.abc import Callable

from cookstove_gui.commands.lines import one_line, quantiles
from cookstove_gui.commands.parsing import Request
from cookstove_gui.commands.question import folder_of_logs
from cookstove_gui.forecast.answers import TrackRecord
from cookstove_gui.forecast.learning.track_record import track_record
from cookstove_gui.phrases.logbook.record import says_something, track_record_words
from cookstove_gui.phrases.printed import record_heading, record_line
from cookstove_gui.study import past_lessons
from cookstove_gui.units import degrees, iso_clock


def record_lines(request: Request, complain: Callable[[str], None]) -> tuple[list[str], bool]:
    """The lines to print, and whether every row of every log could be read."""
    folder = request.logs[0]
    past, stove = folder_of_logs(folder, complain)
    found = past_lessons(stove, past.sessions)
    record = track_record(stove.name, found.sessions, found.record)
    if request.as_json:
        return [one_line(_record_object(record))], not past.problems
    return [
        record_heading(record),
        f"  {track_record_words(record)}",
        *(f"  {record_line(row)}" for row in record.rows if says_something(record)),
    ], not past.problems


def _record_object(record: TrackRecord) -> dict[str, object]:
    return {
        "stove": record.stove,
        "sessions": record.sessions,
        "projections": record.projections,
        "inside_window": record.inside_window,
        "typical_miss_min": None if record.typical_miss_min is None else round(float(record.typical_miss_min), 1),
        "rows": [
            {
                "session": row.session,
                "made_at": iso_clock(row.made_at, row.offset_minutes),
                "band": {
                    "name": row.band.name,
                    "low": round(float(degrees(row.band.low, "F")), 1),
                    "high": round(float(degrees(row.band.high, "F")), 1),
                    "unit": "F",
                },
                "enters_min": quantiles(row.enters_min),
                "came_true_min": None if row.came_true_min is None else round(float(row.came_true_min), 1),
            }
            for row in record.rows
        ],
    }
