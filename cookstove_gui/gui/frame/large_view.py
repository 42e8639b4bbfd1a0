"""The large view, read from across the kitchen: the oven, when its heat comes, a ribbon of heat, what to do."""

from datetime import timedelta

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QLinearGradient, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from cookstove_gui.desk import Changed
from cookstove_gui.desk.large import AHEAD_MIN, BACK_MIN, Large, large
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.frame.left_page import LeftPage
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.signs import paint_caution
from cookstove_gui.gui.widgets.steps import scale
from cookstove_gui.gui.widgets.type import font
from cookstove_gui.phrases.figures import temperature_text
from cookstove_gui.stove.drawn.heat_colours import heat_colour, heat_ink
from cookstove_gui.units import clock_text

_WIDE, _HIGH = 1280, 750  # px of the design; everything is placed on it and drawn as large as the window allows
_LEFT, _RIGHT = 40, 1240
_RIBBON = (392, 476)
_NUMBERS_MIN = (-50, -25, 52, 112)  # minutes from now at which the ribbon names its heat
_TICK_MIN = 30
_LARGE_SIZES = 4  # that are tried before a shorter way to say it


class LargeView(LeftPage):
    """Only what is needed from three metres away, painted; a press anywhere leaves it."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._look = look
        self.shown = large(self._desk)
        self.setObjectName("large_view")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        link.changed.connect(self._show)
        link.time_passed.connect(self._show_all)
        look.changed.connect(self.update)
        self._show_all()

    def _show(self, _changed: Changed) -> None:
        self._show_all()

    def _show_all(self) -> None:
        self.shown = large(self._desk)
        self.setAccessibleName(spoken(self.shown, self._desk.unit))
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Whoever has no key at hand presses anywhere."""
        if self.rect().contains(event.position().toPoint()):
            self.left.emit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Everything, on a sheet of the design's size stretched to the window."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        size = min(self.width() / _WIDE, self.height() / _HIGH)
        painter.translate((self.width() - size * _WIDE) / 2, (self.height() - size * _HIGH) / 2)
        painter.scale(size, size)
        shown, theme = self.shown, self._look.theme
        _write(painter, shown.clock, _LEFT, 84, 84, 700, theme.ink)
        wide = _write(painter, shown.oven, _LEFT - 8, 351, 300, 700, theme.ink)
        _write(painter, f"°{self._desk.unit}", _LEFT + wide + 12, 190, 72, 400, theme.soft)
        _write(painter, shown.doubt, _LEFT + wide + 14, 349, 44, 400, theme.soft)
        room = _RIGHT - (_LEFT + wide + 130)
        self._paint_right(painter, room)
        if shown.ribbon:
            self._paint_ribbon(painter)
        _write_fitting(painter, shown.to_do, 614, (76, 68, 60, 54, 48, 42, 36), 700, theme.ink)
        _write_fitting(painter, shown.then, 684, (48, 42, 36, 30), 400, theme.ink)
        _write(painter, "F12, Esc or a press: back", _RIGHT, 732, 20, 400, theme.soft, from_right=True)

    def _paint_right(self, painter: QPainter, room: float) -> None:
        shown, theme = self.shown, self._look.theme
        if shown.cautions:
            wide = _write(painter, shown.cautions, _RIGHT, 71, 30, 600, theme.ember, from_right=True)
            box = QRectF(_RIGHT - wide - 48, 44, 32, 32)
            paint_caution(painter, box, QColor(theme.ember), QColor(theme.ground))
        _write(painter, shown.heat, _RIGHT, 173, 48, 600, theme.verdigris, from_right=True)
        sizes = (112, 96, 80, 68, 56)
        fits = [size for size in sizes if _width(shown.window, size, 700) <= room] or [sizes[-1]]
        _write(painter, shown.window, _RIGHT, 273, fits[0], 700, theme.ink, from_right=True)
        _write(painter, shown.likely, _RIGHT, 340, 54, 400, theme.ink, from_right=True)

    def _paint_ribbon(self, painter: QPainter) -> None:
        theme, top, low = self._look.theme, *_RIBBON
        points = self.shown.ribbon
        start, end = _x(points[0][0]), _x(points[-1][0])
        fill = QLinearGradient(start, 0, end, 0)
        for minute, heat in points:
            fill.setColorAt(min(max((_x(minute) - start) / max(end - start, 1.0), 0.0), 1.0), QColor(heat_colour(heat)))
        painter.fillRect(QRectF(start, top, end - start, low - top), fill)
        heats = dict(points)
        for wanted in _NUMBERS_MIN:
            minute = min(heats, key=lambda known: abs(known - wanted))
            if abs(minute - wanted) <= 5:
                words = temperature_text(heats[minute], self._desk.unit)
                left = min(max(_x(wanted) - _width(words, 40, 600) / 2, start + 14), end - 14 - _width(words, 40, 600))
                _write(painter, words, left, low - 28, 40, 600, heat_ink(heats[minute]))
        self._paint_clocks(painter)
        if self.shown.arrival_min is not None:
            self._paint_arrival(painter, self.shown.arrival_min)
        painter.fillRect(QRectF(_x(0) - 4, top - 22, 8, low - top + 32), QColor(theme.ground))
        painter.fillRect(QRectF(_x(0) - 2, top - 22, 4, low - top + 32), QColor(theme.ink))

    def _paint_clocks(self, painter: QPainter) -> None:
        theme, base = self._look.theme, _RIBBON[1] + 38
        now, word = self.shown.ended or self._desk.clock(), "end" if self.shown.ended else "now"
        half = _width(word, 32, 600) / 2
        _write(painter, word, _x(0) - half, base, 32, 600, theme.ink)
        local = now + timedelta(minutes=self._desk.offset_minutes)
        past = local.minute % _TICK_MIN + local.second / 60
        for number in range(-3, 1 if self.shown.ended else 6):
            minute = number * _TICK_MIN - past
            words = clock_text(now + timedelta(minutes=minute), self._desk.offset_minutes)
            wide = _width(words, 32, 400)
            left, right = _x(minute) - wide / 2, _x(minute) + wide / 2
            if left >= _LEFT and right <= _RIGHT and (right < _x(0) - half - 12 or left > _x(0) + half + 12):
                _write(painter, words, left, base, 32, 400, theme.soft)

    def _paint_arrival(self, painter: QPainter, arrival: tuple[float, float, float]) -> None:
        theme, middle = self._look.theme, _RIBBON[0] - 9
        earliest, likely, latest = (_x(min(minute, AHEAD_MIN)) for minute in arrival)
        leaves = self.shown.leaves_min
        stays = _RIGHT if leaves is None else _x(min(leaves, AHEAD_MIN))
        painter.setPen(QPen(QColor(theme.verdigris), 9, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap))
        painter.drawLine(QPointF(earliest, middle), QPointF(max(stays, latest), middle))
        painter.setPen(QPen(QColor(theme.verdigris), 15, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
        painter.drawLine(QPointF(earliest + 8, middle), QPointF(max(latest - 8, earliest + 8), middle))
        painter.setPen(QPen(QColor(theme.verdigris), 5))
        painter.setBrush(QColor(theme.ground))
        painter.drawEllipse(QPointF(likely, middle), 11, 11)


def spoken(shown: Large, unit: str) -> str:
    """All of it in one sentence after the other."""
    parts = (
        shown.cautions and f"Cautions: {shown.cautions}.",
        f"{shown.clock}, oven {shown.oven} °{unit} {shown.doubt}".strip() + ".",
        f"{shown.heat} {shown.window} {shown.likely}".strip(),
        shown.to_do[0] if shown.to_do else "",
        shown.then[0] if shown.then else "",
    )
    return " ".join(part for part in parts if part)


def _x(minute: float) -> float:
    return _LEFT + (minute + BACK_MIN) / (BACK_MIN + AHEAD_MIN) * (_RIGHT - _LEFT)


def _width(words: str, size: float, weight: int) -> float:
    return QFontMetricsF(font(size / scale(), weight)).horizontalAdvance(words)


def _write(
    painter: QPainter,
    words: str,
    left: float,
    base: float,
    size: float,
    weight: int,
    ink: str,
    from_right: bool = False,
) -> float:
    """Words on their base line; returns their width."""
    painter.setFont(font(size / scale(), weight))
    painter.setPen(QColor(ink))
    wide = _width(words, size, weight)
    painter.drawText(QPointF(left - wide if from_right else left, base), words)
    return wide


def _write_fitting(
    painter: QPainter, rungs: tuple[str, ...], base: float, sizes: tuple[float, ...], weight: int, ink: str
) -> None:
    """The longest way to say it that fits at one of the larger sizes, at the largest it fits at."""
    room = _RIGHT - _LEFT
    for words in rungs:
        for size in sizes if words == rungs[-1] else sizes[:_LARGE_SIZES]:
            if _width(words, size, weight) <= room:
                _write(painter, words, _LEFT, base, size, weight, ink)
                return
    if rungs:
        size = sizes[-1] * min(1.0, room / max(_width(rungs[-1], sizes[-1], weight), 1.0))
        _write(painter, rungs[-1], _LEFT, base, size, weight, ink)
