"""The oven's readings in one session, with another's over them, each counted from its first entry."""

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.desk.cook.oven_lines import oven_readings
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import font
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import degrees

_SMALL = 16


class OvenCurves(QWidget):
    """One or two sessions' ovens against the time since their first entry."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.setObjectName("oven_curves")
        self._plot = pg.PlotWidget(parent=self)
        self._plot.setMenuEnabled(False)
        self._plot.hideButtons()
        self._plot.setMouseEnabled(x=False, y=False)
        self._plot.setFrameShape(self._plot.Shape.NoFrame)
        self._plot.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._plot.setAntialiasing(True)
        self._left, self._bottom = self._plot.getAxis("left"), self._plot.getAxis("bottom")
        for axis in (self._left, self._bottom):
            axis.setStyle(tickFont=font(_SMALL), tickLength=-5, autoExpandTextSpace=False)
            axis.enableAutoSIPrefix(False)
        self._left.setWidth(54)
        self._bottom.setHeight(30)
        self._curves = (pg.PlotDataItem(), pg.PlotDataItem())
        for curve in self._curves:
            self._plot.addItem(curve)
        self.setMinimumHeight(150)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Ignored)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._plot)
        look.changed.connect(self._dress)
        self._dress()

    def _dress(self) -> None:
        theme = self._look.theme
        self._plot.setBackground(theme.ground)
        for axis in (self._left, self._bottom):
            axis.setPen(pg.mkPen(theme.faint))
            axis.setTextPen(pg.mkPen(theme.soft))
        pens = (
            pg.mkPen(theme.ink, width=3),
            pg.mkPen(theme.ember, width=2.5, style=Qt.PenStyle.DashLine),
        )
        for curve, pen, shape in zip(self._curves, pens, ("o", "d"), strict=True):
            curve.setPen(pen)
            curve.setSymbol(shape)
            curve.setSymbolSize(9)
            curve.setSymbolPen(pg.mkPen(pen.color(), width=2))
            curve.setSymbolBrush(colour(theme.ground))

    def show_sessions(self, stove: Stove, sessions: tuple[Session, ...], unit: str) -> None:
        """Show the oven of up to two sessions."""
        highest, lowest, longest = [], [], [30.0]
        for number, curve in enumerate(self._curves):
            minutes, kelvin = oven_readings(stove, sessions[number]) if number < len(sessions) else _NOTHING
            heat = degrees(kelvin, unit)
            curve.setData(minutes, heat)
            if len(heat):
                highest.append(float(heat.max()))
                lowest.append(float(heat.min()))
                longest.append(float(minutes.max()))
        self._plot.setVisible(bool(highest))  # bare axes say nothing
        self._plot.setXRange(0.0, max(longest), padding=0.03)
        self._plot.setYRange(min(lowest, default=50.0), max(highest, default=450.0), padding=0.08)
        self._bottom.setTicks([_hours(max(longest))])
        self.setAccessibleName(f"Oven readings of {' and of '.join(session.title for session in sessions)}")


def _hours(longest: float) -> list[tuple[float, str]]:
    steps = (30.0, 60.0, 120.0, 240.0, 720.0)
    step = next((one for one in steps if longest / one <= 7), steps[-1])
    return [(place, _hour_text(place)) for place in np.arange(0.0, longest + 1.0, step)]


def _hour_text(minutes: float) -> str:
    hours, rest = divmod(round(minutes), 60)
    return f"{hours}:{rest:02d} h"


_NOTHING = (np.zeros(0), np.zeros(0))
