"""Where the stove stands: its height, and today's barometer if one was read; behind boiling, checks, baking, draught.

The height belongs to the stove and stays. A barometer's reading holds for a day, for the weather moves on; after that
the usual pressure of the height is taken again, and it is said.
"""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from cookstove_gui.cooking.instruments.site import (
    Site,
    is_possible_at_sea,
    pressure_from_text,
    site_at,
    site_from_text,
    site_with_barometer,
)
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.kept_rows import BAROMETER, Row, keep_row, kept_row
from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.air import pressure_altitude
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import PASCALS_PER_INCH_OF_MERCURY, tidy

HOLDS_FOR = timedelta(hours=24)
MISFIT = "The barometer’s reading does not go with this height; type it again."


@dataclass(frozen=True, slots=True, kw_only=True)
class Barometer:
    """A reading as it was typed."""

    pressure: float  # Pa
    as_at_sea: bool  # brought down to the sea's level, as weather reports give it
    at: datetime


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


def stove_here(desk: Desk) -> Stove:
    """The stove at the height whose usual air is today's, so that all that goes by the height goes by the weather."""
    site = site_here(desk)
    return replace(desk.stove, altitude=float(pressure_altitude(site.pressure)))


def barometer_of(desk: Desk) -> Barometer | None:
    """The barometer's latest reading for this stove, however old."""
    row = kept_row(desk, BAROMETER)
    if row is None:
        return None
    return Barometer(
        pressure=float(row["pressure"]), as_at_sea=bool(row["as_at_sea"]), at=datetime.fromisoformat(str(row["at"]))
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
    """Keep the height from what was typed (`4000`, `4000 ft`, `1200 m`); a bare number is in the unit on the screen."""
    bare = text.strip().lstrip("-").replace(".", "", 1).replace(",", "", 1).isdigit()
    altitude = site_from_text(f"{text} m" if bare and desk.unit == "C" else text).altitude
    desk.save_stove(replace(desk.stove, altitude=altitude))


def keep_barometer(desk: Desk, text: str, *, as_at_sea: bool) -> Site:
    """Keep what the barometer shows now (`25.1 inHg`, `850 hPa`); blank forgets it.

    Where no height was known, a pressure that the sea never has gives the height.
    """
    if not text.strip():
        keep_row(desk, BAROMETER, None)
        return site_here(desk)
    pressure = pressure_from_text(text)
    as_at_sea = as_at_sea and is_possible_at_sea(pressure)
    site = site_with_barometer(desk.stove.altitude, pressure, as_at_sea=as_at_sea)
    row: Row = {"pressure": pressure, "as_at_sea": as_at_sea, "at": desk.clock().isoformat()}
    keep_row(desk, BAROMETER, row)
    if site.altitude != desk.stove.altitude:
        desk.save_stove(replace(desk.stove, altitude=site.altitude))
    return site
