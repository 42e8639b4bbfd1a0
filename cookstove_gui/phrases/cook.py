"""The sentences of the Cook page: when the heat comes, what to do now, what to read next."""

from cookstove_gui.forecast.answers import (
    Action,
    ActionKind,
    DoubtedReading,
    Outlook,
)
from cookstove_gui.phrases.edge import Edge, duration, heat_name
from cookstove_gui.stove.entries import USUAL_SPLIT, HeatBand
from cookstove_gui.units import degrees, tidy


def doubted_words(reading: DoubtedReading, spot_label: str, edge: Edge, typed: float | None = None) -> str:
    """The question about a number that looks like a slip; `typed` [K] where the reading is a corrected one."""
    expected, meant = degrees(reading.expected_p50, edge.unit), f"{degrees(reading.typed, edge.unit):.0f}"
    shown = meant if typed is None else f"{degrees(typed, edge.unit):.0f}"
    corrected = "" if shown == meant else f", meant {meant},"
    return (
        f"{spot_label}: {shown} typed{corrected} where about {expected:.0f} °{edge.unit} was expected. Keep or correct?"
    )


def action_words(action: Action) -> str:
    """A what-if as an order: “Add two splits”."""
    if action.kind is ActionKind.WOOD:
        splits = round(action.value / USUAL_SPLIT)
        return {1: "Add one split", 2: "Add two splits"}.get(splits, f"Add {tidy(action.value)} kg of wood")
    if action.kind is ActionKind.KINDLING:
        return "Relight on kindling"
    if action.kind is ActionKind.AIR:
        if action.value >= 0.95:
            return "Open the air wide"
        return "Shut the air" if action.value <= 0.05 else f"Set the air to {tidy(100 * action.value, 0)} % open"
    if action.kind is ActionKind.BYPASS:
        return "Close the bypass" if action.value <= 0.05 else "Open the bypass"
    return "Leave it"


def action_in_short(action: Action) -> str:
    """A what-if in two words, for its key."""
    match action.kind:
        case ActionKind.LEAVE:
            return "Leave it"
        case ActionKind.WOOD:
            return action_words(action).removeprefix("Add ").capitalize()
        case ActionKind.KINDLING:
            return "Kindling"
        case ActionKind.AIR:
            return "Open the air" if action.value >= 0.95 else "Shut the air" if action.value <= 0.15 else "Less air"
        case ActionKind.BYPASS:
            return "Open bypass" if action.value >= 0.5 else "Close bypass"


def step_to_take(action: Action, outlook: Outlook, band: HeatBand, edge: Edge) -> str:
    """One step and what it brings."""
    if action.kind is ActionKind.LEAVE:
        return ""
    enters, leaves = outlook.band.line_enters_min, outlook.band.line_leaves_min
    if enters is None:
        return f"{action_words(action)}: the best chance of {heat_name(band)}."
    when = "" if enters < 1 else f"reaches {heat_name(band)} about {edge.clock(enters)}, "
    return f"{action_words(action)}: {when}{holds_words(None if leaves is None else leaves - enters)}."


def step_in_short(action: Action, outlook: Outlook, band: HeatBand, edge: Edge) -> str:
    """One step and what it brings, at the foot of the plot: `Two splits: bread heat 4:31 to 5:40`."""
    what = action_in_short(action)
    enters, leaves, heat = outlook.band.line_enters_min, outlook.band.line_leaves_min, heat_name(band)
    if enters is None:
        return f"{what}: not likely to reach {heat}"
    if leaves is None:
        return f"{what}: {heat} {'for hours' if enters < 1 else f'from {edge.clock(enters)}, for hours'}"
    return f"{what}: {heat} {'' if enters < 1 else f'{edge.clock(enters)} '}to {edge.clock(leaves)}"


def holds_words(minutes: float | None) -> str:
    """How long a heat is held; none is beyond the horizon."""
    return "holds it for hours" if minutes is None else f"holds it about {duration(minutes)}"
