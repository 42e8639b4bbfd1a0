"""The rows of the dishes: ink where hands are on, lines for waits, heat-coloured blocks on the fire."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from cookstove_gui.cooking.supper.plan import StepKind
from cookstove_gui.desk.plan.supper_next import Bell
from cookstove_gui.desk.plan.supper_shown import Block, DishRow
from cookstove_gui.gui.drawn_stove.lettering import advance, fitting, write, write_centred
from cookstove_gui.gui.plan.lane import Lane
from cookstove_gui.gui.widgets.key import paint_ring
from cookstove_gui.gui.widgets.signs import paint_bell, paint_pin
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import Theme
from cookstove_gui.gui.widgets.type import PLACE, SMALL
from cookstove_gui.stove.drawn.heat_colours import heat_colour, heat_ink

ROW = 55  # least height, of which it takes more where there is room [px of the design]
_BLOCK = 30  # of a block
_PAST = 110  # of 255: a block whose step is done


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """Where a step, or an alarm's bell, was painted, to be pressed."""

    step: str  # key of the step, or of the alarm
    box: QRectF
    is_bell: bool = False


def paint_planned_bell(painter: QPainter, box: QRectF, bell: Bell, theme: Theme) -> Spot:
    """A bell, struck through where its sound was put off; what is pressed is a little larger."""
    ink = QColor(theme.soft if bell.is_silent else theme.ink)
    paint_bell(painter, box, ink)
    if bell.is_silent:
        painter.setPen(QPen(ink, px(2)))
        painter.drawLine(box.bottomLeft(), box.topRight())
    return Spot(step=bell.key, box=box.adjusted(-px(4), -px(4), px(4), px(4)), is_bell=True)


def paint_dish(
    painter: QPainter, box: QRectF, label: QRectF, lane: Lane, row: DishRow, theme: Theme, chosen: str, table: float
) -> list[Spot]:
    """One dish; the places of its steps. No clock stands across the table's line."""
    painter.setPen(QColor(theme.ink))
    middle = box.top() + 0.36 * box.height()
    size = fitting(row.name, label.width() - px(8), (px(22), px(20), px(PLACE), px(SMALL)), 600)
    write(painter, label.left(), middle, row.name, size, 600)
    painter.setPen(QColor(theme.ember if any(block.is_short for block in row.blocks) else theme.soft))
    room = label.width() - px(8)
    under = next((rung for rung in row.fails if advance(rung, px(SMALL)) <= room), (*row.fails, row.under)[-1])
    while under and advance(under, px(SMALL)) > room:
        under = under.rpartition(" ")[0].rstrip(",")
    write(painter, label.left(), middle + px(25), under, px(SMALL))
    y = box.top() + 0.6 * box.height()
    spots: list[Spot] = []
    words_end = -1e9
    end = lane.start + lane.long
    seen = [(one, _place(lane, one, y)) for one in row.blocks if one.end >= lane.start and one.begin <= end]
    for block, where in seen:  # below all blocks: a wait that began early runs behind what was still being done
        if block.kind is StepKind.WAIT:
            painter.setPen(QPen(QColor(theme.line), px(3)))
            painter.drawLine(QPointF(where.left() + 1, y), QPointF(where.right() - 1, y))
    for block, where in seen:
        if block.kind is StepKind.WAIT:
            words_end = _paint_wait(painter, where, block, theme, words_end)
        else:
            words_end, bells = _paint_block(painter, where, block, theme, words_end, table)
            spots += [*bells, Spot(step=block.step, box=where)]
            if block.step == chosen:
                painter.save()
                paint_ring(painter, where.adjusted(-1, -1, 1, 1), QColor(theme.cobalt))
                painter.restore()
    return spots


def _place(lane: Lane, block: Block, y: float) -> QRectF:
    left, right = (lane.x(min(max(minute, lane.start), lane.start + lane.long)) for minute in (block.begin, block.end))
    return QRectF(left, y - px(_BLOCK) / 2, max(right - left, px(4)), px(_BLOCK))


def _paint_wait(painter: QPainter, where: QRectF, block: Block, theme: Theme, taken: float) -> float:
    y = where.center().y()
    wide = advance(block.words, px(SMALL))
    middle = max(where.center().x(), taken + px(6) + wide / 2)
    if wide <= where.width() + px(10) and middle + wide / 2 <= where.right() + px(6):
        painter.setPen(QColor(theme.soft))
        write_centred(painter, middle, y - px(13), block.words, px(SMALL))
        return middle + wide / 2
    return taken


def _paint_block(
    painter: QPainter, where: QRectF, block: Block, theme: Theme, taken: float, table: float
) -> tuple[float, list[Spot]]:
    """The block, the word in it or over it, its clocks; where its words end, and its bells."""
    heat = block.heat
    fill = QColor(theme.ink if heat is None else heat_colour(heat))
    on_it = QColor(theme.ground if heat is None else heat_ink(heat))
    if block.past:
        painter.fillRect(where.adjusted(1, 1, -1, -1), QColor(theme.ground))
        fill.setAlpha(_PAST)
        on_it = QColor(theme.ink)
    painter.setBrush(fill)
    painter.setPen(QPen(QColor(theme.ember), px(3)) if block.is_short else QPen(QColor(theme.line), 1))
    painter.drawRoundedRect(where.adjusted(0.5, 0.5, -0.5, -0.5), px(2), px(2))
    turn = where.right()
    if block.turn is not None:
        turn = where.left() + (block.turn - block.begin) / max(block.end - block.begin, 1.0) * where.width()
        painter.setPen(QPen(on_it, px(2)))
        painter.drawLine(QPointF(turn, where.top()), QPointF(turn, where.bottom()))
    room = (turn if block.turn is not None else where.right()) - where.left()
    painter.setPen(on_it)
    if advance(block.words, px(SMALL), 600) + px(10) <= room:
        write(painter, where.left() + px(8), where.center().y(), block.words, px(SMALL), 600)
        if block.turn is not None and advance("turn", px(SMALL)) + px(8) <= where.right() - turn:
            write(painter, turn + px(6), where.center().y(), "turn", px(SMALL))
    elif not block.clock and advance(block.words, px(SMALL), 600) and where.left() > taken + px(4):
        painter.setPen(QColor(theme.ink))
        write(painter, where.left(), where.top() - px(12), block.words, px(SMALL), 600)
        taken = where.left() + advance(block.words, px(SMALL), 600)
    return _paint_clocks(painter, where, block, theme, taken, table)


def _paint_clocks(
    painter: QPainter, where: QRectF, block: Block, theme: Theme, taken: float, table: float
) -> tuple[float, list[Spot]]:
    """The clocks over a block at which a bell rings: where it goes in, and where it comes out."""
    y = where.top() - px(11)
    bells: list[Spot] = []
    for x, clock, bell in ((where.left(), block.clock, block.bell), (where.right(), block.out, block.out_bell)):
        wide = advance(clock, px(SMALL), 600) + px(20)
        if x < table + px(2) < x + wide + px(4):
            x = table - wide - px(4)
        if not clock or x < taken + px(5):
            continue
        if bell is not None:
            bells.append(paint_planned_bell(painter, QRectF(x + px(2), y - px(8), px(14), px(14)), bell, theme))
        painter.setPen(QColor(theme.ink))
        write(painter, x + px(19), y, clock, px(SMALL), 600)
        taken = x + wide
    if block.is_own:
        paint_pin(painter, QRectF(where.left() - px(14), where.top(), px(13), px(16)), QColor(theme.cobalt))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    return taken, bells
