"""Where the parts of a stove go when it is drawn: pure geometry from a stove and a size."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF

from cookstove_gui.stove.stove import Firebox, Spot, SpotKind, Stove

GAP = 6.0
STRIP = 28.0  # wide enough for one word along it
_SIDE_COLUMN = 76.0
_TALLEST = 112.0  # of a patch beside the cooktop
_MOST_COLUMNS = 4  # more would leave no room for a number
_SAME_LINE = 0.16  # spots nearer than this, as a share of the stove, stand in one column or row
_ONE_LINE = 0.6  # height of an oven row with one spot, which is written in a line, to one with several


@dataclass(frozen=True, slots=True, kw_only=True)
class StoveGeometry:
    """Rectangles in pixels; a part the stove does not have is empty."""

    cooktop: QRectF
    firebox: QRectF
    oven: QRectF
    oven_name: QRectF
    patches: dict[str, QRectF]


def columns_of(spots: Sequence[Spot]) -> list[list[Spot]]:
    """Spots gathered into at most four columns from left to right, each from the back to the front."""
    nearest = _SAME_LINE
    columns = _columns(spots, nearest)
    while len(columns) > _MOST_COLUMNS:
        nearest += 0.02
        columns = _columns(spots, nearest)
    return [sorted(column, key=lambda one: -one.y) for column in columns]


def _columns(spots: Sequence[Spot], nearest: float) -> list[list[Spot]]:
    columns: list[list[Spot]] = []
    for spot in sorted(spots, key=lambda one: one.x):
        if columns and spot.x - columns[-1][0].x < nearest:
            columns[-1].append(spot)
        else:
            columns.append([spot])
    return columns


def rows_of(spots: Sequence[Spot]) -> list[list[Spot]]:
    """Spots gathered into rows from the back to the front, each from left to right."""
    rows: list[list[Spot]] = []
    for spot in sorted(spots, key=lambda one: -one.y):
        if rows and rows[-1][0].y - spot.y < _SAME_LINE:
            rows[-1].append(spot)
        else:
            rows.append([spot])
    return [sorted(row, key=lambda one: one.x) for row in rows]


def stove_geometry(stove: Stove, width: float, height: float) -> StoveGeometry:
    """A stove seen from above, with the oven opened out below the cooktop."""
    top = columns_of(stove.spots_of(SpotKind.TOP))
    oven = rows_of(stove.spots_of(SpotKind.OVEN))
    left, right = _side_columns(stove)
    left_width = _SIDE_COLUMN + GAP if left else 0.0
    right_width = _SIDE_COLUMN + GAP if right else 0.0
    x, span = left_width, width - left_width - right_width

    firebox_above = stove.firebox is Firebox.ABOVE
    top_rows = max((len(column) for column in top), default=0)
    oven_rows = sum(_row_share(row) for row in oven)
    spare = height - (STRIP if firebox_above else 0.0) - 5 * GAP
    share = spare / max(top_rows + oven_rows, 1.0)
    top_height = top_rows * share + 2 * GAP if top else 0.0

    cooktop = QRectF(x, 0.0, span, top_height)
    oven_top = cooktop.bottom() + GAP + (STRIP if firebox_above else 0.0)
    oven_box = QRectF(x, oven_top, span, height - oven_top) if oven else QRectF()
    top_strip, plates = _strip_and_rest(cooktop, stove.firebox)
    oven_name, racks = _strip_and_rest(oven_box, stove.firebox)
    firebox = top_strip
    if firebox_above:
        firebox = QRectF(x, cooktop.bottom() + GAP / 2, span, STRIP)
        plates = cooktop.adjusted(GAP, GAP, -GAP, -GAP)

    patches = _in_columns(top, plates)
    if oven:
        patches |= _in_rows(oven, racks)
    patches |= _stack(left, QRectF(0.0, 0.0, _SIDE_COLUMN, height), _TALLEST)
    patches |= _stack(right, QRectF(width - _SIDE_COLUMN, 0.0, _SIDE_COLUMN, height), _TALLEST)
    return StoveGeometry(cooktop=cooktop, firebox=firebox, oven=oven_box, oven_name=oven_name, patches=patches)


def _strip_and_rest(box: QRectF, firebox: Firebox) -> tuple[QRectF, QRectF]:
    """A narrow strip for words on the firebox's side of a box, and what is left of the box."""
    inner = box.adjusted(GAP, GAP, -GAP, -GAP)
    at_right = firebox is Firebox.RIGHT
    strip = QRectF(inner.right() - STRIP if at_right else inner.left(), inner.top(), STRIP, inner.height())
    rest = QRectF(inner)
    if at_right:
        rest.setRight(strip.left() - GAP)
    else:
        rest.setLeft(strip.right() + GAP)
    return strip, rest


def _side_columns(stove: Stove) -> tuple[list[Spot], list[Spot]]:
    """Spots beside the cooktop: sides where they are, flue away from the firebox, glass at it, room and walls last."""
    left: list[Spot] = []
    right: list[Spot] = []
    near, far = (right, left) if stove.firebox is Firebox.RIGHT else (left, right)
    far.extend(stove.spots_of(SpotKind.FLUE))
    for spot in stove.spots_of(SpotKind.SIDE):
        (left if spot.x < 0.5 else right).append(spot)
    near.extend(stove.spots_of(SpotKind.GLASS))
    (near if len(near) <= len(far) else far).extend(stove.spots_of(SpotKind.ROOM))
    for spot in stove.spots_of(SpotKind.WALL):
        (left if len(left) <= len(right) else right).append(spot)
    return left, right


def _row_share(row: list[Spot]) -> float:
    return _ONE_LINE if len(row) == 1 else 1.0


def _in_columns(columns: list[list[Spot]], box: QRectF) -> dict[str, QRectF]:
    rects: dict[str, QRectF] = {}
    width = (box.width() - GAP * (len(columns) - 1)) / max(len(columns), 1)
    for number, column in enumerate(columns):
        rects |= _stack(column, QRectF(box.left() + number * (width + GAP), box.top(), width, box.height()))
    return rects


def _in_rows(rows: list[list[Spot]], box: QRectF) -> dict[str, QRectF]:
    rects: dict[str, QRectF] = {}
    unit = (box.height() - GAP * (len(rows) - 1)) / sum(_row_share(row) for row in rows)
    y = box.top()
    for row in rows:
        height = unit * _row_share(row)
        width = (box.width() - GAP * (len(row) - 1)) / len(row)
        for number, spot in enumerate(row):
            rects[spot.name] = QRectF(box.left() + number * (width + GAP), y, width, height)
        y += height + GAP
    return rects


def _stack(spots: list[Spot], box: QRectF, tallest: float = 1e9) -> dict[str, QRectF]:
    if not spots:
        return {}
    cell = min((box.height() - GAP * (len(spots) - 1)) / len(spots), tallest)
    return {
        spot.name: QRectF(box.left(), box.top() + row * (cell + GAP), box.width(), cell)
        for row, spot in enumerate(spots)
    }
