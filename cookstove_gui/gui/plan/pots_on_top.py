"""The cooktop with the pots on it: each in its place with its chance, where one goes later, and what is to be moved."""

import math

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.desk.plan.pots import PotRow
from cookstove_gui.gui.drawn_stove.layout import Place, StoveLayout, cooktop_layout
from cookstove_gui.gui.drawn_stove.lettering import fitting, write_centred
from cookstove_gui.gui.drawn_stove.spot_painting import lid, polygon
from cookstove_gui.gui.widgets.heat_colours import heat_colour, heat_ink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.phrases.edge import Edge, whole
from cookstove_gui.phrases.plan.pots import pot_chance
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import degrees

_LEAST = QSize(300, 170)
_BODY, _SMALL = 20.0, 16.0
_ARROW = 5.0  # px, half the width of its shaft


class PotsOnTop(QWidget):
    """Drawn only; what stands where is said by the rows beside it."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._stove: Stove | None = None
        self._heats: dict[str, float] = {}
        self._rows: tuple[PotRow, ...] = ()
        self._edge: Edge | None = None
        self._hottest = 0.0
        self.setObjectName("pots_on_top")
        self.setAccessibleName("The cooktop with its pots")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        look.changed.connect(self.update)

    def minimumSizeHint(self) -> QSize:
        """Room for a pot with its name."""
        return _LEAST

    def sizeHint(self) -> QSize:
        """As designed."""
        return QSize(560, 330)

    def show_pots(
        self, stove: Stove, heats: dict[str, float], rows: tuple[PotRow, ...], edge: Edge, hottest: float
    ) -> None:
        """The cooktop's heats [K], the pots, and the hottest this stove has been [K]."""
        self._stove, self._heats, self._rows, self._edge, self._hottest = stove, heats, rows, edge, hottest
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Iron, plates in the colour of their heat, pots, arrows."""
        if self._stove is None or self._edge is None:
            return
        drawn = cooktop_layout(self._stove, self.width(), min(self.height(), 0.6 * self.width()))
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(self._look.theme.iron))
        painter.drawPolygon(polygon(drawn.cooktop.iron))
        painter.drawRoundedRect(QRectF(*drawn.cooktop.lip), 4, 4)
        pots = {row.spot: row for row in self._rows if row.spot in drawn.places}
        standing = {row.stands: row for row in self._rows if row.stands in drawn.places and not row.spot}
        size = max(drawn.size, 0.5)
        for name, place in drawn.places.items():
            self._plate(painter, name, place, size, pots.get(name) or standing.get(name))
        for row in self._rows:
            if row.moves and row.stands in drawn.places and row.spot in drawn.places:
                self._arrow(painter, drawn, row, size)
        painter.end()

    def _plate(self, painter: QPainter, name: str, place: Place, size: float, row: PotRow | None) -> None:
        heat = self._heats.get(name)
        unit = self._edge.unit if self._edge else "F"
        fill = heat_colour(heat, self._hottest) if heat is not None else self._look.theme.iron
        ink = QColor(heat_ink(heat, self._hottest) if heat is not None else "#E9EAE5")
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(fill))
        painter.drawPolygon(polygon(place.shape))
        told = f"≈{whole(degrees(heat, unit))}" if heat is not None else "–"
        x, y = place.words.centre
        room = place.words.width
        if row is None:
            painter.setPen(ink)
            write_centred(painter, x, y - 0.5 * _BODY * size, told, fitting(told, room, [30 * size, _BODY * size]))
            write_centred(painter, x, y + 0.9 * _SMALL * size, "free", _SMALL * size)
            return
        below = max(_SMALL * size, 11.0)
        ring = lid(place.words).adjusted(0, 0, 0, -below)
        ground, words = QColor(self._look.theme.ground), QColor(self._look.theme.ink)
        painter.setBrush(ground if row.spot else Qt.BrushStyle.NoBrush)
        pen = QPen(QColor("#000000") if row.spot else ink, 2.4 * size)
        if not row.spot:
            pen.setStyle(Qt.PenStyle.DashLine)
        painter.setPen(pen)
        painter.drawEllipse(ring)
        painter.setPen(words if row.spot else ink)
        middle, wide = ring.center().y(), 0.86 * ring.width()
        name_size = fitting(row.task.name, wide, [_BODY * size, _SMALL * size, 12 * size, 10 * size], 600)
        second = pot_chance(row.chance) if row.spot else row.why_not
        write_centred(painter, x, middle - 0.62 * name_size, row.task.name, name_size, 600)
        small = fitting(second, wide, [_SMALL * size, 12 * size, 10 * size])
        write_centred(painter, x, middle + 0.72 * small, second, small)
        painter.setPen(ink)
        write_centred(painter, x, place.words.bottom - 0.55 * below, told, below)

    def _arrow(self, painter: QPainter, drawn: StoveLayout, row: PotRow, size: float) -> None:
        """From where it stands to where it should go."""
        start, end = QPointF(*drawn.places[row.stands].words.centre), QPointF(*drawn.places[row.spot].words.centre)
        line = end - start
        length = math.hypot(line.x(), line.y())
        if length < 1.0:
            return
        along = line / length
        across = QPointF(-along.y(), along.x())
        half, head = _ARROW * size, 3.0 * _ARROW * size
        start, end = start + along * (0.18 * length), end - along * (0.30 * length)
        neck = end - along * head
        shape = QPolygonF(
            [
                start + across * half, neck + across * half, neck + across * (2.2 * half), end,
                neck - across * (2.2 * half), neck - across * half, start - across * half,
            ]
        )  # fmt: skip
        painter.setPen(QPen(QColor("#FFFFFF"), 2.5 * size))
        painter.setBrush(QColor("#0F3672"))
        painter.drawPolygon(shape)
