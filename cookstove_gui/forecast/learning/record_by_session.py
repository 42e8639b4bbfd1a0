"""The track record session by session: the windows said about an hour ahead, and whether they get better."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from math import comb
from statistics import median

from cookstove_gui.forecast.answers import HORIZON_MINUTES, RecordRow, Verdict
from cookstove_gui.forecast.learning.track_record import held_true, verdict

HOUR_AHEAD = (40.0, 90.0)  # min ahead that count as about an hour
LEAST_WINDOWS = 10  # fewer say nothing of a share; judgement
MEANT = 0.8  # of the windows that should hold: they run from the tenth to the ninetieth percentile
SHORTER = 0.85  # of their length before, from which windows count as having grown shorter; judgement
_SELDOM = 0.1  # chance below which so few windows holding isn't put down to luck; judgement
_LEAST_SESSIONS = 4
_APART = timedelta(hours=12)  # windows said further apart are of different sessions, whatever their titles


class Trend(StrEnum):
    """What became of the windows over the sessions."""

    TOO_FEW = "too few"
    BETTER = "shorter, and they hold"
    TOO_SHORT = "shorter, and too few hold"
    UNSURE = "no shorter, and too few hold"
    SAME = "no shorter, and they hold"


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """How many windows were put to the test, and how many held."""

    windows: int
    held: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionRecord:
    """The windows of one session that claimed something, in the order in which they were said."""

    title: str
    at: datetime
    offset_minutes: int
    rows: tuple[RecordRow, ...]
    length_min: float  # median
    miss_min: float | None  # median, of those whose heat came


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordBySession:
    """The record of the windows said about an hour ahead."""

    sessions: tuple[SessionRecord, ...]  # oldest first
    all: Judged
    miss_min: float | None  # median
    earlier: Judged  # of the earlier half of the sessions
    later: Judged
    later_from: datetime | None  # when the later half began
    trend: Trend


def record_by_session(rows: Sequence[RecordRow]) -> RecordBySession:
    """The record of the windows about an hour ahead, one for each heat of each session."""
    sessions = tuple(_session(group) for group in _sessions(rows) if group)
    half = len(sessions) // 2
    before, since = ([row for one in part for row in one.rows] for part in (sessions[:half], sessions[half:]))
    own = [*before, *since]
    return RecordBySession(
        sessions=sessions,
        all=judged(own),
        miss_min=_miss(own),
        earlier=judged(before),
        later=judged(since),
        later_from=sessions[half].at if sessions else None,
        trend=_trend(len(sessions), before, since),
    )


def judged(rows: Iterable[RecordRow]) -> Judged:
    """How many of some windows were put to the test, and how many held."""
    found = [held for row in rows if (held := held_true(row)) is not None]
    return Judged(windows=len(found), held=sum(found))


def chance_of_so_few(held: int, windows: int, share: float = MEANT) -> float:
    """Chance that of so many windows no more than so many hold, when each holds with a chance: binomial."""
    return sum(comb(windows, one) * share**one * (1.0 - share) ** (windows - one) for one in range(held + 1))


def window_length(row: RecordRow) -> float:
    """Length of a window [min]; one that is open at its end reaches to the horizon."""
    first, last = row.enters_min.p10, row.enters_min.p90
    return (HORIZON_MINUTES if last is None else last) - (HORIZON_MINUTES if first is None else first)


def _sessions(rows: Sequence[RecordRow]) -> list[list[RecordRow]]:
    groups: list[list[RecordRow]] = []
    for row in sorted(rows, key=lambda one: one.made_at):
        last = groups[-1][-1] if groups else None
        if last is None or last.session != row.session or row.made_at - last.made_at > _APART:
            groups.append([])
        groups[-1].append(row)
    return [_about_an_hour(group) for group in groups]


def _about_an_hour(rows: Sequence[RecordRow]) -> list[RecordRow]:
    """For each heat the window said nearest to an hour ahead, if one was said then at all."""
    nearest: dict[float, RecordRow] = {}
    for row in rows:
        ahead = row.likely_min
        if ahead is None or not HOUR_AHEAD[0] <= ahead <= HOUR_AHEAD[1] or verdict(row) is Verdict.NO_CLAIM:
            continue
        known = nearest.get(row.band.low)
        if known is None or abs(ahead - 60.0) < abs((known.likely_min or 0.0) - 60.0):
            nearest[row.band.low] = row
    return sorted(nearest.values(), key=lambda row: (row.made_at, row.band.low))


def _session(rows: Sequence[RecordRow]) -> SessionRecord:
    return SessionRecord(
        title=rows[0].session,
        at=rows[0].made_at,
        offset_minutes=rows[0].offset_minutes,
        rows=tuple(rows),
        length_min=median(window_length(row) for row in rows),
        miss_min=_miss(rows),
    )


def _miss(rows: Iterable[RecordRow]) -> float | None:
    misses = [
        abs(row.came_true_min - row.likely_min)
        for row in rows
        if row.came_true_min is not None and row.likely_min is not None
    ]
    return median(misses) if misses else None


def _trend(sessions: int, before: Sequence[RecordRow], since: Sequence[RecordRow]) -> Trend:
    later = judged(since)
    if sessions < _LEAST_SESSIONS or judged((*before, *since)).windows < LEAST_WINDOWS or later.windows == 0:
        return Trend.TOO_FEW
    shorter = median(map(window_length, since)) < SHORTER * median(map(window_length, before))
    holds = chance_of_so_few(later.held, later.windows) >= _SELDOM
    if shorter:
        return Trend.BETTER if holds else Trend.TOO_SHORT
    return Trend.SAME if holds else Trend.UNSURE
