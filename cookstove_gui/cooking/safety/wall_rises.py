"""How hot walls and floors near the stove were when they were read, and how far above the room."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum

from cookstove_gui.cooking.fires.logged_fires import kelvin_or_none
from cookstove_gui.resource_files import table
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import USUAL_ROOM, SpotKind, Stove
from cookstove_gui.units import ZERO_CELSIUS


class WallState(Enum):
    """Where a wall stands among the limits of `resources/touch.toml`; none of them is called safe."""

    BELOW = "below all of them"
    WARM = "past the strictest limit of a rise"
    AT_LIMIT = "at the widest limit of a rise, or at an absolute limit"


@dataclass(frozen=True, slots=True, kw_only=True)
class WallRise:
    """One reading beside the stove against the room."""

    row: Entry
    label: str
    wall: float  # K
    room: float  # K
    room_was_read: bool

    @property
    def rise(self) -> float:
        """Above the room [K]."""
        return self.wall - self.room


def wall_rises(stove: Stove, rows: Iterable[Entry]) -> tuple[WallRise, ...]:
    """Every usable reading beside the stove, in order of time.

    Parameters
    ----------
    stove : Stove
    rows : entries
        Standing rows in order of time.

    Returns
    -------
    tuple of WallRise
        Each against the room as last read before it, or first read after it; against a usual room if it never was.
    """
    told = tuple(rows)
    kinds = {name: stove.kind_of(name) for name in {row.spot for row in told}}
    if SpotKind.WALL not in kinds.values():
        return ()
    heats = {
        kind: [(row, heat) for row in told if kinds[row.spot] is kind and (heat := kelvin_or_none(row)) is not None]
        for kind in (SpotKind.ROOM, SpotKind.WALL)
    }
    rooms, found = heats[SpotKind.ROOM], []
    for row, heat in heats[SpotKind.WALL]:
        before = [warmth for other, warmth in rooms if other.at <= row.at]
        room = before[-1] if before else rooms[0][1] if rooms else USUAL_ROOM
        spot = stove.spot(row.spot)
        label = spot.label if spot else row.spot.replace("_", " ")
        found.append(WallRise(row=row, label=label, wall=heat, room=room, room_was_read=bool(rooms)))
    return tuple(found)


def latest_of_each(rises: Iterable[WallRise]) -> tuple[WallRise, ...]:
    """The latest reading of each spot, the spot with the greatest rise first."""
    latest = {rise.row.spot: rise for rise in rises}
    return tuple(sorted(latest.values(), key=lambda rise: -rise.rise))


def greatest_of_each(rises: Iterable[WallRise]) -> tuple[WallRise, ...]:
    """The reading with the greatest rise of each spot, the greatest first."""
    return latest_of_each(sorted(rises, key=lambda rise: rise.rise))


def wall_state(rise: WallRise) -> WallState:
    """How a reading stands against the limits of a rise and, by itself, against the absolute ones."""
    limits = table("touch.toml")
    rises = [float(row["limit"]) for row in limits["rise"]]
    absolute = min(float(row["limit"]) for row in limits["absolute"]) + ZERO_CELSIUS
    if rise.rise >= max(rises) or rise.wall >= absolute:
        return WallState.AT_LIMIT
    return WallState.WARM if rise.rise >= min(rises) else WallState.BELOW
