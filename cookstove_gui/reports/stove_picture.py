"""The stove at one stage as an SVG picture: every spot with its highest reading, in the colour of that heat.

The number stands on every patch and lightness alone carries the heat, so it reads in grey too. Spots not read are plain
iron; those of the oven and the cooktop say so with a dash.
"""

from collections.abc import Mapping
from html import escape

from cookstove_gui.stove.drawn.heat_colours import HOTTEST_AT_LEAST, IRON, ON_IRON, PLATE, ROOM, heat_colour, heat_ink
from cookstove_gui.stove.drawn.layout import Manner, Place, StoveLayout, stove_layout
from cookstove_gui.stove.drawn.shapes import Box, Polygon
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import TemperatureUnit, degrees, tidy

WIDE, HIGH = 164.0, 196.0  # px, as designed
_LARGEST, _SMALLEST = 15.0, 8.0  # px of the numbers
_FIGURE = 0.66  # of its size, the width of a figure
_FACE = "Source Sans 3, Noto Sans, DejaVu Sans, sans-serif"
_SCALE_WIDE, _SCALE_HIGH, _STEPS = 200, 10, 40


def stove_picture(
    stove: Stove, heats: Mapping[str, float], unit: TemperatureUnit, *, air: float | None, hottest: float, words: str
) -> str:
    """A stove with its highest readings [K]; `air` is the fraction open, `words` are what is read out."""
    layout = stove_layout(stove, WIDE, HIGH)
    parts = [*_body(layout, air)]
    for name, place in layout.places.items():
        if place.manner is not Manner.PAGE:
            parts += _spot(place, heats.get(name), unit, hottest)
    inside = "\n".join(parts)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDE:g} {HIGH:g}" width="{WIDE:g}" height="{HIGH:g}" '
        f'role="img" aria-label="{escape(words, quote=True)}" font-family="{_FACE}">\n{inside}\n</svg>'
    )


def heat_scale(unit: TemperatureUnit, hottest: float) -> str:
    """The colours from a room's heat to the hottest [K] as a bar, its ends written beside it."""
    top = max(hottest, HOTTEST_AT_LEAST)
    ends = [tidy(float(degrees(heat, unit)), 0) for heat in (ROOM, top)]
    step = _SCALE_WIDE / _STEPS
    bars = "".join(
        f'<rect x="{30 + place * step:g}" y="3" width="{step + 0.3:g}" height="{_SCALE_HIGH}" '
        f'fill="{heat_colour(ROOM + (top - ROOM) * (place + 0.5) / _STEPS, hottest)}"/>'
        for place in range(_STEPS)
    )
    words = f"Lighter is hotter, from {ends[0]} to {ends[1]} °{unit}"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 270 16" width="270" height="16" role="img" '
        f'aria-label="{words}" font-family="{_FACE}" font-size="12" fill="#1C2022">'
        f'<text x="26" y="12" text-anchor="end">{ends[0]}</text>{bars}'
        f'<text x="{36 + _SCALE_WIDE}" y="12">{ends[1]}</text></svg>'
    )


def _body(layout: StoveLayout, air: float | None) -> list[str]:
    """Iron, and the parts that are not read."""
    above, front, top = layout.above, layout.front, layout.cooktop
    parts: list[str] = []
    if above is not None:
        parts += [_box(box, IRON) for box in (above.closet, above.pipe, above.collar) if box is not None]
    if layout.tank is not None:
        parts.append(_box(layout.tank, IRON))
    if front is not None:
        parts += [_box(front.body, IRON), *(_shape(foot, IRON) for foot in front.feet)]
    parts += [_shape(top.iron, IRON), _box(top.lip, IRON), *(_shape(plate, PLATE) for plate in top.unread)]
    if front is not None:
        parts += [_box(panel, PLATE) for panel in (*front.sides, front.firebox, front.air)]
        parts += _slide(front.air, layout.size, air)
    if layout.oven is not None:
        parts += [_shape(part, PLATE) for part in layout.oven.plain]
    return parts


def _slide(box: Box, size: float, air: float | None) -> list[str]:
    """How far the air is open: a slide filled from the left; none where the log does not say."""
    if air is None:
        return []
    wide, high = min(66 * size, box.width - 6), 14 * size
    x, y = box.centre[0] - wide / 2, box.centre[1] - high / 2
    shape = f'x="{x:.1f}" y="{y:.1f}" height="{high:.1f}" rx="{high / 2:.1f}"'
    filled = f'<rect {shape} width="{max(wide * air, high):.1f}" fill="{ON_IRON}"/>' if air > 0.02 else ""
    return [f'<rect {shape} width="{wide:.1f}" fill="none" stroke="{ON_IRON}"/>', filled]


def _spot(place: Place, heat: float | None, unit: TemperatureUnit, hottest: float) -> list[str]:
    """Its patch with its number, as large as it fits; unread a dash on plain iron."""
    box, (x, y) = place.words, place.words.centre
    fill, ink, told = PLATE, ON_IRON, "–"
    if heat is not None:
        fill, ink = heat_colour(heat, hottest), heat_ink(heat, hottest)
        told = tidy(float(degrees(heat, unit)), 0)
    size = min(_LARGEST, box.width / (_FIGURE * max(len(told), 2)), 0.9 * box.height)
    patch = _shape(place.shape, fill)
    if size < _SMALLEST:
        return [patch]
    return [
        patch,
        f'<text x="{x:.1f}" y="{y + 0.35 * size:.1f}" font-size="{size:.1f}" font-weight="600" fill="{ink}" '
        f'text-anchor="middle">{told}</text>',
    ]


def _shape(points: Polygon, fill: str) -> str:
    told = " ".join(f"{x:.1f},{y:.1f}" for x, y in points)
    return f'<polygon points="{told}" fill="{fill}"/>'


def _box(box: Box, fill: str) -> str:
    return f'<rect x="{box.x:.1f}" y="{box.y:.1f}" width="{box.width:.1f}" height="{box.height:.1f}" fill="{fill}"/>'
