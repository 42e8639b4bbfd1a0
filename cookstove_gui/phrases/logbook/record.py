"""How past projections turned out: the record's sentences, and each projection beside what came of it."""

from cookstove_gui.forecast.answers import RecordRow, TrackRecord, Verdict
from cookstove_gui.forecast.learning.record_by_session import LEAST_WINDOWS, RecordBySession, Trend
from cookstove_gui.forecast.learning.track_record import verdict
from cookstove_gui.phrases.edge import (
    Edge,
    duration,
    listed,
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


def held_headline(found: RecordBySession, record: TrackRecord) -> str:
    """Of the windows said about an hour ahead, how many held; with too few, that they are too few."""
    number, held = found.all.windows, found.all.held
    if not says_something(record) or number == 0:
        return track_record_words(record)
    if number < LEAST_WINDOWS:
        said = "window" if number == 1 else "windows"
        return f"Too few to judge by: of {number} {said} said about an hour ahead {held} held."
    share = 10 * held / number
    meant = "the share that was meant, 8 in 10" if abs(share - 8) < 0.5 else f"{share:.0f} in 10, where 8 are meant"
    return f"Of {number} windows said about an hour ahead {held} held: {meant}."


def held_behind(found: RecordBySession, record: TrackRecord) -> str:
    """What that share rests on, and by how much the likely time misses."""
    if not says_something(record) or found.all.windows == 0:
        return record_behind(record)
    miss = "" if found.miss_min is None else f" Typical miss {duration(found.miss_min)}."
    return (
        f"One for each heat of a session, with what was known then.{miss} "
        f"Of all {record.projections} given at least 30 minutes ahead {record.inside_window} held."
    )


def trend_words(trend: Trend) -> str:
    """Whether the windows get better with each session."""
    return {
        Trend.TOO_FEW: "Too few to tell: after four sessions and ten windows this says more.",
        Trend.BETTER: "Yes. The windows grew shorter and still hold at least as often as they should.",
        Trend.TOO_SHORT: "Not well: the windows grew shorter, but too few of them hold.",
        Trend.UNSURE: "No. The windows are as long as before, and too few of them hold.",
        Trend.SAME: "Not seen: the windows are as long as before, and hold at least as often as they should.",
    }[trend]


def misses_words(found: RecordBySession) -> str:
    """Where and which way the windows that did not hold missed; empty where all held."""
    missed = [verdict(row) for one in found.sessions for row in one.rows]
    earlier, later, never = (missed.count(one) for one in (Verdict.EARLIER, Verdict.LATER, Verdict.NOT_REACHED))
    parts = [
        f"{number} came {how}" for number, how in ((earlier, "sooner than said"), (later, "later than said")) if number
    ] + ([f"{never} never came"] if never else [])
    return f"Of those that did not hold {listed(parts)}." if parts else ""


def moved_words(values: tuple[float, ...]) -> str:
    """How long something is now, in words: `now 21 min`."""
    return f"now {duration(values[-1])}" if values else ""
