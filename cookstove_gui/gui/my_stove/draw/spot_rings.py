"""The readings of one spot so far, each a ring against the top's mean or the oven's centre, the latest at the right."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QPainter, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.desk.my_stove.picture_values import rings_values
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import RIGHT, draw_line, draw_words
from cookstove_gui.gui.widgets.picture import Picture
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.type import SMALL
from cookstove_gui.phrases.my_stove.hot_side import signed_difference

_LEFT, _HIGH, _EDGE, _RING = 46, 84, 12, 4  # px of the design
_LEAST = 11.0  # K, the least reach of the scale to each side


class SpotRings(Picture):
    """One ring a reading."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__("spot_rings", look, (300, _HIGH), parent)
        self.rings: tuple[float, ...] = ()
        self._unit = "F"
        self.values = lambda: rings_values(self.rings, self._unit)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_rings(self, rings: tuple[float, ...], unit: str, said: str) -> None:
        """Draw these differences [K]; `said` reads the picture out."""
        self.rings, self._unit = rings, unit
        self.setAccessibleName(said)
        self.update()

    def draw(self, painter: QPainter, whole: QRectF) -> None:
        """Zero, the two ends of the scale, the rings."""
        if not self.rings:
            return
        theme = self.look.theme
        low, high = min(*self.rings, 0.0), max(*self.rings, 0.0)
        if high - low < 2 * _LEAST:
            middle = 0.5 * (low + high)
            low, high = middle - _LEAST, middle + _LEAST
        box = whole.adjusted(px(_LEFT), px(_EDGE), -px(_EDGE), -px(_EDGE))

        def level(value: float) -> float:
            return box.bottom() - box.height() * (value - low) / (high - low)

        zero = min(max(level(0.0), box.top()), box.bottom())
        draw_line(painter, theme.verdigris, 1.4, QPointF(box.left(), zero), QPointF(box.right(), zero))
        for value in (low, high):
            words = QRectF(0, level(value) - px(12), px(_LEFT - 8), px(24))
            draw_words(painter, words, signed_difference(value, self._unit), theme.soft, side=RIGHT, size=SMALL)
        painter.setPen(QPen(QColor(theme.ink), 1.8))
        for number, value in enumerate(self.rings):
            is_last = number == len(self.rings) - 1
            painter.setBrush(QColor(theme.ink if is_last else theme.ground))
            x = box.left() + box.width() * (number + 0.5) / len(self.rings)
            painter.drawEllipse(QPointF(x, level(value)), px(_RING), px(_RING))
