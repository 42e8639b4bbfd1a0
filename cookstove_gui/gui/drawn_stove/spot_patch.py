"""One spot of the drawn stove as a button: its outline is what is pressed, and what it shows is also said."""

from PySide6.QtCore import QEasingCurve, QPoint, QRect, Qt, QVariantAnimation, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QRegion
from PySide6.QtWidgets import QAbstractButton, QWidget

from cookstove_gui.gui.drawn_stove.face import Face
from cookstove_gui.gui.drawn_stove.spot_painting import paint_face, polygon
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.stove.drawn.heat_colours import ON_IRON, PLATE
from cookstove_gui.stove.drawn.layout import Manner, Place
from cookstove_gui.stove.drawn.shapes import Box, Quad, bounds

FILL_MS = 200  # in which a patch takes the colour of a number just read
_ARROWS = {
    Qt.Key.Key_Left: (-1.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0),
    Qt.Key.Key_Up: (0.0, -1.0),
    Qt.Key.Key_Down: (0.0, 1.0),
}


class SpotPatch(QAbstractButton):
    """A pressable patch that shows a face."""

    stepped = Signal(float, float)  # an arrow key: so far right, so far down
    typed = Signal(QKeyEvent)  # a digit, which is meant for this spot

    def __init__(self, name: str, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.name = name
        self._look = look
        self._place = Place(Quad((0, 0), (0, 0), (0, 0), (0, 0)), Box(0, 0, 0, 0), Manner.PLATE)
        self._size = 1.0
        self._face = Face()
        self._fill: QColor | None = None  # while it changes
        self._change = QVariantAnimation(self)
        self._change.setEasingCurve(QEasingCurve.Type.OutCubic)
        self._change.valueChanged.connect(self._show_fill)
        self.setObjectName(f"spot_{name}")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    @property
    def face(self) -> Face:
        """What it shows."""
        return self._face

    @property
    def place(self) -> Place:
        """Where it lies in the drawing."""
        return self._place

    def set_place(self, place: Place, size: float) -> None:
        """Lie here, in a stove drawn at a size."""
        self._place, self._size = place, size
        box = bounds(place.shape)
        room = QRect(int(box.x) - 1, int(box.y) - 1, int(box.width) + 4, int(box.height) + 4)
        drawing = self.parentWidget()
        room = room.intersected(drawing.rect()) if drawing is not None else room
        self.setGeometry(room)
        if place.manner is Manner.PAGE:
            self.clearMask()
        else:
            outline = polygon(place.shape).translated(-room.x(), -room.y()).toPolygon()
            region = QRegion(outline)
            # One pixel more all round, for the soft edge of the painted outline.
            for step in (QPoint(1, 0), QPoint(-1, 0), QPoint(0, 1), QPoint(0, -1)):
                region += QRegion(outline).translated(step)
            self.setMask(region)
        self.update()

    def show_face(self, face: Face, *, slowly: bool = False) -> None:
        """Show a face; slowly, its fill goes over to the new colour before the eye."""
        before = self._colours()[0]
        if face == self._face:
            return
        self._face = face
        self._change.stop()
        self._fill = None
        if slowly and self._look.moves and self.isVisible():
            self._change.setStartValue(before)
            self._change.setEndValue(self._colours()[0])
            self._change.setDuration(FILL_MS)
            self._change.start()
        self.update()

    def say(self, name: str, signs: str) -> None:
        """What is read out of it: the spot and its heat; the signs on it."""
        self.setAccessibleName(name)
        self.setAccessibleDescription(signs)
        self.setToolTip(plain_tip(f"{name}; {signs}" if signs else name))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows go to the neighbour, Enter presses, digits are meant for the spot's number."""
        way = _ARROWS.get(Qt.Key(event.key()))
        if way is not None and not event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier:
            self.stepped.emit(*way)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif event.text().isdigit():
            self.typed.emit(event)
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw it."""
        fill, ink = self._colours()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.translate(-self.x(), -self.y())
        colours = (self._fill or fill, ink)
        paint_face(painter, self._place, self._face, self._size, colours, has_focus=self.hasFocus())
        painter.end()

    def _colours(self) -> tuple[QColor, QColor]:
        if self._place.manner is Manner.PAGE:
            return QColor(Qt.GlobalColor.transparent), QColor(self._look.theme.ink)
        return QColor(self._face.fill or PLATE), QColor(self._face.ink or ON_IRON)

    def _show_fill(self, value: object) -> None:
        self._fill = value if isinstance(value, QColor) else None
        self.update()
