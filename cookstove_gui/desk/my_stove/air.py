"""The air at the stove in use, in words: what pressure is taken, and when the height has to be asked for."""

from datetime import timedelta

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.site import HOLDS_FOR, MISFIT, barometer_of, is_past, site_here
from cookstove_gui.phrases.my_stove.air import (
    ASK_HEIGHT,
    read_pressure_line,
    stale_barometer,
    usual_pressure_line,
)


def pressure_line(desk: Desk) -> str:
    """The pressure in use, and where it comes from."""
    site, barometer = site_here(desk), barometer_of(desk)
    if barometer is None:
        return usual_pressure_line(site)
    offset = barometer.offset_minutes
    if is_past(desk, barometer):
        return usual_pressure_line(site, stale_barometer(barometer.at, offset, HOLDS_FOR // timedelta(hours=1)))
    if site.note == MISFIT:
        return usual_pressure_line(site, MISFIT)
    return read_pressure_line(site, barometer.at, offset)


def height_question(desk: Desk) -> str:
    """Asks for the height where a pressure reduced to sea level cannot be understood without it."""
    barometer = barometer_of(desk)
    if barometer is None or desk.stove.altitude != 0.0 or is_past(desk, barometer):
        return ""
    return ASK_HEIGHT
