"""A thermometer in the list of all: its name and kind, its drift since the first check, the doubt of one reading."""

import math
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QPushButton, QSizePolicy, QWidget

from cookstove_gui.desk.my_stove.checks import Ring
from cookstove_gui.gui.drawn_stove.lettering import advance
from cookstove_gui.gui.widgets.key import paint_ring
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import BODY, SMALL, font
from cookstove_gui.stove.stove import Instrument
from cookstove_gui.units import degrees_difference

_HIGH = 84  # px of the design
_NAME, _AFTER, _DOUBT = 160, 48, 88  # widths of the name, the latest number, the doubt
_BAR = 5  # at the left of the chosen one


@dataclass(frozen=True, slots=True, kw_only=True)
class RowContent:
    """What one row shows; `most_error` and `most_doubt` [K] are the ends of the scales that all rows share."""

    instrument: Instrument
    rings: tuple[Ring, ...]
    doubt: float  # K
    most_error: float
    most_doubt: float
    how: str  # of one that was never checked: what to do


class ThermometerRow(QPushButton):
    """One thermometer; pressed to choose it."""

    def __init__(self, look: Look, content: RowContent, unit: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.setCheckable(True)
        self.setAutoDefault(False)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setObjectName(f"thermometer_{content.instrument.name}")
        self.show_content(content, unit)

    def show_content(self, content: RowContent, unit: str) -> None:
        """Show a thermometer as its checks are now."""
        self._content, self._unit = content, unit
        instrument, doubt = content.instrument, degrees_difference(content.doubt, unit)
        checked = f"latest check {self._signed(content.rings[-1].error)} °{unit}" if content.rings else content.how
        self.setAccessibleName(f"{instrument.name}, {instrument.kind}, {checked}; a reading within {doubt:.0f} °{unit}")
        self.setToolTip(self.accessibleName())
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """One height for all."""
        return QSize(px(440), px(_HIGH))

    def minimumSizeHint(self) -> QSize:
        """Room for name, number and doubt, and between them for a little, or for what to do on two lines."""
        between = px(_AFTER + 40)
        if not self._content.rings:
            between = max(between, _two_lines(self._content.how, px(SMALL)))
        return QSize(px(14 + _NAME + _DOUBT) + between, px(_HIGH))

    def _signed(self, error: float) -> str:
        return f"{degrees_difference(error, self._unit):+.1f}".replace("-", "−")

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Plate and bar of the chosen one, words, drift, whisker."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, whole = self._look.theme, QRectF(self.rect())
        if self.isChecked():
            painter.fillRect(whole, QColor(theme.plate))
            painter.fillRect(QRectF(0, 0, px(_BAR), whole.height()), QColor(theme.ink))
        else:
            painter.fillRect(QRectF(0, whole.height() - 1, whole.width(), 1), QColor(theme.faint))
        name = self._content.instrument.name
        self._text(painter, QRectF(px(14), whole.center().y() - px(27), px(_NAME), px(28)), name, BODY, 600)
        kind = self._content.instrument.kind if self._content.instrument.checked_on else "never checked"
        self._text(painter, QRectF(px(14), whole.center().y(), px(_NAME), px(24)), kind, 18, 400, soft=True)
        middle = QRectF(px(14 + _NAME), 0, whole.width() - px(14 + _NAME + _AFTER + _DOUBT), whole.height())
        if self._content.rings:
            self._draw_drift(painter, middle)
        else:
            self._draw_unchecked(painter, middle)
        self._draw_doubt(painter, QRectF(whole.width() - px(_DOUBT), 0, px(_DOUBT), whole.height()))
        if self.hasFocus():
            paint_ring(painter, whole.adjusted(4, 4, -4, -4), QColor(theme.cobalt))

    def _draw_drift(self, painter: QPainter, box: QRectF) -> None:
        theme, rings = self._look.theme, self._content.rings
        zero, scale = box.center().y() + px(4), (0.5 * box.height() - px(16)) / self._content.most_error
        painter.setPen(QPen(QColor(theme.verdigris), 1.6))
        painter.drawLine(QPointF(box.left(), zero), QPointF(box.right(), zero))
        days = max((rings[-1].on - rings[0].on).days, 1)
        places = [
            QPointF(box.left() + box.width() * (ring.on - rings[0].on).days / days, zero - scale * ring.error)
            for ring in rings
        ]
        if len(rings) == 1:
            places = [QPointF(box.right(), places[0].y())]
        painter.setPen(QPen(colour(theme.ink, 40), px(9)))
        painter.drawPolyline(places)
        painter.setPen(QPen(QColor(theme.ink), 2.0))
        painter.drawPolyline(places)
        painter.setBrush(QColor(theme.plate if self.isChecked() else theme.ground))
        for place in places:
            painter.drawEllipse(place, px(4), px(4))
        number = QRectF(box.right() + px(7), places[-1].y() - px(12), px(_AFTER), px(24))
        self._text(painter, number, self._signed(rings[-1].error), SMALL, 600)

    def _draw_unchecked(self, painter: QPainter, box: QRectF) -> None:
        pen = QPen(QColor(self._look.theme.line), 1.6)
        pen.setDashPattern([1.5, 3.0])
        painter.setPen(pen)
        level = box.center().y() + px(12)
        painter.drawLine(QPointF(box.left(), level), QPointF(box.right(), level))
        words = box.adjusted(0, 0, px(_AFTER), 0)
        words.setBottom(level - px(2))
        self._text(painter, words, self._content.how, SMALL, 400, soft=True, down=True)

    def _draw_doubt(self, painter: QPainter, box: QRectF) -> None:
        half = (0.5 * box.width() - px(6)) * self._content.doubt / self._content.most_doubt
        level, middle = box.center().y() - px(12), box.center().x()
        painter.setPen(QPen(QColor(self._look.theme.ink), 2.2))
        painter.drawLine(QPointF(middle - half, level), QPointF(middle + half, level))
        for end in (middle - half, middle + half):
            painter.drawLine(QPointF(end, level - px(6)), QPointF(end, level + px(6)))
        painter.setBrush(QColor(self._look.theme.ink))
        painter.drawEllipse(QPointF(middle, level), px(3), px(3))
        number = f"±{degrees_difference(self._content.doubt, self._unit):.0f} °{self._unit}"
        below = QRectF(box.left(), level + px(8), box.width(), px(24))
        self._text(painter, below, number, 18, 600, middle=True)

    def _text(
        self,
        painter: QPainter,
        box: QRectF,
        words: str,
        size: int,
        weight: int,
        *,
        soft: bool = False,
        middle: bool = False,
        down: bool = False,
    ) -> None:
        face = font(size, weight)
        painter.setFont(face)
        painter.setPen(QColor(self._look.theme.soft if soft else self._look.theme.ink))
        side = Qt.AlignmentFlag.AlignHCenter if middle else Qt.AlignmentFlag.AlignLeft
        upright = Qt.AlignmentFlag.AlignBottom if down else Qt.AlignmentFlag.AlignVCenter
        painter.drawText(box, int(side | upright | Qt.TextFlag.TextWordWrap), words)


def _two_lines(words: str, pixels: float) -> int:
    """The least width [px] in which words take no more than two lines."""
    parts = words.split()
    splits = ((" ".join(parts[:at]), " ".join(parts[at:])) for at in range(1, len(parts) + 1))
    return math.ceil(min(max(advance(line, pixels) for line in lines) for lines in splits)) + 2
