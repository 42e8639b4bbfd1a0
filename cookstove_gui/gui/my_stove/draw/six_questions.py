"""Six questions, one after the other, that make the drawing beside them the owner's own stove."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from cookstove_gui.desk.my_stove import describing
from cookstove_gui.desk.my_stove.read_groups import GROUPS, is_read, read_group
from cookstove_gui.desk.my_stove.redrawing import Redrawing
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.my_stove.draw.counter import Counter
from cookstove_gui.gui.my_stove.draw.stove_words import CLOSET, FIREBOX, FIRED, LIDS, PIPE, TANK
from cookstove_gui.gui.widgets.flow_row import FlowRow
from cookstove_gui.gui.widgets.form import Choice, Either, Field, button, row, words
from cookstove_gui.gui.widgets.one_at_a_time import OneAtATime
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.stove.drawn.above import flue_place
from cookstove_gui.stove.redrawn import plates_of
from cookstove_gui.stove.stove import Firebox, FluePlace, TankPlace

_CAPTION, _WIDE, _NARROW = 104, 212, 84  # px
LAST = 5  # place of the question that spots are added at


class SixQuestions(QWidget):
    """Each answer is drawn and kept at once; the way back changes it."""

    asked = Signal(int)  # which question stands there, from 0
    plates = Signal(int, int)  # rows more, columns more
    ended = Signal()

    def __init__(self, link: DeskLink, redrawing: Redrawing, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._redrawing = link.desk, redrawing
        self.setObjectName("six_questions")
        self._place = words(name="six_place", role="soft")
        self._pages = OneAtATime()
        self._first: list[QWidget] = []  # what has the keyboard first, of each question
        self._build()
        self._back = button("Back", "six_back", "The question before")
        self._next = button("Next", "six_next", "The next question", role="strong_main")
        self._leave = button("Leave it", "six_leave", "What was answered so far stays (Esc)", keys="Esc")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        column.addWidget(self._place)
        column.addWidget(self._pages)
        column.addLayout(row(self._next, self._back, self._leave))
        column.addStretch(1)
        self._back.clicked.connect(lambda: self._go(-1))
        self._next.clicked.connect(lambda: self._go(1))
        self._leave.clicked.connect(self.ended)

    def _build(self) -> None:
        self._is_new = self._either("Fired before", "six_fired", FIRED, lambda key: {"is_new": key == "new"})
        self._name = Field("Its name", "six_name", "What you call it", width=_WIDE, caption_width=_CAPTION)
        self._firebox = self._either("Firebox", "six_firebox", FIREBOX, lambda key: {"firebox": Firebox(key)})
        self._width = Field("Across", "six_width", "Width of the cooktop", width=_NARROW, caption_width=_CAPTION)
        self._depth = Field("Deep", "six_depth", "Depth of the cooktop", width=_NARROW, caption_width=_CAPTION)
        self._rows = Counter("rows of plates", "Rows of plates")
        self._columns = Counter("columns", "Columns of plates")
        for counter, name in ((self._rows, "six_rows"), (self._columns, "six_columns")):
            counter.setObjectName(name)
        self._lids = self._either("Plates", "six_lids", LIDS, lambda key: {"has_lids": key == "lids"})
        self._surface = Choice("Its surface", "six_surface", "What the top is of", width=_WIDE, caption_width=_CAPTION)
        self._pipe = self._either("Pipe", "six_pipe", PIPE, lambda key: {"flue_place": FluePlace(key)})
        self._tank = self._either("Water tank", "six_tank", TANK, lambda key: {"water_tank": TankPlace(key)})
        self._closet = self._either("Closet", "six_closet", CLOSET, lambda key: {"has_warming_closet": key == "closet"})
        self._groups = {group.key: self._group(group.key, group.said) for group in GROUPS}
        self._page(
            "Is it new, or was it fired before?", "A new stove needs its first fires before any food.",
            (self._is_new, self._name),
        )  # fmt: skip
        self._page("Where does the firebox sit?", "Seen from where you stand to cook.", (self._firebox,))
        self._page(
            "How big is the top?", "The spots of the top are named after its plates.",
            (self._width, self._depth, self._rows, self._columns),
        )  # fmt: skip
        self._page("What is the top like?", "An infrared thermometer sees its surface.", (self._lids, self._surface))
        self._page("What stands on it and beside it?", "As you see it.", (self._pipe, self._tank, self._closet))
        self._page(
            "Which spots do you read?",
            "The oven’s centre and the plates in any case. Press what you also read; a + in the drawing adds one spot.",
            (FlowRow(STEP, *self._groups.values()),),
        )
        for field, change in (
            (self._name, lambda text: describing.rename_stove(self._desk, text)),
            (self._width, lambda text: describing.set_size(self._desk, width_text=text)),
            (self._depth, lambda text: describing.set_size(self._desk, depth_text=text)),
        ):
            field.entered.connect(lambda text, field=field, change=change: self._keep(field, change, text))
        self._surface.chosen.connect(lambda key: self._draw({"cooktop_surface": key}))
        self._rows.stepped.connect(lambda more: self.plates.emit(more, 0))
        self._columns.stepped.connect(lambda more: self.plates.emit(0, more))

    def _either(
        self, caption: str, name: str, options: Sequence[tuple[str, str]], change: Callable[[str], dict[str, object]]
    ) -> Either:
        made = Either(caption, name, caption, options, _CAPTION)
        made.chosen.connect(lambda key: self._draw(change(key)))
        return made

    def _group(self, key: str, said: str) -> QPushButton:
        made = button(said, f"six_{key}", f"Whether you read it: {said}")
        made.setCheckable(True)
        made.clicked.connect(lambda wanted: self._redrawing.change(lambda: read_group(self._desk, key, wanted=wanted)))
        return made

    def _page(self, question: str, why: str, parts: Sequence[QWidget]) -> None:
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 0, STEP)
        column.setSpacing(2 * STEP)
        column.addWidget(words(question, role="heading", name=f"six_question_{len(self._first)}"))
        column.addWidget(words(why, role="note"))
        for part in parts:
            column.addLayout(row(part)) if isinstance(part, Counter) else column.addWidget(part)
        column.addStretch(1)
        self._pages.addWidget(page)
        self._first.append(parts[0])

    def start(self) -> None:
        """Ask the first."""
        self._pages.setCurrentIndex(0)
        self._show_place()

    def show_stove(self) -> None:
        """Show the answers as kept."""
        desk, stove = self._desk, self._desk.stove
        short = describing.short_unit(desk)
        self._is_new.show_key("new" if stove.is_new else "used")
        self._name.show_text(stove.name)
        self._firebox.show_key(stove.firebox)
        self._width.show_text(describing.length_text(stove.cooktop_width, short), short)
        self._depth.show_text(describing.length_text(stove.cooktop_depth, short), short)
        rows, columns = plates_of(stove)
        self._rows.show_number(rows)
        self._columns.show_number(columns)
        self._lids.show_key("lids" if stove.has_lids else "plate")
        surfaces = [(key, key.removesuffix(" spot")) for key in describing.surfaces(stove)]
        self._surface.show_options(surfaces, stove.cooktop_surface)
        self._pipe.show_key(flue_place(stove))
        self._tank.show_key(stove.water_tank)
        self._closet.show_key("closet" if stove.has_warming_closet else "none")
        for group in GROUPS:
            self._groups[group.key].setChecked(is_read(stove, group))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape leaves."""
        if event.key() == Qt.Key.Key_Escape:
            self.ended.emit()
        else:
            super().keyPressEvent(event)

    def _go(self, step: int) -> None:
        place = self._pages.currentIndex() + step
        if place > LAST:
            self.ended.emit()
            return
        self._pages.setCurrentIndex(max(place, 0))
        self._show_place()

    def _show_place(self) -> None:
        place = self._pages.currentIndex()
        self._place.setText(f"Question {place + 1} of {LAST + 1}")
        self._back.setEnabled(place > 0)
        self._next.setText("That is my stove" if place == LAST else "Next")
        keys = [key for key in self._first[place].findChildren(QPushButton) if key.isCheckable()]
        wanted = next((key for key in keys if key.isChecked()), keys[0] if keys else None)
        first = wanted or next(iter(self._first[place].findChildren(QWidget)), self._next)
        (self._first[place].edit if isinstance(self._first[place], Field) else first).setFocus()  # type: ignore[attr-defined]
        self.asked.emit(place)

    def _draw(self, changed: dict[str, object]) -> None:
        self._redrawing.draw(replace(self._desk.stove, **changed))  # type: ignore[arg-type]

    def _keep(self, field: Field, change: Callable[[str], None], text: str) -> None:
        field.takes(lambda: self._redrawing.change(lambda: change(text)))
