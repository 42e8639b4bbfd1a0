"""What is placed on the plot by the pixel: axis, band's name, oven now, arrival, what if, what is pointed at."""

from PySide6.QtCore import QEasingCurve, QPointF, QRectF, Qt, QVariantAnimation
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QApplication, QWidget

from cookstove_gui.gui.time_axis.free_room import FreeRoom, Heights
from cookstove_gui.gui.time_axis.now_said import paint_now_said
from cookstove_gui.gui.time_axis.plot_records import BandWords, Limit, Mark, Pointed, SpotNow
from cookstove_gui.gui.time_axis.span import AXIS_WIDTH, TimeSpan
from cookstove_gui.gui.time_axis.stem import paint_now, paint_stem
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.signs import paint_caution
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import SMALL, font

_SLIDE_MS = 200
_CAPTION, _LARGE, _HEAT = 18, 24, 20
_BAR, _RING, _RING_WIDTH = 9, 9, 4


class PlotWords(QWidget):
    """Lies over the plot and lets the pointer through; words keep clear of the lines where they can."""

    def __init__(self, span: TimeSpan, look: Look, lines: Heights, fan: Heights, parent: QWidget) -> None:
        super().__init__(parent)
        self._span, self._look, self._fan = span, look, fan
        self._room = FreeRoom(span, self, lines, fan)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.scale = (0.0, 1.0)  # lowest and highest value seen
        self.ticks: tuple[float, ...] = ()
        self.unit = ""
        self.band: BandWords | None = None
        self.limits: tuple[Limit, ...] = ()
        self.marked: list[tuple[float, float]] = []  # where readings stand: place, value
        self.oven_now: tuple[str, str, str] | None = None  # “oven now”, number, doubt
        self.spots_now: tuple[SpotNow, ...] = ()  # in its place, while a pan is put on
        self.what_if = ""
        self.pointed: Pointed | None = None
        self._plate = QRectF()
        self.empty = ""  # said in the middle of a plot that has nothing to show
        self._mark: Mark | None = None
        self._shown: tuple[float, float, float] | None = None
        self._from: tuple[float, float, float] | None = None
        self._slide = QVariantAnimation(self)
        self._slide.setDuration(_SLIDE_MS)
        self._slide.setEasingCurve(QEasingCurve.Type.InOutQuad)
        self._slide.setStartValue(0.0)
        self._slide.setEndValue(1.0)
        self._slide.valueChanged.connect(self._step)

    @property
    def mark(self) -> Mark | None:
        """What is marked on the band."""
        return self._mark

    def show_mark(self, mark: Mark | None) -> None:
        """Mark this; bar and ring slide from where they stood."""
        if mark == self._mark:
            return
        before = self._shown if self._mark and mark and self._mark.edge == mark.edge else None
        self._mark = mark
        self._slide.stop()
        wanted = mark.window if mark else None
        self._from = before
        if before and wanted and self.isVisible() and QApplication.isEffectEnabled(Qt.UIEffect.UI_AnimateMenu):
            self._slide.start()
        else:
            self._shown = wanted
            self._tell_stem()
        self.update()

    def _step(self, share: float) -> None:
        if self._from is None or self._mark is None or self._mark.window is None:
            return
        first, likely, last = (
            old + (new - old) * share for old, new in zip(self._from, self._mark.window, strict=True)
        )
        self._shown = (first, likely, last)
        self._tell_stem()
        self.update()

    def _tell_stem(self) -> None:
        self._span.set_likely(self._shown[1] if self._shown else None)

    def height_of(self, value: float) -> float:
        """Where a value lies [px]."""
        low, high = self.scale
        return self.height() * (1.0 - (value - low) / max(high - low, 1e-9))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Axis and now first, then the words, each where it is free; what is pointed at last."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        edges = (self.band.low, self.band.high) if self.band else ()
        self._room.clear(self._plot_box(), self.marked, (*edges, *(limit.value for limit in self.limits)))
        self._plate = self._pointed_plate()
        self._paint_axis(painter)
        if self._span.anchor is not None:
            self._paint_stem(painter)
            paint_now(painter, self._span, self._look.theme, self.width(), self.height())
            self._paint_mark(painter)
            self._paint_limits(painter)
            paint_now_said(painter, self, self._room, self._look.theme, self._span, self._plate)
            self._paint_band_name(painter)
            self._paint_what_if(painter)
            self._paint_pointed(painter)
        if self.empty:
            painter.setFont(font(_HEAT))
            painter.setPen(colour(self._look.theme.soft))
            painter.drawText(self._plot_box(), Qt.AlignmentFlag.AlignCenter, self.empty)
        painter.end()

    def _plot_box(self) -> QRectF:
        return QRectF(px(AXIS_WIDTH), 0, self.width() - px(AXIS_WIDTH), self.height())

    # --- axis --------------------------------------------------------------------------------------------------

    def _paint_axis(self, painter: QPainter) -> None:
        theme, size, left = self._look.theme, QFontMetricsF(font(SMALL)), px(AXIS_WIDTH)
        named = self._mark.edge if self._mark else self.band.low if self.band else None
        half, top = 0.5 * size.height(), size.height()
        painter.setFont(font(SMALL))
        painter.setPen(colour(theme.soft))
        painter.drawText(QPointF(left - px(8) - size.horizontalAdvance(self.unit), size.ascent()), self.unit)
        for value in self.ticks:
            y = self.height_of(value)
            near = named is not None and abs(y - self.height_of(named)) < 0.9 * size.height()
            if near or y - half < top or y + half > self.height():
                continue
            words = f"{value:.0f}"
            painter.setPen(colour(theme.soft))
            painter.drawText(QPointF(left - px(8) - size.horizontalAdvance(words), y + 0.5 * size.capHeight()), words)
            painter.setPen(QPen(colour(theme.line), 1))
            painter.drawLine(QPointF(left - px(4), y), QPointF(left, y))
        if named is not None and top <= self.height_of(named) + half <= self.height() + half:
            face = font(SMALL, 600)
            bold, words, y = QFontMetricsF(face), f"{named:.0f}", self.height_of(named)
            painter.setFont(face)
            painter.setPen(colour(theme.verdigris))
            painter.drawText(QPointF(left - px(8) - bold.horizontalAdvance(words), y + 0.5 * bold.capHeight()), words)

    # --- words -----------------------------------------------------------------------------------------------------

    def _paint_stem(self, painter: QPainter) -> None:
        if self._mark is not None and self._shown is not None:
            paint_stem(
                painter, self._span, self._look.theme, self.width(), self.height(), self.height_of(self._mark.edge)
            )

    def _paint_mark(self, painter: QPainter) -> None:
        mark, theme = self._mark, self._look.theme
        if mark is None:
            return
        edge, width = self.height_of(mark.edge), self.width()
        at = self._span.now or 0.0
        if self._shown is not None:
            first, at, last = self._shown
            left, right = (self._span.x(place, width) for place in (first, last))
            ring = QPointF(self._span.x(at, width), edge)
            painter.save()
            painter.setClipRect(self._plot_box())
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(colour(theme.verdigris))
            bar = QRectF(left, edge - px(_BAR) / 2, max(right - left, px(_BAR)), px(_BAR))
            painter.drawRoundedRect(bar, px(_BAR) / 2, px(_BAR) / 2)
            painter.setPen(QPen(colour(theme.verdigris), px(_RING_WIDTH)))
            painter.setBrush(colour(theme.ground))
            painter.drawEllipse(ring, px(_RING) - px(_RING_WIDTH) / 2, px(_RING) - px(_RING_WIDTH) / 2)
            painter.restore()
            self._room.take(bar.adjusted(0, -px(4), 0, px(4)))
        if not self._span.low <= at <= self._span.high:
            return
        large = font(_LARGE, 600) if self._shown else font(_HEAT, 600)
        first_line, second_line = QFontMetricsF(large), QFontMetricsF(font(_CAPTION))
        wide = max(first_line.horizontalAdvance(mark.words), second_line.horizontalAdvance(mark.more))
        high = first_line.height() + (0.9 * second_line.height() if mark.more else 0.0)
        x = max(min(self._span.x(at, width) + px(12), width - wide), float(px(AXIS_WIDTH)))
        below, above = edge + px(_BAR), edge - px(_BAR) - high
        start, end = (self._span.minute(place, width) for place in (x, x + wide))
        for low, top in self._fan(start, end):
            below, above = max(below, self.height_of(low) + px(3)), min(above, self.height_of(top) - px(3) - high)
        from_above = self.band is not None and mark.edge == self.band.high
        tops = (above, below) if from_above else (below, above)
        plain = (edge - px(_BAR) - high, edge + px(_BAR)) if from_above else (edge + px(_BAR), edge - px(_BAR) - high)
        box = self._room.put(self._room.column(x, wide, high, (*tops, *plain)), of_fan=True)
        painter.setPen(colour(theme.verdigris))
        painter.setFont(large)
        painter.drawText(QPointF(box.left(), box.top() + first_line.ascent()), mark.words)
        painter.setFont(font(_CAPTION))
        painter.drawText(QPointF(box.left(), box.bottom() - second_line.descent()), mark.more)

    def _paint_band_name(self, painter: QPainter) -> None:
        band = self.band
        if band is None:
            return
        face = font(_CAPTION, 600)
        size = QFontMetricsF(face)
        wide, high, x = size.horizontalAdvance(band.name), size.height(), px(AXIS_WIDTH) + px(8)
        top, bottom = self.height_of(band.high), self.height_of(band.low)
        tops = [top + px(3), bottom - high - px(3)] if bottom - top >= high else []
        tops += [top - high - px(1), bottom + px(1)]
        now = self._span.x(self._span.now, self.width()) if self._span.now is not None else -1.0
        starts = [x, self.width() - wide - px(8)]
        if x < now < x + wide + px(4) and starts[1] > now:  # the line of now would run through it
            starts.pop(0)
        box = self._room.put([QRectF(start, one, wide, high) for start in starts for one in tops])
        if box.intersects(self._plate):
            return
        painter.setFont(face)
        painter.setPen(colour(self._look.theme.verdigris))
        painter.drawText(QPointF(box.left(), box.top() + size.ascent()), band.name)

    def _paint_limits(self, painter: QPainter) -> None:
        """A line each, its words above it: at the right with their sign where it is not to be passed."""
        theme, left = self._look.theme, float(px(AXIS_WIDTH))
        face = font(_CAPTION, 600)
        size = QFontMetricsF(face)
        for limit in self.limits:
            ink, y = colour(theme.ember if limit.is_most else theme.verdigris), self.height_of(limit.value)
            pen = QPen(ink, px(2) if limit.is_most else px(1.6))
            pen.setStyle(Qt.PenStyle.SolidLine if limit.is_most else Qt.PenStyle.DotLine)
            painter.setPen(pen)
            painter.drawLine(QPointF(left, y), QPointF(self.width(), y))
            sign = px(20) if limit.is_most else 0
            wide = size.horizontalAdvance(limit.words) + (sign + px(5) if sign else 0)
            x = self.width() - wide - px(6) if limit.is_most else left + px(8)
            tops = (y - size.height() - px(3), y + px(3))
            box = self._room.put([QRectF(x, top, wide, size.height()) for top in tops])
            if sign:
                place = QRectF(box.left(), box.center().y() - sign / 2, sign, sign)
                paint_caution(painter, place, ink, colour(theme.ground))
            painter.setFont(face)
            painter.setPen(ink)
            begin = box.right() - size.horizontalAdvance(limit.words)
            painter.drawText(QPointF(begin, box.top() + size.ascent()), limit.words)

    def _paint_what_if(self, painter: QPainter) -> None:
        """At the foot on the right, after a piece of its line."""
        if not self.what_if:
            return
        face, theme = font(_CAPTION, 600), self._look.theme
        size, sample = QFontMetricsF(face), px(44)
        wide = size.horizontalAdvance(self.what_if) + sample + px(8)
        box = self._room.put(self._room.column(self.width() - px(4) - wide, wide, size.height(), ()), of_fan=True)
        pen = QPen(colour(theme.cobalt), px(2.6), Qt.PenStyle.CustomDashLine, Qt.PenCapStyle.FlatCap)
        pen.setDashPattern([1.0, 2.0])
        painter.setPen(pen)
        middle = box.center().y() + px(1)
        painter.drawLine(QPointF(box.left(), middle), QPointF(box.left() + sample, middle))
        painter.setFont(face)
        painter.setPen(colour(theme.cobalt))
        painter.drawText(QPointF(box.left() + sample + px(8), box.top() + size.ascent()), self.what_if)

    def _pointed_plate(self) -> QRectF:
        """Where what is pointed at is said; what would lie half under it is left out for so long."""
        found = self.pointed
        if found is None:
            return QRectF()
        x, y = self._span.x(found.place, self.width()), self.height_of(found.value)
        size = QFontMetricsF(font(_CAPTION))
        wide, high = size.horizontalAdvance(found.words) + px(16), size.height() + px(6)
        left = min(max(x - wide / 2, float(px(AXIS_WIDTH))), self.width() - wide)
        return QRectF(left, 1 if y > high + px(10) else self.height() - high - 1, wide, high)

    def _paint_pointed(self, painter: QPainter) -> None:
        """A line at the place, a ring on the oven's line, and the words on a plate."""
        found, theme = self.pointed, self._look.theme
        if found is None:
            return
        x, y = self._span.x(found.place, self.width()), self.height_of(found.value)
        painter.setPen(QPen(colour(theme.cobalt), 1))
        painter.drawLine(QPointF(x, 0), QPointF(x, self.height()))
        painter.setBrush(colour(theme.ground))
        painter.setPen(QPen(colour(theme.cobalt), px(2.5)))
        painter.drawEllipse(QPointF(x, y), px(5), px(5))
        painter.setPen(QPen(colour(theme.cobalt), 1))
        painter.setBrush(colour(theme.raised))
        painter.drawRoundedRect(self._plate, px(4), px(4))
        painter.setFont(font(_CAPTION))
        painter.setPen(colour(theme.ink))
        painter.drawText(self._plate, Qt.AlignmentFlag.AlignCenter, found.words)
