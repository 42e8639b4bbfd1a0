"""Which form of a thing: a key for each, its silhouette over its word."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPainterPath, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QWidget

from cookstove_gui.gui.widgets.form import words
from cookstove_gui.gui.widgets.key import RING, Key, paint_plate, paint_ring
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import SMALL, fix_width, font

_WIDE, _HIGH = 70, 60  # of a plate [px of the design]
_SIGN = (42, 26)


class ShapeKeys(QWidget):
    """The keys of one kind; another kind has other keys."""

    chosen = Signal(str)  # key of a bake

    def __init__(self, caption: str, caption_width: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._keys: list[_ShapeKey] = []
        self._group = QButtonGroup(self)
        self._caption = words(caption, role="soft")
        fix_width(self._caption, caption_width)
        self._line = QHBoxLayout(self)
        self._line.setContentsMargins(0, 0, 0, 0)
        self._line.setSpacing(0)
        self._line.addWidget(self._caption)
        self._line.addSpacing(STEP - RING)
        self._line.addStretch(1)

    @property
    def key(self) -> str:
        """Key of the chosen one; empty where there is nothing to choose."""
        return next((one.bake for one in self._keys if one.isChecked()), "")

    def show_shapes(self, shapes: Sequence[tuple[str, str]], current: str) -> None:
        """Show `(key, word)` pairs, one of them chosen."""
        if [(one.bake, one.text()) for one in self._keys] != list(shapes):
            for old in self._keys:
                self._group.removeButton(old)
                self._line.removeWidget(old)
                old.hide()
                old.deleteLater()
            self._keys = [_ShapeKey(bake, word) for bake, word in shapes]
            for place, made in enumerate(self._keys):
                made.clicked.connect(lambda _checked=False, wanted=made.bake: self.chosen.emit(wanted))
                self._group.addButton(made)
                self._line.insertWidget(2 + place, made)
        for one in self._keys:
            one.setChecked(one.bake == current)
        self.setVisible(bool(shapes))


class _ShapeKey(Key):
    def __init__(self, bake: str, word: str) -> None:
        super().__init__(word)
        self.bake = bake
        self.setObjectName(f"bake_shape_{bake}")
        self.setAccessibleName(f"Shape: {word}")
        self.setToolTip(f"{word}: arrow keys choose another shape")
        self.setCheckable(True)
        self.setAutoDefault(True)

    def sizeHint(self) -> QSize:
        """Room for sign and word."""
        wide = QFontMetricsF(font(SMALL, 600)).horizontalAdvance(self.text()) + px(10)
        return QSize(max(px(_WIDE), round(wide)) + 2 * RING, px(_HIGH) + 2 * RING)

    def minimumSizeHint(self) -> QSize:
        """The same: both are needed."""
        return self.sizeHint()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Plate, silhouette, word, ring of the focus."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        plate, tokens, main = QRectF(self.rect()).adjusted(RING, RING, -RING, -RING), self.palette(), self.isChecked()
        if self.hasFocus():
            paint_ring(painter, plate, tokens.color(QPalette.ColorRole.Highlight))
        ink = tokens.color(QPalette.ColorRole.Window if main else QPalette.ColorRole.ButtonText)
        under = tokens.color(QPalette.ColorRole.ButtonText if main else QPalette.ColorRole.Button)
        paint_plate(painter, plate, under, None if main else tokens.color(QPalette.ColorRole.Mid))
        wide, high = px(_SIGN[0]), px(_SIGN[1])
        _paint_shape(painter, QRectF(plate.center().x() - wide / 2, plate.top() + px(6), wide, high), self.text(), ink)
        painter.setFont(font(SMALL, 600 if main else 400))
        painter.setPen(ink)
        below = QRectF(plate.left(), plate.top() + px(33), plate.width(), px(24))
        painter.drawText(below, int(Qt.AlignmentFlag.AlignCenter), self.text())


def _paint_shape(painter: QPainter, box: QRectF, word: str, ink: QColor) -> None:
    """The silhouette of that word, in a box 42 wide and 26 high; an unknown one is a mound."""
    painter.save()
    painter.translate(box.topLeft())
    painter.scale(box.width() / 42.0, box.height() / 26.0)
    painter.setPen(QPen(ink, 2.0, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    _SHAPES.get(word, _mound)(painter)
    painter.restore()


def _tin(painter: QPainter) -> None:
    path = QPainterPath(QPointF(5, 12))
    path.cubicTo(QPointF(2, 1), QPointF(40, 1), QPointF(37, 12))
    painter.drawPath(path)
    painter.drawLine(QPointF(4, 12), QPointF(38, 12))
    painter.drawPolyline([QPointF(6, 12), QPointF(9, 24), QPointF(33, 24), QPointF(36, 12)])


def _mound(painter: QPainter) -> None:
    path = QPainterPath(QPointF(5, 24))
    path.cubicTo(QPointF(3, -4), QPointF(39, -4), QPointF(37, 24))
    path.closeSubpath()
    painter.drawPath(path)


def _round(painter: QPainter) -> None:
    _mound(painter)
    painter.drawLine(QPointF(16, 9), QPointF(26, 17))
    painter.drawLine(QPointF(26, 9), QPointF(16, 17))


def _rolled(painter: QPainter) -> None:
    painter.drawRoundedRect(QRectF(3, 6, 36, 18), 9, 9)
    for x in (13.0, 21.0, 29.0):
        painter.drawLine(QPointF(x, 6), QPointF(x, 24))


def _bone_in(painter: QPainter) -> None:
    painter.drawEllipse(QRectF(2, 4, 27, 20))
    painter.drawLine(QPointF(29, 12), QPointF(38, 8))
    painter.drawLine(QPointF(29, 16), QPointF(38, 12))
    painter.drawArc(QRectF(35, 5, 6, 9), -100 * 16, 220 * 16)


def _whole_bird(painter: QPainter) -> None:
    path = QPainterPath(QPointF(4, 24))
    path.cubicTo(QPointF(0, 2), QPointF(26, 0), QPointF(31, 24))
    path.closeSubpath()
    painter.drawPath(path)
    painter.drawLine(QPointF(27, 14), QPointF(38, 9))
    painter.drawLine(QPointF(30, 20), QPointF(38, 14))


def _stuffed_bird(painter: QPainter) -> None:
    _whole_bird(painter)
    for x, y in ((11.0, 18.0), (16.0, 14.0), (20.0, 19.0)):
        painter.drawPoint(QPointF(x, y))


_SHAPES: dict[str, Callable[[QPainter], None]] = {
    "tin": _tin,
    "round": _round,
    "rolled": _rolled,
    "bone in": _bone_in,
    "whole": _whole_bird,
    "stuffed": _stuffed_bird,
}
