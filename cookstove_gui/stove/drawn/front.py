"""The stove's front: sides, firebox with its air slide, and the opening of the oven, wherever the firebox lies."""

from dataclasses import dataclass

from cookstove_gui.stove.drawn.shapes import Box, Polygon, shares
from cookstove_gui.stove.stove import Firebox

_SIDE, _FIREBOX, _OVEN = 53.0, 93.0, 206.0  # px, as designed
_SIDE_LEAST, _FIREBOX_LEAST, _OVEN_LEAST = 42.0, 53.0, 136.0
_BAND = 58.0  # height of a firebox above or below the oven
_IRON = 5.0  # between parts
_DOOR = 0.58  # of the firebox's height is its door, the rest its air slide; of a band's width 0.62
_BAND_DOOR = 0.62


@dataclass(frozen=True, slots=True, kw_only=True)
class Front:
    """Its parts; the opening has no width where there is no oven."""

    body: Box
    feet: tuple[Polygon, ...]
    sides: tuple[Box, Box]
    firebox: Box
    air: Box
    opening: Box
    flap: Polygon  # the oven's door when it is open
    legend: Box


def has_band(firebox: Firebox) -> bool:
    """Whether the firebox lies in a band above or below the oven."""
    return firebox in (Firebox.ABOVE, Firebox.BELOW)


def front(firebox: Firebox, body: Box, bottom: float, scale: tuple[float, float], *, has_oven: bool) -> Front:
    """The front over a body that stands on feet down to `bottom`; `scale` is across and down, 1 as designed."""
    across, down = scale
    iron = _IRON * min(scale)
    inside = Box(body.x + iron, body.y + 8 * down, body.width - 2 * iron, body.height - 16 * down)
    side, middle, _ = shares(
        inside.width - 2 * iron,
        (_SIDE_LEAST * across, (_FIREBOX_LEAST + _OVEN_LEAST) * across + iron, _SIDE_LEAST * across),
        (_SIDE, _FIREBOX + _OVEN + _IRON, _SIDE),
    )
    core = Box(inside.x + side + iron, inside.y, middle, inside.height)
    if has_band(firebox):
        door, air, opening = _in_a_band(core, down, iron, is_below=firebox is Firebox.BELOW)
    else:
        door, air, opening = _beside(core, across, iron)
        if firebox is Firebox.RIGHT:
            door, air, opening = (part.mirrored(core.centre[0]) for part in (door, air, opening))
    if not has_oven:
        opening = Box(opening.x, opening.y, 0.0, 0.0)
    feet = (body.x + 6 * across, body.right - 34 * across)
    return Front(
        body=body,
        feet=tuple(_foot(x, body.bottom, bottom, 28 * across) for x in feet),
        sides=(Box(inside.x, inside.y, side, inside.height), Box(inside.right - side, inside.y, side, inside.height)),
        firebox=door,
        air=air,
        opening=opening,
        flap=_flap(opening, bottom, 8 * across) if has_oven else (),
        legend=Box(body.x + 42 * across, body.bottom + 1, body.width - 84 * across, bottom - body.bottom - 1),
    )


def _in_a_band(core: Box, down: float, iron: float, *, is_below: bool) -> tuple[Box, Box, Box]:
    band = Box(core.x, core.bottom - _BAND * down if is_below else core.y, core.width, _BAND * down)
    door = band.width * _BAND_DOOR
    top = core.y if is_below else band.bottom + iron
    return (
        Box(band.x, band.y, door - iron, band.height),
        Box(band.x + door, band.y, band.width - door, band.height),
        Box(core.x, top, core.width, core.height - band.height - iron),
    )


def _beside(core: Box, across: float, iron: float) -> tuple[Box, Box, Box]:
    wide, oven = shares(core.width - iron, (_FIREBOX_LEAST * across, _OVEN_LEAST * across), (_FIREBOX, _OVEN))
    high = (core.height - iron) * _DOOR
    return (
        Box(core.x, core.y, wide, high),
        Box(core.x, core.y + high + iron, wide, core.height - high - iron),
        Box(core.x + wide + iron, core.y, oven, core.height),
    )


def _foot(x: float, top: float, bottom: float, width: float) -> Polygon:
    return (x, top), (x + width, top), (x + width * 0.8, bottom), (x + width * 0.2, bottom)


def _flap(opening: Box, bottom: float, out: float) -> Polygon:
    return (
        (opening.x, opening.bottom),
        (opening.right, opening.bottom),
        (opening.right + out, bottom),
        (opening.x - out, bottom),
    )
