"""Oven, fire and dishes on one clock; its steps are chosen by arrows, set earlier or later, and dragged."""

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from cookstove_gui.cooking.supper.plan import StepKind
from cookstove_gui.desk.plan.supper_shown import Block, SupperShown
from cookstove_gui.gui.drawn_stove.lettering import write_centred
from cookstove_gui.gui.plan.lane import Lane
from cookstove_gui.gui.plan.supper.dish_rows import ROW, Spot, paint_dish
from cookstove_gui.gui.plan.supper.plates import paint_plate, plates_of
from cookstove_gui.gui.plan.supper.strips import paint_fire, paint_oven
from cookstove_gui.gui.time_axis.clock_axis import clock_ticks
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.tips import plain_tip
from cookstove_gui.gui.widgets.type import SMALL

LABEL = 206  # px of the design, as all here: the names at the left
AXIS, OVEN, FIRE = 44, 126, 52
_CLOCKS = 22  # of the clocks' middle above the axis
_PLATES = AXIS - _CLOCKS - 8  # top of the plates of now and of the table
_NUDGE_MIN = 5.0
_KEYS = (
    "Up and down choose a step; left and right set it earlier or later, or drag it; Backspace lets the plan choose "
    "again; B puts its bell off, or a click on the bell; Delete takes the dish away."
)
_DRAG = 4  # before a press is a drag


class SupperPicture(QWidget):
    """Drawn; up and down choose a step, left and right set it earlier or later, Backspace lets the plan choose."""

    moved = Signal(str, float)  # a step, and the minutes from now at which it should begin
    freed = Signal(str)  # a step that the plan may place again
    removed = Signal(str)  # key of a dish
    went_to = Signal(float)  # height [px] at which the step that was chosen stands
    bell_pressed = Signal(str)  # key of an alarm whose sound is to go off, or on again

    def __init__(self, look: Look, corner: QWidget, parent: QWidget | None = None) -> None:
        """`corner` stands at the left of the clocks."""
        super().__init__(parent)
        self._look = look
        self._corner = corner
        corner.setParent(self)
        self._shown: SupperShown | None = None
        self._spots: list[Spot] = []
        self._chosen = ""
        self._dragged: tuple[float, float] | None = None  # where it was pressed [px], and how far it was dragged
        self.setObjectName("supper_picture")
        self.setAccessibleName("The supper on one clock")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        look.changed.connect(self.updateGeometry)
        look.changed.connect(self.update)

    def show_supper(self, shown: SupperShown | None) -> None:
        """Show a plan; none leaves the picture empty."""
        self._shown = shown
        if shown is None or self._block(self._chosen) is None:
            self._chosen = ""
        self._say()
        self.updateGeometry()
        self.update()

    @property
    def chosen(self) -> str:
        """Key of the step that is marked; empty for none."""
        return self._chosen

    def sizeHint(self) -> QSize:
        """All rows at their height."""
        if self._shown is None:
            return QSize(px(900), self._corner.sizeHint().height() + 2)
        return QSize(px(900), px(AXIS + OVEN + FIRE + ROW * len(self._shown.rows)) + 2)

    def minimumSizeHint(self) -> QSize:
        """No row is left out; the tab scrolls instead."""
        return QSize(px(560), self.sizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The corner keeps its place."""
        super().resizeEvent(event)
        self._place_corner()

    def _place_corner(self) -> None:
        hint = self._corner.sizeHint()
        self._corner.setGeometry(0, 0, max(px(LABEL) - px(10), hint.width()), hint.height())

    # --- painting

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The past on a quiet ground, the strips and rows, now and the table across all."""
        shown, theme = self._shown, self._look.theme
        if shown is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        left, wide, foot = float(px(LABEL)), float(self.width() - px(LABEL)), float(self.height())
        lane = Lane(painter, shown.start, shown.end, QRectF(left, 0, wide, foot), 0.0, 1.0)
        past = min(max(lane.x(0.0), left), left + wide)
        if past > left:
            quiet = QColor(theme.plate)
            quiet.setAlpha(120)
            painter.fillRect(QRectF(left, px(AXIS), past - left, foot - px(AXIS)), quiet)
        self._paint_axis(painter, lane, shown)
        top = float(px(AXIS))
        oven = QRectF(left, top, wide, px(OVEN))
        paint_oven(painter, oven, QRectF(0, top, left, px(OVEN)), shown, theme)
        fire = QRectF(left, oven.bottom(), wide, px(FIRE))
        self._spots = paint_fire(painter, fire, QRectF(0, fire.top(), left, fire.height()), lane, shown, theme)
        y = fire.bottom()
        high = min(max(px(ROW), (foot - y) / max(len(shown.rows), 1)), 1.2 * px(ROW))
        for hairline in (oven.bottom(), fire.bottom()):
            self._hairline(painter, hairline)
        for row in shown.rows:
            box = QRectF(left, y, wide, high)
            label = QRectF(0, y, left, high)
            chosen = self._chosen if self.hasFocus() else ""
            self._spots += paint_dish(painter, box, label, lane, row, theme, chosen, lane.x(shown.table))
            y += high
            self._hairline(painter, y)
        self._paint_lines(painter, lane, shown, y)
        self._paint_dragged(painter, lane)
        painter.end()

    def _hairline(self, painter: QPainter, y: float) -> None:
        painter.setPen(QPen(QColor(self._look.theme.faint), 1))
        painter.drawLine(QPointF(0, y), QPointF(self.width(), y))

    def _paint_axis(self, painter: QPainter, lane: Lane, shown: SupperShown) -> None:
        theme, box = self._look.theme, lane.box
        painter.setPen(QPen(QColor(theme.line), 1.2))
        painter.drawLine(QPointF(box.left(), px(AXIS)), QPointF(box.right(), px(AXIS)))
        plates = plates_of(lane, shown, px(_PLATES))
        half = px(34)
        most = max(int(box.width() / px(110)), 1)
        for minute, words in clock_ticks(shown.edge.now, shown.edge.offset_minutes, shown.start, shown.end, most):
            x = lane.x(minute)
            painter.setPen(QPen(QColor(theme.line), 1.2))
            painter.drawLine(QPointF(x, px(AXIS) - px(4)), QPointF(x, px(AXIS)))
            clear = not any(one.box.left() - half < x < one.box.right() + half for one in plates)
            if clear and box.left() + px(16) < x < box.right() - px(16):
                painter.setPen(QColor(theme.soft))
                write_centred(painter, x, px(AXIS - _CLOCKS) + px(4), words, px(SMALL))

    def _paint_lines(self, painter: QPainter, lane: Lane, shown: SupperShown, foot: float) -> None:
        """Now, 1.6 wide, and the table, 3 wide, each with its clock on a plate."""
        theme = self._look.theme
        for plate in plates_of(lane, shown, px(_PLATES)):
            painter.setPen(QPen(QColor(theme.ink), px(plate.line)))
            painter.drawLine(QPointF(plate.x, px(AXIS) - px(4)), QPointF(plate.x, foot))
            paint_plate(painter, plate, theme)

    def _paint_dragged(self, painter: QPainter, lane: Lane) -> None:
        """Where a dragged step would begin."""
        spot = self._spot(self._chosen)
        if self._dragged is None or spot is None or self._shown is None:
            return
        _, way = self._dragged
        painter.setPen(QPen(QColor(self._look.theme.cobalt), px(2.5), Qt.PenStyle.DashLine))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(spot.box.translated(way, 0), px(2), px(2))
        told = self._shown.edge.clock(self._minute(lane, spot.box.left() + way))
        painter.setPen(QColor(self._look.theme.cobalt))
        write_centred(painter, spot.box.left() + way, spot.box.bottom() + px(11), told, px(SMALL), 600)

    # --- choosing and moving

    def _all_blocks(self) -> list[Block]:
        """The steps that may be moved, in order of time."""
        rows = self._shown.rows if self._shown else ()
        blocks = [block for row in rows for block in row.blocks if block.kind is not StepKind.WAIT and not block.past]
        return sorted(blocks, key=lambda block: (block.begin, block.step))

    def _block(self, step: str) -> Block | None:
        return next((block for block in self._all_blocks() if block.step == step), None)

    def _spot(self, step: str) -> Spot | None:
        return next((spot for spot in self._spots if spot.step == step), None)

    def choose(self, step: str) -> None:
        """Mark a step."""
        self._chosen = step
        self._say()
        self.update()
        spot = self._spot(step)
        if spot is not None:
            self.went_to.emit(spot.box.center().y())

    def _say(self) -> None:
        block = self._block(self._chosen)
        self.setAccessibleDescription(block.said if block else "Up and down choose a step.")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows choose and move, Backspace frees, Delete takes the dish away."""
        blocks, chosen = self._all_blocks(), self._block(self._chosen)
        match event.key():
            case Qt.Key.Key_Up | Qt.Key.Key_Down if blocks:
                step = 1 if event.key() == Qt.Key.Key_Down else -1
                place = blocks.index(chosen) + step if chosen else (0 if step > 0 else -1)
                self.choose(blocks[min(max(place, 0), len(blocks) - 1) if chosen else place].step)
            case Qt.Key.Key_Left | Qt.Key.Key_Right if chosen is not None:
                way = _NUDGE_MIN if event.key() == Qt.Key.Key_Right else -_NUDGE_MIN
                self.moved.emit(chosen.step, chosen.begin + way)
            case Qt.Key.Key_Backspace if chosen is not None:
                self.freed.emit(chosen.step)
            case Qt.Key.Key_B if chosen is not None:
                bell = chosen.out_bell if chosen.clock == "" else chosen.bell
                if bell is not None:
                    self.bell_pressed.emit(bell.key)
            case Qt.Key.Key_Delete if chosen is not None:
                self.removed.emit(chosen.step.partition("/")[0])
            case _:
                super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Mark the step that is pressed; a bell goes silent, or rings again."""
        bell = next((one for one in self._spots if one.is_bell and one.box.contains(event.position())), None)
        if bell is not None:
            self.bell_pressed.emit(bell.step)
            return
        spot = next((one for one in self._spots if one.box.adjusted(-2, -4, 2, 4).contains(event.position())), None)
        if spot is not None and self._block(spot.step) is not None:
            self.choose(spot.step)
            self._dragged = (event.position().x(), 0.0)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag it."""
        if self._dragged is not None and event.buttons() & Qt.MouseButton.LeftButton:
            self._dragged = (self._dragged[0], event.position().x() - self._dragged[0])
            self.update()

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        """Let it go: the step should begin there."""
        dragged, spot, self._dragged = self._dragged, self._spot(self._chosen), None
        self.update()
        if dragged is None or spot is None or self._shown is None or abs(dragged[1]) < px(_DRAG):
            return
        lane = self._lane(self._shown)
        minute = self._minute(lane, spot.box.left() + dragged[1])
        self.moved.emit(self._chosen, minute)

    def _lane(self, shown: SupperShown) -> Lane:
        box = QRectF(px(LABEL), 0, self.width() - px(LABEL), self.height())
        return Lane(QPainter(), shown.start, shown.end, box, 0.0, 1.0)

    @staticmethod
    def _minute(lane: Lane, x: float) -> float:
        return lane.start + (x - lane.box.left()) / max(lane.box.width(), 1.0) * lane.long

    def focusInEvent(self, event: QFocusEvent) -> None:
        """With the keyboard here, a step is marked."""
        super().focusInEvent(event)
        blocks = self._all_blocks()
        if blocks and self._block(self._chosen) is None:
            self.choose(blocks[0].step)

    def event(self, event: QEvent) -> bool:
        """A step pointed at is told in full; the corner may want another size."""
        if event.type() is QEvent.Type.LayoutRequest:
            self.updateGeometry()
            self._place_corner()
        if isinstance(event, QHelpEvent) and event.type() is QEvent.Type.ToolTip:
            pointed = QPointF(event.pos())
            found = next((one.step for one in self._spots if one.box.contains(pointed)), "")
            rows = self._shown.rows if self._shown else ()
            block = next((one for row in rows for one in row.blocks if one.step == found), None)
            QToolTip.showText(event.globalPos(), plain_tip(block.said) if block else _KEYS, self)
            return True
        return super().event(event)
