"""The steps a cook may take now, and what one would bring."""

from collections.abc import Sequence
from dataclasses import dataclass

from cookstove_gui.forecast.answers import Action, ActionKind, Outlook, Projection
from cookstove_gui.stove.entries import USUAL_KINDLING, USUAL_SPLIT, Entry, Kind, fraction_open

AIR_DOWN = 0.3  # opening; any further down a caution would speak of carbon monoxide and of flares

_WOOD = (Action(kind=ActionKind.WOOD, value=2 * USUAL_SPLIT),)


@dataclass(frozen=True, slots=True, kw_only=True)
class Alternative:
    """What one step would bring."""

    action: Action
    outlook: Outlook
    projection: Projection  # of the oven alone


def feeds(action: Action) -> bool:
    """Whether a step makes the oven hotter."""
    return action.is_fuel or (action.value > 0.5) is (action.kind is ActionKind.AIR)


def steps(rows: Sequence[Entry]) -> tuple[Action, ...]:
    """What a cook might do now, by the rows in force: more wood, the air the other way, the bypass closed."""
    latest = {row.kind: row for row in rows if row.kind is Kind.AIR or row.kind is Kind.BYPASS}
    air = fraction_open(latest[Kind.AIR]) if Kind.AIR in latest else None
    bypass = fraction_open(latest[Kind.BYPASS]) if Kind.BYPASS in latest else 0.0
    found = [*_WOOD]
    if air is None or air < 0.95:
        found.append(Action(kind=ActionKind.AIR, value=1.0))
    if air is None or air > AIR_DOWN + 0.05:
        found.append(Action(kind=ActionKind.AIR, value=AIR_DOWN))
    if bypass > 0.05:
        found.append(Action(kind=ActionKind.BYPASS, value=0.0))
    return tuple(found)


def relighting(rows: Sequence[Entry]) -> tuple[Action, ...]:
    """What a cook might do about a fire that looks out: kindling; splits alone only where coals may be left.

    By the rows in force: where the cook says that it is out, none are.
    """
    kindling = Action(kind=ActionKind.KINDLING, value=USUAL_KINDLING)
    latest = next((row.kind for row in reversed(rows) if row.kind in (Kind.LIT, Kind.OUT)), None)
    return (kindling,) if latest is Kind.OUT else (kindling, *_WOOD)
