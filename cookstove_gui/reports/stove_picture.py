"""The stove at one stage as an SVG picture: every spot with its highest reading, in the colour of that heat.

The number stands on every patch and lightness alone carries the heat, so it reads in grey too. Spots not read are plain
iron; those of the oven and the cooktop say so with a dash.
"""

from collections.abc import Mapping

from cookstove_gui.reports import svg
from cookstove_gui.stove.drawn.heat_colours import HOTTEST_AT_LEAST, IRON, ON_IRON, PLATE, ROOM, heat_colour, heat_ink
from cookstove_gui.stove.drawn.layout import Manner, Place, StoveLayout, stove_layout
from cookstove_gui.stove.drawn.shapes import Box
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import TemperatureUnit, degrees, tidy

WIDE, HIGH = 164.0, 196.0  # px, as designed
_LARGEST, _SMALLEST = 15.0, 8.0  # px of the numbers
_FIGURE = 0.66  # of its size, the width of a figure
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
    return svg.picture(parts, WIDE, HIGH, words)


def heat_scale(unit: TemperatureUnit, hottest: float) -> str:
    """The colours from a room's heat to the hottest [K] as a bar, its ends written beside it."""
    top = max(hottest, HOTTEST_AT_LEAST)
    ends = [tidy(float(degrees(heat, unit)), 0) for heat in (ROOM, top)]
    step = _SCALE_WIDE / _STEPS
    bars = (
        svg.box((30 + place * step, 3), step + 0.3, _SCALE_HIGH, heat_colour(ROOM + (top - ROOM) * share, hottest))
        for place in range(_STEPS)
        for share in ((place + 0.5) / _STEPS,)
    )
    parts = [svg.words((26, 12), ends[0], anchor="end"), *bars, svg.words((36 + _SCALE_WIDE, 12), ends[1])]
    return svg.picture(parts, 270, 16, f"Lighter is hotter, from {ends[0]} to {ends[1]} °{unit}")


def _body(layout: StoveLayout, air: float | None) -> list[str]:
    """Iron, and the parts that are not read."""
    above, front, top = layout.above, layout.front, layout.cooktop
    parts: list[str] = []
    if above is not None:
        parts += [_box(box, IRON) for box in (above.closet, above.pipe, above.collar) if box is not None]
    if layout.tank is not None:
        parts.append(_box(layout.tank, IRON))
    if front is not None:
        parts += [_box(front.body, IRON), *(svg.shape(foot, IRON) for foot in front.feet)]
    parts += [svg.shape(top.iron, IRON), _box(top.lip, IRON), *(svg.shape(plate, PLATE) for plate in top.unread)]
    if front is not None:
        parts += [_box(panel, PLATE) for panel in (*front.sides, front.firebox, front.air)]
        parts += _slide(front.air, layout.size, air)
    if layout.oven is not None:
        parts += [svg.shape(part, PLATE) for part in layout.oven.plain.values()]
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
    patch = svg.shape(place.shape, fill)
    if size < _SMALLEST:
        return [patch]
    number = svg.words((x, y + 0.35 * size), told, size=round(size, 1), ink=ink, anchor="middle", weight=600)
    return [patch, number]


def _box(box: Box, fill: str) -> str:
    return svg.box((box.x, box.y), box.width, box.height, fill)
