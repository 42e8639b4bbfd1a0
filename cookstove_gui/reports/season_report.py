"""What a report says about a season of a stove, as texts ready to be laid out."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from statistics import median

from cookstove_gui.cooking.fires.firing_facts import FiringFacts
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import RecordRow
from cookstove_gui.logbook import seasons
from cookstove_gui.logbook.seasons import SeasonRow
from cookstove_gui.phrases.edge import heat_name, mass_text, measured_time
from cookstove_gui.phrases.habits import USUAL, Habits, date_words, day_words
from cookstove_gui.phrases.logbook.seasons import (
    caution_words,
    counted_words,
    drift_words,
    hours_words,
    misses_of_season,
    month_and_year,
    season_behind,
    season_headline,
    season_name,
)
from cookstove_gui.phrases.logbook.sessions import came_of_it
from cookstove_gui.phrases.report import thermometer_words
from cookstove_gui.reports.season_cautions import CautionCount
from cookstove_gui.reports.season_charts import hours_chart, rise_chart, wood_chart
from cookstove_gui.reports.season_figures import ALL_YEARS, Drift, Season, season_figures
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import degrees


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonAsked:
    """A stove's sessions and what is known of them beside their logs."""

    stove: Stove
    band: HeatBand
    facts: tuple[FiringFacts, ...]
    titles: Mapping[int, str]  # of sessions
    record: tuple[RecordRow, ...] = ()
    drifts: tuple[Drift, ...] = ()
    cautions: tuple[CautionCount, ...] | None = None  # none: not counted


@dataclass(frozen=True, slots=True, kw_only=True)
class Chart:
    """A picture with its heading and what is read out."""

    heading: str
    svg: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonReport:
    """A season's page; with `is_whole` its sessions follow."""

    stove: str
    title: str
    on: str
    date: str
    span: str
    unit: str
    is_whole: bool
    result: str
    behind: str
    glance: tuple[tuple[str, str], ...]
    charts: tuple[Chart, ...]
    heads: tuple[str, ...]  # of the table by month
    months: tuple[tuple[str, ...], ...]
    cautions_said: str
    cautions: tuple[tuple[str, str], ...]
    thermometers: tuple[str, ...]
    misses: str
    session_heads: tuple[str, ...]
    sessions: tuple[tuple[str, ...], ...]


def season_report(
    asked: SeasonAsked, first_year: int, habits: Habits = USUAL, *, one_page: bool = False
) -> SeasonReport:
    """The report of a season, of every year for ALL_YEARS; raises InputProblem for a season without a session."""
    found = season_figures(asked.facts, first_year, asked.band, asked.record, asked.drifts)
    if not found.rows:
        raise InputProblem(f"{season_name(first_year)} holds no session of {asked.stove.name}; choose another season.")
    unit, of_years = habits.unit, first_year == ALL_YEARS
    by_session = {one.session: one for one in asked.facts}
    first, last = found.rows[0].day, found.rows[-1].day
    result = season_headline(found.total, unit)
    heat = heat_name(asked.band)
    charts = (
        Chart(
            heading="Hours lit, a column a day, lighter where the oven was hotter",
            svg=hours_chart(found, f"Hours lit. {result}"), words=f"Hours lit. {result}",
        ),
        Chart(
            heading=f"Wood, {'lb' if unit == 'F' else 'kg'} a {'month' if of_years else 'week'}",
            svg=wood_chart(found, unit, "Wood"), words="Wood",
        ),
        Chart(heading=f"From lighting to {heat}", svg=rise_chart(found, "Rises"), words="Rises"),
    )  # fmt: skip
    return SeasonReport(
        stove=asked.stove.name,
        title=season_name(first_year),
        on=f"of {asked.stove.name}",
        date=date_words(first, habits),
        span=f"to {date_words(last, habits)}",
        unit=unit,
        is_whole=not one_page,
        result=result,
        behind=season_behind(found.total, found.rise_medians, asked.band, all_years=of_years),
        glance=_glance(found, habits),
        charts=tuple(chart for chart in charts if chart.svg),
        heads=("season" if of_years else "month", "fires", "hours", "wood", f"to {heat}", "hottest oven"),
        months=tuple(_months(found.rows, habits, by_season=of_years)),
        cautions_said="" if asked.cautions is None else counted_words(len(found.rows), asked.cautions),
        cautions=tuple((title, caution_words(number, len(found.rows))) for title, number in asked.cautions or ()),
        thermometers=(
            *(thermometer_words(one, habits) for one in asked.stove.instruments),
            *(drift_words(name, checks, habits) for name, checks in found.drifts),
        ),
        misses=misses_of_season([minutes for _, minutes in found.misses]),
        session_heads=("day", "session", "what came of it", "lit", "wood"),
        sessions=tuple(
            (
                date_words(row.day, habits),
                asked.titles.get(row.session, ""),
                came_of_it(by_session[row.session], asked.band, unit),
                measured_time(row.minutes) if row.minutes else "",
                mass_text(row.wood, unit) if row.weighed else "",
            )
            for row in found.rows
        ),
    )


def _glance(found: Season, habits: Habits) -> tuple[tuple[str, str], ...]:
    told = [
        ("sessions", str(len(found.rows))),
        ("fires", str(found.total.fires)),
        ("lit", hours_words(found.total.hours)),
    ]
    heats = [(row.hottest, row.day) for row in found.rows if row.hottest is not None]
    if heats:
        heat, day = max(heats)
        told.append(("hottest oven", f"{degrees(heat, habits.unit):.0f} °{habits.unit}, {day_words(day, habits)}"))
    if found.rises:
        middle = measured_time(median(minutes for _, minutes in found.rises))
        told.append((f"to {heat_name(found.band)}", f"{middle} in the middle"))
    return tuple(told)


def _months(rows: Sequence[SeasonRow], habits: Habits, *, by_season: bool) -> list[tuple[str, ...]]:
    groups: dict[tuple[str, date], list[SeasonRow]] = {}
    for row in rows:
        year = seasons.season_of(row.day)
        key = (season_name(year), date(year, 7, 1)) if by_season else (month_and_year(row.day), row.day.replace(day=1))
        groups.setdefault(key, []).append(row)
    return [_month(name, own, habits) for (name, _), own in sorted(groups.items(), key=lambda pair: pair[0][1])]


def _month(name: str, own: Sequence[SeasonRow], habits: Habits) -> tuple[str, ...]:
    found = seasons.total(own)
    rises = [row.rise_min for row in own if row.rise_min is not None]
    heats = [row.hottest for row in own if row.hottest is not None]
    return (
        name,
        str(found.fires),
        f"{found.hours:,.0f}",
        mass_text(found.wood, habits.unit) if found.weighed else "",
        measured_time(median(rises)) if rises else "",
        f"{degrees(max(heats), habits.unit):.0f} °{habits.unit}" if heats else "",
    )
