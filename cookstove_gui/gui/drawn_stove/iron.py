"""The stove's body in flat fills: iron, cooktop, firebox, air slide, bypass lever, the oven's walls and its door."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from cookstove_gui.gui.drawn_stove.lettering import advance, fitting, write, write_centred
from cookstove_gui.gui.drawn_stove.spot_painting import lid, polygon
from cookstove_gui.gui.widgets.theme import Theme
from cookstove_gui.stove.drawn.above import Above
from cookstove_gui.stove.drawn.cooktop import Cooktop
from cookstove_gui.stove.drawn.front import Front
from cookstove_gui.stove.drawn.heat_colours import ON_IRON, PLATE
from cookstove_gui.stove.drawn.layout import StoveLayout
from cookstove_gui.stove.drawn.oven import OvenParts
from cookstove_gui.stove.drawn.shapes import Box, Quad, room_for_words

_DEEP = "#1A1B1C"
_WORDS = (18.0, 16.0, 14.0, 12.0)  # px of words on iron, as large as they fit


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """How the stove is set; none where the log has not said."""

    air: float | None = None  # fraction open
    air_words: str = "air"
    bypass: float | None = None
    bypass_words: str = "bypass"
    door_is_open: bool = False
    firebox_words: str = "firebox"  # empty where a spot stands in its place


def paint_iron(painter: QPainter, layout: StoveLayout, settings: Settings, theme: Theme) -> None:
    """Paint everything but the spots."""
    size = layout.size
    painter.setPen(QPen(QColor(theme.iron_edge), 1))
    painter.setBrush(QColor(theme.iron))
    above, front = layout.above, layout.front
    boxes = [above.closet, above.pipe, above.collar] if above is not None else []
    boxes += [layout.tank, front.body if front is not None else None]
    for box in boxes:
        if box is not None:
            painter.drawRect(_rect(box))
    for foot in front.feet if front is not None else ():
        painter.drawPolygon(polygon(foot))
    painter.drawPolygon(polygon(layout.cooktop.iron))
    painter.drawRoundedRect(_rect(layout.cooktop.lip), 2, 2)
    _plates(painter, layout.cooktop, size)
    if above is not None:
        _bypass(painter, above, settings, theme, size)
        if above.closet is not None:
            words = "warming closet" if above.closet.width > 90 * size else "closet"
            _words_on_iron(painter, above.closet, words, size)
    if layout.tank is not None:
        _words_on_iron(painter, layout.tank, "water", size)
    if front is not None:
        _front(painter, front, settings, size)
        if layout.oven is not None:
            _oven(painter, layout.oven)
        if settings.door_is_open and front.flap:
            _door(painter, front, theme, size)


def _plates(painter: QPainter, top: Cooktop, size: float) -> None:
    """Plates that nobody reads; the others are painted with their spots."""
    for plate in top.unread:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(PLATE))
        painter.drawPolygon(polygon(plate))
        if top.has_lids:
            faint = QColor(ON_IRON)
            faint.setAlphaF(0.26)
            painter.setPen(QPen(faint, 1.2 * size))
            painter.drawEllipse(lid(room_for_words(plate)))


def _front(painter: QPainter, front: Front, settings: Settings, size: float) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(PLATE))
    for panel in (*front.sides, front.firebox, front.air):
        painter.drawRect(_rect(panel))
    if settings.firebox_words:
        _words_on_iron(painter, front.firebox, settings.firebox_words, size)
    box = front.air
    is_known = settings.air is not None
    title = Box(box.x, box.y, box.width, box.height * (0.56 if is_known else 1.0))
    _words_on_iron(painter, title, settings.air_words, size)
    if settings.air is None:
        return
    wide, high = min(66 * size, box.width - 12), 10 * size
    slide = QRectF(box.centre[0] - wide / 2, box.y + box.height * 0.7 - high / 2, wide, high)
    painter.setPen(QPen(QColor(ON_IRON), 1.4 * size))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(slide, high / 2, high / 2)
    painter.save()
    painter.setClipRect(QRectF(slide.left(), slide.top() - 1, wide * settings.air, high + 2))
    painter.setBrush(QColor(ON_IRON))
    painter.drawRoundedRect(slide, high / 2, high / 2)
    painter.restore()


def _oven(painter: QPainter, oven: OvenParts) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(PLATE))
    for part in oven.plain.values():
        painter.drawPolygon(polygon(part))
    painter.setBrush(QColor(_DEEP))
    painter.drawPolygon(polygon(oven.ceiling))


def _bypass(painter: QPainter, above: Above, settings: Settings, theme: Theme, size: float) -> None:
    """The lever at the pipe: level when shut, dropped when open."""
    small = 16 * size
    painter.setPen(QColor(theme.soft))
    flue, words, lever = above.flue_words, above.bypass_words, above.lever
    x = flue.x if above.lever_is_left else flue.right - advance("flue", small)
    write(painter, x, flue.centre[1], "flue", small)
    if settings.bypass is None:
        return
    x = words.right - advance(settings.bypass_words, small) if above.lever_is_left else words.x
    write(painter, x, words.centre[1], settings.bypass_words, small)
    near, far = (lever.right, lever.x) if above.lever_is_left else (lever.x, lever.right)
    drop = settings.bypass * 15 * size
    painter.setPen(QPen(QColor(theme.ink), 2.6 * size))
    painter.drawLine(QPointF(far + (near - far) * 0.2 * settings.bypass, lever.y + drop), QPointF(near, lever.y))
    painter.setBrush(QColor(theme.ink))
    painter.drawEllipse(QPointF(near, lever.y), 3.6 * size, 3.6 * size)


def _door(painter: QPainter, front: Front, theme: Theme, size: float) -> None:
    """The oven's door let down, with its words."""
    painter.setPen(QPen(QColor(theme.line), 1))
    painter.setBrush(QColor(theme.ground))
    painter.drawPolygon(polygon(front.flap))
    painter.setPen(QColor(theme.ember))
    write_centred(painter, *room_for_words(Quad(*front.flap)).centre, "door open", 16 * size, 600)


def _words_on_iron(painter: QPainter, box: Box, words: str, size: float) -> None:
    painter.setPen(QColor(ON_IRON))
    pixels = fitting(words, box.width - 4, [share * size for share in _WORDS])
    write_centred(painter, *box.centre, words, pixels)


def _rect(box: Box) -> QRectF:
    return QRectF(box.x, box.y, box.width, box.height)
