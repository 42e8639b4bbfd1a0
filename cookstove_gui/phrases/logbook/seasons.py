"""A season in words: its fires, hours and wood, and how the rise to the heat wanted has changed."""

from collections.abc import Sequence
from datetime import date
from statistics import median

from cookstove_gui.logbook.seasons import Span, Total, season_of
from cookstove_gui.phrases.edge import (
    capital,
    day_and_month,
    heat_name,
    mass_text,
    measured_time,
    sessions_count,
    short_date,
    whole,
)
from cookstove_gui.phrases.habits import Habits, date_words
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import KILOGRAMS_PER_POUND, degrees, degrees_difference

LEAST_RISES = 3  # in a month or season, below which its median isn't compared
CHANGED_MIN = 5.0  # min; a smaller change of the median isn't worth a sentence; judgement
SLOWER = 1.15  # times the earliest season's rise, from which what may be behind it is said; judgement


def season_name(first_year: int) -> str:
    """`Winter 2026–27`."""
    return f"Winter {first_year}–{(first_year + 1) % 100:02d}" if first_year else "All years"


def month_name(day: date) -> str:
    """`Oct`."""
    return short_date(day).split()[1]


def season_headline(total: Total, unit: str) -> str:
    """How many fires, how long, how much wood."""
    if not total.sessions:
        return "No session in this season."
    fires = "1 fire" if total.fires == 1 else f"{total.fires:,} fires"
    return f"{fires}, {hours_words(total.hours)} lit{_wood(total, unit)}."


def _wood(total: Total, unit: str) -> str:
    if not total.weighed:
        return ""
    mass = f"{total.wood / KILOGRAMS_PER_POUND:,.0f} lb" if unit == "F" else f"{total.wood:,.0f} kg"
    how = "at least " if total.weighed < total.loads else "about "
    return f", {how}{mass} of wood"


def season_behind(total: Total, medians: Sequence[tuple[date, float, int]], band: HeatBand, *, all_years: bool) -> str:
    """How the rise has changed from the first month to the last, or from the first season to the last."""
    told = [(day, middle) for day, middle, count in medians if count >= LEAST_RISES]
    untold = total.loads - total.weighed
    loads = f" {untold:,} of {total.loads:,} loads don’t say how much." if total.weighed and untold else ""
    if len(told) < 2:
        return f"Too few rises from cold to {heat_name(band)} to compare{_when(all_years)}.{loads}"
    (first, before), (last, after) = told[0], told[-1]
    names = (_season(first), _season(last)) if all_years else (_month(first), _month(last))
    gap = after - before
    if abs(gap) < CHANGED_MIN:
        return f"It came to {heat_name(band)} as fast in {names[1]} as in {names[0]}.{loads}"
    how = "later" if gap > 0 else "sooner"
    said = f"It came to {heat_name(band)} {measured_time(abs(gap))} {how} in {names[1]} than in {names[0]}."
    if all_years and after > SLOWER * before:
        said += " Wetter wood, a flue that needs sweeping or a leaking door can slow it."
    return said + loads


def _when(all_years: bool) -> str:
    return " the years" if all_years else " the months"


def _month(day: date) -> str:
    return day_and_month(day).split()[1]


def _season(day: date) -> str:
    return f"{season_of(day)}–{(season_of(day) + 1) % 100:02d}"


def fullest_words(spans: Sequence[Span], unit: str, *, weeks: bool) -> str:
    """The week or month that took the most wood; empty where none is known."""
    most = max(spans, key=lambda span: span.wood, default=None)
    if most is None or most.wood <= 0:
        return ""
    return f"{mass_text(most.wood, unit)}, the fullest {'week' if weeks else 'month'}"


def rise_words(medians: Sequence[tuple[date, float, int]]) -> str:
    """From the first median to the last: `from 1 h 46 to 1 h 20`."""
    told = [middle for _, middle, count in medians if count >= LEAST_RISES]
    return f"from {measured_time(told[0])} to {measured_time(told[-1])}" if len(told) > 1 else ""


def month_and_year(day: date) -> str:
    """`November 2026`."""
    return f"{_month(day)} {day.year}"


def hours_words(hours: float) -> str:
    """`36 min`, `1 hour`, `788 hours`."""
    if 0.0 < hours < 1.0:
        return f"{max(round(60 * hours), 1)} min"
    return "1 hour" if round(hours) == 1 else f"{hours:,.0f} hours"


def hottest_words(coolest: float, hottest: float, unit: str) -> tuple[str, str]:
    """`hottest oven 250` and `520 °F` at the ends of the colours; one number where all fires came to the same heat."""
    low, high = (f"{degrees(kelvin, unit):.0f}" for kelvin in (coolest, hottest))
    return "hottest oven" if low == high else f"hottest oven {low}", f"{high} °{unit}"


def misses_of_season(minutes: Sequence[float]) -> str:
    """By how much the projections missed, and which way; empty without any."""
    if not minutes:
        return ""
    typical, middle = median(abs(one) for one in minutes), median(minutes)
    number = "1 projection" if len(minutes) == 1 else f"{len(minutes):,} projections"
    way = "" if abs(middle) < 1.0 else f", mostly {'later' if middle > 0 else 'sooner'} than said"
    return f"{number} of an arrival came true; half of them within {max(round(typical), 1)} min{way}."


def drift_words(name: str, checks: Sequence[tuple[date, float]], habits: Habits) -> str:
    """What a thermometer showed too high at its first check and at its latest."""
    (first, before), (last, after) = checks[0], checks[-1]
    told = [f"{whole(degrees_difference(error, habits.unit))} °{habits.unit}" for error in (before, after)]
    return (
        f"{capital(name)}: {told[0]} too high when first checked on {date_words(first, habits)}, {told[1]} on "
        f"{date_words(last, habits)}."
    )


def fires_words(number: int) -> str:
    """`25 fires`."""
    return "1 fire" if number == 1 else f"{number} fires"


def counting_words(done: int, total: int) -> str:
    """How many sessions have been looked through for cautions."""
    if not done:
        return f"Every log is followed once for this; {sessions_count(total)} take a while."
    return f"Looked through {done} of {sessions_count(total)} …"


def counted_words(sessions: int, cautions: Sequence[tuple[str, int]]) -> str:
    """What was found."""
    if not cautions:
        return f"In {sessions_count(sessions)} no caution was due."
    return (
        f"In how many of {sessions_count(sessions)} each was due at least once. The stove’s manual decides what to do."
    )


def caution_words(number: int, sessions: int) -> str:
    """`12 of 30`."""
    return f"{number} of {sessions}"
