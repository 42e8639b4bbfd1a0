"""What a reading means where the infrared thermometer is set otherwise than the surface is."""

from functools import lru_cache

from cookstove_gui.cooking.instruments.meant_rows import meant_kelvin
from cookstove_gui.cooking.instruments.surface_readings import INFRARED, SHINY_ADVICE, cooktop_is_shiny
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import Stove

_KEPT = 512  # rows whose meaning is remembered


def meant_heat(row: Entry, stove: Stove) -> float | None:
    """What a reading means [K] where that is not what was typed."""
    if row.kind is not Kind.READING or not any(one.kind == INFRARED for one in stove.instruments):
        return None
    return _meant(stove, row)


def surface_warning(stove: Stove) -> str:
    """What is wrong with reading a cooktop like this one by infrared; empty for a dull one."""
    return SHINY_ADVICE if cooktop_is_shiny(stove) else ""


@lru_cache(maxsize=_KEPT)
def _meant(stove: Stove, row: Entry) -> float | None:
    return meant_kelvin(stove, row)
