"""A stove drawn otherwise: plates in rows and columns, mirrored, spots moved, swapped or of another size.

A spot keeps its name in the log wherever it goes, so its readings stay with it. A spot whose name says left or right
stays on that side when a stove is mirrored.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise

from cookstove_gui.stove.stove import (
    COOKTOP_PLATES,
    PLATE_LENGTHS,
    Firebox,
    FluePlace,
    Spot,
    SpotKind,
    Stove,
    TankPlace,
)

SAME_LINE = 0.16  # spots nearer than this, as a share of the cooktop, stand in one row or column
_ROW_NAMES = {1: ("",), 2: ("back", "front"), 3: ("back", "middle", "front"), 4: ("back", "second", "third", "front")}
_COLUMN_NAMES = {
    1: ("middle",),
    2: ("left", "right"),
    3: ("left", "middle", "right"),
    4: ("left", "middle_left", "middle_right", "right"),
}
_OTHER_FIREBOX = {Firebox.LEFT: Firebox.RIGHT, Firebox.RIGHT: Firebox.LEFT}
_OTHER_FLUE = {FluePlace.LEFT: FluePlace.RIGHT, FluePlace.RIGHT: FluePlace.LEFT}
_OTHER_TANK = {TankPlace.LEFT: TankPlace.RIGHT, TankPlace.RIGHT: TankPlace.LEFT}


def with_plates(stove: Stove, rows: int, columns: int) -> Stove:
    """The stove with its cooktop in so many rows and columns of plates, one to four, each with a spot.

    Spots of plates that are still there keep their names; those of plates that are gone are left out, and a spot of the
    owner's own stays where it lies.
    """
    wanted = named_plates(rows, columns)
    known = {spot.name: spot for spot in stove.spots}
    usual = {name for many in _ROW_NAMES for few in _COLUMN_NAMES for name in named_plates(many, few)}
    kept = [spot for spot in stove.spots if spot.kind is not SpotKind.TOP or spot.name not in usual]
    own = {
        _plate_of(spot, rows, columns) for spot in kept if spot.kind is SpotKind.TOP
    }  # a plate with a spot of the owner's own needs no other
    plates = []
    for name, (x, y) in wanted.items():
        spot = known.get(name, Spot(name=name, label=name.replace("_", " "), kind=SpotKind.TOP))
        moved = replace(spot, x=x, y=y, width=None, depth=None)
        if _plate_of(moved, rows, columns) not in own:
            plates.append(moved)
    order = {spot.name: place for place, spot in enumerate(stove.spots)}
    first = min((order[spot.name] for spot in stove.spots_of(SpotKind.TOP)), default=len(order))
    spots = sorted([*kept, *plates], key=lambda spot: (order.get(spot.name, first + 0.5), -spot.y))
    return replace(stove, spots=tuple(spots), cooktop_rows=rows, cooktop_columns=columns)


def left_out(before: Stove, after: Stove) -> tuple[Spot, ...]:
    """Spots that a change leaves out."""
    names = {spot.name for spot in after.spots}
    return tuple(spot for spot in before.spots if spot.name not in names)


def mirrored(stove: Stove) -> Stove:
    """The stove with left and right exchanged, but for spots whose name says their side."""

    def turned(spot: Spot) -> Spot:
        says_side = any(word in ("left", "right") for word in spot.name.split("_"))
        return spot if says_side else replace(spot, x=1.0 - spot.x)

    return replace(
        stove,
        firebox=_OTHER_FIREBOX.get(stove.firebox, stove.firebox),
        flue_place=_OTHER_FLUE.get(stove.flue_place, stove.flue_place),
        water_tank=_OTHER_TANK.get(stove.water_tank, stove.water_tank),
        spots=tuple(turned(spot) for spot in stove.spots),
    )


def moved(stove: Stove, name: str, x: float, y: float) -> Stove:
    """A spot elsewhere in its part of the stove; what lies beyond an edge comes to lie on it."""
    return _changed(stove, name, lambda spot: replace(spot, x=min(max(x, 0.0), 1.0), y=min(max(y, 0.0), 1.0)))


def swapped(stove: Stove, one: str, other: str) -> Stove:
    """Two spots of one kind in each other's place."""
    first, second = stove.spot(one), stove.spot(other)
    if first is None or second is None or first.kind is not second.kind:
        return stove
    there = moved(stove, one, second.x, second.y)
    return moved(there, other, first.x, first.y)


def sized(stove: Stove, name: str, width: float, depth: float) -> Stove:
    """A plate of another size [m], within what a plate may be."""
    low, high = PLATE_LENGTHS
    return _changed(
        stove,
        name,
        lambda spot: replace(spot, width=min(max(width, low), high), depth=min(max(depth, low), high)),
    )


def plates_of(stove: Stove) -> tuple[int, int]:
    """Rows and columns of the cooktop's plates: as said, else as the spots lie."""
    if stove.cooktop_rows and stove.cooktop_columns:
        return stove.cooktop_rows, stove.cooktop_columns
    spots = stove.spots_of(SpotKind.TOP)
    return _lines([spot.y for spot in spots]), _lines([spot.x for spot in spots])


def plate_size(stove: Stove, spot: Spot) -> tuple[float, float]:
    """Width and depth of a spot's plate [m]: as said, else its even share of the cooktop."""
    rows, columns = plates_of(stove)
    return spot.width or stove.cooktop_width / max(columns, 1), spot.depth or stove.cooktop_depth / max(rows, 1)


def named_plates(rows: int, columns: int) -> dict[str, tuple[float, float]]:
    """Names of plates with their places, from the back left on."""
    return {
        "_".join(part for part in ("top", deep, across) if part): ((column + 0.5) / columns, 1.0 - (row + 0.5) / rows)
        for row, deep in enumerate(_ROW_NAMES[rows])
        for column, across in enumerate(_COLUMN_NAMES[columns])
    }


def _lines(places: Sequence[float]) -> int:
    """How many lines places fall into that lie apart, one to four."""
    ordered = sorted(places)
    return min(1 + sum(far - near >= SAME_LINE for near, far in pairwise(ordered)), COOKTOP_PLATES[1])


def _plate_of(spot: Spot, rows: int, columns: int) -> tuple[int, int]:
    return min(int((1.0 - spot.y) * rows), rows - 1), min(int(spot.x * columns), columns - 1)


def _changed(stove: Stove, name: str, change: Callable[[Spot], Spot]) -> Stove:
    return replace(stove, spots=tuple(change(spot) if spot.name == name else spot for spot in stove.spots))
