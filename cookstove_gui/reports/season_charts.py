"""Pictures of a season on paper: hours lit day by day, wood by week, the rise to the heat wanted through the months."""

from collections.abc import Iterable, Sequence
from datetime import date, timedelta

from cookstove_gui.phrases.edge import mass_text, measured_time
from cookstove_gui.phrases.logbook.seasons import month_name
from cookstove_gui.reports.season_figures import ALL_YEARS, Season
from cookstove_gui.reports.svg import (
    DOUBT,
    FAINT,
    INK,
    LINE,
    SOFT,
    WIDE,
    box,
    line,
    path,
    picture,
    ring,
    shape,
    width_of,
    words,
)
from cookstove_gui.stove.drawn.heat_colours import heat_colour
from cookstove_gui.units import KILOGRAMS_PER_POUND, TemperatureUnit

_LEFT = 44.0
_FIRST, _LAST = 4.0, 28.0  # h on the local clock: a day's column runs from 4 in the morning to 4 in the next
_HOURS_HIGH, _WOOD_HIGH, _RISE_HIGH = 92.0, 74.0, 92.0
_MONTHS = 18.0  # px under a picture
_ROUND = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000)
_TIMES = (10, 20, 30, 60, 120, 240)  # min


class _Days:
    """Places of days on the page."""

    def __init__(self, days: Sequence[date]) -> None:
        self.first = min(days).replace(day=1)
        self.count = max((max(days) - self.first).days + 1, 28)
        self.column = (WIDE - _LEFT) / self.count

    def x(self, day: date) -> float:
        return _LEFT + (day - self.first).days * self.column

    def months(self, foot: float) -> Iterable[str]:
        """The foot line with the months, or the years where months are too near each other."""
        yield line((_LEFT, foot), (WIDE, foot), ink=LINE)
        day, free = self.first, 0.0
        many = self.count > 500
        while (day - self.first).days < self.count:
            told = str(day.year) if many else month_name(day)
            if (not many or day.month == 1) and self.x(day) >= free and self.x(day) + width_of(told) <= WIDE:
                yield line((self.x(day), foot), (self.x(day), foot + 4), ink=LINE)
                yield words((self.x(day) + 3, foot + 14), told, ink=SOFT)
                free = self.x(day) + width_of(told) + 12
            day = (day + timedelta(days=32)).replace(day=1)


def hours_chart(found: Season, said: str) -> str:
    """A column a day, as long as a fire burnt, lighter where the oven was hotter; empty without a fire."""
    if not found.lit:
        return ""
    days = _Days([one.day for one in found.lit])

    def level(hour: float) -> float:
        return (min(max(hour, _FIRST), _LAST) - _FIRST) / (_LAST - _FIRST) * _HOURS_HIGH

    parts = []
    for hour, told in ((6.0, "6"), (12.0, "noon"), (18.0, "18"), (24.0, "24")):
        parts.append(line((_LEFT, level(hour)), (WIDE, level(hour)), ink=FAINT))
        parts.append(words((_LEFT - 6, level(hour) + 4), told, ink=SOFT, anchor="end"))
    for one in found.lit:
        fill = LINE if one.hottest is None else heat_colour(one.hottest)
        high = max(level(one.end) - level(one.start), 2.0)
        parts.append(box((days.x(one.day) + 0.3, level(one.start)), max(days.column - 0.6, 1.2), high, fill))
    return picture([*parts, *days.months(_HOURS_HIGH)], WIDE, _HOURS_HIGH + _MONTHS, said)


def wood_chart(found: Season, unit: TemperatureUnit, said: str) -> str:
    """A bar a week, a month over all years; the fullest in ink, with its weight. Empty where no load says how much."""
    most = max((span.wood for span in found.spans), default=0.0)
    if most <= 0.0:
        return ""
    days, top = _Days([row.day for row in found.rows]), 16.0
    per = KILOGRAMS_PER_POUND if unit == "F" else 1.0
    foot = top + _WOOD_HIGH
    parts = []
    step = next((one for one in _ROUND if most / per / one < 3.0), _ROUND[-1])
    for tick in range(step, int(most / per) + 1, step):
        y = foot - _WOOD_HIGH * tick * per / most
        parts.append(line((_LEFT, y), (WIDE, y), ink=FAINT))
        parts.append(words((_LEFT - 6, y + 4), str(tick), ink=SOFT, anchor="end"))
    fullest = max(found.spans, key=lambda span: span.wood)
    for span in found.spans:
        left = max(days.x(span.start), _LEFT)
        right = min(days.x(span.start + timedelta(days=span.days)), WIDE)
        high = _WOOD_HIGH * span.wood / most
        if right > left:
            fill = INK if span is fullest else "#9AA09D"
            parts.append(box((left + 0.8, foot - high), max(right - left - 1.6, 1.0), high, fill))
    told = f"{mass_text(fullest.wood, unit)}, the fullest {'month' if found.first_year == ALL_YEARS else 'week'}"
    parts.append(words((min(max(days.x(fullest.start), _LEFT), WIDE - width_of(told)), 11), told, weight=600))
    return picture([*parts, *days.months(foot)], WIDE, foot + _MONTHS, said)


def rise_chart(found: Season, said: str) -> str:
    """How long each rise to the heat wanted took, and its smoothed course; empty without a rise."""
    if not found.rises:
        return ""
    days = _Days([row.day for row in found.rows])
    values = [minutes for _, minutes in found.rises]
    low, high = min(values) - 8.0, max(values) + 8.0

    def level(minutes: float) -> float:
        return _RISE_HIGH * (1 - (min(max(minutes, low), high) - low) / (high - low))

    parts = []
    step = next((one for one in _TIMES if (high - low) / one <= 4), _TIMES[-1])
    for tick in range(int(low // step + 1) * step, int(high) + 1, step):
        parts.append(line((_LEFT, level(tick)), (WIDE, level(tick)), ink=FAINT))
        parts.append(words((_LEFT - 6, level(tick) + 4), measured_time(tick), ink=SOFT, anchor="end"))
    if len(found.course) > 1:
        across = [days.x(one.day) + days.column / 2 for one in found.course]
        upper = [(x, level(one.high)) for x, one in zip(across, found.course, strict=True)]
        lower = [(x, level(one.low)) for x, one in zip(across, found.course, strict=True)]
        parts.append(shape([*upper, *reversed(lower)], DOUBT))
        parts.append(path([(x, level(one.middle)) for x, one in zip(across, found.course, strict=True)], wide=2.0))
    parts += [ring((days.x(day) + days.column / 2, level(minutes)), 3.0, wide=1.2) for day, minutes in found.rises]
    return picture([*parts, *days.months(_RISE_HIGH)], WIDE, _RISE_HIGH + _MONTHS, said)
