"""A dish in a form: its name, how long it may wait, and a row for each part."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QComboBox, QGridLayout, QLineEdit, QVBoxLayout, QWidget

from cookstove_gui.cooking.supper.dishes import Dish
from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.site import site_here
from cookstove_gui.desk.plan import texts as plan_texts
from cookstove_gui.desk.plan.dishes import (
    PART_KINDS,
    DishWords,
    PartWords,
    bake_in,
    dish_from_words,
    dish_words,
    heats_of,
    weighed,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.widgets.form import Field, button, row, say, words
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import fix_width
from cookstove_gui.units import mass_unit_beside

_MOST_PARTS = 9
_WIDTHS = (150, 260, 80, 190)  # px of the design: kind, words, minutes, heat or limits


class _PartRow:
    """The widgets of one part."""

    def __init__(self, number: int) -> None:
        self.kind = QComboBox()
        for key, said in PART_KINDS:
            self.kind.addItem(said, key)
        self.what, self.minutes = QLineEdit(), QLineEdit()
        self.heat = QComboBox()
        self.heat.setEditable(True)
        self.turn = QCheckBox("turn")
        self.widgets = (self.kind, self.what, self.minutes, self.heat, self.turn)
        names = ("kind", "what", "minutes", "heat", "turn")
        told = (
            "What kind of part it is",
            "What is done, in a word or two; empty leaves the part out",
            "Minutes it takes",
            "Of a wait the shortest and longest, such as 60-120; on heat a task, or degrees such as 375-425",
            "Turned half-way",
        )
        for widget, name, tip in zip(self.widgets, names, told, strict=True):
            widget.setObjectName(f"part_{number}_{name}")
            widget.setAccessibleName(f"Part {number + 1}: {tip}")
            widget.setToolTip(tip)
        for widget, wide in zip(self.widgets, _WIDTHS, strict=False):
            fix_width(widget, wide)
        self.kind.currentIndexChanged.connect(self._dress)

    def show(self, wanted: bool) -> None:
        """Show the row, or leave it away."""
        for widget in self.widgets:
            widget.setVisible(wanted)
        if wanted:
            self._dress_place()

    def show_words(self, said: PartWords | None) -> None:
        """Show a part; none is an empty row."""
        said = said or PartWords(kind="hands")
        self.kind.setCurrentIndex(max(self.kind.findData(said.kind), 0))
        self._dress()
        self.what.setText(said.what)
        self.minutes.setText(said.minutes)
        place = self.heat.findData(said.between)
        self.heat.setCurrentIndex(place)
        if place < 0:
            self.heat.setEditText(said.between)
        self.turn.setChecked(said.turn)

    def _dress(self) -> None:
        kind = str(self.kind.currentData())
        self.heat.clear()
        for key, name in heats_of(kind):
            self.heat.addItem(name, key)
        self.heat.setCurrentIndex(-1)
        self.heat.setEditText("")
        self._dress_place()

    def _dress_place(self) -> None:
        kind = str(self.kind.currentData())
        self.heat.setVisible(kind != "hands" and not self.kind.isHidden())
        self.turn.setVisible(kind == "oven" and not self.kind.isHidden())

    def said(self) -> PartWords | None:
        """The part as it stands there; none for an empty row."""
        if not self.what.text().strip():
            return None
        return PartWords(
            kind=str(self.kind.currentData()),
            what=self.what.text().strip(),
            minutes=self.minutes.text(),
            between=self.heat.currentText(),
            turn=self.turn.isChecked(),
        )


class DishForm(QWidget):
    """Kept as a dish of the cook's own."""

    closed = Signal()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._dish: Dish | None = None
        self._is_copy = False
        self.setObjectName("dish_form")
        self.setAccessibleName("A dish")
        self._name = Field("Name", "dish_name", "What the dish is called", width=260, caption_width=60)
        self._makes = Field("Makes", "dish_makes", "How much of it there is", width=240, caption_width=60)
        self._weight = Field(
            "Weight of one",
            "dish_weight",
            "Its minutes in the oven follow",
            width=100,
            caption_width=130,
        )
        self._weight.entered.connect(self._weigh)
        self._wait = Field(
            "May wait", "dish_wait", "How long it may stand ready", unit="min", width=80, caption_width=80
        )
        self._after = Field(
            "Eaten after", "dish_after", "Minutes after the table's time, as a pudding", unit="min", width=80,
            caption_width=100,
        )  # fmt: skip
        self._problem = words(role="problem", name="dish_form_problem")
        self._parts = [_PartRow(number) for number in range(_MOST_PARTS)]
        for part in self._parts:
            part.what.textChanged.connect(lambda _text: self._show_rows())
        grid = QGridLayout()
        grid.setHorizontalSpacing(STEP)
        grid.setVerticalSpacing(STEP // 2)
        grid.setColumnStretch(5, 1)
        for place, part in enumerate(self._parts):
            for column, widget in enumerate(part.widgets):
                grid.addWidget(widget, place, column)
        keep = button("Keep", "dish_keep", "Keep this dish as one of your own", role="main")
        keep.clicked.connect(self._keep)
        leave = button("Leave it", "dish_leave", "Back to the list, nothing changed (Escape)", keys="Esc")
        leave.clicked.connect(self.closed.emit)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(STEP)
        whole.addLayout(row(self._name, self._makes))
        whole.addLayout(row(self._wait, self._after, self._weight))
        whole.addLayout(grid)
        whole.addWidget(self._problem)
        whole.addLayout(row(keep, leave))
        whole.addStretch(1)

    def open(self, dish: Dish | None, *, is_copy: bool = False) -> None:
        """Show a dish to change, a copy of one, or an empty form."""
        self._dish, self._is_copy = dish, is_copy
        said = DishWords() if dish is None else dish_words(dish)
        self._show(said)
        self._name.show_text(f"{said.name} 2" if is_copy else said.name)
        is_bake = dish is not None and bool(bake_in(dish))
        self._weight.setVisible(is_bake)
        self._weight.show_text("", mass_unit_beside(self._desk.unit))
        say(self._problem, "")
        self._name.edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def _show(self, said: DishWords) -> None:
        for field, text in (
            (self._name, said.name),
            (self._makes, said.makes),
            (self._wait, said.may_wait),
            (self._after, said.after_table),
        ):
            field.show_text(text)
        for place, part in enumerate(self._parts):
            part.show_words(said.parts[place] if place < len(said.parts) else None)
        self._show_rows()

    def _show_rows(self) -> None:
        """The parts there are, and one empty row."""
        filled = max((place + 1 for place, part in enumerate(self._parts) if part.said() is not None), default=0)
        for place, part in enumerate(self._parts):
            part.show(place <= filled)

    def _said(self) -> DishWords:
        return DishWords(
            name=self._name.text,
            makes=self._makes.text,
            may_wait=self._wait.text,
            after_table=self._after.text,
            parts=tuple(said for part in self._parts if (said := part.said()) is not None),
        )

    def _made(self) -> Dish:
        """The dish as the form says it."""
        taken = {dish.key for dish in self._desk.supper.dishes}
        return dish_from_words(self._said(), self._dish, taken)

    def _weigh(self, text: str) -> None:
        if not text.strip():
            return
        try:
            mass = plan_texts.kilograms_of(text, self._desk.unit)
            made = weighed(self._made(), mass, site_here(self._desk).pressure)
        except InputProblem as problem:
            self._weight.show_problem(problem.sentence)
            return
        self._weight.show_problem("")
        self._show(dish_words(made))

    def _keep(self) -> None:
        try:
            made = self._made()
        except InputProblem as problem:
            say(self._problem, problem.sentence)
            return
        if self._is_copy:
            self._desk.supper.copy_dish(made, made.name)
        else:
            self._desk.supper.keep_dish(made)
        self.closed.emit()
