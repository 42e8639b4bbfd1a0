"""Tasks and foods: what there is, and what the cook adds and changes; it holds at once and everywhere."""

from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.cooking.own import own_sentences
from cookstove_gui.desk.plan.own.keeping import SORTS, forget, keep, sort_of
from cookstove_gui.desk.plan.own.sorts import Filled, Line, Sort
from cookstove_gui.errors import Problem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.plan.own.form import OwnForm
from cookstove_gui.gui.widgets.form import Either, button, row, say, words
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.units import TemperatureUnit

_WAITS = "As you left it; it is not kept yet."


@dataclass(frozen=True, slots=True)
class _Open:
    """What the form is about; no key and nothing alike: a new one."""

    sort: str  # its key
    key: str = ""
    like: str = ""


@dataclass(frozen=True, slots=True)
class _Draft:
    """What was typed and not kept, in its unit."""

    said: dict[str, str]
    unit: TemperatureUnit


class OwnPart(QWidget):
    """A list of one sort, and the form of one of it in its place."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._sort_key = SORTS[0].key
        self._open = _Open(self._sort_key)
        self._unit = self._desk.unit  # of the form: what is typed in it goes on to mean what it meant
        self._drafts: dict[_Open, _Draft] = {}
        self.setObjectName("plan_own")
        self.setAccessibleName("Tasks and foods")
        self._sorts = Either("", "own_sort", "What to look at", [(sort.key, sort.name) for sort in SORTS], 0)
        self._sorts.chosen.connect(self._choose_sort)
        self._sorts.show_key(self._sort_key)
        self._tables = {sort.key: self._table(sort) for sort in SORTS}
        self._change = button("Change", "own_change", "Change the marked one (Enter)", keys="Enter", role="main")
        self._copy = button("Copy", "own_copy", "A new one that begins as the marked one")
        self._new = button("New", "own_new", "A new one")
        self._forget = button("Forget", "own_forget", "Take back what you added or changed; a usual one is as it was")
        for key, act in (
            (self._change, self._open_marked), (self._copy, self._open_copy), (self._new, self._open_new),
            (self._forget, self._forget_marked),
        ):  # fmt: skip
            key.clicked.connect(lambda _checked=False, act=act: act())
        self._told = words(role="place", name="own_list_told")
        self._problem = words(role="problem", name="own_list_problem")
        self._listed = QWidget()
        listed = QVBoxLayout(self._listed)
        listed.setContentsMargins(0, 0, 0, 0)
        listed.setSpacing(STEP)
        listed.addWidget(self._sorts)
        for table in self._tables.values():
            listed.addWidget(table, 1)
        listed.addWidget(self._told)
        listed.addWidget(self._problem)
        listed.addLayout(row(self._change, self._copy, self._new, self._forget))
        self._form = OwnForm()
        self._form.kept.connect(self._keep)
        self._form.left.connect(self._leave)
        self._form.undone.connect(self._start_over)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._listed, 1)
        whole.addWidget(self._form, 1)
        escape = QShortcut(QKeySequence("Escape"), self, context=Qt.ShortcutContext.WidgetWithChildrenShortcut)
        escape.activated.connect(self._leave)
        self._show_list()

    def _table(self, sort: type[Sort]) -> RowTable:
        made = RowTable(
            f"own_{sort.key}", sort.name, sort.headers, stretch=len(sort.headers) - 1 if sort.changes else 0
        )
        made.setToolTip(f"{sort.name}; Enter changes the marked one")
        made.opened.connect(lambda _key: self._open_marked())
        return made

    def show_unit(self) -> None:
        """Degrees and lengths in the unit on the screen."""
        if self._form.isVisible():
            self._note_draft()
            self._show_form(self._open)
        self._show_list_rows()

    def show_standing(self) -> None:
        """How the stove stands changes nothing here; another cook's tables may have been read."""

    # --- the list

    def _choose_sort(self, key: str) -> None:
        self._sort_key = key
        self._show_list()

    def _show_list(self) -> None:
        self._form.setVisible(False)
        self._listed.setVisible(True)
        for key, table in self._tables.items():
            table.setVisible(key == self._sort.key)
        self._copy.setVisible(self._sort.adds)
        self._new.setVisible(self._sort.adds)
        self._change.setVisible(self._sort.changes)
        self._forget.setVisible(self._sort.changes)
        say(self._told, self._sort.told)
        self._show_list_rows()
        say(self._problem, " ".join(own_sentences()))

    def _show_list_rows(self) -> None:
        lines = self._sort.lines()
        self._marked_table.show_rows(tuple(TableRow(key=line.key, cells=_cells(line)) for line in lines))

    @property
    def _sort(self) -> Sort:
        return sort_of(self._sort_key, self._desk.unit)

    @property
    def _marked_table(self) -> RowTable:
        return self._tables[self._sort.key]

    def _open_marked(self) -> None:
        if self._marked_table.key and self._sort.changes:
            self._show_form(_Open(self._sort_key, key=self._marked_table.key))

    def _open_copy(self) -> None:
        if self._marked_table.key:
            self._show_form(_Open(self._sort_key, like=self._marked_table.key))

    def _open_new(self) -> None:
        self._show_form(_Open(self._sort_key))

    def _forget_marked(self) -> None:
        key = self._marked_table.key
        try:
            forget(self._desk, self._sort, key)
        except Problem as problem:
            say(self._problem, problem.sentence)
            return
        self._drafts.pop(_Open(self._sort_key, key=key), None)
        self._show_list()

    # --- the form

    def _show_form(self, wanted: _Open) -> None:
        self._open = wanted
        self._listed.setVisible(False)
        self._form.setVisible(True)
        draft = self._drafts.get(wanted)
        self._unit = draft.unit if draft else self._desk.unit
        self._form.show_blanks(self._of_the_form.blanks())
        self._form.show_words(draft.said if draft else self._as_it_is(), self._title(), _WAITS if draft else "")
        self._form.take_focus()

    def _as_it_is(self) -> dict[str, str]:
        said = self._of_the_form.words(self._open.key or self._open.like)
        return said | {"name": f"{said['name']} 2"} if self._open.like else said

    def _title(self) -> str:
        sort, key = self._of_the_form, self._open.key
        if not key:
            return f"A new {sort.one}"
        named = next((line.cells[0] for line in sort.lines() if line.key == key), "")
        return named[:1].upper() + named[1:]

    @property
    def _of_the_form(self) -> Sort:
        return sort_of(self._open.sort, self._unit)

    def _note_draft(self) -> None:
        """Remember what is typed, if it is not what the form began with."""
        if self._form.said == self._as_it_is():
            self._drafts.pop(self._open, None)
        else:
            self._drafts[self._open] = _Draft(self._form.said, self._unit)

    def _keep(self) -> None:
        try:
            filled = Filled(said=self._form.said, key=self._open.key, like=self._open.like)
            kept = keep(self._desk, self._of_the_form, filled)
        except Problem as problem:
            self._form.show_problem(problem.sentence)
            return
        self._drafts.pop(self._open, None)
        self._show_list()
        self._marked_table.choose(kept)
        self._marked_table.setFocus(Qt.FocusReason.OtherFocusReason)

    def _leave(self) -> None:
        if not self._form.isVisible():
            return
        self._note_draft()
        self._show_list()
        self._marked_table.setFocus(Qt.FocusReason.OtherFocusReason)

    def _start_over(self) -> None:
        self._drafts.pop(self._open, None)
        self._show_form(self._open)


def _cells(line: Line) -> tuple[str, ...]:
    """The row's words, the cook's own told by a word."""
    first, *others = line.cells
    return (f"{first} (own)" if line.is_own else first, *others)
