"""A stove with one thing more: a spot where nobody read yet, a water tank, the pipe at another place."""

import math
from dataclasses import dataclass, replace
from typing import Literal

from cookstove_gui.stove.redrawn import named_plates, plates_of
from cookstove_gui.stove.stove import (
    FluePlace,
    Spot,
    SpotKind,
    Stove,
    TankPlace,
    default_spots,
    spot_kind_from_name,
)

_SAID = {
    "pipe": "Let the pipe leave at the {}",
    "tank": "Hang a water tank at the {}",
    "plate": "Read this plate too",
}
_PLACES = {"wall_left": 0.0, "wall_right": 1.0}  # x of spots that no stove has unasked


@dataclass(frozen=True, slots=True)
class Addition:
    """What is added: `what` names a side, or a spot; `x` and `y` say where a plate lies (0 to 1)."""

    kind: Literal["spot", "plate", "pipe", "tank"]
    what: str = ""
    x: float = 0.5
    y: float = 0.5

    @property
    def said(self) -> str:
        """What pressing its place does."""
        if self.kind == "spot":
            return f"Read the {_spot(self.what).label} too"
        return _SAID[self.kind].format(self.what)


def with_added(stove: Stove, wanted: Addition) -> Stove:
    """The stove with that; a spot that is added is read last on the walk."""
    match wanted.kind:
        case "pipe":
            return replace(stove, flue_place=FluePlace(wanted.what))
        case "tank":
            return replace(stove, water_tank=TankPlace(wanted.what))
        case "plate":
            spot = _plate(stove, wanted)
        case _:
            spot = _spot(wanted.what)
    if stove.spot(spot.name) is not None:
        return stove
    left_out = tuple(name for name in stove.left_out if name != spot.name)
    return replace(stove, spots=(*stove.spots, spot), left_out=left_out)


def _spot(name: str) -> Spot:
    """As every stove has it, else one that its name describes."""
    usual = next((spot for spot in default_spots() if spot.name == name), None)
    kind = spot_kind_from_name(name)
    return usual or Spot(name=name, label=name.replace("_", " "), kind=kind, x=_PLACES.get(name, 0.5))


def _plate(stove: Stove, wanted: Addition) -> Spot:
    """Named for its place in the rows and columns, where that name is free."""
    places = named_plates(*plates_of(stove))
    free = {name: place for name, place in places.items() if stove.spot(name) is None}
    nearest = min(free, key=lambda name: math.dist(free[name], (wanted.x, wanted.y)), default="")
    number = 1
    while not nearest:
        nearest, number = (f"top_spot_{number}" if stove.spot(f"top_spot_{number}") is None else ""), number + 1
    label = nearest.replace("_", " ")
    return Spot(name=nearest, label=label, kind=SpotKind.TOP, x=wanted.x, y=wanted.y)
