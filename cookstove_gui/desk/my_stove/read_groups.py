"""Which parts of a stove are read, asked part by part when it is first drawn."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from cookstove_gui.desk.desk import Desk
from cookstove_gui.stove.added import Addition, with_added
from cookstove_gui.stove.stove import Stove


@dataclass(frozen=True, slots=True)
class Group:
    """Spots that are read or left alone together."""

    key: str
    said: str
    names: tuple[str, ...]


GROUPS = (
    Group("oven_walls", "oven walls and floor", ("oven_left", "oven_right", "oven_rear", "oven_floor")),
    Group("sides", "both sides", ("side_left", "side_right")),
    Group("door_glass", "firebox door", ("door_glass",)),
    Group("flue", "flue pipe", ("flue",)),
    Group("room", "the room", ("room",)),
    Group("wall_left", "a wall at the left", ("wall_left",)),
    Group("wall_right", "a wall at the right", ("wall_right",)),
)


def is_read(stove: Stove, group: Group) -> bool:
    """Whether any spot of a group stands on the walk."""
    return any(stove.spot(name) is not None and name not in stove.left_out for name in group.names)


def read_group(desk: Desk, key: str, *, wanted: bool) -> None:
    """Read a group, or leave it alone: what nobody has read goes off the drawing, the rest is skipped."""
    stove = desk.stove
    (names,) = (group.names for group in GROUPS if group.key == key)
    if wanted:
        left = tuple(name for name in stove.left_out if name not in names)
        desk.save_stove(_with_all(replace(stove, left_out=left), names))
        return
    counts = desk.logbook.facts.readings_by_spot(stove.name)
    gone = {name for name in names if not counts.get(name)}
    spots = tuple(spot for spot in stove.spots if spot.name not in gone)
    skipped = tuple(spot.name for spot in spots if spot.name in names and spot.name not in stove.left_out)
    desk.save_stove(replace(stove, spots=spots, left_out=(*stove.left_out, *skipped)))


def _with_all(stove: Stove, names: Sequence[str]) -> Stove:
    for name in names:
        stove = with_added(stove, Addition("spot", name))
    return stove
