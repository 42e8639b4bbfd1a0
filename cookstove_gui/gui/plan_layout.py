"""Where the parts of a stove go on its drawn plan: pure geometry from a stove and a size."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF

from cookstove_gui.stove.stove import Firebox, Spot, SpotKind, Stove

GAP = 6.0
STRIP = 28.0  # wide enough for one word along it
HEADING = 26.0
_SIDE_COLUMN = 84.0
_SAME_COLUMN = 0.16  # spots nearer than this across the stove stand in one column
_OVEN_ROW_SHARE = 0.62  # an oven row holds one line, a cooktop row two


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanLayout:
    """Rectangles in pixels; a part the stove does not have is empty."""

    cooktop: QRectF
    firebox: QRectF
    oven: QRectF
    oven_heading: QRectF
    patches: dict[str, QRectF]


def columns_of(spots: Sequence[Spot]) -> list[list[Spot]]:
    """Spots gathered into columns from left to right, each from the back to the front."""
    columns: list[list[Spot]] = []
    for spot in sorted(spots, key=lambda one: one.x):
        if columns and spot.x - columns[-1][0].x < _SAME_COLUMN:
            columns[-1].append(spot)
        else:
            columns.append([spot])
    return [sorted(column, key=lambda one: -one.y) for column in columns]


def plan_layout(stove: Stove, width: float, height: float) -> PlanLayout:
    """The plan of a stove seen from above, with the oven opened out below the cooktop."""
    top = columns_of(stove.spots_of(SpotKind.TOP))
    oven = columns_of(stove.spots_of(SpotKind.OVEN))
    left, right = _side_columns(stove)
    left_width = _SIDE_COLUMN + GAP if left else 0.0
    right_width = _SIDE_COLUMN + GAP if right else 0.0
    x, span = left_width, width - left_width - right_width

    firebox_above = stove.firebox is Firebox.ABOVE
    top_rows = max((len(column) for column in top), default=0)
    oven_rows = max((len(column) for column in oven), default=0)
    spare = height - (HEADING if oven else 0.0) - (STRIP if firebox_above else 0.0) - 5 * GAP
    share = spare / max(top_rows + oven_rows * _OVEN_ROW_SHARE, 1.0)
    top_height = top_rows * share + 2 * GAP if top else 0.0

    cooktop = QRectF(x, 0.0, span, top_height)
    plates = cooktop.adjusted(GAP, GAP, -GAP, -GAP)
    if firebox_above:
        firebox = QRectF(x, cooktop.bottom() + GAP / 2, span, STRIP)
    elif stove.firebox is Firebox.LEFT:
        firebox = QRectF(x + GAP, GAP, STRIP, top_height - 2 * GAP)
        plates.setLeft(firebox.right() + GAP)
    else:
        firebox = QRectF(x + span - GAP - STRIP, GAP, STRIP, top_height - 2 * GAP)
        plates.setRight(firebox.left() - GAP)
    oven_top = (firebox.bottom() if firebox_above else cooktop.bottom()) + GAP
    oven_box = QRectF(x, oven_top, span, height - oven_top) if oven else QRectF()
    heading = QRectF(oven_box.left() + 2 * GAP, oven_box.top() + 1, oven_box.width() - 4 * GAP, HEADING)

    patches = _grid(top, plates)
    if oven:
        patches |= _grid(oven, oven_box.adjusted(GAP, HEADING, -GAP, -GAP))
    patches |= _stack(left, QRectF(0.0, 0.0, _SIDE_COLUMN, height))
    patches |= _stack(right, QRectF(width - _SIDE_COLUMN, 0.0, _SIDE_COLUMN, height))
    return PlanLayout(cooktop=cooktop, firebox=firebox, oven=oven_box, oven_heading=heading, patches=patches)


def _side_columns(stove: Stove) -> tuple[list[Spot], list[Spot]]:
    """Spots beside the cooktop: sides where they are, flue away from the firebox, glass at it, room last."""
    left: list[Spot] = []
    right: list[Spot] = []
    near, far = (right, left) if stove.firebox is Firebox.RIGHT else (left, right)
    far.extend(stove.spots_of(SpotKind.FLUE))
    for spot in stove.spots_of(SpotKind.SIDE):
        (left if spot.x < 0.5 else right).append(spot)
    near.extend(stove.spots_of(SpotKind.GLASS))
    (near if len(near) <= len(far) else far).extend(stove.spots_of(SpotKind.ROOM))
    return left, right


def _grid(columns: list[list[Spot]], box: QRectF) -> dict[str, QRectF]:
    if not columns:
        return {}
    # A column of three one-line cells has number and age side by side, so it gets more of the width.
    weights = [1.0 + 0.25 * max(len(column) - 2, 0) for column in columns]
    unit = (box.width() - GAP * (len(columns) - 1)) / sum(weights)
    rects: dict[str, QRectF] = {}
    x = box.left()
    for column, weight in zip(columns, weights, strict=True):
        cell = (box.height() - GAP * (len(column) - 1)) / len(column)
        for row, spot in enumerate(column):
            rects[spot.name] = QRectF(x, box.top() + row * (cell + GAP), unit * weight, cell)
        x += unit * weight + GAP
    return rects


def _stack(spots: list[Spot], box: QRectF) -> dict[str, QRectF]:
    if not spots:
        return {}
    cell = min((box.height() - GAP * (len(spots) - 1)) / len(spots), 112.0)
    return {
        spot.name: QRectF(box.left(), box.top() + row * (cell + GAP), box.width(), cell)
        for row, spot in enumerate(spots)
    }
