"""A drawing of a stove with words on its spots, for reading only; the list beside it has the numbers."""

from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from cookstove_gui.gui.drawn_stove.stove_geometry import stove_geometry
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import NUMBER, font
from cookstove_gui.stove.stove import Stove

_SMALLEST = 18
_TIGHT = 0.9  # of the line height


@dataclass(frozen=True, slots=True, kw_only=True)
class Patch:
    """What is written on one spot; without colours it is bare iron."""

    number: str = ""
    words: str = ""
    fill: str = ""
    ink: str = ""
    is_chosen: bool = False


class StoveSketch(QWidget):
    """The stove seen from above, its oven opened out below."""

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._stove: Stove | None = None
        self._patches: dict[str, Patch] = {}
        self.setObjectName(name)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.update)

    def show_stove(self, stove: Stove, patches: dict[str, Patch], reads_as: str) -> None:
        """Show these patches; `reads_as` is what is read out of the drawing."""
        self._stove, self._patches = stove, patches
        self.setAccessibleName(reads_as)
        self.update()

    def sizeHint(self) -> QSize:
        """Room for the cooktop and the oven."""
        return QSize(420, 250)

    def minimumSizeHint(self) -> QSize:
        """Room for three patches with a number each."""
        return QSize(320, 250)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the iron and the patches."""
        if self._stove is None:
            return
        theme = self._look.theme
        layout = stove_geometry(self._stove, self.width(), self.height())
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(colour(theme.line), 1))
        painter.setBrush(colour(theme.plate))
        for box in (layout.cooktop, layout.oven):
            if not box.isEmpty():
                painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), 6, 6)
        painter.setFont(font(_SMALLEST))
        painter.setBrush(colour(theme.ground))
        painter.drawRoundedRect(layout.firebox, 4, 4)
        painter.setPen(colour(theme.ember))
        _write_along(painter, layout.firebox, "firebox")
        if not layout.oven.isEmpty():
            painter.setPen(colour(theme.soft))
            _write_along(painter, layout.oven_name, "oven")
        for name, box in layout.patches.items():
            self._draw_patch(painter, box.adjusted(1, 1, -1, -1), self._patches.get(name, Patch()))
        painter.end()

    def _draw_patch(self, painter: QPainter, box: QRectF, patch: Patch) -> None:
        theme = self._look.theme
        painter.setPen(QPen(colour(theme.cobalt), 3) if patch.is_chosen else QPen(colour(theme.line), 1))
        painter.setBrush(colour(patch.fill or theme.raised))
        painter.drawRoundedRect(box, 5, 5)
        painter.setPen(colour(patch.ink or theme.ink))
        big = font(NUMBER, 600)
        if QFontMetricsF(big).height() * _TIGHT > box.height():
            big = font(_SMALLEST, 600)
        lines = [(patch.number, big)] if patch.number else []
        if patch.words:
            lines += [(line, font(_SMALLEST)) for line in _broken(patch.words, box.width() - 6)]
        heights = [QFontMetricsF(face).height() * _TIGHT for _, face in lines]
        while sum(heights) > box.height() and len(lines) > 1:
            lines.pop()
            heights.pop()
        y = box.center().y() - sum(heights) / 2
        for (text, face), height in zip(lines, heights, strict=True):
            painter.setFont(face)
            shown = QFontMetricsF(face).elidedText(text, Qt.TextElideMode.ElideRight, box.width() - 4)
            painter.drawText(QRectF(box.left(), y, box.width(), height), Qt.AlignmentFlag.AlignCenter, shown)
            y += height


def _write_along(painter: QPainter, box: QRectF, text: str) -> None:
    """Write along the longer side of a strip."""
    painter.save()
    painter.translate(box.center())
    if box.height() > box.width():
        painter.rotate(-90)
    length, breadth = max(box.width(), box.height()), min(box.width(), box.height())
    painter.drawText(QRectF(-length / 2, -breadth / 2, length, breadth), Qt.AlignmentFlag.AlignCenter, text)
    painter.restore()


def _broken(text: str, width: float) -> list[str]:
    """Words in lines no wider than a patch."""
    size = QFontMetricsF(font(_SMALLEST))
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and size.horizontalAdvance(longer) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
