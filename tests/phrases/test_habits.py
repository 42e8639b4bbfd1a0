"""Dates and clocks as a reader is used to them."""

from datetime import UTC, date, datetime

import pytest

from cookstove_gui.phrases.habits import Clocks, Dates, Habits, clock_words, date_words, day_words, weekday_words

DAY = date(2026, 11, 8)  # a Sunday


@pytest.mark.parametrize(
    ("order", "whole", "short", "of_week"),
    [
        (Dates.DAY, "8 November 2026", "8 November", "Sunday 8 November 2026"),
        (Dates.MONTH, "November 8, 2026", "November 8", "Sunday, November 8, 2026"),
        (Dates.YEAR, "2026-11-08", "2026-11-08", "Sunday 2026-11-08"),
    ],
)
def test_a_date_in_each_order(order: Dates, whole: str, short: str, of_week: str) -> None:
    habits = Habits(dates=order)
    assert (date_words(DAY, habits), day_words(DAY, habits), weekday_words(DAY, habits)) == (whole, short, of_week)


# Source: ISO 8601 counts a day's hours once; with am and pm midnight is 12 am and noon 12 pm (US Naval Observatory's
# usage, from memory).
@pytest.mark.parametrize(
    ("hour", "minute", "said"),
    [(0, 5, "12:05 am"), (1, 10, "1:10 am"), (12, 0, "12:00 pm"), (13, 10, "1:10 pm"), (23, 59, "11:59 pm")],
)
def test_a_clock_with_am_and_pm(hour: int, minute: int, said: str) -> None:
    at = datetime(2026, 11, 8, hour, minute, tzinfo=UTC)
    assert clock_words(at, 0, Habits(clocks=Clocks.H12)) == said
    assert clock_words(at, 0, Habits()) == f"{hour}:{minute:02d}"
