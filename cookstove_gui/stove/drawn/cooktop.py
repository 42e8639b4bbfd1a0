"""The cooktop: an iron trapezoid cut into plates, a row for each row of spots, in as many columns as there are."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from cookstove_gui.stove.drawn.shapes import Box, Quad
from cookstove_gui.stove.redrawn import SAME_LINE
from cookstove_gui.stove.stove import Spot, SpotKind, Stove

_MOST_COLUMNS = 4  # more would leave no room for a number
_LEAST, _MOST = 0.7, 1.7  # of an even share: the narrowest can still be pressed
_EDGE, _FRONT_EDGE, _GAP = 8.0, 5.0, 3.0  # px of iron round and between the plates, as designed


@dataclass(frozen=True, slots=True, kw_only=True)
class Cooktop:
    """Its iron, the plate of each spot, and those that nobody reads."""

    iron: Quad
    inside: Quad  # of its iron edge: the plates
    lip: Box
    places: dict[str, Quad]
    unread: tuple[Quad, ...]
    has_lids: bool


def cooktop_rows(stove: Stove) -> int:
    """How many plates stand one behind the other where there are most."""
    spots = stove.spots_of(SpotKind.TOP)
    return max(stove.cooktop_rows, *(len(column) for column in _columns(spots)), 1)


def cooktop(stove: Stove, iron: Quad, lip: Box, size: float) -> Cooktop:
    """The plates on an iron trapezoid, on a stove drawn at a size; together they cover it."""
    (back_left, back_right, front_right, front_left), edge, front = iron, _EDGE * size, _FRONT_EDGE * size
    inner = Quad(
        (back_left[0] + edge, back_left[1] + edge),
        (back_right[0] - edge, back_right[1] + edge),
        (front_right[0] - edge, front_right[1] - front),
        (front_left[0] + edge, front_left[1] - front),
    )
    places, unread = _plates(stove, inner, _GAP * size)
    return Cooktop(iron=iron, inside=inner, lip=lip, places=places, unread=tuple(unread), has_lids=stove.has_lids)


def _plates(stove: Stove, top: Quad, gap: float) -> tuple[dict[str, Quad], list[Quad]]:
    spots = stove.spots_of(SpotKind.TOP)
    grid = _said_grid(stove, spots) or _seen_grid(spots)
    if grid is not None:
        columns = [[spot for row in grid if (spot := row[place])] for place in range(len(grid[0]))]
        rows = [[spot for spot in row if spot] for row in grid]
        across, deep = (
            _spaced([[one.x for one in line] for line in columns]),
            _spaced([[1.0 - one.y for one in line] for line in rows]),
        )
        widths = _sized(across, [[one.width for one in line] for line in columns], stove.cooktop_width)
        depths = _sized(deep, [[one.depth for one in line] for line in rows], stove.cooktop_depth)
        cells = top.cut(widths, depths, gap)
        named = [
            (spot, cell) for row, line in zip(grid, cells, strict=True) for spot, cell in zip(row, line, strict=True)
        ]
        return {spot.name: cell for spot, cell in named if spot}, [cell for spot, cell in named if not spot]
    places: dict[str, Quad] = {}
    columns = _columns(spots)
    for column, strip in zip(columns, top.cut([1.0] * len(columns), [1.0], gap)[0], strict=True):
        for spot, (cell,) in zip(column, strip.cut([1.0], [1.0] * len(column), gap), strict=True):
            places[spot.name] = cell
    return places, []


_Grid = list[list[Spot | None]]  # row by row from the back, each from the left


def _said_grid(stove: Stove, spots: Sequence[Spot]) -> _Grid | None:
    """Plates in the rows and columns that the owner said, unless two spots would stand on one plate."""
    rows, columns = stove.cooktop_rows, stove.cooktop_columns
    if not rows or not columns:
        return None
    grid: _Grid = [[None] * columns for _ in range(rows)]
    for spot in spots:
        row, column = min(int((1 - spot.y) * rows), rows - 1), min(int(spot.x * columns), columns - 1)
        if grid[row][column] is not None:
            return None
        grid[row][column] = spot
    return grid


def _seen_grid(spots: Sequence[Spot]) -> _Grid | None:
    """Plates where rows and columns of the spots cross, if nearly every crossing has one and none has two."""
    columns, rows = _columns(spots), _grouped(spots, lambda one: -one.y, SAME_LINE)
    if not spots:
        return [[None]]
    crossings = [[[spot for spot in row if spot in column] for column in columns] for row in rows]
    counts = [len(here) for row in crossings for here in row]
    if max(counts) > 1 or counts.count(0) >= min(len(rows), len(columns)):
        return None
    return [[here[0] if here else None for here in row] for row in crossings]


def _columns(spots: Sequence[Spot]) -> list[list[Spot]]:
    """Spots gathered into columns from left to right, each from the back to the front."""
    nearest = SAME_LINE
    columns = _grouped(spots, lambda one: one.x, nearest)
    while len(columns) > _MOST_COLUMNS:
        nearest += 0.02
        columns = _grouped(spots, lambda one: one.x, nearest)
    return [sorted(column, key=lambda one: -one.y) for column in columns]


def _spaced(places: Sequence[Sequence[float]]) -> list[float]:
    """Share of each line of plates: they meet halfway between the middles of their spots."""
    number = len(places)
    middles = [sum(line) / len(line) if line else (at + 0.5) / number for at, line in enumerate(places)]
    meets = [0.0, *((one + other) / 2 for one, other in pairwise(middles)), 1.0]
    return [min(max(far - near, _LEAST / number), _MOST / number) for near, far in pairwise(meets)]


def _sized(shares: Sequence[float], said: Sequence[Sequence[float | None]], whole: float) -> list[float]:
    """The share of each line where its plates' length [m] was not said, else what was said of the whole."""
    number = len(shares)
    found = []
    for share, lengths in zip(shares, said, strict=True):
        known = [length for length in lengths if length is not None]
        found.append(min(max(max(known) / whole, _LEAST / number), _MOST / number) if known else share)
    return found


def _grouped(spots: Sequence[Spot], along: Callable[[Spot], float], nearest: float) -> list[list[Spot]]:
    groups: list[list[Spot]] = []
    for spot in sorted(spots, key=along):
        if groups and along(spot) - along(groups[-1][0]) < nearest:
            groups[-1].append(spot)
        else:
            groups.append([spot])
    return groups
