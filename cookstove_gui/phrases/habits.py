"""How a reader is used to heats, dates and clocks being written, chosen for each report."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from cookstove_gui.phrases.edge import day_and_month, full_date, weekday
from cookstove_gui.units import TemperatureUnit, clock_text


class Dates(StrEnum):
    """The order in which a date is written."""

    DAY = "day"
    MONTH = "month"
    YEAR = "year"


class Clocks(StrEnum):
    """Whether a day's hours are counted once or twice."""

    H24 = "24"
    H12 = "12"


@dataclass(frozen=True, slots=True, kw_only=True)
class Habits:
    """What is chosen."""

    unit: TemperatureUnit = "F"
    dates: Dates = Dates.DAY
    clocks: Clocks = Clocks.H24


USUAL = Habits()


def date_words(day: date, habits: Habits) -> str:
    """`8 November 2026`, `November 8, 2026` or `2026-11-08`."""
    match habits.dates:
        case Dates.DAY:
            return full_date(day)
        case Dates.MONTH:
            return f"{_month_and_day(day)}, {day.year}"
        case Dates.YEAR:
            return day.isoformat()


def day_words(day: date, habits: Habits) -> str:
    """A day whose year is plain: `8 November`, `November 8` or `2026-11-08`."""
    match habits.dates:
        case Dates.DAY:
            return day_and_month(day)
        case Dates.MONTH:
            return _month_and_day(day)
        case Dates.YEAR:
            return day.isoformat()


def weekday_words(day: date, habits: Habits) -> str:
    """With the day of the week: `Sunday 8 November 2026`, `Sunday, November 8, 2026`."""
    comma = "," if habits.dates is Dates.MONTH else ""
    return f"{weekday(day)}{comma} {date_words(day, habits)}"


def clock_words(at: datetime, offset_minutes: int, habits: Habits) -> str:
    """`13:10`, or `1:10 pm`."""
    text = clock_text(at, offset_minutes)
    hour, _, minute = text.partition(":")
    if habits.clocks is Clocks.H12:
        return f"{(int(hour) - 1) % 12 + 1}:{minute} {'am' if int(hour) < 12 else 'pm'}"
    return text


def _month_and_day(day: date) -> str:
    number, _, month = day_and_month(day).partition(" ")
    return f"{month} {number}"
