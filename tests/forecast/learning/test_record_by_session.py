"""The record by session: one window for each heat of each session, judged, and whether the windows get better."""

import pytest
from scipy import stats

from cookstove_gui.forecast.answers import HORIZON_MINUTES
from cookstove_gui.forecast.learning.record_by_session import (
    LEAST_WINDOWS,
    Judged,
    Trend,
    chance_of_so_few,
    record_by_session,
    window_length,
)

from .made_records import record_row, record_rows

ALL = (True,) * 8


def test_of_the_windows_for_one_heat_the_one_nearest_to_an_hour_counts() -> None:
    rows = [record_row(minute=place, likely=likely) for place, likely in enumerate((85.0, 70.0, 58.0, 45.0))]
    (one,) = record_by_session(rows).sessions
    assert [row.likely_min for row in one.rows] == [58.0]


@pytest.mark.parametrize("likely", [39.0, 91.0])
def test_what_was_said_much_sooner_or_later_is_left_out(likely: float) -> None:
    assert record_by_session([record_row(likely=likely)]).sessions == ()


def test_each_heat_of_each_session_counts_once() -> None:
    rows = [record_row(day=day, heat=heat, minute=minute) for day in (0, 1) for heat in (0, 1) for minute in (0, 9)]
    found = record_by_session(rows)
    assert [len(one.rows) for one in found.sessions] == [2, 2]
    assert found.all == Judged(windows=4, held=4)


def test_two_sessions_of_one_title_stay_two() -> None:
    found = record_by_session([record_row(day=1), record_row(day=0)])
    assert [one.at for one in found.sessions] == sorted(one.at for one in found.sessions)
    assert len(found.sessions) == 2


def test_what_nobody_can_say_is_not_judged() -> None:
    rows = [
        record_row(came=None, watched=30.0),
        record_row(day=1, came=None, watched=200.0),
        record_row(day=2, came=81.0),
    ]
    assert record_by_session(rows).all == Judged(windows=2, held=0)


def test_miss_and_length_are_medians() -> None:
    rows = [
        record_row(day=day, came=came, half=half) for day, came, half in ((0, 63.0, 10), (1, 40.0, 20), (2, 61.0, 30))
    ]
    found = record_by_session(rows)
    assert found.miss_min == 3.0
    assert [one.length_min for one in found.sessions] == [20.0, 40.0, 60.0]


def test_a_window_without_an_end_reaches_to_the_horizon() -> None:
    assert window_length(record_row(likely=60.0, half=20.0, open_end=True)) == HORIZON_MINUTES - 40.0


@pytest.mark.parametrize(
    ("rows", "trend"),
    [
        (record_rows(3, ALL), Trend.TOO_FEW),
        (record_rows(8, ALL), Trend.SAME),
        (record_rows(8, ALL, shrink=2.0), Trend.BETTER),
        (record_rows(8, (*ALL[:5], False, False, False), shrink=2.0), Trend.TOO_SHORT),
        (record_rows(8, (*ALL[:5], False, False, False)), Trend.UNSURE),
        (record_rows(8, (*ALL[:7], False), shrink=2.0), Trend.BETTER),  # two of eight missed is no more than luck
        (record_rows(8, (False, False, *ALL[:6]), shrink=2.0), Trend.BETTER),  # long ago
    ],
)
def test_whether_it_is_learning(rows: tuple, trend: Trend) -> None:  # type: ignore[type-arg]
    assert record_by_session(rows).trend is trend


def test_too_few_windows_say_nothing_however_many_sessions() -> None:
    rows = [record_row(day=2 * day) for day in range(LEAST_WINDOWS - 1)]
    assert record_by_session(rows).trend is Trend.TOO_FEW


@pytest.mark.parametrize(("held", "windows"), [(0, 1), (5, 8), (8, 8), (13, 20), (30, 38)])
def test_the_chance_of_so_few_is_the_binomial_distribution_of_a_library(held: int, windows: int) -> None:
    """Against scipy.stats.binom.cdf."""
    assert chance_of_so_few(held, windows) == pytest.approx(stats.binom.cdf(held, windows, 0.8), rel=1e-12)
