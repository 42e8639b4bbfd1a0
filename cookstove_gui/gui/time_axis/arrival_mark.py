"""The arrival window on the trend plot: when the oven is likely to enter the band."""

from typing import Any

import pyqtgraph as pg
from PySide6.QtCore import QEasingCurve, QRectF, Qt, QVariantAnimation
from PySide6.QtWidgets import QApplication, QGraphicsRectItem

from cookstove_gui.gui.widgets.theme import Theme, colour
from cookstove_gui.gui.widgets.type import BODY, font

_SLIDE_MS = 200


class ArrivalMark:
    """A highlighted stretch of the band with its likeliest moment; it slides when it changes."""

    def __init__(self, plot: Any) -> None:
        self._box = QGraphicsRectItem()
        self._likely = pg.PlotCurveItem()
        self._words = pg.TextItem(anchor=(0, 0))
        self._target: tuple[float, float, float, float, float] | None = None
        self._shown: tuple[float, float, float, float, float] | None = None
        for depth, item in ((5, self._box), (14, self._likely), (15, self._words)):
            item.setZValue(depth)
            plot.addItem(item)
        self._slide = QVariantAnimation(plot)
        self._slide.setDuration(_SLIDE_MS)
        self._slide.setEasingCurve(QEasingCurve.Type.InOutQuad)
        self._slide.setStartValue(0.0)
        self._slide.setEndValue(1.0)
        self._from: tuple[float, float, float, float, float] | None = None
        self._slide.valueChanged.connect(self._step)
        self.hide()

    def dress(self, theme: Theme) -> None:
        """Take the theme's colours."""
        self._box.setPen(pg.mkPen(theme.verdigris, width=2))
        self._box.setBrush(pg.mkBrush(colour(theme.verdigris, 110)))
        self._likely.setPen(pg.mkPen(theme.verdigris, width=3, cap=Qt.PenCapStyle.FlatCap))
        self._words.setColor(colour(theme.verdigris))
        self._words.setFont(font(BODY))

    def hide(self) -> None:
        """Show no window."""
        self._slide.stop()
        self._target = self._shown = None
        self._box.hide()
        self._likely.hide()
        self._words.hide()

    def show_window(self, words: str, *, start: float, likely: float, end: float, low: float, high: float) -> None:
        """Show a window from `start` to `end` on the time axis, between two temperatures in the unit of the plot."""
        self._words.setText(words)
        target = (start, likely, end, low, high)
        if target == self._target:
            return
        self._target, self._from = target, self._shown
        self._box.show()
        self._likely.show()
        self._words.show()
        moves = self._from is not None and QApplication.isEffectEnabled(Qt.UIEffect.UI_AnimateMenu)
        self._slide.stop()
        if moves:
            self._slide.start()
        else:
            self._draw(target)

    def _step(self, share: float) -> None:
        if self._from is not None and self._target is not None:
            pairs = zip(self._from, self._target, strict=True)
            start, likely, end, low, high = (old + (new - old) * share for old, new in pairs)
            self._draw((start, likely, end, low, high))

    def _draw(self, window: tuple[float, float, float, float, float]) -> None:
        self._shown = window
        start, likely, end, low, high = window
        self._box.setRect(QRectF(start, low, max(end - start, 0.5), high - low))
        self._likely.setData([likely, likely], [low, high])
        self._words.setPos(start, low)
