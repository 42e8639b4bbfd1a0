"""The band wanted for the oven, kept in the logbook as it was typed, with the unit it was typed in."""

from cookstove_gui.cooking.fit.bands import DEFAULT_TABLE, band_from_text, oven_bands
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import TemperatureUnit

_FIRST = "bread"


def named_bands(logbook: Logbook) -> tuple[HeatBand, ...]:
    """The bands that have a name in the table of oven heats that was chosen."""
    return oven_bands(logbook.setting("band_table", DEFAULT_TABLE))


def keep_band(logbook: Logbook, text: str, unit: TemperatureUnit) -> HeatBand:
    """The band that a text means, kept for the next start; InputProblem, with nothing kept, if it means none."""
    band = band_from_text(text, unit, logbook.setting("band_table", DEFAULT_TABLE))
    logbook.set_setting("band", text)
    logbook.set_setting("band_unit", unit)
    return band


def kept_band(logbook: Logbook) -> HeatBand:
    """The band kept last; bread heat before the first, or when the kept text means nothing any more."""
    unit: TemperatureUnit = "C" if logbook.setting("band_unit") == "C" else "F"
    try:
        return band_from_text(logbook.setting("band", _FIRST), unit, logbook.setting("band_table", DEFAULT_TABLE))
    except InputProblem:
        return band_from_text(_FIRST, unit)
