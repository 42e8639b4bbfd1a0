"""A season in figures: which it is, when fires burnt by the local clock, how hot the oven got, what was foretold."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.logbook.cards import Card, Cards
from cookstove_gui.desk.logbook.seasons import SeasonAsked, season, season_asked
from cookstove_gui.desk.my_stove.checks import add_instrument, drift_rings, points, record_check
from cookstove_gui.desk.studying import study_reader
from cookstove_gui.forecast.answers import Quantiles, RecordRow
from cookstove_gui.reports.season_figures import ALL_YEARS, HeatHill, Season
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.study import study
from cookstove_gui.units import kelvin
from tests.held_clock import HeldClock

from .made import keep


def at(year: int, month: int, day: int, hour: int = 15, minute: int = 0) -> datetime:
    """An instant; the made sessions' clock is five hours behind it."""
    return datetime(year, month, day, hour, minute, tzinfo=UTC)


def fahrenheit(heat: float) -> float:
    return float(kelvin(heat, "F"))


def worked_out(desk: Desk, year: int | None, record: tuple[RecordRow, ...] = ()) -> Season:
    asked = season_asked(desk, year)
    return season(replace(asked, record=record) if record else asked, cards(desk, asked))


def cards(desk: Desk, asked: SeasonAsked) -> tuple[Card, ...]:
    return Cards(desk.logbook).worked_out(asked.cards)


def foretold(made_at: datetime, likely: float | None, came: float | None, offset: int = -300) -> RecordRow:
    return RecordRow(
        session="Rye", made_at=made_at, offset_minutes=offset, band=HeatBand(name="x", low=450.0, high=470.0),
        enters_min=Quantiles(p10=30.0, p50=likely, p90=90.0), likely_min=likely, came_true_min=came,
    )  # fmt: skip


@pytest.fixture
def winters(held_desk: Desk) -> Desk:
    """Three firings of one winter, in two months, one of them not hot; one firing of the winter before."""
    keep(held_desk, "Old", at(2025, 1, 5), (80, 250, 370, 390))
    keep(held_desk, "Rye", at(2025, 12, 29), (80, 200, 330, 400))
    keep(held_desk, "Stew", at(2026, 1, 12), (90, 180, 260, 250))
    keep(held_desk, "Pie", at(2026, 1, 20), (80, 230, 350, 410))
    return held_desk


def test_without_a_session_the_season_is_todays(held_desk: Desk) -> None:
    assert season_asked(held_desk, None).first_year == 2025  # 14 March 2026
    assert season_asked(held_desk, None).record == ()
    found = worked_out(held_desk, None)
    assert (found.years, found.rows, found.lit, found.hills, found.course) == ((), (), (), (), ())


@pytest.mark.parametrize(("day", "year"), [(at(2025, 6, 30), 2024), (at(2025, 7, 1), 2025), (at(2025, 7, 1, 3), 2024)])
def test_a_season_begins_on_the_first_of_july_by_the_stoves_clock(held_desk: Desk, day: datetime, year: int) -> None:
    keep(held_desk, "Older", at(2023, 2, 1))
    keep(held_desk, "Rye", day)
    asked = season_asked(held_desk, None)
    assert asked.first_year == year
    assert worked_out(held_desk, None).years == (year, 2022)


def test_a_season_that_is_asked_for_is_taken_even_where_it_is_all(winters: Desk) -> None:
    assert season_asked(winters, 2024).first_year == 2024
    assert season_asked(winters, ALL_YEARS).first_year == ALL_YEARS
    assert [len(worked_out(winters, year).rows) for year in (2024, 2025, ALL_YEARS)] == [1, 3, 4]
    assert all(worked_out(winters, year).years == (2025, 2024) for year in (2024, 2025, ALL_YEARS))


def test_the_figures_of_a_session_are_those_of_its_log(winters: Desk) -> None:
    winters.choose_band("300-350")
    row, *_ = worked_out(winters, 2025).rows
    assert (row.day, row.fires, row.loads) == (date(2025, 12, 29), 1, 1)
    assert row.minutes == pytest.approx(78.0)
    assert row.hottest == pytest.approx(fahrenheit(400))
    assert row.rise_min == pytest.approx(28.0 + 25.0 * 100.0 / 130.0)


def test_the_total_adds_up_the_sessions_of_the_season(winters: Desk) -> None:
    total = worked_out(winters, 2025).total
    assert (total.sessions, total.fires, total.loads) == (3, 3, 3)
    assert total.hours == pytest.approx(3 * 78.0 / 60.0)


def test_an_oven_never_read_has_no_hottest_but_its_fire_counts(held_desk: Desk) -> None:
    keep(held_desk, "Dark", at(2026, 1, 12), ())
    found = worked_out(held_desk, 2025)
    assert [row.hottest for row in found.rows] == [None]
    assert [one.hottest for one in found.lit] == [None]
    assert found.hills == (HeatHill(start=date(2026, 1, 1), fires=1, heats=()),)
    assert found.rises == ()


def test_each_fire_stands_at_its_local_hours(held_desk: Desk) -> None:
    number = keep(held_desk, "Rye", at(2026, 1, 12, 15, 30), (80, 200, 330, 400))
    (lit,) = worked_out(held_desk, 2025).lit
    assert (lit.session, lit.day) == (number, date(2026, 1, 12))
    assert (lit.start, lit.end) == (pytest.approx(10.5), pytest.approx(10.5 + 78.0 / 60.0))
    assert lit.hottest == pytest.approx(fahrenheit(400))


def test_a_fire_past_midnight_stands_on_the_day_it_was_lit_and_runs_past_24(held_desk: Desk) -> None:
    keep(held_desk, "Night", at(2026, 1, 13, 4, 15), (80, 200, 330, 400))
    (lit,) = worked_out(held_desk, 2025).lit
    assert lit.day == date(2026, 1, 12)
    assert (lit.start, lit.end) == (pytest.approx(23.25), pytest.approx(23.25 + 78.0 / 60.0))


def test_a_season_is_summed_by_week_and_all_years_by_month(winters: Desk) -> None:
    weeks = worked_out(winters, 2025).spans
    assert {span.days for span in weeks} == {7}
    # Weeks from Monday 29 December to that of 20 January; nothing was lit in the second.
    assert [(span.start, span.fires) for span in weeks] == [
        (date(2025, 12, 29), 1), (date(2026, 1, 5), 0), (date(2026, 1, 12), 1), (date(2026, 1, 19), 1),
    ]  # fmt: skip
    months = worked_out(winters, ALL_YEARS).spans
    assert [span.fires for span in months] == [1, *[0] * 10, 1, 2]
    assert months[0].start == date(2025, 1, 1)


def test_the_hottest_ovens_stand_by_month_in_a_season_and_by_season_over_all_years(winters: Desk) -> None:
    by_month = worked_out(winters, 2025).hills
    assert [(hill.start, hill.fires) for hill in by_month] == [(date(2025, 12, 1), 1), (date(2026, 1, 1), 2)]
    assert by_month[1].heats == (pytest.approx(fahrenheit(260)), pytest.approx(fahrenheit(410)))
    by_season = worked_out(winters, ALL_YEARS).hills
    assert [(hill.start, hill.fires, len(hill.heats)) for hill in by_season] == [
        (date(2024, 7, 1), 1, 1),
        (date(2025, 7, 1), 3, 3),
    ]


def test_the_rises_leave_out_what_never_came_to_the_heat(winters: Desk) -> None:
    winters.choose_band("300-350")
    found = worked_out(winters, 2025)
    assert found.band == winters.band
    assert [day for day, _ in found.rises] == [date(2025, 12, 29), date(2026, 1, 20)]
    assert [(month, count) for month, _, count in found.rise_medians] == [(date(2025, 12, 1), 1), (date(2026, 1, 1), 1)]
    assert found.course == ()  # too few
    every = worked_out(winters, ALL_YEARS)
    assert [(start, count) for start, _, count in every.rise_medians] == [(date(2024, 7, 1), 1), (date(2025, 7, 1), 2)]
    rises = sorted(rise for _, rise in every.rises[1:])
    assert every.rise_medians[1][1] == pytest.approx(sum(rises) / 2.0)


def test_the_course_of_the_rises_runs_between_the_quickest_and_the_slowest(held_desk: Desk) -> None:
    held_desk.choose_band("300-350")
    for day in range(1, 7):
        keep(held_desk, "Rye", at(2026, 2, day), (80, 200, 310 + 10 * day, 400))
    found = worked_out(held_desk, 2025)
    rises = [rise for _, rise in found.rises]
    assert len(found.course) == 6
    assert all(min(rises) <= one.low <= one.middle <= one.high <= max(rises) for one in found.course)


def test_a_miss_is_late_above_zero_and_belongs_to_a_day_of_the_season(winters: Desk) -> None:
    record = (
        foretold(at(2025, 12, 29, 15, 30), 60.0, 72.0),
        foretold(at(2026, 1, 12, 15, 30), 60.0, 55.0),
        foretold(at(2026, 1, 12, 15, 40), None, 55.0),
        foretold(at(2026, 1, 12, 15, 50), 60.0, None),
        foretold(at(2026, 1, 21, 2, 0), 60.0, 61.0),  # still the 20th at the stove
        foretold(at(2025, 1, 5, 15, 30), 60.0, 63.0),  # of the winter before
    )
    expected = [(date(2025, 12, 29), 12.0), (date(2026, 1, 12), -5.0), (date(2026, 1, 20), 1.0)]
    assert list(worked_out(winters, 2025, record).misses) == expected
    assert list(worked_out(winters, ALL_YEARS, record).misses) == [*expected, (date(2025, 1, 5), 3.0)]


def test_what_was_foretold_is_that_of_the_stove_in_use(held_desk: Desk, held_clock: HeldClock) -> None:
    for days in (9, 6, 3):
        keep(held_desk, "Rye", held_clock() - timedelta(days=days), (80, 130, 190, 250, 300, 345, 380, 400), step=12)
    found = study(study_reader(held_desk)())
    assert found is not None
    assert found.record.rows
    assert season_asked(held_desk, None).record == ()
    held_desk.show_study(found)
    assert season_asked(held_desk, None).record == found.record.rows
    held_desk.save_stove(stove_with_default_spots("Cabin"))
    assert season_asked(held_desk, None).record == ()


def test_a_thermometer_drifts_only_once_it_was_checked_twice(held_desk: Desk, held_clock: HeldClock) -> None:
    add_instrument(held_desk, "dial", "probe")
    add_instrument(held_desk, "stick", "probe")
    for name, readings in (("dial", ("213", "216")), ("stick", ("212",))):
        for reading in readings:
            record_check(held_desk, name, points(held_desk, name)[-1], reading, sure=True)
            held_clock.pass_minutes(24 * 60)
    ((name, checks),) = season_asked(held_desk, None).drifts
    assert name == "dial"
    assert [day for day, _ in checks] == [ring.on for ring in drift_rings(held_desk, "dial")]
    assert checks[1][1] - checks[0][1] == pytest.approx(3.0 / 1.8)
    assert worked_out(held_desk, None).drifts == (("dial", checks),)
