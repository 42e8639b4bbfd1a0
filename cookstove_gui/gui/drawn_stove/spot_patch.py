"""One spot on the drawn stove: its heat as colour and number, its age, its doubt as hatching."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QAbstractButton, QWidget

from cookstove_gui.desk.cook.spot_heats import SpotHeat
from cookstove_gui.gui.widgets.heat_colours import HOTTEST_AT_LEAST, heat_colour, heat_ink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import TARGET_PIXELS, colour
from cookstove_gui.gui.widgets.type import BODY, NUMBER, font
from cookstove_gui.phrases.figures import age_text, spot_number, spot_words, temperature_text
from cookstove_gui.stove.stove import BESIDE, Spot, SpotKind

_SURE = 14.0  # K between the tenth and ninetieth percentile, below which nothing is hatched
_UNSURE = 110.0  # K, at which hatching is as dense as it gets
_WIDEST, _DENSEST = 15.0, 4.0  # pixels between hatching lines
_EDGES = 4.0  # pixels that may be written on beyond the coloured box
_LOW = 30.0  # pixels below which the number is written smaller
_WIDE = 150.0  # pixels from which on name, number and age stand in one line
_SMALLEST = 16
_BADGE = 20.0  # pixels, the mark of a doubted reading
_LEAST_GAP = 7.0  # pixels between words in one line
_CAPTIONS = {SpotKind.SIDE: "side", SpotKind.GLASS: "glass", SpotKind.FLUE: "flue", SpotKind.ROOM: "room"}


def hatch_spacing(doubt: float) -> float | None:
    """Pixels between hatching lines for a doubt [K], or none where the number is sure."""
    if doubt <= _SURE:
        return None
    share = min((doubt - _SURE) / (_UNSURE - _SURE), 1.0)
    return _WIDEST + share * (_DENSEST - _WIDEST)


def _caption(spot: Spot) -> str:
    """One word for a patch that lies in no drawn part of the stove."""
    if spot.kind is SpotKind.WALL:
        return next((word for word in BESIDE if spot.name.startswith(word)), "wall")
    return _CAPTIONS.get(spot.kind, "")


def _fits(lines: list[tuple[str, QFont]], box: QRectF) -> bool:
    tall = sum(_line_height(face) for _, face in lines)
    wide = max(_size(face).horizontalAdvance(text) for text, face in lines)
    return tall <= box.height() and wide <= box.width() + _EDGES


def _gap(parts: list[tuple[str, QFont]], width: float) -> float:
    """Pixels before, between and after words written in one line."""
    return (width - sum(_size(face).horizontalAdvance(text) for text, face in parts)) / (len(parts) + 1)


def _size(face: QFont) -> QFontMetricsF:
    return QFontMetricsF(face)


def _line_height(face: QFont) -> float:
    """Figures and short words have no deep descenders, so lines may stand close."""
    return _size(face).height() * 0.75


class SpotPatch(QAbstractButton):
    """A pressable patch; pressing it lights the spot up."""

    def __init__(self, spot: Spot, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.spot = spot
        self._look = look
        self._heat = SpotHeat()
        self._unit = "F"
        self._hottest = HOTTEST_AT_LEAST
        self._is_lit = False
        self._is_worth_reading = False
        self.setObjectName(f"spot_{spot.name}")
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)  # the drawing has the focus and its arrow keys move the light
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self._name_it()

    def show_heat(self, heat: SpotHeat, unit: str, hottest: float) -> None:
        """Show a heat, in a unit, on a scale of colours."""
        self._heat, self._unit, self._hottest = heat, unit, hottest
        self._name_it()
        self.update()

    def show_marks(self, *, is_lit: bool, is_worth_reading: bool) -> None:
        """Show whether the next number goes here, and whether this is the most useful reading."""
        if (is_lit, is_worth_reading) != (self._is_lit, self._is_worth_reading):
            self._is_lit, self._is_worth_reading = is_lit, is_worth_reading
            self._name_it()
            self.update()

    def number_text(self) -> str:
        """The number written on the patch."""
        heat = self._heat
        return spot_number(heat.kelvin, heat.typed, self._unit, means_other=bool(heat.remark))

    def second_line(self) -> str:
        """What stands below the number: its age, or what a number just typed means where it means something else."""
        heat = self._heat
        if heat.kelvin is None or heat.typed is None or not heat.remark:
            return age_text(heat.age_min)
        return f"= {temperature_text(heat.kelvin, self._unit)}"

    def sizeHint(self) -> QSize:
        """The smallest that a finger can press."""
        return QSize(TARGET_PIXELS, TARGET_PIXELS)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the patch."""
        theme = self._look.theme
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect()).adjusted(2, 2, -2, -2)
        known = self._heat.kelvin
        fill = theme.raised if known is None else heat_colour(known, self._hottest)
        ink = theme.soft if known is None else heat_ink(known, self._hottest)
        outside = self.spot.kind is SpotKind.WALL
        painter.setPen(QPen(colour(theme.line), 1, Qt.PenStyle.DashLine if outside else Qt.PenStyle.SolidLine))
        painter.setBrush(colour(fill))
        painter.drawRoundedRect(box, 5, 5)
        if known is not None:
            self._hatch(painter, box, ink)
        self._write(painter, box, fill, ink)
        self._mark(painter, box)
        painter.end()

    def _hatch(self, painter: QPainter, box: QRectF, ink: str) -> None:
        spacing = hatch_spacing(self._heat.doubt)
        if spacing is None:
            return
        painter.save()
        painter.setClipRect(box.adjusted(1, 1, -1, -1))
        painter.setPen(QPen(colour(ink, 150), 1))
        x = box.left() - box.height()
        while x < box.right():
            painter.drawLine(QPointF(x, box.bottom()), QPointF(x + box.height(), box.top()))
            x += spacing
        painter.restore()

    def _write(self, painter: QPainter, box: QRectF, fill: str, ink: str) -> None:
        small = font(BODY)
        number, age = self._number_in(box), (self.second_line(), small)
        caption = (_caption(self.spot), small)
        if box.width() > _WIDE:
            name = self.spot.label.removeprefix("oven ").removeprefix("top ")
            self._write_across(painter, box, fill, ink, [(name, small), number, age])
            return
        # Where space is tight the age is left out first, then the caption; the number is always written.
        choices = ([caption, number, age], [caption, number]) if caption[0] else ([number, age],)
        lines = next((lines for lines in choices if _fits(lines, box)), [number])
        y = box.center().y() - sum(_line_height(face) for _, face in lines) / 2
        for text, face in lines:
            line = QRectF(box.left(), y, box.width(), _line_height(face))
            self._plate(painter, line, text, face, fill, ink)
            y += line.height()

    def _number_in(self, box: QRectF) -> tuple[str, QFont]:
        """The number with its sign, as large as there is room for."""
        text = self.number_text()
        tries = [(text, font(NUMBER, 600))] if box.height() >= _LOW else []
        tries += [(text, font(points, 600)) for points in (BODY, _SMALLEST)]
        return next(
            (one for one in tries if _size(one[1]).horizontalAdvance(one[0]) <= box.width() + _EDGES), tries[-1]
        )

    def _write_across(
        self, painter: QPainter, box: QRectF, fill: str, ink: str, parts: list[tuple[str, QFont]]
    ) -> None:
        """Name, number and age in one line with even gaps; where these get small, the number is written smaller."""
        if _gap(parts, box.width()) < _LEAST_GAP:
            parts = [(text, font(BODY, face.weight())) for text, face in parts]
        gap = _gap(parts, box.width())
        x = box.left() + gap
        for text, face in parts:
            width = _size(face).horizontalAdvance(text)
            self._plate(painter, QRectF(x, box.top(), width, box.height()), text, face, fill, ink)
            x += width + gap

    @staticmethod
    def _plate(painter: QPainter, box: QRectF, text: str, face: QFont, fill: str, ink: str) -> None:
        """Write on a plain ground, so that hatching never crosses a figure."""
        size = _size(face)
        width = min(size.horizontalAdvance(text) + 6, box.width())
        ground = QRectF(
            box.center().x() - width / 2, box.center().y() - size.ascent() * 0.46, width, size.ascent() * 0.92
        )
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(colour(fill))
        painter.drawRoundedRect(ground, 3, 3)
        painter.setFont(face)
        painter.setPen(colour(ink))
        painter.drawText(
            QPointF(box.center().x() - size.horizontalAdvance(text) / 2, box.center().y() + size.capHeight() / 2), text
        )

    def _mark(self, painter: QPainter, box: QRectF) -> None:
        theme = self._look.theme
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if self._is_lit:
            painter.setPen(QPen(colour(theme.ember), 4))
            painter.drawRoundedRect(box, 5, 5)
        if self._is_worth_reading:
            corner = QPolygonF([box.topRight(), box.topRight() - QPointF(16, 0), box.topRight() + QPointF(0, 16)])
            painter.setPen(QPen(colour(theme.ground), 2))
            painter.setBrush(colour(theme.ember))
            painter.drawPolygon(corner)
        if self._heat.is_doubted:
            badge = QRectF(box.left(), box.top(), _BADGE, _BADGE)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(colour(theme.ember))
            painter.drawEllipse(badge)
            painter.setPen(colour(theme.ground))
            painter.setFont(font(_SMALLEST, 600))
            painter.drawText(badge, Qt.AlignmentFlag.AlignCenter, "?")

    def _name_it(self) -> None:
        heat = self._heat
        parts = [self.spot.label, spot_words(heat.kelvin, heat.typed, heat.age_min, heat.remark, self._unit)]
        if heat.is_doubted:
            parts.append("a reading here is in doubt, keep or correct it")
        if self._is_lit:
            parts.append("the next number goes here")
        if self._is_worth_reading:
            parts.append("worth reading next")
        words = ", ".join(parts)
        self.setAccessibleName(words)
        self.setToolTip(words)
