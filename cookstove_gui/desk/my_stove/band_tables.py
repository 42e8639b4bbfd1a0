"""Which published table the names of oven heats are read in: slow, moderate, hot mean different heats in each."""

from cookstove_gui.cooking.fit.bands import DEFAULT_TABLE, BandTable, band_tables, oven_bands
from cookstove_gui.desk.desk import Desk
from cookstove_gui.errors import InputProblem
from cookstove_gui.units import degrees

_KEY = "band_table"


def band_table(desk: Desk) -> BandTable:
    """The table in use."""
    key = desk.setting(_KEY, DEFAULT_TABLE)
    return next(one for one in band_tables() if one.key == key)


def choose_band_table(desk: Desk, key: str) -> None:
    """Read names in another table; a wanted heat chosen by name means what it means there, bread if nothing.

    Raises InputProblem for an unknown table.
    """
    oven_bands(key)
    wanted = desk.band.name
    desk.set_setting(_KEY, key)
    if any(letter.isdigit() for letter in wanted):
        return
    try:
        desk.choose_band(wanted)
    except InputProblem:
        desk.choose_band("bread")


def table_words(desk: Desk) -> str:
    """What each name means in the table in use, and the table's source."""
    chosen = band_table(desk)
    names = ", ".join(
        f"{band.name} {degrees(band.low, desk.unit):.0f} to {degrees(band.high, desk.unit):.0f}"
        for band in chosen.bands
    )
    return f"{names[:1].upper()}{names[1:]} °{desk.unit}. {chosen.source}."
