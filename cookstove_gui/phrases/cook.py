"""The sentences of the Cook page: when the heat comes, what to do now, what to read next."""

from cookstove_gui.forecast.answers import (
    Action,
    ActionKind,
    BandOutlook,
    DoubtedReading,
    NextReading,
    Outlook,
    Quantiles,
    Turn,
    TurnKind,
)
from cookstove_gui.phrases.edge import Edge, duration, heat_name, spot_label
from cookstove_gui.resource_files import table
from cookstove_gui.situation import SURE_OF_TURN
from cookstove_gui.stove.entries import USUAL_SPLIT, HeatBand
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import degrees, tidy


def arrival(band: HeatBand, enters: Quantiles, edge: Edge) -> str:
    """When the oven reaches the band, with its window."""
    if enters.p50 is None:
        earliest = f" It might by {edge.clock(enters.p10)}." if enters.p10 is not None else ""
        return f"With this fire the oven is not likely to reach {heat_name(band)} within three hours.{earliest}"
    if enters.p10 is None or enters.p50 < 1:
        return f"The oven is at {heat_name(band)} now."
    reaches = f"The oven reaches {heat_name(band)}"
    if enters.p90 is None:
        about, earliest = edge.clock(enters.p50), edge.clock(enters.p10)
        return f"The oven may reach {heat_name(band)} about {about}, not before {earliest}."
    if edge.clock(enters.p10) == edge.clock(enters.p90):
        return f"{reaches} at {edge.clock(enters.p50)}."
    return f"{reaches} between {edge.clock(enters.p10)} and {edge.clock(enters.p90)}, likely {edge.clock(enters.p50)}."


def stay(band: HeatBand, stays: Quantiles, edge: Edge) -> str:
    """How long the oven stays in the band it is in now."""
    if stays.p50 is None:
        return f"It likely stays there beyond {edge.clock(180)}."
    if stays.p50 < 5:
        return f"It is about to leave {heat_name(band)}."
    return f"It likely stays until {edge.clock(stays.p50)}."


def stay_length(stays: Quantiles) -> str:
    """How long the heat holds once reached, as a length of time."""
    if stays.p50 is None:
        return "Holds for hours once there."
    if stays.p10 is not None and stays.p10 < 10 and stays.p50 < 15:
        return "It may hold for only a few minutes."
    return f"Holds about {duration(stays.p50)} once there."


def next_reading_words(reading: NextReading | None, stove: Stove, edge: Edge) -> str:
    """Where to read next, and by when."""
    if reading is None:
        return ""
    return f"Worth reading next: {spot_label(stove, reading.spot)}, by {edge.clock(reading.in_min)}."


def doubted_words(reading: DoubtedReading, spot_label: str, edge: Edge, typed: float | None = None) -> str:
    """The question about a number that looks like a slip; `typed` [K] where the reading is a corrected one."""
    expected, meant = degrees(reading.expected_p50, edge.unit), f"{degrees(reading.typed, edge.unit):.0f}"
    shown = meant if typed is None else f"{degrees(typed, edge.unit):.0f}"
    corrected = "" if shown == meant else f", meant {meant},"
    return (
        f"{spot_label}: {shown} typed{corrected} where about {expected:.0f} °{edge.unit} was expected. Keep or correct?"
    )


def fire_turn_words(found: Turn, edge: Edge) -> str:
    """What a turn of the fire asks for."""
    if found.kind is TurnKind.RELOAD_DUE:
        when = "now" if found.in_min <= 2 else f"by {edge.clock(found.in_min)}"
        return f"Add wood {when}, or the oven falls out of its heat."
    if found.kind is TurnKind.FIRE_OUT:
        return "The fire looks out. Look in, and relight on a little kindling if you still need heat."
    if found.kind is TurnKind.DOOR_OPEN:
        return "The oven loses heat as if its door were open. Close it."
    return "The air has been wide open for a while. Shut it down, unless the fire is still catching."


def fuel_needed(in_band: bool, turns: tuple[Turn, ...], edge: Edge) -> str:
    """That the oven needs more wood to get to its band, when what burns now does not carry it there."""
    due = next((item for item in turns if item.kind is TurnKind.RELOAD_DUE and item.chance >= SURE_OF_TURN), None)
    if in_band or due is None or due.in_min > 10:
        return ""
    when = "now" if due.in_min <= 2 else f"by {edge.clock(due.in_min)}"
    return f"It takes more wood to get there: add some {when}."


def action_words(action: Action) -> str:
    """A what-if as an order: “Add two splits”."""
    if action.kind is ActionKind.WOOD:
        splits = round(action.value / USUAL_SPLIT)
        return {1: "Add one split", 2: "Add two splits"}.get(splits, f"Add {tidy(action.value)} kg of wood")
    if action.kind is ActionKind.AIR:
        if action.value >= 0.95:
            return "Open the air wide"
        return "Shut the air" if action.value <= 0.05 else f"Set the air to {tidy(100 * action.value, 0)} % open"
    if action.kind is ActionKind.BYPASS:
        return "Close the bypass" if action.value <= 0.05 else "Open the bypass"
    return "Leave it"


def step_to_take(action: Action, outlook: Outlook, band: HeatBand, edge: Edge) -> str:
    """One step and what it brings."""
    if action.kind is ActionKind.LEAVE:
        return ""
    enters, stays = outlook.band.enters_min, outlook.band.stays_min
    if enters.p50 is None:
        return f"{action_words(action)}: the best chance of {heat_name(band)}."
    when = "" if enters.p50 < 1 else f"reaches {heat_name(band)} about {edge.clock(enters.p50)}, "
    held = "holds it for hours" if stays.p50 is None else f"holds it about {duration(stays.p50)}"
    return f"{action_words(action)}: {when}{held}."


def headline(band: HeatBand, found: BandOutlook, in_band: bool, turns: tuple[Turn, ...], edge: Edge) -> str:
    """The one thing to do now, and why."""
    told = table("phrases.toml")
    urgent = [item for item in turns if item.chance >= SURE_OF_TURN and item.in_min <= 10]
    if not in_band:  # on the way up wood is part of the course, not an alarm: `fuel_needed` says it beside
        urgent = [item for item in urgent if item.kind is not TurnKind.RELOAD_DUE]
    if urgent:
        return fire_turn_words(urgent[0], edge)
    words = told["bands"].get(band.name, {})
    if in_band:
        lead = words.get("ready", "")
        return f"{lead} The oven is at {heat_name(band)}. {stay(band, found.stays_min, edge)}".strip()
    enters = found.enters_min
    lead = words.get("prepare", "") if enters.p50 is not None and 3 <= enters.p50 <= 45 else ""
    return f"{lead} {arrival(band, enters, edge)}".strip()
