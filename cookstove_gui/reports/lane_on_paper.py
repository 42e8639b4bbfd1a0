"""The fire lane on paper: each thing done at its time as a sign, with a word where there is room for one."""

from collections.abc import Callable, Iterable, Sequence
from datetime import datetime
from itertools import pairwise

from cookstove_gui.phrases.lane import LaneRow
from cookstove_gui.reports.svg import INK, SOFT, Point, line, path, ring, width_of, words
from cookstove_gui.stove.drawn.apart import moved_apart
from cookstove_gui.stove.entries import Kind

HIGH = 40.0  # px
_APART = 22.0  # px from the middle of one sign to the next
_BASE, _WORDS = 12.0, 34.0  # px under the top: middle of the signs, foot of the words
_MOST_ENDS = 3
# The kinds in the order in which their words are placed; where the lane is too full the last kinds go first.
_ORDER = (
    Kind.LIT, Kind.OUT, Kind.WOOD, Kind.OVEN_IN, Kind.OVEN_OUT, Kind.BYPASS, Kind.AIR, Kind.OVEN_DOOR,
)  # fmt: skip


def fire_lane(
    rows: Sequence[LaneRow], x: Callable[[datetime], float], ends: tuple[float, float], top: float
) -> Iterable[str]:
    """The lane between two ends [px], its upper edge at `top`."""
    yield words((ends[0] - 10, top + _WORDS), "fire", ink=SOFT, anchor="end")
    kept = _that_fit(rows, (ends[1] - ends[0]) / _APART)
    gaps = [_APART + 8 * (max(one.count, other.count) > 1) for one, other in pairwise(kept)]
    placed = list(zip(kept, moved_apart([x(row.at) for row in kept], gaps, ends), strict=True))
    for row, place in placed:
        yield from _sign(row, (place, top + _BASE))
    taken: list[tuple[float, float]] = []
    for row, place in sorted(placed, key=lambda one: _ORDER.index(one[0].kind)):
        half = width_of(row.words) / 2
        middle = min(max(place, ends[0] + half - 8), ends[1] - half + 8)
        span = (middle - half - 3, middle + half + 3)
        if all(span[1] <= low or high <= span[0] for low, high in taken):
            taken.append(span)
            yield words((middle, top + _WORDS), row.words, anchor="middle")


def _that_fit(rows: Sequence[LaneRow], room: float) -> list[LaneRow]:
    kept = [row for row in rows if row.kind in _ORDER]
    for kind in reversed(_ORDER):
        if len(kept) <= room:
            break
        kept = [row for row in kept if row.kind is not kind]
    return kept


def _sign(row: LaneRow, middle: Point) -> Iterable[str]:
    x, y = middle
    match row.kind:
        case Kind.LIT | Kind.OUT:
            curve = f"M{x:.1f} {y - 9:.1f}c2 5 5 7.5 5 11c0 7-10 7-10 0c0-3.5 3-6 5-11z"
            yield f'<path d="{curve}" fill="none" stroke="{INK}" stroke-width="1.5"/>'
            if row.kind is Kind.OUT:
                yield line((x - 8, y + 7), (x + 8, y - 7), wide=1.5)
        case Kind.WOOD if row.count < 1:  # a load of no known count is one filled billet
            yield _slide(x, y, 7, 3, fill=INK)
        case Kind.WOOD:
            count = min(row.count, _MOST_ENDS)
            for number in range(count):
                end = (x + 11 * (number - (count - 1) / 2), y)
                yield ring(end, 4.6)
                yield ring(end, 0.9, fill=INK, wide=0.5)
        case Kind.AIR:
            yield _slide(x, y, 8.5, 4.2)
            if row.opening > 0.02:
                wide = max(17.0 * min(row.opening, 1.0), 6.0)
                yield _slide(x - 8.5 + wide / 2, y, wide / 2, 4.2, fill=INK)
        case Kind.BYPASS:  # level when shut, dropped when open
            yield line((x + 5, y), (x - 8, y + (6 if row.opening >= 0.5 else 0)), wide=1.8)
            yield ring((x + 5, y), 2.4, fill=INK, wide=0.5)
        case Kind.OVEN_DOOR:
            yield path([(x - 6, y - 5), (x + 6, y - 5), (x + 6, y + 5), (x - 6, y + 5), (x - 6, y - 5)], wide=1.4)
            ends = ((x - 6, y + 5), (x - 10, y + 8)) if row.opening >= 0.5 else ((x - 3, y), (x + 3, y))
            yield line(*ends, wide=1.4)
        case _:  # a loaf on the oven's floor; above it once it is taken out
            foot = y + 4 - (4 if row.kind is Kind.OVEN_OUT else 0)
            curve = f"M{x - 7:.1f} {foot:.1f}c-1-11 15-11 14 0z"
            yield f'<path d="{curve}" fill="none" stroke="{INK}" stroke-width="1.5"/>'
            yield line((x - 9, y + 7), (x + 9, y + 7), wide=1.4)


def _slide(x: float, y: float, half: float, up: float, fill: str = "none") -> str:
    return (
        f'<rect x="{x - half:.1f}" y="{y - up:.1f}" width="{2 * half:.1f}" height="{2 * up:.1f}" rx="{up:.1f}" '
        f'fill="{fill}" stroke="{INK}" stroke-width="1.3"/>'
    )
