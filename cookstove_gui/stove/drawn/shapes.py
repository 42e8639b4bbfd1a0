"""Boxes and polygons in pixels, x to the right and y downward: the plain geometry that the drawn stove is made of."""

from collections.abc import Sequence
from typing import NamedTuple

Point = tuple[float, float]
Polygon = tuple[Point, ...]


class Box(NamedTuple):
    """An upright rectangle."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Its right edge."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """Its lower edge."""
        return self.y + self.height

    @property
    def centre(self) -> Point:
        """Its middle."""
        return self.x + self.width / 2, self.y + self.height / 2

    @property
    def corners(self) -> Polygon:
        """Its corners, clockwise from the upper left."""
        return (self.x, self.y), (self.right, self.y), (self.right, self.bottom), (self.x, self.bottom)

    def inset(self, across: float, down: float | None = None) -> "Box":
        """The box less a margin all round."""
        high = across if down is None else down
        return Box(self.x + across, self.y + high, max(self.width - 2 * across, 0.0), max(self.height - 2 * high, 0.0))

    def mirrored(self, middle: float) -> "Box":
        """The box on the other side of an upright line."""
        return Box(2 * middle - self.right, self.y, self.width, self.height)


class Quad(NamedTuple):
    """A trapezoid with level or upright parallel sides; corners clockwise from the upper left."""

    upper_left: Point
    upper_right: Point
    lower_right: Point
    lower_left: Point

    def at(self, across: float, down: float) -> Point:
        """The point at a share (0 to 1) of the way across and down."""
        upper = _between(self.upper_left, self.upper_right, across)
        return _between(upper, _between(self.lower_left, self.lower_right, across), down)

    def shares_at(self, point: Point) -> tuple[float, float]:
        """The shares across and down of a point, for a trapezoid with level top and bottom; beyond 0 to 1 outside."""
        top, bottom = self.upper_left[1], self.lower_left[1]
        down = (point[1] - top) / (bottom - top)
        left, right = self.at(0.0, down)[0], self.at(1.0, down)[0]
        return (point[0] - left) / (right - left), down

    def cell(self, left: float, top: float, right: float, bottom: float) -> "Quad":
        """The part between shares across and shares down."""
        return Quad(self.at(left, top), self.at(right, top), self.at(right, bottom), self.at(left, bottom))

    def cut(self, widths: Sequence[float], heights: Sequence[float], gap: float) -> list[list["Quad"]]:
        """Parts as wide and high, in proportion, as said; row by row from the top, a gap [pixels] between them."""
        wide, high = _mean_size(self)
        across = _ends(widths, gap / max(wide, 1.0))
        down = _ends(heights, gap / max(high, 1.0))
        return [[self.cell(left, top, right, bottom) for left, right in across] for top, bottom in down]


def quad(box: Box) -> Quad:
    """A box as a trapezoid."""
    return Quad(*box.corners)


def bounds(polygon: Polygon) -> Box:
    """The least upright box round a polygon."""
    across, down = [x for x, _ in polygon], [y for _, y in polygon]
    return Box(min(across), min(down), max(across) - min(across), max(down) - min(down))


def room_for_words(shape: Quad) -> Box:
    """An upright box about a trapezoid's middle: as tall as its shorter upright, as wide as at half its height."""
    left, right = shape.at(0.0, 0.5)[0], shape.at(1.0, 0.5)[0]
    top = max(shape.upper_left[1], shape.upper_right[1])
    bottom = min(shape.lower_left[1], shape.lower_right[1])
    return Box(left, top, right - left, bottom - top)


def shared_out(number: int, box: Box) -> tuple[int, int]:
    """Columns and rows for so many things in a box: beside or below each other, whichever leaves them broader."""
    beside, below = min(box.width / number, box.height), min(box.width, box.height / number)
    return (number, 1) if beside > below else (1, number)


def shares(total: float, least: Sequence[float], wanted: Sequence[float]) -> list[float]:
    """A length shared out: what each part wants, in proportion, but none below its least while there is enough."""
    sizes = [total * want / sum(wanted) for want in wanted]
    short = [number for number, size in enumerate(sizes) if size < least[number]]
    if not short or sum(least) >= total:
        return sizes if not short else [total * one / sum(least) for one in least]
    fixed = set(short)
    while True:
        rest = total - sum(least[number] for number in fixed)
        weight = sum(want for number, want in enumerate(wanted) if number not in fixed)
        sizes = [least[n] if n in fixed else rest * want / weight for n, want in enumerate(wanted)]
        more = {n for n, size in enumerate(sizes) if n not in fixed and size < least[n]}
        if not more:
            return sizes
        fixed |= more


def _between(one: Point, other: Point, share: float) -> Point:
    return one[0] + share * (other[0] - one[0]), one[1] + share * (other[1] - one[1])


def _mean_size(shape: Quad) -> tuple[float, float]:
    wide = shape.at(1.0, 0.5)[0] - shape.at(0.0, 0.5)[0]
    high = shape.at(0.5, 1.0)[1] - shape.at(0.5, 0.0)[1]
    return wide, high


def _ends(lengths: Sequence[float], gap: float) -> list[tuple[float, float]]:
    """Where each part begins and ends, as shares of the whole, with a gap between them."""
    total, ends, at = sum(lengths), [], 0.0
    for number, length in enumerate(lengths):
        following = at + length / total
        first, last = number == 0, number == len(lengths) - 1
        ends.append((at if first else at + gap / 2, following if last else following - gap / 2))
        at = following
    return ends
