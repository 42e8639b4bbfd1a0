"""The cooktop with the pots on it: each in its place with its chance, where one goes later, and what is to be moved."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF, QResizeEvent
from PySide6.QtWidgets import QWidget

from cookstove_gui.desk.plan.pots import PotRow, line_of
from cookstove_gui.gui.drawn_stove.face import Face, Pot
from cookstove_gui.gui.drawn_stove.heat_face import heat_face
from cookstove_gui.gui.drawn_stove.spot_painting import RING
from cookstove_gui.gui.drawn_stove.stove_view import StoveView
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.spots import SpotHeat, heat_said
from cookstove_gui.stove.drawn.heat_colours import HOTTEST_AT_LEAST
from cookstove_gui.stove.drawn.shapes import Point
from cookstove_gui.stove.stove import SpotKind, Stove

_LEAST = QSize(300, 170)  # px
_HIGHEST = 400  # px of the design
_STEEPEST = 0.62  # of its width, so that plates are never drawn taller than wide
_ARROW = 5.0  # px, half the width of its shaft


class PotsOnTop(StoveView):
    """The cooktop by itself; the rows beside it say what stands where too."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, "pots_on_top", parent, cooktop_alone=True)
        self._arrows = _Arrows(self)
        self._moves: Sequence[tuple[str, str]] = ()
        self.setAccessibleName("The cooktop with its pots")
        self._fit()
        look.changed.connect(self._fit)

    def minimumSizeHint(self) -> QSize:
        """Room for a pot with its name."""
        return _LEAST

    def sizeHint(self) -> QSize:
        """No more than that, so that the page fits a low window; it takes the room there is."""
        return _LEAST

    def _fit(self) -> None:
        self.setMaximumHeight(max(_LEAST.height(), min(px(_HIGHEST), round(_STEEPEST * self.width()))))

    def show_pots(self, stove: Stove, heats: Mapping[str, SpotHeat], rows: Sequence[PotRow], edge: Edge) -> None:
        """Show the cooktop's heats with the pots that stand there, come later, or are to be moved."""
        shown = replace(stove, spots=stove.spots_of(SpotKind.TOP))
        self.show_stove(shown)
        hottest = max([HOTTEST_AT_LEAST, *(heat.kelvin for heat in heats.values() if heat.kelvin is not None)])
        later = {row.later_at: row for row in rows if row.later_min is not None}
        pots = later | {row.stands: row for row in rows if not row.spot} | {row.spot: row for row in rows}
        faces: dict[str, Face] = {}
        for spot in shown.spots:
            heat, row = heats[spot.name], pots.get(spot.name)
            line = None if row is None else line_of(row, edge)
            pot = None
            if row is not None and line is not None:
                lines = (line.on_pot, line.chance) if line.has_place else (line.on_pot,)
                is_later = line.has_place and not row.spot
                pot = Pot(name=row.task.name, lines=lines, is_later=is_later, has_handle=row.task.in_a_pan)
            face = heat_face(spot, heat, edge.unit, hottest)
            faces[spot.name] = replace(face, captions=("free",), struck="", doubt=0.0, rim="", pot=pot)
            said = "free" if row is None or line is None else f"{row.task.name}, {line.on_pot}, {line.chance}"
            self.patch(spot.name).say(heat_said(spot, heat, edge.unit), said)
        self.show_faces(faces)
        names = [(row.stands, row.spot) for row in rows if row.moves]
        self._moves = [pair for pair in names if set(pair) <= set(faces)]
        self._show_arrows()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The arrows go along."""
        self._fit()  # first: it may be lower than the event says, and before it is seen no other event follows
        super().resizeEvent(event)
        self._show_arrows()

    def _show_arrows(self) -> None:
        places = self.drawn.places
        moves = [(places[one].words.centre, places[other].words.centre) for one, other in self._moves]
        self._arrows.setGeometry(self.rect())
        self._arrows.raise_()
        self._arrows.show_moves(moves, self.drawn.size)


class _Arrows(QWidget):
    """Over the pots: from where one stands to where it should go."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._moves: Sequence[tuple[Point, Point]] = ()
        self._size = 1.0
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def show_moves(self, moves: Sequence[tuple[Point, Point]], size: float) -> None:
        """Show these moves."""
        self._moves, self._size = moves, size
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw them."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(QColor("#FFFFFF"), 2.5 * self._size))
        painter.setBrush(QColor(RING))
        for start, end in self._moves:
            painter.drawPolygon(_arrow(QPointF(*start), QPointF(*end), _ARROW * self._size))
        painter.end()


def _arrow(start: QPointF, end: QPointF, half: float) -> QPolygonF:
    """From the edge of one pot to that of another."""
    line = end - start
    along = line / max(math.hypot(line.x(), line.y()), 1.0)
    across = QPointF(-along.y(), along.x())
    start, end = start + line * 0.30, end - line * 0.30
    neck = end - along * (3.0 * half)
    return QPolygonF(
        [
            start + across * half, neck + across * half, neck + across * (2.2 * half), end,
            neck - across * (2.2 * half), neck - across * half, start - across * half,
        ]
    )  # fmt: skip
