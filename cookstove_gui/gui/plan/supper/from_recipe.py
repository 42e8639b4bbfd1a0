"""A dish from a recipe: its text on the left, and on the right each part found, to be ticked, corrected or left out."""

from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QTextCharFormat, QTextCursor
from PySide6.QtWidgets import (
    QFileDialog,
    QGridLayout,
    QHBoxLayout,
    QLineEdit,
    QPlainTextEdit,
    QTextEdit,
    QVBoxLayout,
    QWidget,
)

from cookstove_gui.cooking.supper.recipe.acts import ActKind
from cookstove_gui.cooking.supper.recipe.json_ld import RecipeFile
from cookstove_gui.desk import Desk
from cookstove_gui.desk.plan.from_recipe import (
    RecipeLine,
    Ticked,
    dish_confirmed,
    recipe_lines,
    recipe_title,
    recipes_in,
)
from cookstove_gui.errors import Problem
from cookstove_gui.gui.widgets.form import Choice, Field, button, row, say, words
from cookstove_gui.gui.widgets.key import Key
from cookstove_gui.gui.widgets.sections import scrolling
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import fix_width
from cookstove_gui.phrases.plan.from_recipe import confirmed_words, whole_times_words

_TEXT_WIDTH, _HIGH = 400, 430  # px of the design, as all here
_MINUTES_WIDTH, _HEAT_WIDTH = 72, 110
_FILES = "Recipes (*.json *.jsonld *.html *.htm *.txt *.md)"


class FromRecipe(QWidget):
    """Nothing of a recipe is used that was not ticked."""

    closed = Signal()
    kept = Signal(str)  # key of the dish

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._lines: list[_Line] = []
        self._recipes: tuple[RecipeFile, ...] = ()
        self.setObjectName("from_recipe")
        self.setAccessibleName("A dish from a recipe")
        self.setMinimumHeight(px(_HIGH))
        self._build_text()
        self._build_lines()
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(3 * STEP)
        whole.addWidget(self._left)
        whole.addLayout(self._right, 1)
        self._show_confirmed()

    def open(self) -> None:
        """Begin with the text."""
        self._text.setFocus(Qt.FocusReason.OtherFocusReason)

    # --- making ------------------------------------------------------------------------------------------------

    def _build_text(self) -> None:
        self._left = QWidget()
        fix_width(self._left, _TEXT_WIDTH)
        self._text = QPlainTextEdit()
        self._text.setObjectName("recipe_text")
        self._text.setAccessibleName("The recipe's text")
        self._text.setPlaceholderText("Paste the recipe here: heats, minutes and steps are looked for.")
        self._text.setTabChangesFocus(True)
        self._which = Choice("Recipe", "recipe_which", "Which recipe of the file", width=270, caption_width=80)
        self._which.chosen.connect(lambda number: self._show_recipe(int(number)))
        self._which.hide()
        self._said = words(role="soft", name="recipe_said")
        say(self._said, "")
        read = button("Read it", "recipe_read", "Look for heats, minutes and steps", role="main")
        file = button("Open a file …", "recipe_open", "A schema.org/Recipe file (JSON-LD), a saved page, or a text")
        close = button("Close", "recipe_close", "Back to the dishes")
        read.clicked.connect(self.read)
        file.clicked.connect(self._choose_file)
        close.clicked.connect(self.closed)
        column = QVBoxLayout(self._left)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        column.addWidget(self._which)
        column.addWidget(self._text, 1)
        column.addWidget(self._said)
        column.addLayout(row(read, file, close))

    def _build_lines(self) -> None:
        self._name = Field("Dish", "recipe_name", "What the dish is called", width=300, caption_width=80)
        self._inside = QWidget()
        self._grid = QGridLayout(self._inside)
        self._grid.setContentsMargins(0, 0, STEP, 0)
        self._grid.setHorizontalSpacing(STEP)
        self._grid.setVerticalSpacing(STEP // 2)
        self._grid.setColumnStretch(1, 1)
        self._confirmed = words(role="soft", name="recipe_confirmed")
        self._problem = words(role="problem", name="recipe_problem")
        self._all = button("All are right", "recipe_all", "Tick every line")
        self._keep = button("Keep the dish", "recipe_keep", "Keep the dish with the ticked lines", role="main")
        self._all.clicked.connect(self._tick_all)
        self._keep.clicked.connect(self.keep)
        self._right = QVBoxLayout()
        self._right.setSpacing(STEP)
        self._right.addWidget(self._name)
        self._right.addWidget(scrolling(self._inside), 1)
        self._right.addWidget(self._confirmed)
        self._right.addWidget(self._problem)
        self._right.addLayout(row(self._keep, self._all))
        say(self._problem, "")

    # --- reading -----------------------------------------------------------------------------------------------

    def read(self) -> None:
        """Look for what the text says."""
        try:
            lines = recipe_lines(self._desk, self._text.toPlainText())
        except Problem as problem:
            self._show_lines(())
            say(self._problem, problem.sentence)
            return
        say(self._problem, "")
        if not self._name.text.strip():
            self._name.show_text(recipe_title(self._text.toPlainText()))
        self._show_lines(lines)
        self._lines[0].tick.setFocus(Qt.FocusReason.OtherFocusReason)

    def read_file(self, path: Path) -> None:
        """Take the recipe, or the first of several, out of a file."""
        try:
            self._recipes = recipes_in(path)
        except Problem as problem:
            say(self._problem, problem.sentence)
            return
        self._which.show_options([(str(place), one.name) for place, one in enumerate(self._recipes)], "0")
        self._which.setVisible(len(self._recipes) > 1)
        self._show_recipe(0)

    def _choose_file(self) -> None:
        name, _ = QFileDialog.getOpenFileName(self, "Open a recipe", "", _FILES)
        if name:
            self.read_file(Path(name))

    def _show_recipe(self, number: int) -> None:
        found = self._recipes[number]
        self._text.setPlainText(found.text)
        self._name.clear()
        self._name.show_text(found.name)
        say(self._said, whole_times_words(found.hands_min, found.heat_min, found.total_min))
        self.read()

    # --- confirming --------------------------------------------------------------------------------------------

    def _show_lines(self, lines: tuple[RecipeLine, ...]) -> None:
        for old in self._lines:
            old.remove(self._grid)
        self._text.setExtraSelections([])
        self._lines = [_Line(self, number, line) for number, line in enumerate(lines)]
        for number, line in enumerate(self._lines):
            line.place(self._grid, 2 * number)
            line.tick.toggled.connect(self._show_confirmed)
        self._grid.setRowStretch(2 * len(self._lines), 1)
        self._show_confirmed()

    def mark(self, line: RecipeLine) -> None:
        """Show in the text where a line comes from."""
        place = line.part.place
        cursor = QTextCursor(self._text.document())
        last = self._text.document().characterCount() - 1
        cursor.setPosition(min(place.start, last))
        cursor.setPosition(min(place.end, last), QTextCursor.MoveMode.KeepAnchor)
        shown = QTextEdit.ExtraSelection()
        form = QTextCharFormat()
        form.setBackground(self.palette().color(self.palette().ColorRole.Highlight))
        form.setForeground(self.palette().color(self.palette().ColorRole.HighlightedText))
        shown.cursor, shown.format = cursor, form
        self._text.setExtraSelections([shown])
        seen = QTextCursor(self._text.document())
        seen.setPosition(min(place.start, last))
        self._text.setTextCursor(seen)
        self._text.ensureCursorVisible()

    def _tick_all(self) -> None:
        for line in self._lines:
            line.tick.setChecked(True)

    def _show_confirmed(self) -> None:
        ticked = sum(line.tick.isChecked() for line in self._lines)
        say(self._confirmed, confirmed_words(ticked, len(self._lines)) if self._lines else "")
        self._keep.setEnabled(ticked > 0)
        self._all.setEnabled(bool(self._lines))

    def keep(self) -> None:
        """Keep the dish made of the ticked lines."""
        ticked = [
            Ticked(part=line.line.part, minutes=line.minutes.text(), heat=line.heat.text())
            for line in self._lines
            if line.tick.isChecked()
        ]
        try:
            dish = dish_confirmed(self._desk, self._name.text, ticked)
        except Problem as problem:
            say(self._problem, problem.sentence)
            return
        say(self._problem, "")
        self._text.clear()
        self._name.clear()
        self._show_lines(())
        say(self._said, "")
        self.kept.emit(dish.key)


class _Line:
    """The widgets of one part that was found."""

    def __init__(self, pane: FromRecipe, number: int, line: RecipeLine) -> None:
        self.line = line
        self.tick = _Tick(pane, line)
        self.tick.setObjectName(f"recipe_tick_{number}")
        self.tick.setAccessibleName(f"Confirm: {line.words}. {line.note}".strip())
        self.what = words(line.words, name=f"recipe_what_{number}", role="strong")
        self.minutes, self.heat = QLineEdit(line.minutes), QLineEdit(line.heat)
        for field, name, said, wide in (
            (self.minutes, "minutes", "Minutes", _MINUTES_WIDTH),
            (self.heat, "heat", "Oven heat, such as 350-400 or moderate", _HEAT_WIDTH),
        ):
            field.setObjectName(f"recipe_{name}_{number}")
            field.setAccessibleName(f"{said}: {line.words}")
            field.setToolTip(said)
            fix_width(field, wide)
        self.heat.setVisible(line.part.kind is ActKind.OVEN)
        self.minutes.setPlaceholderText("min")
        self.heat.setPlaceholderText("heat")
        self.note = words(line.note, name=f"recipe_note_{number}", role="note")
        say(self.note, line.note)

    def place(self, grid: QGridLayout, at: int) -> None:
        """Put them into two rows of a grid."""
        for column, widget in enumerate((self.tick, self.what, self.minutes, self.heat)):
            grid.addWidget(widget, at, column)
        grid.addWidget(self.note, at + 1, 1, 1, 3)

    def remove(self, grid: QGridLayout) -> None:
        """Take them away."""
        for widget in (self.tick, self.what, self.minutes, self.heat, self.note):
            grid.removeWidget(widget)
            widget.hide()
            widget.deleteLater()


class _Tick(Key):
    """Chosen: the line is right. While it has the focus the text shows where its line comes from."""

    def __init__(self, pane: FromRecipe, line: RecipeLine) -> None:
        super().__init__("Right")
        self._pane, self._line = pane, line
        self.setCheckable(True)
        self.setAutoDefault(True)
        self.setToolTip("It is so; what is not chosen is left out")
        self.clicked.connect(lambda: pane.mark(line))  # where a press does not bring the focus

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Mark the words."""
        super().focusInEvent(event)
        self._pane.mark(self._line)
