"""Sums and medians of seasons, beside plain SQL on the logbook's file, the standard library and numpy."""

import random
import sqlite3
from collections import defaultdict
from contextlib import closing
from datetime import UTC, date, datetime, timedelta
from itertools import pairwise
from pathlib import Path
from statistics import median

import numpy as np
import pytest

from cookstove_gui.cooking.fires.firing_facts import firing_facts
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.logbook.seasons import (
    SeasonRow,
    by_month,
    by_week,
    medians_by_month,
    of_season,
    season_of,
    smoothed,
    total,
)
from cookstove_gui.stove.entries import Entry, HeatBand, Kind
from cookstove_gui.stove.stove import stove_with_default_spots

OFFSET = -300  # min
BAND = HeatBand(name="bread", low=458.0, high=491.0)


def filled(path: Path, sessions: int) -> Logbook:
    """Invented firings over three winters: weighed wood, and an oven read every quarter of an hour."""
    book = Logbook.open(path)
    stove = stove_with_default_spots("Kitchen")
    book.save_stove(stove)
    chance = random.Random(20)
    for place in range(sessions):
        began = datetime(2023, 9, 20, 23, tzinfo=UTC) + timedelta(days=5 * place, hours=chance.uniform(0, 8))
        rows = [(0.0, Kind.LIT, "", "")]
        rows += [(float(minute), Kind.WOOD, f"{chance.uniform(1, 4):.2f}", "kg") for minute in (3, 40, 80)]
        hottest = chance.uniform(300, 450)
        rows += [(15.0 * step, Kind.READING, f"{70 + (hottest - 70) * step / 8:.0f}", "F") for step in range(9)]
        entries = [
            Entry(
                number=number, at=began + timedelta(minutes=minute), offset_minutes=OFFSET, kind=kind, value=value,
                unit=unit, spot="oven_centre" if kind is Kind.READING else "",
            )
            for number, (minute, kind, value, unit) in enumerate(rows, start=1)
        ]  # fmt: skip
        book.add_session("Kitchen", f"Firing {place}", entries)
    return book


def rows_of(book: Logbook) -> list[SeasonRow]:
    stove, found = book.stove("Kitchen"), []
    for session in book.past_sessions("Kitchen"):
        facts = firing_facts(stove, session, BAND)
        assert facts is not None
        found.append(
            SeasonRow(
                session=session.number, day=(facts.began + timedelta(minutes=OFFSET)).date(), fires=len(facts.lit),
                minutes=facts.lit_minutes, loads=facts.loads, weighed=facts.weighed, wood=facts.wood,
                hottest=facts.hottest[1] if facts.hottest else None, rise_min=facts.rise_min,
            )
        )  # fmt: skip
    return found


def test_months_are_those_of_plain_sql(tmp_path: Path) -> None:
    book = filled(tmp_path / "logbook.sqlite", 120)
    found = {f"{span.start:%Y-%m}": (span.fires, pytest.approx(span.wood)) for span in by_month(rows_of(book))}
    book.close()
    with closing(sqlite3.connect(tmp_path / "logbook.sqlite")) as plain:
        told = plain.execute(
            "WITH began AS (SELECT session, min(at) AS at FROM entry WHERE kind = 'lit' GROUP BY session) "
            "SELECT strftime('%Y-%m', began.at / 1000000 + 60 * ?, 'unixepoch'), count(DISTINCT began.session), "
            "sum(CAST(value AS REAL)) FROM entry JOIN began USING (session) WHERE kind = 'wood' GROUP BY 1 ORDER BY 1",
            (OFFSET,),
        ).fetchall()
    assert len(told) > 15
    assert {month: values for month, values in found.items() if values[0]} == {
        month: (fires, wood) for month, fires, wood in told
    }


def test_the_sums_of_a_season_are_those_of_plain_sql(tmp_path: Path) -> None:
    book = filled(tmp_path / "logbook.sqlite", 100)
    found = total(of_season(rows_of(book), 2024))
    book.close()
    with closing(sqlite3.connect(tmp_path / "logbook.sqlite")) as plain:
        (told,) = plain.execute(
            "WITH own AS (SELECT session, min(at) AS first, max(at) AS last FROM entry GROUP BY session "
            "HAVING date(min(at) / 1000000 + 60 * ?, 'unixepoch') BETWEEN '2024-07-01' AND '2025-06-30') "
            "SELECT count(*), (SELECT sum(last - first) / 3.6e9 FROM own), "
            "(SELECT sum(CAST(value AS REAL)) FROM entry WHERE kind = 'wood' AND session IN (SELECT session FROM own)) "
            "FROM own",
            (OFFSET,),
        ).fetchall()
    assert (found.sessions, found.hours, found.wood) == (told[0], pytest.approx(told[1]), pytest.approx(told[2]))
    assert found.sessions == found.fires > 40


def row(day: date, wood: float = 1.0, rise: float | None = None, number: int = 1) -> SeasonRow:
    return SeasonRow(
        session=number, day=day, fires=1, minutes=60.0, loads=2, weighed=1, wood=wood, hottest=None, rise_min=rise
    )


@pytest.mark.parametrize(
    ("day", "year"), [(date(2026, 7, 1), 2026), (date(2026, 6, 30), 2025), (date(2027, 1, 1), 2026)]
)
def test_a_season_runs_from_july_to_june(day: date, year: int) -> None:
    assert season_of(day) == year


def test_weeks_run_from_monday_by_the_calendar_of_the_standard_library() -> None:
    chance = random.Random(4)
    rows = [
        row(date(2026, 10, 1) + timedelta(days=chance.randrange(160)), wood=chance.uniform(1, 9)) for _ in range(90)
    ]
    told: dict[date, float] = defaultdict(float)
    for one in rows:
        told[date.fromisocalendar(*one.day.isocalendar()[:2], 1)] += one.wood
    found = by_week(rows)
    assert {span.start: pytest.approx(span.wood) for span in found if span.fires} == told
    assert all(later.start - span.start == timedelta(days=7) for span, later in pairwise(found))


def test_a_month_without_a_fire_is_an_empty_one() -> None:
    found = by_month([row(date(2026, 11, 3)), row(date(2027, 1, 9))])
    assert [(span.start, span.days, span.fires) for span in found] == [
        (date(2026, 11, 1), 30, 1), (date(2026, 12, 1), 31, 0), (date(2027, 1, 1), 31, 1),
    ]  # fmt: skip


def test_without_a_session_there_is_nothing() -> None:
    assert total(()).fires == 0
    assert by_week(()) == by_month(()) == medians_by_month(()) == smoothed(()) == ()


def test_medians_by_month_are_those_of_the_standard_library() -> None:
    chance = random.Random(9)
    values = [(date(2026, 10, 1) + timedelta(days=chance.randrange(150)), chance.uniform(60, 120)) for _ in range(60)]
    told = defaultdict(list)
    for day, value in values:
        told[day.replace(day=1)].append(value)
    assert medians_by_month(values) == tuple(
        (month, pytest.approx(median(own)), len(own)) for month, own in sorted(told.items())
    )


def test_a_course_is_made_of_the_values_near_each_day() -> None:
    """Against numpy's quantiles of the values within half the window on either side."""
    values = [(date(2026, 10, 1) + timedelta(days=3 * place), float((7 * place) % 23)) for place in range(40)]
    found = {one.day: one for one in smoothed(values)}
    for day in (values[20][0], values[33][0]):
        near = [value for other, value in values if -22.5 < (other - day).days <= 22.5]
        low, middle, high = np.quantile(near, (0.1, 0.5, 0.9))
        assert (found[day].low, found[day].middle, found[day].high) == pytest.approx((low, middle, high))


def test_few_values_far_apart_have_no_course() -> None:
    assert smoothed([(date(2026, 10, 1) + timedelta(days=40 * place), 80.0) for place in range(5)]) == ()
