"""The stove's body in flat fills: iron, cooktop, firebox, air slide, bypass lever, the oven's walls and its door."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from cookstove_gui.gui.drawn_stove.layout import StoveLayout
from cookstove_gui.gui.drawn_stove.lettering import advance, fitting, write, write_centred
from cookstove_gui.gui.drawn_stove.shapes import Box, Quad, room_for_words
from cookstove_gui.gui.drawn_stove.spot_painting import lid, polygon
from cookstove_gui.gui.widgets.theme import ON_IRON, Theme

PLATE = "#353638"  # a part of the stove that shows no heat
_DEEP = "#1A1B1C"


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
    for box in (layout.pipe, layout.collar, layout.body):
        painter.drawRect(_rect(box))
    for foot in layout.feet:
        painter.drawPolygon(polygon(foot))
    painter.drawPolygon(polygon(layout.top))
    painter.drawRoundedRect(_rect(layout.lip), 2, 2)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(PLATE))
    for panel in (*layout.sides, layout.firebox, layout.air):
        painter.drawRect(_rect(panel))
    for part in (*layout.plates, *layout.oven_plain):
        painter.drawPolygon(polygon(part))
    if layout.oven_ceiling:
        painter.setBrush(QColor(_DEEP))
        painter.drawPolygon(polygon(layout.oven_ceiling))
    _lids(painter, layout)
    _firebox(painter, layout, settings, size)
    _bypass(painter, layout, settings, theme)
    if settings.door_is_open and layout.flap:
        _door(painter, layout, theme)


def _lids(painter: QPainter, layout: StoveLayout) -> None:
    faint = QColor(ON_IRON)
    faint.setAlphaF(0.26)
    painter.setPen(QPen(faint, 1.2 * layout.size))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for plate in layout.plates:
        painter.drawEllipse(lid(room_for_words(plate)))


def _firebox(painter: QPainter, layout: StoveLayout, settings: Settings, size: float) -> None:
    painter.setPen(QColor(ON_IRON))
    if settings.firebox_words:
        box = layout.firebox
        pixels = fitting(settings.firebox_words, box.width - 4, [18 * size, 16 * size, 14 * size, 12 * size])
        write_centred(painter, *box.centre, settings.firebox_words, pixels)
    box = layout.air
    x, _ = box.centre
    pixels = fitting(settings.air_words, box.width - 4, [18 * size, 16 * size, 14 * size, 12 * size])
    is_known = settings.air is not None
    write_centred(painter, x, box.y + box.height * (0.28 if is_known else 0.5), settings.air_words, pixels)
    if settings.air is None:
        return
    wide, high = min(66 * size, box.width - 12), 10 * size
    slide = QRectF(x - wide / 2, box.y + box.height * 0.7 - high / 2, wide, high)
    painter.setPen(QPen(QColor(ON_IRON), 1.4 * size))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(slide, high / 2, high / 2)
    if settings.air > 0:
        painter.save()
        painter.setClipRect(QRectF(slide.left(), slide.top() - 1, wide * settings.air, high + 2))
        painter.setBrush(QColor(ON_IRON))
        painter.drawRoundedRect(slide, high / 2, high / 2)
        painter.restore()


def _bypass(painter: QPainter, layout: StoveLayout, settings: Settings, theme: Theme) -> None:
    """The lever at the pipe: level when shut, dropped when open."""
    size = layout.size
    small = 16 * size
    painter.setPen(QColor(theme.soft))
    flue = layout.flue_words
    write(painter, flue.x + 9 * size if layout.bypass_is_left else flue.x, flue.y + 10 * size, "flue", small)
    if settings.bypass is None:
        return
    words = layout.bypass_words
    x = words.right - advance(settings.bypass_words, small) if layout.bypass_is_left else words.x
    write(painter, x, words.y + 10 * size, settings.bypass_words, small)
    lever = layout.lever
    near, far = (lever.right, lever.x) if layout.bypass_is_left else (lever.x, lever.right)
    drop = settings.bypass * 15 * size
    painter.setPen(QPen(QColor(theme.ink), 2.6 * size))
    painter.drawLine(QPointF(far + (near - far) * 0.2 * settings.bypass, lever.y + drop), QPointF(near, lever.y))
    painter.setBrush(QColor(theme.ink))
    painter.drawEllipse(QPointF(near, lever.y), 3.6 * size, 3.6 * size)


def _door(painter: QPainter, layout: StoveLayout, theme: Theme) -> None:
    """The oven's door let down, with its words."""
    painter.setPen(QPen(QColor(theme.line), 1))
    painter.setBrush(QColor(theme.ground))
    painter.drawPolygon(polygon(layout.flap))
    room = room_for_words(Quad(*layout.flap))
    painter.setPen(QColor(theme.ember))
    write_centred(painter, *room.centre, "door open", 16 * layout.size, 600)


def _rect(box: Box) -> QRectF:
    return QRectF(box.x, box.y, box.width, box.height)
