"""Where the parts of a stove go when it is drawn from in front and above: pure geometry of a stove and a size."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum, auto

from cookstove_gui.stove.drawn.above import HEIGHT, Above, above
from cookstove_gui.stove.drawn.cooktop import Cooktop, cooktop, cooktop_rows
from cookstove_gui.stove.drawn.front import Front, front, has_band
from cookstove_gui.stove.drawn.oven import OvenParts, oven_parts
from cookstove_gui.stove.drawn.shapes import Box, Quad, quad, room_for_words, shared_out, shares
from cookstove_gui.stove.stove import Firebox, Spot, SpotKind, Stove, TankPlace

DESIGNED_WIDTH, DESIGNED_HEIGHT = 456.0, 440.0  # pixels at which every length in these files holds
_LIP, _FEET = 14.0, 17.0
_COOKTOP, _FRONT = 161.0, 190.0
_ROW, _MORE_ROWS = 50.0, 40.0  # least height of a row of plates; so much higher with each row beyond two
_FRONT_LEAST, _FRONT_WITH_BAND = 168.0, 224.0
_BACK_IN = 32.0  # the cooktop's back edge is so far in
_BESIDE, _BESIDE_GAP, _WALL_HEIGHT, _TANK_HEIGHT = 58.0, 6.0, 92.0, 150.0
_ANY_WALL = Spot(name="wall", label="wall", kind=SpotKind.WALL)
_ALONE_WIDTH, _ALONE_HEIGHT = 652.0, 380.0  # of a cooktop drawn by itself


class Manner(Enum):
    """How a spot's heat is written."""

    LID = auto()  # on a plate of the cooktop
    PLATE = auto()  # number, doubt, age below each other
    LINE = auto()  # in one line
    PAGE = auto()  # on the page, without a patch


@dataclass(frozen=True, slots=True)
class Place:
    """One spot's place: its outline, and the box its words stand in."""

    shape: Quad
    words: Box
    manner: Manner


@dataclass(frozen=True, slots=True, kw_only=True)
class StoveLayout:
    """All parts in pixels; `size` is 1 as designed. A cooktop drawn by itself has no other parts."""

    size: float
    cooktop: Cooktop
    places: dict[str, Place]
    above: Above | None = None
    front: Front | None = None
    oven: OvenParts | None = None
    tank: Box | None = None
    beside: tuple["Beside | None", "Beside | None"] = (None, None)  # room at the left and at the right


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """Room beside the stove: where a tank hangs there, or would, and where a wall of no other spot would stand."""

    tank: Box
    wall: Quad | None  # none where walls are drawn already


def stove_layout(stove: Stove, width: float, height: float, *, has_spare: bool = False) -> StoveLayout:
    """The stove drawn as large as it fits into a rectangle; with room to spare at its side where more may be added."""
    across, down = width / DESIGNED_WIDTH, height / DESIGNED_HEIGHT
    scale, size = (across, down), min(across, down)
    walls = _walls_beside(stove)
    tanks = (stove.water_tank is TankPlace.LEFT, stove.water_tank is TankPlace.RIGHT)
    column = (_BESIDE + _BESIDE_GAP) * across
    spare = (has_spare and stove.firebox is Firebox.RIGHT, has_spare and stove.firebox is not Firebox.RIGHT)
    left, right = (column * any(there) for there in zip(map(bool, walls), tanks, spare, strict=True))
    stand = Box(left, 0.0, width - left - right, height)

    rows = cooktop_rows(stove)
    top_high, _ = shares(
        height - (HEIGHT + _LIP + _FEET) * down,
        ((rows * _ROW + 16) * down, (_FRONT_WITH_BAND if has_band(stove.firebox) else _FRONT_LEAST) * down),
        (_COOKTOP + _MORE_ROWS * max(rows - 2, 0), _FRONT),
    )
    lip = Box(stand.x, HEIGHT * down + top_high, stand.width, _LIP * down * 0.7)
    iron = _trapezoid(stand, (HEIGHT - 3) * down, lip.y, _BACK_IN * across, 4 * across)
    top = cooktop(stove, iron, lip, size)
    body = Box(stand.x + 12 * across, lip.bottom, stand.width - 24 * across, height - _FEET * down - lip.bottom)
    ovens = stove.spots_of(SpotKind.OVEN)
    face = front(stove.firebox, body, height, scale, has_oven=bool(ovens))
    oven = oven_parts(ovens, face.opening, size, 2.0 * size) if ovens else None
    back = above(stove, stand, Box(0.0, 0.0, width, height), scale)

    gap = 3.0 * size
    places = _on_plates(top)
    if oven is not None:
        for name, shape in oven.places.items():
            places[name] = _place(shape, Manner.LINE if name in oven.lines else Manner.PLATE)
    for is_right, panel in enumerate(face.sides):
        there = [spot for spot in stove.spots_of(SpotKind.SIDE) if (spot.x >= 0.5) == bool(is_right)]
        places |= _sharing(there, panel, gap)
    places |= _sharing(stove.spots_of(SpotKind.GLASS), face.firebox, gap)
    places |= _sharing(stove.spots_of(SpotKind.FLUE), back.pipe, gap)
    places |= _sharing(stove.spots_of(SpotKind.ROOM), back.room, gap, Manner.PAGE)
    tank: Box | None = None
    rooms: list[Beside | None] = []
    for outside, has_tank, x, wide in zip(walls, tanks, (0.0, width - _BESIDE * across), (left, right), strict=True):
        foot = height - _FEET * down
        inner = x + _BESIDE_GAP * across if x == 0.0 else x - _BESIDE_GAP * across
        hung = Box(inner, lip.bottom, _BESIDE * across, min(_TANK_HEIGHT * down, foot - lip.bottom) * 0.6)
        tank = hung if has_tank else tank
        room = Box(x, lip.y * 0.5, _BESIDE * across, foot - lip.y * 0.5)
        places |= _walls(outside, room, hung if has_tank else None, down)
        wall = None if outside else _walls([_ANY_WALL], room, hung, down)[_ANY_WALL.name].shape
        rooms.append(Beside(tank=hung, wall=wall) if wide else None)
    return StoveLayout(
        size=size, cooktop=top, places=places, above=back, front=face, oven=oven, tank=tank, beside=(rooms[0], rooms[1])
    )


def cooktop_layout(stove: Stove, width: float, height: float) -> StoveLayout:
    """The cooktop by itself, as large as it fits into a rectangle."""
    across, down = width / _ALONE_WIDTH, height / _ALONE_HEIGHT
    size = min(across, down)
    lip = Box(0.0, height - 11 * down, width, 11 * down)
    top = cooktop(stove, _trapezoid(Box(0, 0, width, height), 1.0, lip.y, 58 * across, 4 * across), lip, 1.6 * size)
    places = _on_plates(top)
    return StoveLayout(size=size, cooktop=top, places=places)


def _on_plates(top: Cooktop) -> dict[str, Place]:
    manner = Manner.LID if top.has_lids else Manner.PLATE
    return {name: _place(shape, manner) for name, shape in top.places.items()}


def _trapezoid(box: Box, top: float, bottom: float, back_in: float, front_in: float) -> Quad:
    return Quad(
        (box.x + back_in, top), (box.right - back_in, top), (box.right - front_in, bottom), (box.x + front_in, bottom)
    )


def _walls(spots: Sequence[Spot], room: Box, tank: Box | None, down: float) -> dict[str, Place]:
    """Patches beside the stove from the floor up, above or below the tank, wherever there is more room."""
    if not spots:
        return {}
    gap = _BESIDE_GAP * down
    if tank is not None:
        low = Box(room.x, tank.bottom + gap, room.width, room.bottom - tank.bottom - gap)
        high = Box(room.x, room.y, room.width, tank.y - gap - room.y)
        room = low if low.height > high.height else high
    each = min((room.height + gap) / len(spots), _WALL_HEIGHT * down)
    box = Box(room.x, room.bottom - each * len(spots) + gap, room.width, each * len(spots) - gap)
    cells = [cell for (cell,) in quad(box).cut([1.0], [1.0] * len(spots), gap)]
    return {spot.name: _place(cell, Manner.PLATE) for spot, cell in zip(spots, cells, strict=True)}


def _walls_beside(stove: Stove) -> tuple[list[Spot], list[Spot]]:
    """Walls outside, at the side their name or place says, else where there is more room; shelves above floors."""
    left: list[Spot] = []
    right: list[Spot] = []
    for spot in stove.spots_of(SpotKind.WALL):
        if "left" in spot.name or (spot.x < 0.5 and "right" not in spot.name):
            left.append(spot)
        elif "right" in spot.name or spot.x > 0.5:
            right.append(spot)
        else:
            (left if len(left) < len(right) else right).append(spot)
    return sorted(left, key=_from_above), sorted(right, key=_from_above)


def _from_above(spot: Spot) -> int:
    if spot.name.startswith(("floor", "hearth")):
        return 2
    return 0 if spot.name.startswith(("ceiling", "shelf", "mantel", "cupboard")) else 1


def _sharing(spots: Sequence[Spot], box: Box, gap: float, manner: Manner = Manner.PLATE) -> dict[str, Place]:
    """Spots that share a part of the stove."""
    if not spots:
        return {}
    columns, rows = shared_out(len(spots), box)
    cells = [cell for row in quad(box).cut([1.0] * columns, [1.0] * rows, gap) for cell in row]
    return {spot.name: _place(cell, manner) for spot, cell in zip(spots, cells, strict=True)}


def _place(shape: Quad, manner: Manner) -> Place:
    return Place(shape, room_for_words(shape), manner)
