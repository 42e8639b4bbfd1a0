"""How the tests of the cautions ask which are due, on small made-up logs."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.cooking.safety.cautions import due
from cookstove_gui.forecast.answers import Turn, TurnKind, Zone
from tests.cooking.made import START, STOVE, log, zone

LIT = (0, "lit", "", "", "")
WARM_FLUE = zone("flue", 350)


def cautions(
    entries: Any = (), zones: Any = (), turns: Any = (), stove: Any = STOVE, after: float = 0, **more: Any
) -> dict[str, Caution]:
    """The cautions that are due, by key; `after` minutes from the start, or at the last row."""
    now = START + timedelta(minutes=after) if after else None
    return {caution.key: caution for caution in due(stove, entries, zones, turns, now=now, **more)}


def noted(minute: float, text: str) -> Any:
    """A note, as one entry of a log."""
    (row,) = log((minute, "note", "", "", ""))
    return replace(row, note=text)


def turn(kind: TurnKind, chance: float = 0.9, in_min: int = 0) -> Turn:
    """A turn of the fire."""
    return Turn(kind=kind, chance=chance, in_min=in_min)


def estimated(spot: str, degrees_f: float) -> Zone:
    """A zone that was not read."""
    return zone(spot, degrees_f, age=None)
