"""The oven looked into: side walls and floor as trapezoids, the rear wall, and the centre as a plate before it."""

from collections.abc import Sequence
from dataclasses import dataclass

from cookstove_gui.stove.drawn.shapes import Box, Polygon, Quad, quad, room_for_words, shared_out, shares
from cookstove_gui.stove.stove import Spot

_WALL, _CENTRE = 58.0, 90.0  # widths as drawn at full size
_CEILING, _REAR, _PLATE, _FLOOR = 9.0, 48.0, 83.0, 41.0  # heights
_LEAST = 41.0  # of a part that can be pressed
_NEAR_CENTRE = 0.15  # a spot nearer the middle than this belongs to no wall


@dataclass(frozen=True, slots=True, kw_only=True)
class OvenParts:
    """Where each oven spot is drawn, and the parts nobody reads."""

    places: dict[str, Quad]
    lines: frozenset[str]  # spots so wide and low that they are written in one line
    plain: dict[str, Quad]  # by what they are: left, right, floor, rear, centre
    ceiling: Polygon


def oven_parts(spots: Sequence[Spot], opening: Box, size: float, gap: float) -> OvenParts:
    """The inside of the oven seen through its opening; `size` is how large the stove is drawn, 1 as designed."""
    least = _LEAST * size
    wall, _, _ = shares(opening.width, (least, least, least), (_WALL, _CENTRE, _WALL))
    ceiling, strip, _, floor = shares(
        opening.height, (6 * size, least, least, least), (_CEILING, _REAR, _PLATE, _FLOOR)
    )
    outer = quad(opening)
    rear = Box(opening.x + wall, opening.y + ceiling, opening.width - 2 * wall, opening.height - ceiling - floor)
    inner = quad(rear)
    whole = {
        "left": Quad(outer.upper_left, inner.upper_left, inner.lower_left, outer.lower_left),
        "right": Quad(inner.upper_right, outer.upper_right, outer.lower_right, inner.lower_right),
        "floor": Quad(inner.lower_left, inner.lower_right, outer.lower_right, outer.lower_left),
        "rear": quad(Box(rear.x, rear.y, rear.width, strip)),
        "centre": quad(Box(rear.x, rear.y + strip, rear.width, rear.height - strip)),
    }
    held: dict[str, list[Spot]] = {part: [] for part in whole}
    for spot in spots:
        held[_part_of(spot)].append(spot)
    if not held["centre"]:
        whole["rear"] = inner
        del whole["centre"]
    places: dict[str, Quad] = {}
    plain: dict[str, Quad] = {}
    for part, shape in whole.items():
        shown = _parted(shape, gap, at_bottom=part in ("floor",))
        if not held[part]:
            plain[part] = shown
        columns, rows = shared_out(max(len(held[part]), 1), room_for_words(shown))
        cells = [cell for row in shown.cut([1.0] * columns, [1.0] * rows, gap) for cell in row]
        places |= {spot.name: cell for spot, cell in zip(held[part], cells, strict=False)}
    return OvenParts(
        places=places,
        lines=frozenset(spot.name for spot in held["floor"]) if len(held["floor"]) == 1 else frozenset(),
        plain=plain,
        ceiling=(outer.upper_left, outer.upper_right, inner.upper_right, inner.upper_left),
    )


def _part_of(spot: Spot) -> str:
    across, deep = spot.x - 0.5, spot.y - 0.5
    if max(abs(across), abs(deep)) < _NEAR_CENTRE:
        return "centre"
    if abs(across) >= abs(deep):
        return "left" if across < 0 else "right"
    return "rear" if deep > 0 else "floor"


def _parted(shape: Quad, gap: float, *, at_bottom: bool) -> Quad:
    """The shape less half a gap where it meets its neighbours; the floor keeps its front edge."""
    (ulx, uly), (urx, ury), (lrx, lry), (llx, lly) = shape
    half = gap / 2
    low = 0.0 if at_bottom else half
    return Quad((ulx + half, uly + half), (urx - half, ury + half), (lrx - half, lry - low), (llx + half, lly - low))
