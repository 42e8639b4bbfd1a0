"""The dishes to choose from: a list to add from, and the form of one that is made or changed."""

from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.cooking.supper.dishes import Dish
from cookstove_gui.desk import Desk
from cookstove_gui.desk.heading import here
from cookstove_gui.desk.plan.dishes import dish_line
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.plan.supper.dish_form import DishForm
from cookstove_gui.gui.plan.supper.from_recipe import FromRecipe
from cookstove_gui.gui.widgets.form import Choice, button, row, say, words
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.plan.supper import earlier_words, in_meal_words

_HEADERS = ("dish", "takes", "parts")
_ROWS = 7
_NOTHING = ("", "choose")


class DishList(QWidget):
    """Enter adds the marked dish; Escape leaves."""

    closed = Signal()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setObjectName("dish_list")
        self.setAccessibleName("Dishes")
        self._rows = RowTable("dishes", "The dishes to choose from", _HEADERS, stretch=2, shown_rows=_ROWS)
        self._rows.opened.connect(lambda _key: self._add())
        keys = [
            button("Add", "dish_add", "Add the marked dish to the meal (Enter)", keys="Enter", role="main"),
            button("Change", "dish_change", "Change the marked dish"),
            button("Copy", "dish_copy", "A copy of the marked dish, to change"),
            button("New", "dish_new", "A dish of your own"),
            button("From a recipe", "dish_recipe", "A dish from a recipe's text or file"),
            button("Forget", "dish_forget", "Forget the marked dish, if it is one of your own"),
            button("Close", "dish_close", "Back to the plan (Escape)", keys="Esc"),
        ]
        for key, act in zip(
            keys,
            (self._add, self._change, self._copy, self._new, self._open_recipe, self._forget, self.closed.emit),
            strict=True,
        ):
            key.clicked.connect(lambda _checked=False, act=act: act())
        self._again = Choice(
            "An earlier meal", "supper_again", "Have an earlier meal again", width=320, caption_width=130
        )
        self._again.chosen.connect(self._have_again)
        self._problem = words(role="problem", name="dish_problem")
        self._in_meal = words(role="place", name="dishes_in_meal")
        self._listed = QWidget()
        column = QVBoxLayout(self._listed)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        column.addWidget(self._rows)
        column.addLayout(row(*keys))
        column.addWidget(self._again)
        column.addWidget(self._problem)
        column.addWidget(self._in_meal)
        self._form = DishForm(desk)
        self._form.closed.connect(self._show_list)
        self._recipe = FromRecipe(desk)
        self._recipe.closed.connect(self._show_list)
        self._recipe.kept.connect(self._show_kept)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._listed)
        whole.addWidget(self._form)
        whole.addWidget(self._recipe, 1)
        escape = QShortcut(QKeySequence("Escape"), self, context=Qt.ShortcutContext.WidgetWithChildrenShortcut)
        escape.activated.connect(self._leave)

    def open(self) -> None:
        """Show the list."""
        self.setVisible(True)
        self._show_list()

    def _show_list(self) -> None:
        table = self._desk.supper
        lines = [dish_line(dish, table.is_own(dish.key)) for dish in table.dishes]
        self._rows.show_rows(
            tuple(
                TableRow(key=line.key, cells=(f"{line.name}{' (own)' if line.is_own else ''}", line.takes, line.parts))
                for line in lines
            )
        )
        options = tuple((str(number), self._meal_words(number)) for number, _ in table.earlier)
        self._again.show_options((_NOTHING, *options), "")
        self._again.setVisible(bool(options))
        say(self._problem, "")
        self._say_meal()
        self._form.setVisible(False)
        self._recipe.setVisible(False)
        self._listed.setVisible(True)
        self._rows.setFocus(Qt.FocusReason.OtherFocusReason)

    def _meal_words(self, number: int) -> str:
        kept = next(kept for one, kept in self._desk.supper.earlier if one == number)
        edge = replace(self._desk.edge, offset_minutes=here(self._desk))
        return earlier_words(kept.supper, edge)

    def _marked(self) -> Dish | None:
        return next((dish for dish in self._desk.supper.dishes if dish.key == self._rows.key), None)

    def _add(self) -> None:
        dish = self._marked()
        if dish is None:
            return
        try:
            self._desk.supper.add(dish)
        except InputProblem as problem:
            say(self._problem, problem.sentence)
        self._say_meal()

    def _say_meal(self) -> None:
        supper = self._desk.supper.supper
        say(self._in_meal, "" if supper is None else in_meal_words(supper))

    def _change(self) -> None:
        dish = self._marked()
        if dish is not None:
            self._open_form(dish)

    def _copy(self) -> None:
        dish = self._marked()
        if dish is not None:
            self._open_form(dish, is_copy=True)

    def _new(self) -> None:
        self._open_form(None)

    def _open_form(self, dish: Dish | None, *, is_copy: bool = False) -> None:
        self._listed.setVisible(False)
        self._form.setVisible(True)
        self._form.open(dish, is_copy=is_copy)

    def _open_recipe(self) -> None:
        self._listed.setVisible(False)
        self._recipe.setVisible(True)
        self._recipe.open()

    def _show_kept(self, key: str) -> None:
        self._show_list()
        self._rows.choose(key)

    def _forget(self) -> None:
        dish = self._marked()
        if dish is None:
            return
        if not self._desk.supper.is_own(dish.key):
            say(self._problem, f"{dish.name} is a usual dish; only your own can be forgotten.")
            return
        self._desk.supper.leave_dish(dish.key)
        self._show_list()

    def _have_again(self, key: str) -> None:
        if not key:
            return
        try:
            self._desk.supper.have_again(int(key))
        except InputProblem as problem:
            say(self._problem, problem.sentence)
            return
        self.closed.emit()

    def _leave(self) -> None:
        if not self._listed.isVisible():
            self._show_list()
        else:
            self.closed.emit()
