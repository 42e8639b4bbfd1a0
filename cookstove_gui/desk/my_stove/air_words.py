"""The sentences about the air where the stove stands: its pressure, where water boils in it, what it does to a bake."""

from datetime import timedelta

from cookstove_gui.cooking.instruments.site import Site, altitude_hints, pressure_text
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.site import HOLDS_FOR, MISFIT, barometer_of, is_past, site_here
from cookstove_gui.units import clock_text, degrees, local_offset_minutes, tidy

ABOUT_BAROMETERS = (
    "Weather reports and household barometers set by them show the pressure brought down to the sea’s level, not the "
    "air in your kitchen: leave it at “as at the sea” and type the height above. A barometer that was never set for "
    "your height shows the air here."
)


def boiling_line(site: Site, unit: str) -> str:
    """Where water boils here."""
    return f"Water boils at {tidy(degrees(site.boiling, unit))} °{unit} here."


def pressure_line(desk: Desk) -> str:
    """The pressure that is reckoned with, and where it comes from."""
    site, barometer = site_here(desk), barometer_of(desk)
    air = f"The air is reckoned with at {pressure_text(site.pressure)}"
    if barometer is None:
        return f"{air}, as usual at this height. Boiling, thermometer checks, baking and draught go by it."
    clock = clock_text(barometer.at, local_offset_minutes(barometer.at))
    if is_past(desk, barometer):
        return (
            f"{air}, as usual at this height: the barometer was read more than {_hours(HOLDS_FOR)} hours ago "
            f"({clock} on {barometer.at.astimezone().day} {barometer.at.astimezone():%B})."
        )
    if site.note == MISFIT:
        return f"{air}, as usual at this height. {MISFIT}"
    return f"{air}, by the barometer read at {clock}. {site.note}".strip()


def height_question(desk: Desk) -> str:
    """Asks for the height where a pressure brought down to the sea cannot be understood without it."""
    barometer = barometer_of(desk)
    if barometer is None or desk.stove.altitude != 0.0 or is_past(desk, barometer):
        return ""
    return "The height above the sea is not known and taken as 0. If the stove stands higher, type its height."


def hints(desk: Desk) -> str:
    """What changes for baking at this height; empty near the sea."""
    return "\n".join(altitude_hints(site_here(desk), desk.unit))


def _hours(span: timedelta) -> int:
    return round(span.total_seconds() / 3600)
