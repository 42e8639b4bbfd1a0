"""The clocks of now and of the table over the picture of a supper, each on a plate over its line."""

from dataclasses import dataclass

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from cookstove_gui.desk.plan.supper_shown import SupperShown
from cookstove_gui.gui.drawn_stove.lettering import advance, write_centred
from cookstove_gui.gui.plan.lane import Lane
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import Theme
from cookstove_gui.gui.widgets.type import SMALL

_HIGH, _BESIDE, _APART = 23, 18, 4  # of a plate, beside its words, between two [px of the design]


@dataclass(frozen=True, slots=True, kw_only=True)
class Plate:
    """A clock on its plate, and the line below it."""

    x: float  # of the line
    line: float  # its width [px of the design]
    box: QRectF
    words: str


def plates_of(lane: Lane, shown: SupperShown, top: float) -> list[Plate]:
    """The table's, and now's where it is on the axis; the table's makes room where both are near."""
    table = _plate(lane, lane.x(shown.table), 3.0, f"table {shown.edge.clock(shown.table)}", top)
    if not shown.start <= 0.0 <= shown.end:
        return [table]
    now = _plate(lane, lane.x(0.0), 1.6, shown.edge.clock(0.0), top)
    near = table.box.adjusted(-px(_APART), 0, px(_APART), 0)
    if near.intersects(now.box):
        left = now.box.left() - px(_APART) - table.box.width()
        is_left = left >= lane.box.left() and (table.x <= now.x or now.box.right() + near.width() > lane.box.right())
        table.box.moveLeft(left if is_left else now.box.right() + px(_APART))
    return [table, now]


def _plate(lane: Lane, x: float, line: float, words: str, top: float) -> Plate:
    wide = advance(words, px(SMALL), 600) + px(_BESIDE)
    left = min(max(x - wide / 2, lane.box.left()), lane.box.right() - wide)
    return Plate(x=x, line=line, box=QRectF(left, top, wide, px(_HIGH)), words=words)


def paint_plate(painter: QPainter, plate: Plate, theme: Theme) -> None:
    """The plate and its clock."""
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(theme.ink))
    painter.drawRoundedRect(plate.box, 3, 3)
    painter.setPen(QColor(theme.ground))
    write_centred(painter, plate.box.center().x(), plate.box.center().y(), plate.words, px(SMALL), 600)
