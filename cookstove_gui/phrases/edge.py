"""How numbers leave: the unit, the local clock, lengths of time, counts, and the words that every page shares.

Temperatures come in kelvin, times in minutes from the edge's now.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta, timezone

from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import KILOGRAMS_PER_POUND, clock_text, degrees, degrees_difference, local_offset_minutes, tidy

# Not strftime's names: Qt sets the system's locale, and all sentences are in one language.
_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """How numbers leave: the unit, the instant the minutes count from and the local clock's offset."""

    unit: str
    now: datetime
    offset_minutes: int

    def clock(self, minutes: float) -> str:
        """Wall clock some minutes from now."""
        return clock_text(self.now + timedelta(minutes=minutes), self.offset_minutes)

    def at(self, moment: datetime) -> str:
        """Wall clock of an instant."""
        return clock_text(moment, self.offset_minutes)

    def is_now(self, moment: datetime) -> bool:
        """Whether an instant is of the present minute, or has gone."""
        return moment <= self.now or self.at(moment) == self.clock(0.0)

    def heat(self, kelvin: float) -> str:
        """A temperature in whole degrees with its unit."""
        return f"{whole(degrees(kelvin, self.unit))} °{self.unit}"

    def spread(self, kelvin: float) -> str:
        """A difference of temperature in whole degrees with its unit."""
        return f"{whole(degrees_difference(kelvin, self.unit))} °{self.unit}"

    def range(self, low: float, high: float) -> str:
        """Two temperatures in whole degrees with one unit; one where they round to the same."""
        least, most = (whole(degrees(kelvin, self.unit)) for kelvin in (low, high))
        return f"{least} °{self.unit}" if least == most else f"{least} to {most} °{self.unit}"


def whole(number: float) -> str:
    """A number without decimals, with a minus sign where it is below zero: `−3`, never `-0`."""
    return f"{round(number)}".replace("-", "−")


def duration(minutes: float) -> str:
    """A length of time as a cook says it."""
    rounded = max(1, round(minutes)) if minutes < 20 else 5 * round(minutes / 5)
    if rounded < 60:
        return f"{rounded} min"
    hours, rest = divmod(rounded, 60)
    return f"{hours} h" if rest == 0 else f"{hours} h {rest} min"


def measured_time(minutes: float) -> str:
    """A length of time as it was measured, to the minute: `58 min`, `1 h 41`."""
    hours, rest = divmod(round(minutes), 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest:02d}" if rest else f"{hours} h"


def span(minutes: Quantiles, edge: Edge) -> str:
    """A window of clock times: `between 7:24 and 7:41`, with an open end where some futures never get there."""
    if minutes.p10 is None:
        return "not within three hours"
    if minutes.p90 is None:
        return f"{edge.clock(minutes.p10)} at the soonest, perhaps not at all"
    if edge.clock(minutes.p10) == edge.clock(minutes.p90):
        return f"at {edge.clock(minutes.p10)}"
    return f"between {edge.clock(minutes.p10)} and {edge.clock(minutes.p90)}"


def ago(then: datetime, now: datetime) -> str:
    """How long ago something was, roughly."""
    minutes = (now - then).total_seconds() / 60
    if minutes < 2:
        return "just now"
    if minutes < 120:
        return f"{minutes:.0f} minutes ago"
    hours = minutes / 60
    if hours < 48:
        return f"{hours:.0f} hours ago"
    return f"{hours / 24:.0f} days ago"


def local_day(at: datetime, offset_minutes: int) -> date:
    """The date of an instant on a local clock."""
    return at.astimezone(timezone(timedelta(minutes=offset_minutes))).date()


def weekday(day: date) -> str:
    """`Monday`."""
    return _DAYS[day.weekday()]


def short_date(day: date) -> str:
    """`5 Jan`."""
    return f"{day.day} {_MONTHS[day.month - 1][:3]}"


def day_and_month(day: date) -> str:
    """`5 January`."""
    return f"{day.day} {_MONTHS[day.month - 1]}"


def full_date(day: date) -> str:
    """`5 January 2026`."""
    return f"{day_and_month(day)} {day.year}"


def local_moment(at: datetime) -> str:
    """Day and clock on this computer's calendar, such as 3 March 2026, 2:10."""
    offset = local_offset_minutes(at)
    return f"{full_date(local_day(at, offset))}, {clock_text(at, offset)}"


def session_day(first_at: datetime | None, offset_minutes: int) -> str:
    """The day and clock a session began, short."""
    if first_at is None:
        return "nothing entered yet"
    day = local_day(first_at, offset_minutes)
    return f"{weekday(day)[:3]} {short_date(day)} {day.year}, {clock_text(first_at, offset_minutes)}"


def as_it_stood(at: datetime, offset_minutes: int) -> str:
    """That an answer is about an old session."""
    return f"Answered as the stove stood at the end of this session, {session_day(at, offset_minutes)}."


def entries_count(number: int) -> str:
    """How many entries a session holds."""
    return {0: "no entries", 1: "1 entry"}.get(number, f"{number} entries")


def sessions_count(number: int) -> str:
    """How many sessions."""
    return "1 session" if number == 1 else f"{number} sessions"


def readings_count(number: int) -> str:
    """How many readings stand behind something."""
    return "1 reading" if number == 1 else f"{number} readings"


def capital(text: str) -> str:
    """A sentence's beginning: its first letter large, the rest as it is."""
    return f"{text[:1].upper()}{text[1:]}"


def listed(names: Sequence[str]) -> str:
    """`soup`, `soup and eggs`, `soup, eggs and bacon`."""
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def in_sentence(name: str) -> str:
    """A name inside a sentence: `apple pie`."""
    return f"{name[:1].lower()}{name[1:]}"


def spot_label(stove: Stove, name: str) -> str:
    """What a spot is called; one that the stove does not know, by its name in the log."""
    spot = stove.spot(name)
    return spot.label if spot else name.replace("_", " ")


def place_words(label: str) -> str:
    """A spot inside a sentence: `the back left`."""
    return f"the {label.removeprefix('top ')}" if label.startswith("top ") else label


def heat_name(band: HeatBand) -> str:
    """What a band is called inside a sentence: “bread heat”, or its degrees when it was typed."""
    return band.name if any(letter.isdigit() for letter in band.name) else f"{band.name} heat"


def mass_text(kilograms: float, unit: str) -> str:
    """A mass of wood as a cook says it: whole pounds, half kilograms."""
    if unit == "F":
        return f"{max(kilograms / KILOGRAMS_PER_POUND, 0.0):.0f} lb"
    return f"{tidy(round(2 * kilograms) / 2)} kg"


def air_words(air: float) -> str:
    """How far the air is open."""
    if air <= 0.05:
        return "shut"
    if air >= 0.95:
        return "wide open"
    return {1: "a quarter open", 2: "half open", 3: "three quarters open"}[
        min((1, 2, 3), key=lambda quarter: abs(quarter / 4 - air))
    ]
