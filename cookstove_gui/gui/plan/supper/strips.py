"""The oven's strip and the fire's lane of a planned supper."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QPainter, QPen

from cookstove_gui.desk.plan.supper_shown import FireMark, SupperShown
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.gui.drawn_stove.lettering import advance, fitting, write, write_centred
from cookstove_gui.gui.plan.lane import Lane, dashed
from cookstove_gui.gui.plan.supper.dish_rows import Spot, paint_planned_bell
from cookstove_gui.gui.time_axis.lane_signs import paint_sign
from cookstove_gui.gui.widgets.signs import paint_caution
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import Theme
from cookstove_gui.gui.widgets.type import NUMBER, PLACE, SMALL
from cookstove_gui.phrases.edge import whole
from cookstove_gui.phrases.lane import LaneRow
from cookstove_gui.units import degrees

_MARGIN_K = 12.0  # above and below what the oven's strip shows
_APART = 27  # least distance of two marks in the fire's lane [px of the design]


def paint_oven(painter: QPainter, box: QRectF, label: QRectF, shown: SupperShown, theme: Theme) -> None:
    """What the oven was and may be, against the heats that the dishes want of it."""
    heats = [heat for one in shown.wanted for heat in (one.low, one.high)]
    if shown.oven is not None:
        seen = (shown.oven.minutes >= shown.start) & (shown.oven.minutes <= shown.end)
        heats += [*shown.oven.p10[seen].tolist(), *shown.oven.p90[seen].tolist()]
        if shown.oven.past is not None:
            minutes, past = shown.oven.past
            heats += past[minutes >= shown.start].tolist()
    low, high = (min(heats) - _MARGIN_K, max(heats) + _MARGIN_K) if heats else (300.0, 500.0)
    lane = Lane(painter, shown.start, shown.end, box.adjusted(0, px(2), 0, -px(4)), low, high)
    _paint_wanted(painter, lane, shown, theme)
    if shown.oven is not None:
        oven = shown.oven
        lane.fan(oven.minutes, (oven.p10, oven.p90), (oven.p25, oven.p75), theme=theme)
        if oven.past is not None:
            _paint_past(lane, *oven.past, theme)
        lane.line(oven.minutes, oven.p50, dashed(theme.ink))
        lane.rings(oven.read, theme.ink, theme.ground)
    _paint_oven_label(painter, label, shown, theme)


def _paint_past(lane: Lane, minutes: FloatArray, heats: FloatArray, theme: Theme) -> None:
    before = minutes <= 0.0
    lane.line(minutes[before], heats[before], QPen(QColor(theme.ink), px(2.4)))


def _paint_wanted(painter: QPainter, lane: Lane, shown: SupperShown, theme: Theme) -> None:
    """A box for each heat, its ends in verdigris, or in ember where it is not likely; the words below them."""
    taken = lane.box.left()
    wanted = sorted(shown.wanted, key=lambda found: found.begin)
    lines = [*(lane.x(max(one.begin, shown.start)) for one in wanted), lane.x(shown.table), lane.x(0.0)]
    for one in wanted:
        ink = theme.ember if one.is_short else theme.verdigris
        left, right = lane.x(max(one.begin, shown.start)), lane.x(one.end)
        top, bottom = lane.y(one.high), lane.y(one.low)
        fill = QColor(ink)
        fill.setAlpha(60)
        painter.fillRect(QRectF(left, top, right - left, bottom - top), fill)
        painter.setPen(QPen(QColor(ink), 1.8))
        for y in (top, bottom):
            painter.drawLine(QPointF(left, y), QPointF(right, y))
        foot = lane.box.bottom() - px(16)
        painter.setPen(QPen(QColor(ink), 1.4))
        painter.drawLine(QPointF(left, bottom), QPointF(left, foot + px(8)))
        wide = advance(one.words, px(SMALL), 600)
        inside = [line + px(5) for line in sorted(lines) if left < line < right]
        # After its line, after now or the table where they stand in its box, or before it: never across another line.
        for x in (left + px(5), *inside, left - px(5) - wide):
            if taken <= x and x + wide <= lane.box.right() and not any(x < line < x + wide for line in lines):
                painter.setPen(QColor(ink))
                write(painter, x, foot, one.words, px(SMALL), 600)
                taken = x + wide + px(5)
                break


def _paint_oven_label(painter: QPainter, label: QRectF, shown: SupperShown, theme: Theme) -> None:
    x, y = label.left(), label.top() + px(26)
    painter.setPen(QColor(theme.ink))
    wide = write(painter, x, y, "Oven", px(22), 600)
    if shown.oven_now is not None:
        at = x + wide + px(12)
        at += write(painter, at, y, whole(degrees(shown.oven_now, shown.edge.unit)), px(NUMBER), 600)
        painter.setPen(QColor(theme.soft))
        write(painter, at + px(5), y, f"°{shown.edge.unit} now", px(PLACE))
    y += px(33)
    title, below = shown.fits
    ink = theme.ember if shown.does_not_fit else theme.ink
    if shown.does_not_fit:
        paint_caution(painter, QRectF(x, y - px(9), px(18), px(18)), QColor(theme.ember), QColor(theme.ground))
    painter.setPen(QColor(ink))
    start = x + (px(24) if shown.does_not_fit else 0)
    write(painter, start, y, title, fitting(title, label.right() - start, (px(PLACE), px(SMALL)), 600), 600)
    painter.setPen(QColor(theme.ink if shown.does_not_fit else theme.soft))
    for line in _broken(below, label.width() - px(6), px(SMALL)):
        y += px(20)
        if y + px(8) <= label.bottom():
            write(painter, x, y, line, px(SMALL))


def _broken(text: str, width: float, pixels: float) -> list[str]:
    """A text in lines no wider than this."""
    lines: list[str] = []
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and advance(longer, pixels) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def _beside(lines: tuple[float, ...], middle: float, half: float) -> float:
    """The middle of words moved so that no upright line runs through them."""
    for line in lines:
        if abs(line - middle) < half:
            return line + half if middle >= line else line - half
    return middle


def paint_fire(
    painter: QPainter, box: QRectF, label: QRectF, lane: Lane, shown: SupperShown, theme: Theme
) -> list[Spot]:
    """What was done to the fire, and in bold what is planned; the places of its bells."""
    painter.setPen(QColor(theme.ink))
    write(painter, label.left(), box.center().y(), "Fire", px(22), 600)
    ground = QColor(theme.ground)
    y, under = box.top() + px(17), box.top() + px(39)
    bells: list[Spot] = []
    marks: list[tuple[float, LaneRow | FireMark]] = [
        ((row.at - shown.edge.now).total_seconds() / 60.0, row) for row in shown.done
    ]
    marks += [(one.minute, one) for one in shown.fire]
    taken, placed = -1e9, -1e9
    for minute, mark in sorted(marks, key=lambda found: found[0]):
        planned = isinstance(mark, FireMark)
        if not shown.start <= minute <= shown.end:
            continue
        x = max(lane.x(minute), placed + px(_APART))
        if not planned:  # what was done never stands past now; what then has no room is told on the Cook page
            x = min(x, lane.x(0.0) - px(_APART) / 2)
            if x < placed + px(_APART) - 1:
                continue
        placed = x
        painter.save()
        paint_sign(
            painter, QPointF(x, y), mark.kind, opening=mark.opening, count=mark.count, ink=QColor(theme.ink),
            ground=ground,
        )  # fmt: skip
        painter.restore()
        if isinstance(mark, FireMark) and mark.bell is not None:
            where = QRectF(x + px(15), y - px(8), px(14), px(14))
            bells.append(paint_planned_bell(painter, where, mark.bell, theme))
            placed += px(14)
        weight, words = 600 if planned else 400, mark.words
        wide = advance(words, px(SMALL), weight)
        middle = _beside((lane.x(0.0), lane.x(shown.table)), x, wide / 2 + px(3))
        if middle - wide / 2 > max(taken, box.left()) and middle + wide / 2 < box.right():
            painter.setPen(QColor(theme.ink))
            write_centred(painter, middle, under, words, px(SMALL), weight)
            taken = middle + wide / 2 + px(6)
    return bells
