"""Sessions over months and years as figures: sums by week and month, a smoothed course. pandas does the sums.

pandas takes a third of a second to load, so it is imported only where something is worked out.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pandas import DataFrame

FIRST_MONTH = 7  # a season runs from 1 July to 30 June, so that a winter is one
_LEAST_NEAR = 4  # values within the window, below which a smoothed course says nothing
_DAYS = (45, 180)  # of the window about each value: over one season, over years
_LONG = 400  # days from which values are of years


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonRow:
    """One session."""

    session: int
    day: date  # on its local clock
    fires: int
    minutes: float  # that a fire burnt
    loads: int
    weighed: int  # loads whose amount is known
    wood: float  # kg, of those
    hottest: float | None  # K, of the oven
    rise_min: float | None  # to the heat wanted


@dataclass(frozen=True, slots=True, kw_only=True)
class Total:
    """Sums of some sessions."""

    sessions: int
    fires: int
    hours: float
    loads: int
    weighed: int
    wood: float  # kg


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """Sums of a week or a month."""

    start: date
    days: int
    fires: int
    wood: float  # kg


@dataclass(frozen=True, slots=True, kw_only=True)
class Smoothed:
    """Where a quantity ran about one day: median, tenth and ninetieth percentile of the values near it."""

    day: date
    low: float
    middle: float
    high: float


def season_of(day: date) -> int:
    """The year in which the season of a day began."""
    return day.year if day.month >= FIRST_MONTH else day.year - 1


def of_season(rows: Sequence[SeasonRow], first_year: int | None) -> tuple[SeasonRow, ...]:
    """The rows of one season, of all for none, oldest first."""
    own = [row for row in rows if first_year is None or season_of(row.day) == first_year]
    return tuple(sorted(own, key=lambda row: (row.day, row.session)))


def total(rows: Sequence[SeasonRow]) -> Total:
    """The sums of some sessions."""
    sums = _frame(rows)[["fires", "minutes", "loads", "weighed", "wood"]].sum()
    return Total(
        sessions=len(rows),
        fires=int(sums["fires"]),
        hours=float(sums["minutes"]) / 60.0,
        loads=int(sums["loads"]),
        weighed=int(sums["weighed"]),
        wood=float(sums["wood"]),
    )


def by_week(rows: Sequence[SeasonRow]) -> tuple[Span, ...]:
    """Weeks from Monday on, from the first with a session to the last, empty ones among them."""
    return _spans(rows, "W-SUN", lambda end: (end - timedelta(days=6), 7))


def by_month(rows: Sequence[SeasonRow]) -> tuple[Span, ...]:
    """Months from the first with a session to the last, empty ones among them."""
    return _spans(rows, "ME", lambda end: (end.replace(day=1), end.day))


def medians_by_month(rows: Sequence[tuple[date, float]]) -> tuple[tuple[date, float, int], ...]:
    """First day of each month that has values, their median and how many there are."""
    import pandas

    table = pandas.DataFrame(rows, columns=["day", "value"])
    months = pandas.PeriodIndex(pandas.to_datetime(table["day"]), freq="M")
    found = table["value"].groupby(months).agg(["median", "count"])
    return tuple(
        (month.to_timestamp().date(), float(median), int(count))
        for month, median, count in zip(found.index, found["median"], found["count"], strict=True)
    )


def smoothed(values: Sequence[tuple[date, float]]) -> tuple[Smoothed, ...]:
    """The course of values over days, one for each day that has any; empty where too few lie near each other."""
    import pandas

    if len(values) < _LEAST_NEAR:
        return ()
    ordered = sorted(values)
    days = _DAYS[(ordered[-1][0] - ordered[0][0]).days > _LONG]
    series = pandas.Series([value for _, value in ordered], index=pandas.to_datetime([day for day, _ in ordered]))
    near = series.rolling(f"{days}D", center=True, min_periods=_LEAST_NEAR)
    table = pandas.DataFrame({share: near.quantile(share) for share in (0.1, 0.5, 0.9)}).dropna()
    table = table[~table.index.duplicated()]
    return tuple(
        Smoothed(day=day.date(), low=float(low), middle=float(middle), high=float(high))
        for day, low, middle, high in zip(table.index, table[0.1], table[0.5], table[0.9], strict=True)
    )


def _frame(rows: Sequence[SeasonRow]) -> "DataFrame":
    import pandas

    names = ("day", "fires", "minutes", "loads", "weighed", "wood")
    table = pandas.DataFrame([[getattr(row, name) for name in names] for row in rows], columns=list(names))
    table["day"] = pandas.to_datetime(table["day"])
    return table


def _spans(rows: Sequence[SeasonRow], frequency: str, of: Callable[[date], tuple[date, int]]) -> tuple[Span, ...]:
    if not rows:
        return ()
    sums = _frame(rows).set_index("day")[["fires", "wood"]].resample(frequency).sum()
    found = []
    for end, fires, wood in zip(sums.index, sums["fires"], sums["wood"], strict=True):
        start, days = of(end.date())
        found.append(Span(start=start, days=days, fires=int(fires), wood=float(wood)))
    return tuple(found)
