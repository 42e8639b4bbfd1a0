"""Where the parts of a stove go when it is drawn from in front and above: pure geometry of a stove and a size."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum, auto

from cookstove_gui.gui.drawn_stove.cooktop import cooktop_plates, cooktop_rows
from cookstove_gui.gui.drawn_stove.oven import oven_parts
from cookstove_gui.gui.drawn_stove.shapes import Box, Polygon, Quad, quad, room_for_words, shared_out, shares
from cookstove_gui.stove.stove import Firebox, Spot, SpotKind, Stove

DESIGNED_WIDTH, DESIGNED_HEIGHT = 456.0, 440.0  # pixels at which every length below holds

_PIPE, _LIP, _FEET = 58.0, 14.0, 17.0
_COOKTOP, _FRONT = 161.0, 190.0
_ROW = 50.0  # least height of a row of plates
_FRONT_LEAST, _FRONT_WITH_BAND = 168.0, 224.0  # the latter with a firebox above or below the oven
_BACK_IN, _EDGE = 32.0, 8.0  # the cooktop's back edge is so far in; its iron edge
_SIDE, _FIREBOX, _OVEN = 53.0, 93.0, 206.0
_SIDE_LEAST, _FIREBOX_LEAST, _OVEN_LEAST = 42.0, 53.0, 136.0
_BAND = 58.0  # height of a firebox above or below the oven
_IRON = 5.0  # between parts of the front
_FLUE = 84.0
_WALL_COLUMN, _WALL_HEIGHT = 58.0, 92.0


class Manner(Enum):
    """How a spot's heat is written."""

    LID = auto()  # on a plate of the cooktop, with its lid
    PLATE = auto()  # number, doubt, age below each other
    LINE = auto()  # in one line
    PAGE = auto()  # on the page, without a patch
    WALL = auto()  # as a plate beside the stove


@dataclass(frozen=True, slots=True)
class Place:
    """One spot's place: its outline, and the box its words stand in."""

    shape: Quad
    words: Box
    manner: Manner


@dataclass(frozen=True, slots=True, kw_only=True)
class StoveLayout:
    """All parts in pixels; `size` is 1 as designed."""

    size: float
    pipe: Box
    collar: Box
    lever: Box  # from its grip to the pipe
    bypass_words: Box
    flue_words: Box
    bypass_is_left: bool  # of the pipe
    top: Polygon
    plates: tuple[Quad, ...]  # every plate of the cooktop, read or not
    lip: Box
    body: Box
    feet: tuple[Polygon, ...]
    sides: tuple[Box, Box]
    firebox: Box
    air: Box
    opening: Box  # of the oven; empty if the stove has none
    oven_plain: tuple[Quad, ...]
    oven_ceiling: Polygon
    flap: Polygon  # the oven's door when it is open
    legend: Box
    places: dict[str, Place]


def stove_layout(stove: Stove, width: float, height: float) -> StoveLayout:
    """The stove drawn as large as it fits into a rectangle."""
    across, down = width / DESIGNED_WIDTH, height / DESIGNED_HEIGHT
    size = min(across, down)
    walls = _wall_columns(stove)
    column = (_WALL_COLUMN + 6.0) * across
    left = column if walls[0] else 0.0
    stand = Box(left, 0.0, width - left - (column if walls[1] else 0.0), height)
    is_mirrored = stove.firebox is Firebox.RIGHT

    def seen(box: Box) -> Box:
        return box.mirrored(stand.centre[0]) if is_mirrored else box

    has_band = stove.firebox not in (Firebox.LEFT, Firebox.RIGHT)
    tops = stove.spots_of(SpotKind.TOP)
    rows = cooktop_rows(tops)
    rest = height - (_PIPE + _LIP + _FEET) * down
    cooktop, front = shares(
        rest,
        ((rows * _ROW + 2 * _EDGE) * down, (_FRONT_WITH_BAND if has_band else _FRONT_LEAST) * down),
        (_COOKTOP + 40.0 * max(rows - 2, 0), _FRONT),
    )
    pipe_bottom = _PIPE * down
    lip = Box(stand.x, pipe_bottom + cooktop, stand.width, _LIP * down * 0.7)
    body = Box(stand.x + 12 * across, lip.bottom, stand.width - 24 * across, front + _LIP * down * 0.3)

    outer = Quad(
        (stand.x + _BACK_IN * across, pipe_bottom - 3 * down),
        (stand.right - _BACK_IN * across, pipe_bottom - 3 * down),
        (stand.right - 4 * across, lip.y),
        (stand.x + 4 * across, lip.y),
    )
    (back_left, back_right, front_right, front_left), edge, front_edge = outer, _EDGE * size, 5.0 * size
    inner = Quad(
        (back_left[0] + edge, back_left[1] + edge),
        (back_right[0] - edge, back_right[1] + edge),
        (front_right[0] - edge, front_right[1] - front_edge),
        (front_left[0] + edge, front_left[1] - front_edge),
    )
    gap = 3.0 * size
    plates, bare = cooktop_plates(tops, inner, gap)
    places = {name: Place(shape, room_for_words(shape), Manner.LID) for name, shape in plates.items()}

    iron = _IRON * size
    inside = Box(body.x + iron, body.y + 8 * down, body.width - 2 * iron, body.height - 16 * down)
    parts = _front(inside, has_band=has_band, is_below=stove.firebox == "below", across=across, down=down, iron=iron)
    firebox, air, opening = seen(parts.firebox), seen(parts.air), seen(parts.opening)
    ovens = stove.spots_of(SpotKind.OVEN)
    if not ovens:
        opening = Box(opening.x, opening.y, 0.0, 0.0)
    oven = oven_parts(ovens, opening, size, 2.0 * size) if ovens else None
    if oven is not None:
        for name, shape in oven.places.items():
            places[name] = Place(shape, room_for_words(shape), Manner.LINE if name in oven.lines else Manner.PLATE)
    for side, panel in enumerate(parts.sides):
        there = [spot for spot in stove.spots_of(SpotKind.SIDE) if (spot.x >= 0.5) == bool(side)]
        places |= _sharing(there, panel, gap, Manner.PLATE)
    places |= _sharing(stove.spots_of(SpotKind.GLASS), firebox, gap, Manner.PLATE)

    flues = stove.spots_of(SpotKind.FLUE)
    pipe_width = max(_FLUE, 56.0 * len(flues)) * across
    pipe = seen(Box(stand.right - 55 * across - pipe_width, 0.0, pipe_width, pipe_bottom - 8 * down))
    places |= _sharing(flues, pipe, gap, Manner.PLATE)
    rooms = stove.spots_of(SpotKind.ROOM)
    room = seen(Box(stand.x, 2 * down, (96.0 if len(rooms) < 2 else 180.0) * across, 46 * down))
    places |= _sharing(rooms, room, gap, Manner.PAGE)
    middle = pipe.y + 36 * down
    lever = Box(pipe.x - 46 * across, middle, 42 * across, 0.0)
    words = Box(pipe.x - 118 * across, 8 * down, 102 * across, 20 * down)
    if is_mirrored:
        lever, words = lever.mirrored(pipe.centre[0]), words.mirrored(pipe.centre[0])
    for columns, x in zip(walls, (0.0, width - _WALL_COLUMN * across), strict=True):
        high = min((height - lip.y * 0.5) / max(len(columns), 1) - gap, _WALL_HEIGHT * down)
        top = max(lip.y * 0.5, height - _FEET * down - len(columns) * (high + gap))
        box = Box(x, top, _WALL_COLUMN * across, len(columns) * (high + gap) - gap)
        places |= _sharing(columns, box, gap, Manner.WALL)
    foot = height - _FEET * down
    return StoveLayout(
        size=size,
        pipe=pipe,
        collar=Box(pipe.x - 4 * across, pipe.bottom, pipe.width + 8 * across, 8 * down),
        lever=lever,
        bypass_words=words,
        flue_words=seen(Box(stand.right - 45 * across, 8 * down, 45 * across, 20 * down)),
        bypass_is_left=not is_mirrored,
        top=outer,
        plates=(*plates.values(), *bare),
        lip=lip,
        body=Box(body.x, body.y, body.width, foot - body.y),
        feet=tuple(_foot(x, foot, height, 28 * across) for x in (body.x + 6 * across, body.right - 34 * across)),
        sides=parts.sides,
        firebox=firebox,
        air=air,
        opening=opening,
        oven_plain=oven.plain if oven else (),
        oven_ceiling=oven.ceiling if oven else (),
        flap=_flap(opening, height, across) if ovens else (),
        legend=Box(body.x + 42 * across, foot + 1, body.width - 84 * across, height - foot - 1),
        places=places,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Front:
    sides: tuple[Box, Box]
    firebox: Box
    air: Box
    opening: Box


def _front(inside: Box, *, has_band: bool, is_below: bool, across: float, down: float, iron: float) -> _Front:
    """Panels of the front with the firebox at the left of the oven, or in a band above or below it."""
    if has_band:
        side, middle, _ = shares(
            inside.width - 2 * iron,
            (_SIDE_LEAST * across, _OVEN_LEAST * across, _SIDE_LEAST * across),
            (_SIDE, _FIREBOX + _OVEN, _SIDE),
        )
        core = Box(inside.x + side + iron, inside.y, middle, inside.height)
        band = Box(core.x, core.bottom - _BAND * down if is_below else core.y, core.width, _BAND * down)
        door = band.width * 0.62
        firebox = Box(band.x, band.y, door - iron, band.height)
        air = Box(band.x + door, band.y, band.width - door, band.height)
        top = core.y if is_below else band.bottom + iron
        opening = Box(core.x, top, core.width, core.height - band.height - iron)
    else:
        side, wide, oven, _ = shares(
            inside.width - 3 * iron,
            (_SIDE_LEAST * across, _FIREBOX_LEAST * across, _OVEN_LEAST * across, _SIDE_LEAST * across),
            (_SIDE, _FIREBOX, _OVEN, _SIDE),
        )
        column = Box(inside.x + side + iron, inside.y, wide, inside.height)
        high = (column.height - iron) * 0.58
        firebox = Box(column.x, column.y, wide, high)
        air = Box(column.x, column.y + high + iron, wide, column.height - high - iron)
        opening = Box(column.right + iron, inside.y, oven, inside.height)
    return _Front(
        sides=(
            Box(inside.x, inside.y, side, inside.height),
            Box(inside.right - side, inside.y, side, inside.height),
        ),
        firebox=firebox,
        air=air,
        opening=opening,
    )


def _wall_columns(stove: Stove) -> tuple[list[Spot], list[Spot]]:
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
    return _from_above(left), _from_above(right)


def _from_above(spots: list[Spot]) -> list[Spot]:
    def height(spot: Spot) -> int:
        if spot.name.startswith(("floor", "hearth")):
            return 2
        return 0 if spot.name.startswith(("ceiling", "shelf", "mantel", "cupboard")) else 1

    return sorted(spots, key=height)


def _sharing(spots: Sequence[Spot], box: Box, gap: float, manner: Manner) -> dict[str, Place]:
    """Spots that share a part of the stove."""
    if not spots:
        return {}
    columns, rows = shared_out(len(spots), box)
    cells = [cell for row in quad(box).cut(columns, rows, gap) for cell in row]
    return {spot.name: Place(cell, room_for_words(cell), manner) for spot, cell in zip(spots, cells, strict=True)}


def _foot(x: float, top: float, bottom: float, width: float) -> Polygon:
    return (x, top), (x + width, top), (x + width * 0.8, bottom), (x + width * 0.2, bottom)


def _flap(opening: Box, bottom: float, across: float) -> Polygon:
    out = 8 * across
    return (
        (opening.x, opening.bottom),
        (opening.right, opening.bottom),
        (opening.right + out, bottom),
        (opening.x - out, bottom),
    )
