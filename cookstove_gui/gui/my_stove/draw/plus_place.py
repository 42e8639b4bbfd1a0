"""A place in the edited drawing where something may be added: dashed, with a plus, pressed like a key."""

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QColor, QFocusEvent, QKeyEvent, QPainter, QPaintEvent, QPen, QPolygonF, QRegion
from PySide6.QtWidgets import QAbstractButton, QWidget

from cookstove_gui.gui.drawn_stove.lettering import fitting, write_centred
from cookstove_gui.gui.drawn_stove.spot_painting import polygon
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.stove.drawn.heat_colours import ON_IRON
from cookstove_gui.stove.drawn.shapes import bounds
from cookstove_gui.stove.drawn.spare import Spare

_PLUS, _LINE, _SIZES = 8.0, 20.0, (16.0, 15.0, 14.0, 12.0)  # px of the design: half a plus, a line of words
_IN = 3.0
_STEPS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1}


class PlusPlace(QAbstractButton):
    """Press it, or Enter on it, and what it says is added."""

    stepped = Signal(int)  # an arrow key: to the place before or after

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self._spare: Spare | None = None
        self._size = 1.0
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    @property
    def spare(self) -> Spare | None:
        """What it adds."""
        return self._spare

    def show_spare(self, spare: Spare, size: float) -> None:
        """Lie where that may be added, in a stove drawn at a size."""
        self._spare, self._size = spare, size
        box = bounds(spare.shape)
        self.setGeometry(int(box.x), int(box.y), round(box.width) + 1, round(box.height) + 1)
        self.setMask(QRegion(polygon(spare.shape).translated(-self.x(), -self.y()).toPolygon()))
        self.setObjectName(f"add_{spare.adds.kind}_{spare.adds.what}")
        self.setAccessibleName(spare.adds.said)
        self.setToolTip(plain_tip(spare.adds.said))
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter presses, arrows go to the next place."""
        step = _STEPS.get(Qt.Key(event.key()))
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif step is not None and not event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier:
            self.stepped.emit(step)
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show where the keyboard is."""
        super().focusInEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The dashed outline, the plus, and its words below."""
        if self._spare is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, size = self._look.theme, self._size
        ink = QColor(theme.ink if self._spare.is_on_page else ON_IRON)
        outline = polygon(self._spare.shape).translated(-self.x(), -self.y())
        inside, middle = _shrunk(outline), outline.boundingRect().center()
        if self.hasFocus():
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(theme.cobalt))
            painter.drawPolygon(inside)
            ink = QColor(theme.ground)
        pen = QPen(ink, 1.6)
        pen.setDashPattern([3.0, 3.0])
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPolygon(inside)
        room = inside.boundingRect()
        words = self._spare.words.split() if room.height() > 3 * _LINE * size else []
        top = middle.y() - 0.5 * _LINE * size * len(words)
        painter.setPen(QPen(ink, 2.0 * size))
        arm = _PLUS * size
        painter.drawLine(QPointF(middle.x() - arm, top), QPointF(middle.x() + arm, top))
        painter.drawLine(QPointF(middle.x(), top - arm), QPointF(middle.x(), top + arm))
        painter.setPen(ink)
        for place, word in enumerate(words, start=1):
            pixels = fitting(word, room.width() - 6, [one * size for one in _SIZES])
            write_centred(painter, middle.x(), top + _LINE * size * (place + 0.2), word, pixels)
        painter.end()


def _shrunk(outline: QPolygonF) -> QPolygonF:
    """A little within its room, so that neighbours' dashes keep apart."""
    box, middle = outline.boundingRect(), outline.boundingRect().center()
    across, down = (max(1.0 - 2 * _IN / length, 0.0) for length in (box.width(), box.height()))
    return QPolygonF(
        [
            QPointF(middle.x() + (at.x() - middle.x()) * across, middle.y() + (at.y() - middle.y()) * down)
            for at in outline.toList()
        ]
    )
