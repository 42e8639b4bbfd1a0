"""The seasons of a stove in figures: what their pictures, on screen and on paper, are made of."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta, timezone

from cookstove_gui.cooking.fires.firing_facts import FiringFacts
from cookstove_gui.forecast.answers import RecordRow
from cookstove_gui.logbook import seasons
from cookstove_gui.logbook.seasons import SeasonRow, Smoothed, Span, Total, season_of
from cookstove_gui.phrases.edge import local_day
from cookstove_gui.stove.entries import HeatBand

ALL_YEARS = 0
Drift = tuple[str, tuple[tuple[date, float], ...]]  # a thermometer, and its checks: day, K shown too high


@dataclass(frozen=True, slots=True, kw_only=True)
class Lit:
    """A fire in the picture of hours: its day, and from when to when on the local clock [h since midnight]."""

    session: int
    day: date
    start: float
    end: float
    hottest: float | None  # K


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatHill:
    """The hottest oven of each session in a month, or in a season."""

    start: date
    fires: int
    heats: tuple[float, ...]  # K


@dataclass(frozen=True, slots=True, kw_only=True)
class Season:
    """One season, or all of them."""

    first_year: int
    years: tuple[int, ...]  # every season there is, the latest first
    band: HeatBand
    rows: tuple[SeasonRow, ...]
    total: Total
    lit: tuple[Lit, ...]
    spans: tuple[Span, ...]  # weeks of a season, months of all years
    rises: tuple[tuple[date, float], ...]  # min
    course: tuple[Smoothed, ...]  # of the rises
    rise_medians: tuple[tuple[date, float, int], ...]  # by month of a season, by season of all years
    hills: tuple[HeatHill, ...]
    misses: tuple[tuple[date, float], ...]  # min, later than said above 0
    drifts: tuple[Drift, ...]


def season_figures(
    facts: Iterable[FiringFacts],
    first_year: int,
    band: HeatBand,
    record: Sequence[RecordRow] = (),
    drifts: tuple[Drift, ...] = (),
) -> Season:
    """A season, or for ALL_YEARS every one; loads pandas."""
    by_session = {one.session: one for one in facts}
    every = [season_row(one) for one in by_session.values()]
    year = first_year or None
    rows = seasons.of_season(every, year)
    rises = tuple((row.day, row.rise_min) for row in rows if row.rise_min is not None)
    days = {row.day for row in rows}
    return Season(
        first_year=first_year,
        years=tuple(sorted({season_of(row.day) for row in every}, reverse=True)),
        band=band,
        rows=rows,
        total=seasons.total(rows),
        lit=tuple(lit for row in rows for lit in _lit(by_session[row.session])),
        spans=seasons.by_week(rows) if year else seasons.by_month(rows),
        rises=rises,
        course=seasons.smoothed(rises),
        rise_medians=seasons.medians_by_month(rises if year else tuple((_season_day(day), one) for day, one in rises)),
        hills=_hills(rows, by_season=year is None),
        misses=tuple(
            (day, row.came_true_min - row.likely_min)
            for row in record
            if row.came_true_min is not None
            and row.likely_min is not None
            and (day := local_day(row.made_at, row.offset_minutes)) in days
        ),
        drifts=drifts,
    )


def season_row(facts: FiringFacts) -> SeasonRow:
    """A session's figures as a season adds them up."""
    return SeasonRow(
        session=facts.session,
        day=local_day(facts.began, facts.offset_minutes),
        fires=len(facts.lit),
        minutes=facts.lit_minutes,
        loads=facts.loads,
        weighed=facts.weighed,
        wood=facts.wood,
        hottest=facts.hottest[1] if facts.hottest else None,
        rise_min=facts.rise_min,
    )


def _lit(facts: FiringFacts) -> list[Lit]:
    zone = timezone(timedelta(minutes=facts.offset_minutes))
    found = []
    for start, end in facts.lit:
        local = start.astimezone(zone)
        first = _hours(local)
        length = (end - start).total_seconds() / 3600.0
        hottest = facts.hottest[1] if facts.hottest else None
        found.append(Lit(session=facts.session, day=local.date(), start=first, end=first + length, hottest=hottest))
    return found


def _hours(local: datetime) -> float:
    return local.hour + local.minute / 60.0


def _season_day(day: date) -> date:
    """The first day of the season that a day belongs to."""
    return date(season_of(day), seasons.FIRST_MONTH, 1)


def _hills(rows: Sequence[SeasonRow], *, by_season: bool) -> tuple[HeatHill, ...]:
    groups: dict[date, list[SeasonRow]] = {}
    for row in rows:
        groups.setdefault(_season_day(row.day) if by_season else row.day.replace(day=1), []).append(row)
    return tuple(
        HeatHill(
            start=start,
            fires=sum(row.fires for row in own),
            heats=tuple(row.hottest for row in own if row.hottest is not None),
        )
        for start, own in sorted(groups.items())
    )
