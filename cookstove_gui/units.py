"""Text and the units people use on one side, SI numbers and aware UTC instants on the other.

Temperatures inside are kelvin, masses kilograms, lengths metres, instants aware UTC datetimes.
"""

import re
from datetime import UTC, datetime, time, timedelta, timezone, tzinfo
from typing import Any, Literal, TypeVar, cast

from cookstove_gui.errors import InputProblem

ZERO_CELSIUS = 273.15  # K
KILOGRAMS_PER_POUND = 0.45359237  # exact, international pound
METRES_PER_FOOT = 0.3048  # exact
LITRES_PER_QUART = 0.946352946  # US liquid quart: a quarter of a gallon of 231 cubic inches
PASCALS_PER_INCH_OF_MERCURY = 3386.389  # conventional, 0 °C
PASCALS_PER_INCH_OF_WATER = 249.08891  # conventional, 4 °C
WATTS_PER_BTU_PER_HOUR = 0.29307107

TemperatureUnit = Literal["F", "C"]
MassUnit = Literal["kg", "lb"]
Number = TypeVar("Number", bound=Any)  # a float or a numpy array

_NUMBER = re.compile(r"[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)")
_TEMPERATURE = re.compile(rf"\s*({_NUMBER.pattern})\s*°?\s*([a-zA-Z]*)\s*")
_HALF_A_DAY = timedelta(hours=12)
_CLOCK = re.compile(r"\s*(\d{1,2})(?:[:.h]?(\d{2}))?(?::(\d{2}))?\s*([ap])?\.?m?\.?\s*", re.IGNORECASE)


def kelvin(degrees_value: Number, unit: str) -> Number:
    """Temperature [K] from a number in °F or °C."""
    if unit == "F":
        return cast(Number, (degrees_value - 32.0) / 1.8 + ZERO_CELSIUS)
    if unit == "C":
        return cast(Number, degrees_value + ZERO_CELSIUS)
    raise InputProblem(f"“{unit}” is not a temperature unit; write F or C.")


def degrees(kelvin_value: Number, unit: str) -> Number:
    """Number in °F or °C from a temperature [K]."""
    if unit == "F":
        return cast(Number, (kelvin_value - ZERO_CELSIUS) * 1.8 + 32.0)
    if unit == "C":
        return cast(Number, kelvin_value - ZERO_CELSIUS)
    raise InputProblem(f"“{unit}” is not a temperature unit; write F or C.")


def degrees_difference(kelvin_difference: Number, unit: str) -> Number:
    """A difference of temperatures [K] in °F or °C steps."""
    return cast(Number, kelvin_difference * (1.8 if unit == "F" else 1.0))


def parse_number(text: str, what: str = "number") -> float:
    """The number in a text; a comma may stand for the decimal point."""
    if not _NUMBER.fullmatch(text.strip()):
        raise InputProblem(f"“{text.strip()}” is not a {what}; type digits, such as 385.")
    return float(text.strip().replace(",", "."))


def parse_temperature(text: str, unit: TemperatureUnit) -> tuple[float, TemperatureUnit]:
    """Number and unit from what was typed: `385`, `385F`, `196 c`; `unit` is meant when none is typed."""
    match = _TEMPERATURE.fullmatch(text)
    if match is None:
        raise InputProblem(
            f"“{text.strip()}” is not a temperature; type digits, and F or C behind them if you like: 385 or 196C."
        )
    typed_unit = match[2].upper() or unit
    if typed_unit not in ("F", "C"):
        raise InputProblem(f"“{match[2]}” is not a temperature unit; write F or C behind the number.")
    return float(match[1].replace(",", ".")), cast(TemperatureUnit, typed_unit)


def kilograms(mass: float, unit: str) -> float:
    """Mass [kg] from a number in kg or lb."""
    if unit == "kg":
        return mass
    if unit == "lb":
        return mass * KILOGRAMS_PER_POUND
    raise InputProblem(f"“{unit}” is not a unit of mass; write kg or lb.")


def mass_unit_beside(unit: str) -> MassUnit:
    """The unit of mass that goes with a unit of temperature."""
    return "kg" if unit == "C" else "lb"


def tidy(number: float, places: int = 1) -> str:
    """A number as short text: `385`, `0.5`; never `385.0`."""
    text = f"{number:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def parse_iso_clock(text: str) -> tuple[datetime, int]:
    """Instant (aware UTC) and the local clock's offset [min] from an ISO 8601 text with an offset."""
    cleaned = text.strip()
    if re.search(r"[ap]\.?m\.?$", cleaned, re.IGNORECASE):
        raise InputProblem(
            f"clock “{cleaned}” is a 12-hour clock; write it as 2026-01-05T19:02:00-05:00 (24 hours, with the offset)."
        )
    try:
        local = datetime.fromisoformat(cleaned)
    except ValueError:
        raise InputProblem(
            f"clock “{cleaned}” is not a date and time; write it as 2026-01-05T07:02:00-05:00."
        ) from None
    offset = local.utcoffset()
    if offset is None:
        raise InputProblem(f"clock “{cleaned}” has no UTC offset; add it, as in 2026-01-05T07:02:00-05:00.")
    try:
        return local.astimezone(UTC), round(offset.total_seconds() / 60)
    except OverflowError:
        raise InputProblem(f"clock “{cleaned}” is outside the calendar; correct the year.") from None


def iso_clock(at: datetime, offset_minutes: int) -> str:
    """ISO 8601 text of an instant on a local clock with its offset."""
    local = at.astimezone(timezone(timedelta(minutes=offset_minutes)))
    return local.isoformat(timespec="microseconds" if local.microsecond else "seconds")


def local_offset_minutes(at: datetime, zone: tzinfo | None = None) -> int:
    """Offset [min] from UTC at an instant, of this computer's clock or of another zone."""
    offset = at.astimezone(zone).utcoffset()
    return round(offset.total_seconds() / 60) if offset else 0


def clock_text(at: datetime, offset_minutes: int) -> str:
    """The wall clock, as `7:05`."""
    local = at.astimezone(timezone(timedelta(minutes=offset_minutes)))
    return f"{local.hour}:{local.minute:02d}"


def parse_wall_clock(text: str, now: datetime, offset_minutes: int) -> datetime:
    """Instant from what a cook types for “when”, on a clock with a fixed offset from UTC; see `parse_local_clock`."""
    return parse_local_clock(text, now, timezone(timedelta(minutes=offset_minutes)))


def parse_local_clock(text: str, now: datetime, zone: tzinfo | None = None) -> datetime:
    """Instant from what a cook types for “when”: `7:05`, `705`, `19:05`, `7:05 pm`, or `-10` (minutes ago).

    A clock of the day means the latest such moment not after `now`, or at most five minutes ahead of it, by the rules
    of this computer's zone, or of another one. One that would lie more than half a day back is taken for a slip: it is
    still to come. Raises InputProblem for that, for no clock at all, and for one that daylight saving left out.
    """
    stripped = text.strip()
    ago = re.fullmatch(r"-\s*(\d{1,3})\s*(?:m|min)?", stripped)
    if ago:
        return now - timedelta(minutes=int(ago[1]))
    clock = parse_time_of_day(stripped)
    today = now.astimezone(zone).date()
    latest = now + timedelta(minutes=5)
    for day in (today + timedelta(days=1), today, today - timedelta(days=1)):
        naive = datetime.combine(day, clock)
        found = [at for at in _instants(naive, zone) if at <= latest]
        if found:
            if now - max(found) > timedelta(hours=12) and day != today:
                raise InputProblem(
                    f"{stripped} is still to come; type a time that has passed, or -10 for ten minutes ago."
                )
            return max(found)
        if not _instants(naive, zone) and naive.replace(tzinfo=UTC) <= _as_if_utc(latest, zone):
            raise InputProblem(
                f"{stripped} was left out when the clocks went forward; type the time an hour later, or -10 for ten "
                "minutes ago."
            )
    raise InputProblem(f"{stripped} is still to come; type a time that has passed, or -10 for ten minutes ago.")


def parse_near_clock(text: str, now: datetime, offset_minutes: int) -> datetime:
    """The instant of that wall clock, or minutes ago, nearest to now, before or after; see `parse_local_clock`."""
    # Seen from half a day ahead, most times of day lie in the past; the others did before now.
    try:
        return parse_wall_clock(text, now + _HALF_A_DAY, offset_minutes)
    except InputProblem:
        return parse_wall_clock(text, now, offset_minutes)


def came_twice(at: datetime, zone: tzinfo | None = None) -> bool:
    """Whether the wall clock of an instant was shown twice, as clocks went back an hour."""
    return len(_instants(at.astimezone(zone).replace(tzinfo=None), zone)) > 1


def parse_time_of_day(text: str) -> time:
    """A time of day as it is typed: `7:05`, `705`, `19:05`, `7:05 pm`."""
    match = _CLOCK.fullmatch(text)
    hour, minute = (int(match[1]), int(match[2] or 0)) if match else (99, 0)
    if match and match[4]:
        if not 1 <= hour <= 12:
            hour = 99
        else:
            hour = hour % 12 + (12 if match[4].lower() == "p" else 0)
    if hour > 23 or minute > 59:
        raise InputProblem(f"“{text}” is not a clock time; type it as 7:05, or -10 for ten minutes ago.")
    return time(hour, minute, int(match[3] or 0) if match else 0)


def _instants(naive: datetime, zone: tzinfo | None) -> set[datetime]:
    """When a wall clock shows that: once, twice as clocks go back, or never as they go forward."""
    found = set()
    for fold in (0, 1):
        folded = naive.replace(fold=fold)
        at = (folded.astimezone() if zone is None else folded.replace(tzinfo=zone)).astimezone(UTC)
        if at.astimezone(zone).replace(tzinfo=None) == naive:
            found.add(at)
    return found


def _as_if_utc(at: datetime, zone: tzinfo | None) -> datetime:
    return at.astimezone(zone).replace(tzinfo=UTC)


def volume_unit(unit: str) -> str:
    """The unit that water is measured in beside a unit of temperature."""
    return "quarts" if unit == "F" else "litres"
