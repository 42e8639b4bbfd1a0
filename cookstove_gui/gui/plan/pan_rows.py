"""The pans to choose from: each with its shape, its minutes and their range, all on one scale."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QButtonGroup, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.desk.plan.water import PanWater
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.gui.plan.pan_shapes import paint_pan
from cookstove_gui.gui.widgets.key import paint_ring
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.pen import LEFT, MIDDLE, draw_line, draw_words
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.gui.widgets.type import PLACE, SMALL
from cookstove_gui.phrases.plan.water import minutes_said, minutes_words

_HIGH, _LOW = 52, 40  # of a row as designed, and at least [px of the design]
_SCALE_HIGH = 26
_SIGN = QRectF(18, 0, 44, 33)
_WORDS, _TRACK, _RIGHT = 72, 176, 12  # where the words and the scale begin, room at its right
_SCALES = ((20.0, 5.0), (60.0, 15.0), (180.0, 60.0))  # min: its end, its marks


class PanRows(QWidget):
    """Up and down choose; so does a press."""

    chosen = Signal(str)  # a pan's key

    def __init__(self, look: Look, keys: Sequence[str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("water_pans")
        self._group = QButtonGroup(self)
        self._rows = {key: _PanRow(look, key) for key in keys}
        self._scale = _Scale(look)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for key, row in self._rows.items():
            self._group.addButton(row)
            row.clicked.connect(lambda _checked=False, wanted=key: self.chosen.emit(wanted))
            column.addWidget(row, 100)
        column.addWidget(self._scale)
        column.addStretch(1)
        self.show_pans(())

    @property
    def key(self) -> str:
        """Key of the chosen pan."""
        return next((key for key, row in self._rows.items() if row.isChecked()), "")

    def show_key(self, key: str) -> None:
        """Show which is chosen."""
        self._rows[key].setChecked(True)

    def show_pans(self, pans: Sequence[PanWater]) -> None:
        """Show the minutes of each; none while there is no answer."""
        known = {pan.key: pan.minutes for pan in pans}
        longest = max((one.p90 or one.p50 or 0.0 for one in known.values()), default=0.0)
        end, step = next((scale for scale in _SCALES if longest <= scale[0]), _SCALES[-1])
        for key, row in self._rows.items():
            row.show_minutes(known.get(key), end)
        self._scale.show_scale(end, step, shown=bool(known))


def _across(width: float, minutes: float, end: float) -> float:
    """Pixels of a minute on the scale that all rows share; what lies beyond it, at its end."""
    left = px(_TRACK)
    return left + (width - left - px(_RIGHT)) * min(max(minutes, 0.0), end) / end


class _PanRow(QPushButton):
    def __init__(self, look: Look, key: str) -> None:
        super().__init__()
        self._look, self._key = look, key
        self._minutes: Quantiles | None = None
        self._end = _SCALES[0][0]
        self.setCheckable(True)
        self.setAutoDefault(True)
        self.setObjectName(f"water_pan_{key.replace(' ', '_')}")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self._fit()
        look.changed.connect(self._fit)

    def sizeHint(self) -> QSize:
        """Two lines of words; more where there is room, up to what is designed."""
        return QSize(px(280), max(px(_LOW), _LOW))

    def _fit(self) -> None:
        least = max(px(_LOW), _LOW)
        self.setMinimumHeight(least)
        self.setMaximumHeight(max(px(_HIGH), least))
        self.updateGeometry()

    def show_minutes(self, minutes: Quantiles | None, end: float) -> None:
        self._minutes, self._end = minutes, end
        said = f"{self._key}, {minutes_said(minutes)}" if minutes is not None else self._key
        self.setAccessibleName(said)
        self.setToolTip(plain_tip(f"{said}; up and down choose a pan"))
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, whole = self._look.theme, QRectF(self.rect())
        if self.isChecked():
            painter.fillRect(whole, QColor(theme.plate))
            painter.fillRect(QRectF(0, 0, px(4), whole.height()), QColor(theme.ink))
        side = QRectF(px(_SIGN.x()), whole.center().y() - px(_SIGN.height()) / 2, px(_SIGN.width()), px(_SIGN.height()))
        paint_pan(painter, side, self._key, theme.ink, theme.ground)
        line = min(px(20), whole.height() / 2)
        weight = 600 if self.isChecked() else 400
        above = whole.center().y() - (line if self._minutes is not None else line / 2)
        name = QRectF(px(_WORDS), above, px(100), line)
        draw_words(painter, name, self._key, theme.ink, side=LEFT, size=PLACE, weight=weight)
        if self._minutes is not None:
            told = "not likely" if self._minutes.p50 is None else " ".join(minutes_words(self._minutes.p50)).strip()
            below = name.translated(0, line)
            draw_words(painter, below, told, theme.ink, side=LEFT, size=PLACE, weight=weight)
            self._range(painter, self._minutes, whole.center().y() + line / 2)
        if self.hasFocus():
            paint_ring(painter, whole.adjusted(4, 4, -4, -4), QColor(theme.cobalt))

    def _range(self, painter: QPainter, minutes: Quantiles, y: float) -> None:
        if minutes.p10 is None or minutes.p50 is None:
            return
        theme, wide = self._look.theme, float(self.width())
        first = _across(wide, minutes.p10, self._end)
        last = _across(wide, self._end if minutes.p90 is None else minutes.p90, self._end)
        middle = QPointF(_across(wide, minutes.p50, self._end), y)
        if self.isChecked():
            pen = QPen(QColor(theme.verdigris), px(9))
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            painter.setPen(pen)
            painter.drawLine(QPointF(first, y), QPointF(last, y))
            painter.setPen(QPen(QColor(theme.verdigris), px(3)))
            painter.setBrush(QColor(theme.plate))
            painter.drawEllipse(middle, px(6), px(6))
            return
        draw_line(painter, theme.ink, 2.0, QPointF(first, y), QPointF(last, y))
        for end in (first, last) if minutes.p90 is not None else (first,):
            draw_line(painter, theme.ink, 2.0, QPointF(end, y - px(5)), QPointF(end, y + px(5)))
        painter.setBrush(QColor(theme.ink))
        painter.drawEllipse(middle, px(4), px(4))


class _Scale(QWidget):
    """The minutes below all rows."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self._end, self._step, self._shown = *_SCALES[0], False
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(px(320), px(_SCALE_HIGH))

    def show_scale(self, end: float, step: float, *, shown: bool) -> None:
        self._end, self._step, self._shown = end, step, shown
        self.setVisible(shown)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        if not self._shown:
            return
        painter = QPainter(self)
        theme, wide = self._look.theme, float(self.width())
        draw_line(painter, theme.line, 1.2, QPointF(_across(wide, 0, 1), 1), QPointF(_across(wide, 1, 1), 1))
        minute = 0.0
        while minute <= self._end:
            x = _across(wide, minute, self._end)
            draw_line(painter, theme.line, 1.2, QPointF(x, 1), QPointF(x, px(5)))
            box = QRectF(x - px(20), px(5), px(40), px(20))
            draw_words(painter, box, f"{minute:.0f}", theme.soft, side=MIDDLE, size=SMALL)
            minute += self._step
        painter.end()
