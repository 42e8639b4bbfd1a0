"""How the stove is set, as the latest rows say: air, bypass, oven door, and the spots with a pan on them."""

from dataclasses import dataclass

from cookstove_gui.desk.desk import Desk
from cookstove_gui.stove.entries import Kind, door_is_open, fraction_open


@dataclass(frozen=True, slots=True, kw_only=True)
class StoveSet:
    """None where no row has said."""

    air: float | None = None  # fraction open
    bypass: float | None = None  # fraction open
    door_is_open: bool = False
    pans: frozenset[str] = frozenset()  # spots


def stove_set(desk: Desk) -> StoveSet:
    """How the desk's stove is set now."""
    latest = {row.kind: row for row in desk.entries}
    air, bypass, door = (latest.get(kind) for kind in (Kind.AIR, Kind.BYPASS, Kind.OVEN_DOOR))
    pans = {row.spot: row.value == "on" for row in desk.entries if row.kind is Kind.PAN}
    return StoveSet(
        air=fraction_open(air) if air else None,
        bypass=fraction_open(bypass) if bypass else None,
        door_is_open=door is not None and door_is_open(door),
        pans=frozenset(spot for spot, stands in pans.items() if stands),
    )
