"""Short figures for where there is little room: temperatures, ages, arrival times."""

from datetime import datetime, timedelta

from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import clock_text, degrees


def temperature_text(kelvin: float, unit: str) -> str:
    """Whole degrees, without the unit: `385`."""
    return f"{degrees(kelvin, unit):.0f}"


def estimate_text(kelvin: float, unit: str) -> str:
    """An estimate, to the nearest five degrees: `≈ 385`."""
    return f"≈{5 * round(degrees(kelvin, unit) / 5):.0f}"


def age_text(minutes: float | None) -> str:
    """How long ago: `now`, `12 min`, `3 h`; `unread` if it never was."""
    if minutes is None:
        return "unread"
    if minutes < 0.75:
        return "now"
    if minutes < 100:
        return f"{minutes:.0f} min"
    return f"{minutes / 60:.0f} h"


def range_text(low: float, high: float, unit: str) -> str:
    """Two ends: `400–475`."""
    return f"{temperature_text(low, unit)}–{temperature_text(high, unit)}"


def band_text(band: HeatBand, unit: str) -> str:
    """A band's name and its ends; the ends alone where the name is made of numbers."""
    ends = range_text(band.low, band.high, unit)
    return ends if any(letter.isdigit() for letter in band.name) else f"{band.name} {ends}"


def moment_text(now: datetime, minutes: float | None, offset_minutes: int) -> str:
    """The wall clock some minutes from now, or `after` the hours that are looked at."""
    if minutes is None:
        return "later than 3 h"
    return clock_text(now + timedelta(minutes=minutes), offset_minutes)


def window_text(now: datetime, enters: Quantiles, offset_minutes: int) -> str:
    """From when to when something is likely: `11:30–11:50`, `from 11:30` with an open end, `not within 3 h`."""
    if enters.p10 is None:
        return "not within 3 h"
    first = moment_text(now, enters.p10, offset_minutes)
    return f"from {first}" if enters.p90 is None else f"{first}–{moment_text(now, enters.p90, offset_minutes)}"
