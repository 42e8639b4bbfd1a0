"""A spot's words in its place: number, doubt as a dot or a whisker, and a caption, as much as there is room for."""

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainter, QPen

from cookstove_gui.gui.drawn_stove.face import Face
from cookstove_gui.gui.drawn_stove.lettering import advance, fitting, text_size, write, write_centred
from cookstove_gui.stove.drawn.layout import Manner, Place
from cookstove_gui.stove.drawn.shapes import Box

_LARGE, _MIDDLE, _SMALL = 30.0, 21.0, 16.0
_BAR = 10.0  # height of the dot or the whisker
_CLOSE = 0.84  # figures have no descenders, so lines may stand close
_BOLD, _PLAIN = 600, 400


def write_face(painter: QPainter, place: Place, face: Face, size: float) -> None:
    """Write with the pen's colour, on a stove drawn at a size."""
    if place.manner is Manner.PAGE:
        _write_on_page(painter, place.words, face, size)
    elif place.manner is Manner.LINE:
        _write_in_line(painter, place, face, size)
    else:
        _write_stacked(painter, place, face, size)


def _write_stacked(painter: QPainter, place: Place, face: Face, size: float) -> None:
    box = place.words
    room = box.width - 4 * size
    is_large = place.manner is Manner.LID or min(box.width, box.height) > 60 * size
    bold = _weight(face)
    largest = text_size(size)
    sizes = tuple(largest + step / 8 * (0.66 * size - largest) for step in range(9))
    for parts in ((True, True), (False, True), (True, False), (False, False)):  # with the name, with the caption
        for at in sizes:
            largest_number = (_LARGE if is_large else _MIDDLE) * at
            number = fitting(f"{face.number} {face.unit}".strip(), room, [largest_number, _MIDDLE * at, 15 * at], bold)
            small = max(_SMALL * at, 12.0)
            name = small if parts[0] and face.name else 0.0
            caption = _caption(face, room, small) if parts[1] else ""
            bar = _BAR * at if face.is_sure or face.doubt else 0.0
            if name and advance(face.name, name) > room:
                continue
            if parts[1] and face.captions and not caption:
                continue
            tall = number * _CLOSE + bar + (small if caption else 0.0) + name * 1.05
            if tall <= box.height - 6 * size and advance(face.number, number, bold) <= room + 3:
                _stack(painter, box, face, at, (name, number, bar, small if caption else 0.0), caption)
                return
    write_centred(painter, *box.centre, face.number, fitting(face.number, room, [15 * size, 12 * size], bold), bold)


def _stack(
    painter: QPainter, box: Box, face: Face, at: float, heights: tuple[float, float, float, float], caption: str
) -> None:
    name, number, bar, small = heights
    x, y = box.centre
    y -= (name * 1.05 + number * _CLOSE + bar + small) / 2
    if name:
        write_centred(painter, x, y + 0.5 * name, face.name, name)
        y += 1.05 * name
    _write_number(painter, x, y + 0.5 * _CLOSE * number, face, number)
    y += _CLOSE * number
    if bar:
        _doubt(painter, QPointF(x, y + bar / 2), face, box.width, at)
        y += bar
    if caption:
        _write_caption(painter, x, y + 0.5 * small, caption, face, small)


def _write_number(painter: QPainter, x: float, middle: float, face: Face, pixels: float) -> None:
    if not face.unit:
        write_centred(painter, x, middle, face.number, pixels, _weight(face))
        return
    small, gap = 0.72 * pixels, 0.2 * pixels
    wide = advance(face.number, pixels, _weight(face)) + gap + advance(face.unit, small)
    end = x - wide / 2 + write(painter, x - wide / 2, middle, face.number, pixels, _weight(face))
    write(painter, end + gap, middle + 0.09 * pixels, face.unit, small)  # on the number's line


def _caption(face: Face, width: float, pixels: float) -> str:
    """The longest caption that fits."""
    tail = f" {face.struck}" if face.struck else ""
    weight = _BOLD if face.is_answer else _PLAIN
    return next((text for text in face.captions if advance(text + tail, pixels, weight) <= width), "")


def _write_caption(painter: QPainter, x: float, middle: float, caption: str, face: Face, pixels: float) -> None:
    if not face.struck:
        write_centred(painter, x, middle, caption, pixels, _BOLD if face.is_answer else _PLAIN)
        return
    words = f"{caption} "
    wide = advance(face.struck, pixels)
    start = x - (advance(words, pixels) + wide) / 2
    start += write(painter, start, middle, words, pixels)
    write(painter, start, middle, face.struck, pixels)
    pen = painter.pen()
    painter.setPen(QPen(pen.color(), max(pixels / 11, 1.2)))
    painter.drawLine(QPointF(start - 1, middle + 1), QPointF(start + wide + 1, middle + 1))
    painter.setPen(pen)


def _write_in_line(painter: QPainter, place: Place, face: Face, size: float) -> None:
    """Name, number and age beside each other, the doubt below the number."""
    box = place.words
    has_mark = face.is_sure or face.doubt > 0
    middle = box.y + box.height * (0.4 if has_mark else 0.5)
    room = place.shape.at(1.0, 0.3)[0] - place.shape.at(0.0, 0.3)[0]  # the floor is narrower at the back
    caption = face.captions[-1] if face.captions else ""
    for parts, at in (
        ((face.name, caption), text_size(size)),
        ((face.name, caption), size),
        ((face.name, caption), 0.85 * size),
        (("", caption), size),
        (("", ""), size),
    ):
        pieces = (
            (parts[0], _SMALL * at, _PLAIN),
            (face.number, 20 * at, _weight(face)),
            (parts[1], _SMALL * at, _PLAIN),
        )
        shown = [piece for piece in pieces if piece[0]]
        gap = 5 * size
        wide = sum(advance(*piece) for piece in shown) + gap * (len(shown) - 1)
        if wide <= room:
            break
    x = box.x + (box.width - wide) / 2
    centre = x
    for text, pixels, weight in shown:
        if text is face.number:
            centre = x + advance(text, pixels, weight) / 2
        x += write(painter, x, middle, text, pixels, weight) + gap
    _doubt(painter, QPointF(centre, middle + 17 * size), face, box.width, size)


def _write_on_page(painter: QPainter, box: Box, face: Face, size: float) -> None:
    """Name and number, the age below: no patch lies beneath, so it begins at the left."""
    at = size
    middle = box.y + 16 * size
    x = box.x + 8 * size
    if face.name:
        x += write(painter, x, middle, face.name, _SMALL * at) + 6 * size
    write(painter, x, middle, face.number, 20 * at, _weight(face))
    if face.captions:
        write(painter, box.x + 8 * size, middle + 21 * size, face.captions[-1], _SMALL * at)


def _doubt(painter: QPainter, middle: QPointF, face: Face, width: float, size: float) -> None:
    """A dot where the number is sure, else a whisker as long as the doubt, up to the place's width."""
    pen = painter.pen()
    x, y = middle.x(), middle.y()
    if face.is_sure:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(pen.color())
        painter.drawEllipse(middle, 3 * size, 3 * size)
        painter.setBrush(Qt.BrushStyle.NoBrush)
    elif face.doubt > 0:
        half, high = min(face.doubt * size, width / 2 - 3), 3.5 * size
        line = QPen(pen.color(), 1.8 * size)
        line.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(line)
        painter.drawLine(QPointF(x - half, y), QPointF(x + half, y))
        for end in (x - half, x + half):
            painter.drawLine(QPointF(end, y - high), QPointF(end, y + high))
    painter.setPen(pen)


def _weight(face: Face) -> int:
    return _BOLD if face.is_sure or face.is_strong else _PLAIN
