"""Where a drawn stove has nothing yet and something may be added: each place with what it would become."""

from collections.abc import Iterator
from dataclasses import dataclass

from cookstove_gui.stove.added import Addition
from cookstove_gui.stove.drawn.cooktop import Cooktop
from cookstove_gui.stove.drawn.layout import StoveLayout
from cookstove_gui.stove.drawn.shapes import Box, Quad, bounds, quad, room_for_words
from cookstove_gui.stove.stove import SpotKind, Stove, TankPlace

_SIDES = ("left", "right")


@dataclass(frozen=True, slots=True, kw_only=True)
class Spare:
    """One such place; `words` stand in it where it lies beside the stove, not on its iron."""

    adds: Addition
    shape: Quad
    words: str = ""

    @property
    def is_on_page(self) -> bool:
        """Whether it lies beside or above the stove."""
        return self.adds.kind in ("pipe", "tank") or self.adds.what.startswith(("wall", "room"))


def spare_places(stove: Stove, drawn: StoveLayout) -> tuple[Spare, ...]:
    """Those of a stove drawn with room to spare, from the back down; none lies over a part that is there."""
    taken = [bounds(place.shape) for place in drawn.places.values()]
    if drawn.above is not None and drawn.above.closet is not None:
        taken.append(drawn.above.closet)
    if drawn.tank is not None:
        taken.append(drawn.tank)
    found: list[Spare] = []
    for one in _every(stove, drawn):
        box = bounds(one.shape)
        if not one.is_on_page:  # a part of the iron that nothing else is drawn on
            found.append(one)
        elif not any(_overlap(box, other) for other in taken):
            found.append(one)
            taken.append(box)
    return tuple(found)


def _every(stove: Stove, drawn: StoveLayout) -> Iterator[Spare]:
    above, front, oven = drawn.above, drawn.front, drawn.oven
    if above is not None:
        if not stove.spots_of(SpotKind.FLUE):
            yield Spare(adds=Addition("spot", "flue"), shape=quad(above.pipe))
        if not stove.spots_of(SpotKind.ROOM):
            yield Spare(adds=Addition("spot", "room"), shape=quad(above.room), words="room")
        for place, box in above.other_pipes.items():
            yield Spare(adds=Addition("pipe", str(place)), shape=quad(box))
    yield from _plates(drawn.cooktop)
    if oven is not None:
        for part, shape in oven.plain.items():
            yield Spare(adds=Addition("spot", f"oven_{part}"), shape=shape)
    if front is not None:
        for side, panel in zip(_SIDES, front.sides, strict=True):
            if not any((spot.x >= 0.5) == (side == "right") for spot in stove.spots_of(SpotKind.SIDE)):
                yield Spare(adds=Addition("spot", f"side_{side}"), shape=quad(panel))
        if not stove.spots_of(SpotKind.GLASS):
            yield Spare(adds=Addition("spot", "door_glass"), shape=quad(front.firebox), words="firebox door")
    for side, room in zip(_SIDES, drawn.beside, strict=True):
        if room is not None:
            if stove.water_tank is not TankPlace(side):
                yield Spare(adds=Addition("tank", side), shape=quad(room.tank), words="water tank")
            if room.wall is not None:
                yield Spare(adds=Addition("spot", f"wall_{side}"), shape=room.wall, words="wall")


def _plates(top: Cooktop) -> Iterator[Spare]:
    for shape in top.unread:
        across, down = top.inside.shares_at(room_for_words(shape).centre)
        yield Spare(adds=Addition("plate", x=across, y=1.0 - down), shape=shape)


def _overlap(one: Box, other: Box) -> bool:
    return one.x < other.right and other.x < one.right and one.y < other.bottom and other.y < one.bottom
