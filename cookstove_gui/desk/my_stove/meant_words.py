"""What a reading was typed as beside what it means, where the thermometer is set otherwise than the surface is."""

from functools import lru_cache

from cookstove_gui.cooking.instruments.meant_rows import meant_kelvin
from cookstove_gui.cooking.instruments.surface_readings import INFRARED, SHINY_ADVICE, cooktop_is_shiny, surface_at
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import degrees

_KEPT = 512  # rows whose meaning is remembered


def meant_heat(row: Entry, stove: Stove) -> float | None:
    """What a reading means [K] where that is not what was typed."""
    if row.kind is not Kind.READING or not any(one.kind == INFRARED for one in stove.instruments):
        return None
    return _meant(stove, row)


def meant_words(row: Entry, stove: Stove) -> str:
    """`typed 353, meant 371`, in the unit it was typed in; empty where it means what was typed."""
    meant = meant_heat(row, stove)
    return "" if meant is None else f"typed {row.value}, meant {degrees(meant, row.unit):.0f}"


def meant_tip(row: Entry, stove: Stove) -> str:
    """Why it means something else; empty where it does not."""
    words, spot = meant_words(row, stove), stove.spot(row.spot)
    if not words or spot is None:
        return ""
    surface = surface_at(stove, spot)
    setting = next(one.emissivity for one in stove.instruments if one.kind == INFRARED)
    return (
        f"{spot.label}: {words} °{row.unit}. The infrared thermometer is set to {setting:.2f}, {surface.name} is about "
        f"{surface.usual:.2f}. The log keeps what was typed."
    )


def surface_warning(stove: Stove) -> str:
    """What is wrong with reading a cooktop like this one by infrared; empty for a dull one."""
    return SHINY_ADVICE if cooktop_is_shiny(stove) else ""


@lru_cache(maxsize=_KEPT)
def _meant(stove: Stove, row: Entry) -> float | None:
    return meant_kelvin(stove, row)
