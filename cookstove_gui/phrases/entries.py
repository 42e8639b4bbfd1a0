"""An entry in a few words, as typed and as meant."""

from collections.abc import Sequence

from cookstove_gui.cooking.instruments.meant_rows import infrared_at
from cookstove_gui.cooking.instruments.surface_readings import surface_at
from cookstove_gui.phrases.edge import Edge, spot_label
from cookstove_gui.stove.entries import Entry, Kind, fraction_open, wood_count
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import clock_text, degrees, tidy

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
            return f"{spot_label(stove, entry.spot)} {entry.value} °{entry.unit}"
        case Kind.CARRIED:
            return f"still warm, cooktop {entry.value} °{entry.unit}"
        case Kind.LIT:
            return "lit"
        case Kind.OUT:
            return "fire out"
        case Kind.WOOD:
            mass = f"{entry.value} {entry.unit}".strip()
            return ", ".join(part for part in (entry.note, mass) if part) or "wood"
        case Kind.AIR | Kind.BYPASS:
            return f"{entry.kind} {opening_words(fraction_open(entry))}"
        case Kind.OVEN_DOOR:
            return f"door {entry.value}"
        case Kind.PAN:
            where = f"pan {entry.value} {spot_label(stove, entry.spot)}"
            return f"{where}, {entry.note}" if entry.note else where
        case Kind.OVEN_IN:
            return f"{' '.join(part for part in (entry.value, entry.unit, entry.note) if part)} into the oven"
        case Kind.PROBE:
            return f"probe {entry.value} °{entry.unit}"
        case Kind.TURNED:
            return f"{entry.note or 'bake'} turned"
        case Kind.DUE:
            return f"look at the {entry.note or 'bake'} in {entry.value} min"
        case Kind.OVEN_OUT:
            return f"{entry.note or 'bake'} out of the oven"
        case _:
            return entry.note or entry.value or entry.kind.value


def lane_words(entry: Entry) -> str:
    """What stands under its sign in the fire lane: as short as can be, for the sign says the kind."""
    if entry.kind is Kind.WOOD:
        count = wood_count(entry)
        if count is not None:
            return "1 split" if count == 1 else f"{tidy(count)} splits"
        return f"{entry.value} {entry.unit}".strip() if entry.value else entry.note.partition(",")[0] or "wood"
    if entry.kind is Kind.OVEN_IN:
        return f"{entry.note or 'bake'} in"
    if entry.kind is Kind.OVEN_OUT:
        return f"{entry.note or 'bake'} out"
    if entry.kind in (Kind.AIR, Kind.BYPASS):
        return f"{entry.kind} {opening_words(fraction_open(entry))}"
    return f"door {entry.value}" if entry.kind is Kind.OVEN_DOOR else str(entry.kind)


def last_words(spot: str, entries: Sequence[Entry], edge: Edge) -> str:
    """What was last read at a spot, and when by the clock of the page: `330 at 4:16`; empty where it never was."""
    last = next((row for row in reversed(entries) if row.kind is Kind.READING and row.spot == spot), None)
    return "" if last is None else f"{last.value} at {edge.at(last.at)}"


def place_words(entry: Entry, entries: Sequence[Entry], stove: Stove) -> str:
    """Where in the log a back-dated entry went: `at 3:10, before the 3:20 reading`; empty where it is the latest."""
    later = [row for row in entries if row.number != entry.number and (row.at, row.number) > (entry.at, entry.number)]
    if not later:
        return ""
    following = min(later, key=lambda row: (row.at, row.number))
    what = "reading" if following.kind is Kind.READING else entry_words(following, stove)
    at, before = (clock_text(row.at, row.offset_minutes) for row in (entry, following))
    return f"at {at}, before the {before} {what}"


def meant_words(row: Entry, meant: float | None) -> str:
    """`typed 353, meant 371`, in the unit it was typed in; empty where `meant` [K] is None: it means what was typed."""
    return "" if meant is None else f"typed {row.value}, meant {degrees(meant, row.unit):.0f}"


def meant_tip(row: Entry, stove: Stove, meant: float | None) -> str:
    """Why a reading means something else; empty where it does not."""
    spot = stove.spot(row.spot)
    instrument = infrared_at(stove, spot) if spot is not None else None
    if meant is None or spot is None or instrument is None:
        return ""
    surface, setting = surface_at(stove, spot), instrument.emissivity
    return (
        f"{spot.label}: {meant_words(row, meant)} °{row.unit}. The infrared thermometer is set to {setting:.2f}, "
        f"{surface.name} is about {surface.usual:.2f}. The log keeps what was typed."
    )
