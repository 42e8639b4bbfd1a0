"""What the tab offers while there is no meal yet: when to eat, what to cook, and what the plan will look like."""

from collections.abc import Sequence
from datetime import timedelta

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from cookstove_gui.desk import Desk
from cookstove_gui.desk.heading import here
from cookstove_gui.gui.time_axis.lane_signs import paint_sign
from cookstove_gui.gui.widgets.flow_row import FlowRow
from cookstove_gui.gui.widgets.form import button, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.numbered import NumberedRow, Rule
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import colour
from cookstove_gui.gui.widgets.type import BODY, SMALL, font
from cookstove_gui.stove.drawn.heat_colours import heat_colour, heat_ink
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import clock_text, kelvin

_MOST_DISHES = 24  # that have a key of their own; the list has all
_SOONEST, _STEP, _TIMES = timedelta(minutes=75), timedelta(minutes=30), 4


class FirstStep(QWidget):
    """Keys for the coming half hours and for dishes; a time typed above does as well."""

    table_chosen = Signal(str)  # a clock time
    dishes_changed = Signal()
    list_wanted = Signal()

    def __init__(self, desk: Desk, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setObjectName("supper_first_step")
        self._times = [button("", f"supper_time_{place}", "Eat at this time") for place in range(_TIMES)]
        for key in self._times:
            key.clicked.connect(lambda _checked=False, key=key: self.table_chosen.emit(key.text()))
        self._dishes = [button("", f"supper_dish_{place}", "Have this dish") for place in range(_MOST_DISHES)]
        for key in self._dishes:
            key.setCheckable(True)
            key.clicked.connect(self.dishes_changed)
        every = button(
            "All dishes, recipes", "supper_all_dishes", "All dishes, your own, or one from a recipe (Insert)"
        )
        every.clicked.connect(self.list_wanted)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        gap = 0
        for row in (
            NumberedRow(look, 1, "What is for supper?", FlowRow(gap, *self._dishes, every)),
            Rule(look, strong=False),
            NumberedRow(look, 2, "When do you want to eat?", FlowRow(gap, *self._times), words(_TYPED, role="soft")),
        ):
            self._column.addWidget(row)
        self._column.addWidget(Sketch(look), 1)
        look.changed.connect(self._space)
        self._space()
        self.show_choices()

    @property
    def chosen(self) -> tuple[str, ...]:
        """Keys of the dishes that are pressed, in the order in which they stand."""
        return tuple(str(key.property("dish")) for key in self._dishes if key.isChecked())

    def show_choices(self) -> None:
        """The half hours to come, and the dishes."""
        offset = timedelta(minutes=here(self._desk))
        soonest = self._desk.clock() + offset + _SOONEST
        past = timedelta(minutes=soonest.minute % 30, seconds=soonest.second, microseconds=soonest.microsecond)
        first = soonest - past + _STEP - offset
        for place, key in enumerate(self._times):
            key.setText(clock_text(first + place * _STEP, here(self._desk)))
            key.setAccessibleName(f"Eat at {key.text()}")
        dishes = self._desk.supper.dishes[:_MOST_DISHES]
        for place, key in enumerate(self._dishes):
            key.setVisible(place < len(dishes))
        for key, dish in zip(self._dishes, dishes, strict=False):
            if key.property("dish") != dish.key:
                key.setProperty("dish", dish.key)
                key.setChecked(False)
            key.setText(dish.name)
            key.setAccessibleName(f"Have {dish.name}")

    def let_go(self) -> None:
        """No dish is pressed any more."""
        for key in self._dishes:
            key.setChecked(False)

    def _space(self) -> None:
        self._column.setSpacing(px(10))


_TYPED = "Or type the time into “Table at” above."
_THEN = "The plan runs back from the table, on one clock:"
# The sketch, in shares of its width and height: rows with their pieces (start, end, °F they need; none: by hand).
_ROWS: tuple[tuple[str, tuple[tuple[float, float, float | None, str], ...]], ...] = (
    ("the fire", ()),
    ("bread", ((0.30, 0.38, None, "shape"), (0.47, 0.66, 435.0, "bake"))),
    ("soup", ((0.16, 0.24, None, "cut"), (0.28, 0.80, 260.0, "simmer"))),
    ("greens", ((0.74, 0.85, 560.0, "boil"),)),
)
_HEAD, _LEAST_ROW, _FEWEST = 46, 42, 2  # px of the design, and rows
_LIGHT, _WOOD, _TABLE, _NAMES = 0.12, (0.40, 0.62), 0.88, 0.13


class Sketch(QWidget):
    """An invented meal on one clock: as many of its rows as there is height for."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self.setAccessibleName("A picture of a planned meal: the fire, three dishes and the table on one clock")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def minimumSizeHint(self) -> QSize:
        """None: it makes do with what is left."""
        return QSize(0, 0)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The rows, their pieces, the table."""
        top, least = px(_HEAD), px(_LEAST_ROW)
        rows = _ROWS[: max(self.height() - top, 0) // least]
        if len(rows) < _FEWEST:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, wide = self._look.theme, self.width()
        painter.fillRect(QRectF(0, 0, wide, px(2)), QColor(theme.ink))
        high = min(px(56), (self.height() - top) / len(rows))
        painter.setFont(font(BODY, 600))
        painter.setPen(colour(theme.ink))
        painter.drawText(QPointF(0, px(22)), _THEN)
        painter.setFont(font(SMALL))
        for place, (name, pieces) in enumerate(rows):
            middle = top + (place + 0.5) * high
            painter.setPen(QColor(theme.ink))
            painter.drawText(QRectF(0, middle - high / 2, _NAMES * wide, high), Qt.AlignmentFlag.AlignVCenter, name)
            painter.setPen(QPen(colour(theme.faint), 1))
            painter.drawLine(QPointF(0, middle + high / 2), QPointF(wide, middle + high / 2))
            if not pieces:
                for at, kind in ((_LIGHT, Kind.LIT), *((at, Kind.WOOD) for at in _WOOD)):
                    above = QPointF(at * wide, middle - px(11))
                    paint_sign(
                        painter, above, kind, opening=0.0, count=2, ink=colour(theme.ink), ground=colour(theme.ground)
                    )
                painter.setFont(font(SMALL))
                self._write(painter, [(_LIGHT, "light"), *((at, "2 splits") for at in _WOOD)], middle + px(12))
            for start, end, heat, what in pieces:
                block = QRectF(start * wide, middle - px(14), (end - start) * wide, px(28))
                fill = theme.ink if heat is None else heat_colour(kelvin(heat, "F"))
                painter.fillRect(block, colour(fill))
                painter.setPen(colour(theme.ground if heat is None else heat_ink(kelvin(heat, "F"))))
                painter.drawText(block.adjusted(px(8), 0, 0, 0), Qt.AlignmentFlag.AlignVCenter, what)
        painter.setPen(QPen(colour(theme.ink), 3))
        painter.drawLine(QPointF(_TABLE * wide, top - px(4)), QPointF(_TABLE * wide, top + len(rows) * high))
        self._write(painter, [(_TABLE, "table")], top - px(16))

    def _write(self, painter: QPainter, said: Sequence[tuple[float, str]], middle: float) -> None:
        painter.setPen(colour(self._look.theme.ink))
        half = px(50)
        for at, what in said:
            box = QRectF(at * self.width() - half, middle - px(12), 2 * half, px(24))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, what)
