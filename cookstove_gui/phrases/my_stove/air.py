"""The air where the stove stands: its pressure, where water boils in it, what it changes for a bake."""

from datetime import datetime

from cookstove_gui.cooking.instruments.site import Site, pressure_text
from cookstove_gui.phrases.edge import day_and_month, local_day
from cookstove_gui.resource_files import table
from cookstove_gui.units import clock_text, degrees, tidy

ABOUT_BAROMETERS = (
    "Weather reports, and household barometers set by them, give the pressure reduced to sea level, not the pressure "
    "in your kitchen: leave it at “as at the sea” and type the height above. A barometer that was never set for your "
    "height shows the air here."
)
ASK_HEIGHT = "The height above the sea is not known and taken as 0. If the stove stands higher, type its height."


def boiling_line(site: Site, unit: str) -> str:
    """Where water boils here."""
    return f"Water boils at {tidy(degrees(site.boiling, unit))} °{unit} here."


def usual_pressure_line(site: Site, why: str = "") -> str:
    """The pressure where no barometer says it; `why` its reading was not used."""
    why = why or "Boiling, thermometer checks, baking and draught all go by it."
    return f"The air pressure is taken as {pressure_text(site.pressure)}, as usual at this height. {why}"


def read_pressure_line(site: Site, read_at: datetime, offset_minutes: int) -> str:
    """The pressure by a barometer, and how its number was taken."""
    clock = clock_text(read_at, offset_minutes)
    return f"The air pressure is {pressure_text(site.pressure)}, by the barometer read at {clock}. {site.note}".strip()


def stale_barometer(read_at: datetime, offset_minutes: int, holds_hours: int) -> str:
    """That a reading is too old to go by."""
    day = day_and_month(local_day(read_at, offset_minutes))
    return (
        f"The barometer was read more than {holds_hours} hours ago, at {clock_text(read_at, offset_minutes)} on {day}."
    )


def altitude_hints(site: Site, unit: str) -> tuple[str, ...]:
    """What changes for baking at this height; none near the sea."""
    boils = f"{degrees(site.boiling, unit):.0f} °{unit}"
    return tuple(
        row["text"].format(boils=boils) for row in table("altitude.toml")["hint"] if site.altitude >= row["from_m"]
    )
