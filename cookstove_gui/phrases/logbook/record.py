"""How past projections turned out: the record's sentences, and each projection beside what came of it."""

from cookstove_gui.forecast.answers import RecordRow, TrackRecord, Verdict
from cookstove_gui.forecast.learning.track_record import verdict
from cookstove_gui.phrases.edge import (
    Edge,
    duration,
    sessions_count,
)

_LEAST_SESSIONS = 2  # with fewer a track record claims nothing


def says_something(record: TrackRecord) -> bool:
    """Whether a record is made from enough sessions to claim anything by."""
    return record.sessions >= _LEAST_SESSIONS


def track_record_words(record: TrackRecord) -> str:
    """How past projections turned out, in one sentence."""
    if not says_something(record):
        return "One session is too little to judge the projections by; after the next ones this page says more."
    if record.projections == 0:
        return "No projection given at least 30 minutes ahead has run its course yet."
    if record.projections == 1:
        came = "came true inside its window" if record.inside_window else "did not come true inside its window"
        sentence = f"The only projection given at least 30 minutes ahead {came}"
    else:
        sentence = (
            f"Of {record.projections} projections given at least 30 minutes ahead, "
            f"{record.inside_window} came true inside their window"
        )
    if record.typical_miss_min is None:
        return sentence + "."
    return f"{sentence}; typical miss {duration(record.typical_miss_min)}."


def record_behind(record: TrackRecord) -> str:
    """What a track record was made from; empty where it claims nothing."""
    if not says_something(record):
        return ""
    return (
        f"From {sessions_count(record.sessions)}, each projected as on its day, with what the earlier ones had taught; "
        "eight in ten should come true inside their window."
    )


def row_edge(row: RecordRow, unit: str = "F") -> Edge:
    """How a projection's numbers leave: by the clock of its own session."""
    return Edge(unit=unit, now=row.made_at, offset_minutes=row.offset_minutes)


def arrival_window(row: RecordRow) -> str:
    """An arrival window as a pair of clocks."""
    edge, enters = row_edge(row), row.enters_min
    if enters.p10 is None:
        return "not within three hours"
    latest = "later than 3 h" if enters.p90 is None else edge.clock(enters.p90)
    return f"{edge.clock(enters.p10)} to {latest}"


def came_true(row: RecordRow) -> str:
    """What came of a projection, by the verdict that the record counts."""
    found = verdict(row)
    if row.came_true_min is None:
        return {
            Verdict.OPEN: "readings ended before",
            Verdict.NO_CLAIM: "not reached, as said",
            Verdict.NEVER_AS_SAID: "not reached, as it might",
        }.get(found, "not reached")
    edge, enters = row_edge(row), row.enters_min
    at = edge.clock(row.came_true_min)
    end = {Verdict.EARLIER: enters.p10, Verdict.LATER: enters.p90}.get(found)
    just = "just " if end is not None and edge.clock(end) == at else ""  # the same minute on the clock
    return f"{at}, {just}{found}"


def recalibrated(factor: float, record: TrackRecord) -> str:
    """What past sessions did to the doubt of a projection an hour ahead; empty if nothing."""
    if abs(factor - 1.0) < 0.05 or not says_something(record):
        return ""
    often = "less" if factor > 1 else "more"
    return (
        f"An hour ahead the oven was inside its range {often} often than eight times in ten, so that range is "
        f"now {factor:.1f} times as wide."
    )
