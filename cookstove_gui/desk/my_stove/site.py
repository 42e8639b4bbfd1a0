"""Where the stove stands: its height, and today's barometer if one was read; behind boiling, checks, baking, draught.

A barometer's reading holds for a day; after that the usual pressure at this height is assumed again, and the page says
so. Raises InputProblem for what cannot be such a height or pressure.
"""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from cookstove_gui.cooking.instruments.site import (
    Site,
    height_from_text,
    is_possible_at_sea,
    pressure_from_text,
    site_at,
    site_with_barometer,
)
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.describing import height_unit
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.stove import Stove
from cookstove_gui.stove.weather import BAROMETER, WeatherKind, WeatherReading
from cookstove_gui.units import PASCALS_PER_INCH_OF_MERCURY, tidy

HOLDS_FOR = timedelta(hours=24)
MISFIT = "The barometer’s reading does not fit this height; type it again."


@dataclass(frozen=True, slots=True, kw_only=True)
class Barometer:
    """A reading as it was typed."""

    pressure: float  # Pa
    as_at_sea: bool  # reduced to sea level, as weather reports give it
    at: datetime
    offset_minutes: int  # of the local clock it was read on


def site_here(desk: Desk) -> Site:
    """The air at the stove in use."""
    barometer = barometer_of(desk)
    altitude = desk.stove.altitude
    if barometer is not None and not is_past(desk, barometer):
        try:
            return site_with_barometer(altitude, barometer.pressure, as_at_sea=barometer.as_at_sea)
        except InputProblem:
            return replace(site_at(altitude), note=MISFIT)
    return site_at(altitude)


def barometer_of(desk: Desk) -> Barometer | None:
    """The barometer's latest reading for this stove, however old."""
    row = desk.logbook.facts.latest_weather(desk.stove.name, *BAROMETER)
    if row is None or row.value is None:
        return None
    return Barometer(
        pressure=row.value,
        as_at_sea=row.kind is WeatherKind.SEA_PRESSURE,
        at=row.at,
        offset_minutes=row.offset_minutes,
    )


def barometer_text(desk: Desk, barometer: Barometer) -> str:
    """The reading as it would be typed, in the unit that goes with the screen's."""
    if desk.unit == "F":
        return f"{barometer.pressure / PASCALS_PER_INCH_OF_MERCURY:.2f} inHg"
    return f"{tidy(barometer.pressure / 100, 1)} hPa"


def is_past(desk: Desk, barometer: Barometer) -> bool:
    """Whether the weather has moved on since."""
    return desk.clock() - barometer.at > HOLDS_FOR


def keep_height(desk: Desk, text: str) -> None:
    """Keep the height above the sea from what was typed; a bare number is in the unit on the screen."""
    desk.save_stove(replace(desk.stove, altitude=height_from_text(text, height_unit(desk))))


def keep_barometer(desk: Desk, text: str, *, as_at_sea: bool) -> Site:
    """Keep what the barometer shows now (`25.1 inHg`, `850 hPa`); blank forgets it.

    Where no height was known, a pressure that is impossible at sea level gives it.
    """
    stove = desk.stove
    if not text.strip():
        keep_weather(desk, stove, WeatherKind.PRESSURE, None)
        return site_here(desk)
    pressure = pressure_from_text(text)
    as_at_sea = as_at_sea and is_possible_at_sea(pressure)
    site = site_with_barometer(stove.altitude, pressure, as_at_sea=as_at_sea)
    kind = WeatherKind.SEA_PRESSURE if as_at_sea else WeatherKind.PRESSURE
    keep_weather(desk, replace(stove, altitude=site.altitude), kind, pressure)
    return site


def keep_weather(desk: Desk, stove: Stove, kind: WeatherKind, value: float | None) -> None:
    """Keep what was read of the weather just now, and the stove as it is described with it."""
    reading = WeatherReading(kind=kind, value=value, at=desk.clock(), offset_minutes=desk.offset_minutes)
    desk.logbook.facts.add_weather(stove, reading)
    desk.read_stove_again()
