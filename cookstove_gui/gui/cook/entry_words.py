"""An entry in a few words, for the fire lane and the list of what was entered."""

from cookstove_gui.stove.entries import Entry, Kind, fraction_open
from cookstove_gui.stove.stove import Stove

# Kinds that speak of the fire and so stand in the lane under the time axis.
FIRE_KINDS = frozenset({Kind.LIT, Kind.WOOD, Kind.AIR, Kind.BYPASS, Kind.OVEN_DOOR})
_QUARTERS = {1: "¼", 2: "½", 3: "¾"}


def opening_words(fraction: float) -> str:
    """How far something is open: `shut`, `½`, `open`."""
    if fraction <= 0.05:
        return "shut"
    if fraction >= 0.95:
        return "open"
    return _QUARTERS[min(_QUARTERS, key=lambda quarter: abs(quarter / 4 - fraction))]


def entry_words(entry: Entry, stove: Stove) -> str:
    """What was read or done, without its clock: `oven centre 385 °F`, `two splits`, `air ½`."""
    match entry.kind:
        case Kind.READING:
            return f"{spot_words(entry.spot, stove)} {entry.value} °{entry.unit}"
        case Kind.LIT:
            return "lit"
        case Kind.WOOD:
            mass = f"{entry.value} {entry.unit}".strip()
            return ", ".join(part for part in (entry.note, mass) if part) or "wood"
        case Kind.AIR | Kind.BYPASS:
            return f"{entry.kind} {opening_words(fraction_open(entry))}"
        case Kind.OVEN_DOOR:
            return f"door {entry.value}"
        case Kind.PAN:
            return f"pan {entry.value} {spot_words(entry.spot, stove)}"
        case _:
            return entry.note or entry.value or entry.kind.value


def spot_words(name: str, stove: Stove) -> str:
    """A spot's label."""
    spot = stove.spot(name)
    return spot.label if spot else name.replace("_", " ")
