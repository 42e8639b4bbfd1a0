"""The cook's own stove, drawn from above, with the oven opened out below the cooktop."""

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.advice import advise
from cookstove_gui.desk import Changed
from cookstove_gui.desk.cook.spot_heats import spot_heats
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.drawn_stove.spot_patch import SpotPatch
from cookstove_gui.gui.drawn_stove.stove_geometry import StoveGeometry, stove_geometry
from cookstove_gui.gui.widgets.heat_colours import HOTTEST_AT_LEAST
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import BODY, font
from cookstove_gui.phrases.entries import opening_words
from cookstove_gui.stove.entries import Kind, door_is_open, fraction_open

_ARROWS = {
    Qt.Key.Key_Left: (-1.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0),
    Qt.Key.Key_Up: (0.0, -1.0),
    Qt.Key.Key_Down: (0.0, 1.0),
}


class StoveDrawing(QWidget):
    """Every spot as a patch coloured by its heat now; arrow keys and clicks light a spot up."""

    spot_chosen = Signal(str)

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._link = link
        self._desk = link.desk
        self._look = look
        self._patches: dict[str, SpotPatch] = {}
        self._layout: StoveGeometry | None = None
        self._has_colours = False
        self._firebox_words = "firebox"
        self._door_words = "oven"
        self._door_open = False
        self.setObjectName("stove_drawing")
        self.setAccessibleName("Drawing of the stove")
        self.setToolTip("Arrow keys or a click choose the spot to read")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(330, 120)
        link.changed.connect(self._show)
        look.changed.connect(self.update)
        self._show_stove()
        self._show_heats()

    def sizeHint(self) -> QSize:
        """Room for two rows of patches and the oven."""
        return QSize(420, 330)

    def patch(self, name: str) -> SpotPatch:
        """The patch of a spot."""
        return self._patches[name]

    def bring_colours(self) -> None:
        """Show heats from now on; their colours need the plotting library, which is loaded after the first paint."""
        self._has_colours = True
        self._show_heats()

    def _show(self, changed: Changed) -> None:
        if changed.stove:
            self._show_stove()
        if changed.stove or changed.log or changed.standing or changed.settings or changed.session:
            self._show_heats()
        if changed.stove or changed.walk or changed.standing or changed.session:
            self._show_marks()

    def _show_stove(self) -> None:
        spots = {spot.name: spot for spot in self._desk.stove.spots}
        for name in [name for name, patch in self._patches.items() if spots.get(name) != patch.spot]:
            gone = self._patches.pop(name)
            gone.hide()
            gone.deleteLater()
        for name, spot in spots.items():
            if name not in self._patches:
                made = SpotPatch(spot, self._look, self)
                made.clicked.connect(lambda _checked=False, wanted=name: self.spot_chosen.emit(wanted))
                self._patches[name] = made
                made.show()
        self._place()
        self._show_marks()

    def _show_heats(self) -> None:
        if not self._has_colours:
            return
        heats = spot_heats(self._desk)
        known = [heat.kelvin for heat in heats.values() if heat.kelvin is not None]
        hottest = max([HOTTEST_AT_LEAST, *known])
        for name, patch in self._patches.items():
            patch.show_heat(heats[name], self._desk.unit, hottest)
        self._show_fire()

    def _show_fire(self) -> None:
        latest = {entry.kind: entry for entry in self._desk.entries}
        air, door = latest.get(Kind.AIR), latest.get(Kind.OVEN_DOOR)
        self._firebox_words = "firebox" if air is None else f"firebox, air {opening_words(fraction_open(air))}"
        self._door_open = door is not None and door_is_open(door)
        self._door_words = "oven, door open" if self._door_open else "oven"
        self.update()

    def _show_marks(self) -> None:
        standing = self._desk.standing
        wanted = advise(standing).reading if standing is not None and self._desk.is_live else None
        worth = "" if wanted is None else wanted.spot
        lit = self._desk.walk.spot.name
        for name, patch in self._patches.items():
            patch.show_marks(is_lit=name == lit, is_worth_reading=name == worth)

    def _place(self) -> None:
        self._layout = stove_geometry(self._desk.stove, self.width(), self.height())
        for name, patch in self._patches.items():
            patch.setGeometry(self._layout.patches[name].toRect())
        self.update()

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Place the patches."""
        self._place()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrow keys light up the nearest spot in that direction; other keys go to the page."""
        way = _ARROWS.get(Qt.Key(event.key()))
        if way is None:
            super().keyPressEvent(event)
            return
        wanted = self._nearest(*way)
        if wanted:
            self.spot_chosen.emit(wanted)

    def _nearest(self, right: float, down: float) -> str:
        start = self._patches[self._desk.walk.spot.name].geometry().center()
        best, best_cost = "", float("inf")
        for name, patch in self._patches.items():
            step = patch.geometry().center() - start
            along = step.x() * right + step.y() * down
            across = abs(step.x() * down) + abs(step.y() * right)
            if along > 4 and along + 2 * across < best_cost:
                best, best_cost = name, along + 2 * across
        return best

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the iron behind the patches."""
        if self._layout is None:
            return
        theme, layout = self._look.theme, self._layout
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(colour(theme.line), 1))
        painter.setBrush(colour(theme.plate))
        if not layout.cooktop.isEmpty():
            painter.drawRoundedRect(layout.cooktop.adjusted(1, 1, -1, -1), 8, 8)
        if not layout.oven.isEmpty():
            painter.drawRoundedRect(layout.oven.adjusted(1, 1, -1, -1), 4, 4)
        painter.setBrush(colour(theme.ground))
        painter.drawRoundedRect(layout.firebox, 4, 4)
        painter.setFont(font(BODY))
        painter.setPen(colour(theme.ember))
        _write_along(painter, layout.firebox, self._firebox_words)
        if not layout.oven.isEmpty():
            painter.setPen(colour(theme.ember if self._door_open else theme.soft))
            _write_along(painter, layout.oven_name, self._door_words)
        if self.hasFocus():
            painter.setPen(QPen(colour(theme.cobalt), 3))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -2, -2), 6, 6)
        painter.end()


def _write_along(painter: QPainter, box: QRectF, words: str) -> None:
    """Write along the longer side; where space is short, only what comes before the comma."""
    centre = Qt.AlignmentFlag.AlignCenter
    length = max(box.width(), box.height())
    fits = painter.fontMetrics().horizontalAdvance(words) <= length
    shown = words if fits else words.partition(",")[0]
    painter.save()
    painter.translate(box.center())
    if box.height() > box.width():
        painter.rotate(-90)
    breadth = min(box.width(), box.height())
    painter.drawText(QRectF(-length / 2, -breadth / 2, length, breadth), centre, shown)
    painter.restore()
