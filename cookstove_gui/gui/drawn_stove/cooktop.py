"""The cooktop cut into plates: a row for each row of spots, in as many columns as there are, up to four."""

from collections.abc import Callable, Sequence

from cookstove_gui.gui.drawn_stove.shapes import Quad
from cookstove_gui.stove.stove import Spot

_MOST_COLUMNS = 4  # more would leave no room for a number
_SAME_LINE = 0.16  # spots nearer than this, as a share of the cooktop, stand in one column or row


def cooktop_rows(spots: Sequence[Spot]) -> int:
    """How many plates stand one behind the other where there are most."""
    return max((len(column) for column in _columns(spots)), default=1)


def cooktop_plates(spots: Sequence[Spot], top: Quad, gap: float) -> tuple[dict[str, Quad], list[Quad]]:
    """The plate of each spot, and the plates that no spot reads; together they cover the cooktop."""
    columns = _columns(spots)
    if not columns:
        return {}, [top]
    places: dict[str, Quad] = {}
    empty: list[Quad] = []
    rows = _grouped(spots, lambda one: -one.y, _SAME_LINE)
    if _fills_a_grid(columns, rows):
        cells = top.cut(len(columns), len(rows), gap)
        for number, row in enumerate(rows):
            for place, column in enumerate(columns):
                here = next((spot for spot in row if spot in column), None)
                if here is None:
                    empty.append(cells[number][place])
                else:
                    places[here.name] = cells[number][place]
        return places, empty
    for column, (strip,) in zip(columns, zip(*top.cut(len(columns), 1, gap), strict=True), strict=True):
        for spot, (cell,) in zip(column, strip.cut(1, len(column), gap), strict=True):
            places[spot.name] = cell
    return places, empty


def _columns(spots: Sequence[Spot]) -> list[list[Spot]]:
    """Spots gathered into columns from left to right, each from the back to the front."""
    nearest = _SAME_LINE
    columns = _grouped(spots, lambda one: one.x, nearest)
    while len(columns) > _MOST_COLUMNS:
        nearest += 0.02
        columns = _grouped(spots, lambda one: one.x, nearest)
    return [sorted(column, key=lambda one: -one.y) for column in columns]


def _fills_a_grid(columns: list[list[Spot]], rows: list[list[Spot]]) -> bool:
    """Whether rows and columns have one spot at most where they cross, and nearly all crossings have one."""
    crossings = [len([spot for spot in row if spot in column]) for row in rows for column in columns]
    return max(crossings) == 1 and crossings.count(0) < min(len(rows), len(columns))


def _grouped(spots: Sequence[Spot], along: Callable[[Spot], float], nearest: float) -> list[list[Spot]]:
    groups: list[list[Spot]] = []
    for spot in sorted(spots, key=along):
        if groups and along(spot) - along(groups[-1][0]) < nearest:
            groups[-1].append(spot)
        else:
            groups.append([spot])
    return groups
