"""What is typed on the Plan page, read: amounts, weights, times to come; a mistake gets a sentence.

Amounts are quarts and pounds while the screen shows °F, litres and kilograms while it shows °C.
"""

import re
from datetime import datetime, timedelta

from cookstove_gui.cooking.pans.catalogue import LEAST_LITRES, MOST_LITRES
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import (
    KILOGRAMS_PER_POUND,
    LITRES_PER_QUART,
    TemperatureUnit,
    clock_text,
    kelvin,
    parse_near_clock,
    parse_number,
    parse_temperature,
    parse_wall_clock,
    volume_unit,
)

_AHEAD = re.compile(r"(?:\+|in)\s*(\d{1,3})\s*(?:m|min|minutes)?", re.IGNORECASE)
_ICE, _COLDEST_FOOD, _BOILING = kelvin(32.0, "F"), kelvin(0.0, "F"), kelvin(212.0, "F")  # K
_NEARLY_BOILING = kelvin(211.0, "F")  # K


def litres(text: str, unit: TemperatureUnit) -> float:
    """Litres of water from what was typed."""
    number = parse_number(text, "amount")
    found = number * (LITRES_PER_QUART if unit == "F" else 1.0)
    if not LEAST_LITRES <= found <= MOST_LITRES:
        raise InputProblem(f"{text.strip()} {volume_unit(unit)} is not a plausible amount; type a number such as 2.")
    return found


def litres_text(amount: float, unit: TemperatureUnit) -> str:
    """Litres as a number in the unit on the screen."""
    return f"{amount / (LITRES_PER_QUART if unit == 'F' else 1.0):.3g}"


def kilograms_of(text: str, unit: TemperatureUnit) -> float:
    """Kilograms from what was typed."""
    number = parse_number(text, "weight")
    if number <= 0:
        raise InputProblem(f"“{text.strip()}” is not a weight; type a number above 0, such as 1.5.")
    return number * (KILOGRAMS_PER_POUND if unit == "F" else 1.0)


def kilograms_text(mass: float, unit: TemperatureUnit) -> str:
    """Kilograms as a number in the unit on the screen."""
    return f"{mass / (KILOGRAMS_PER_POUND if unit == 'F' else 1.0):.3g}"


def food_temperature(text: str, unit: TemperatureUnit, *, low: float, high: float, what: str) -> float:
    """Temperature [K] of water or of food that is raw or warming, which lies between `low` and `high` [K]."""
    value, typed_unit = parse_temperature(text, unit)
    found = kelvin(value, typed_unit)
    if not low <= found <= high:
        raise InputProblem(
            f"{text.strip()} is not a plausible temperature for {what}; check the number and its unit, °{typed_unit}."
        )
    return float(found)


def moment(text: str, now: datetime, offset_minutes: int) -> datetime:
    """An instant from nothing or `now`, `7:30`, `-10` (minutes ago), `+20` or `in 20` (minutes).

    A time of day means the one nearest to now, before or after.
    """
    tidied = text.strip()
    if tidied.casefold() in ("", "now"):
        return now
    ahead = _AHEAD.fullmatch(tidied)
    if ahead:
        return now + timedelta(minutes=int(ahead[1]))
    if tidied.startswith("-"):
        return parse_wall_clock(tidied, now, offset_minutes)
    try:
        return parse_near_clock(tidied, now, offset_minutes)
    except InputProblem:
        raise InputProblem(
            f"“{tidied}” isn't a time; type now, a time such as 7:30, or +20 for in twenty minutes."
        ) from None


def settled(text: str, at: datetime, offset_minutes: int) -> str:
    """The words for an instant that was understood; minutes from now become a time of day, so that it stays put."""
    return clock_text(at, offset_minutes) if re.match(r"\s*(?:[+-]|in\b)", text, re.IGNORECASE) else text


def coming(text: str, now: datetime, offset_minutes: int) -> datetime:
    """The next such instant after now: a time of day, or `+90`."""
    at = moment(text, now, offset_minutes)
    return at if at > now else at + timedelta(days=1)


def food_start(text: str, unit: TemperatureUnit) -> float:
    """Temperature [K] of food as it goes in, or of its core on the way."""
    return food_temperature(text, unit, low=_COLDEST_FOOD, high=_BOILING, what="food")


def water_start(text: str, unit: TemperatureUnit) -> float:
    """Temperature [K] of water that is not boiling yet."""
    return food_temperature(text, unit, low=_ICE, high=_NEARLY_BOILING, what="water that is not boiling yet")


def well_water_text(unit: TemperatureUnit) -> str:
    """What water from a well has, in the unit on the screen."""
    return "59" if unit == "F" else "15"


def minutes_at_heat(text: str, longest: float) -> float:
    """Minutes that the oven is to stay hot, `longest` at most."""
    found = parse_number(text, "number of minutes")
    if not 0 <= found <= longest:
        raise InputProblem(f"{text.strip()} minutes is longer than a day of baking; type a number such as 60.")
    return found
