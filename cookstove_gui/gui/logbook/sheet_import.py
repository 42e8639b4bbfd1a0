"""A table of another program: what each column means is chosen, what it makes is shown, then it is kept or not."""

from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.files import accept_import
from cookstove_gui.desk.sheet_import import SheetOffer, keep_mapping, meanings, offer_sheet, open_sheet
from cookstove_gui.errors import Problem
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.form import Choice, Either, Field, button, row, say, words
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.logbook.sheet_mapping import Mapping
from cookstove_gui.logbook.sheets import Sheet
from cookstove_gui.phrases.logbook.imports import import_kept, sheet_makes

_IN_CLOCK = ("", "in the clock, or typed below")
_Asked = tuple[Path | Sheet, Mapping | None]


class SheetPart(QWidget):
    """Say what a table's columns mean, see what it makes, decide; empty while no table is open."""

    closed = Signal()

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._sheet: Sheet | None = None
        self._found: SheetOffer | None = None
        self._asked: _Asked | None = None
        self._columns: dict[str, Choice] = {}
        self.setObjectName("sheet_part")
        self.reading = Job(self, lambda: self._asked, self._read, self._show, self._fail)
        self._build()
        self._close()

    def _build(self) -> None:
        self._told = words(role="good", name="sheet_told")
        self._problem = words(role="problem", name="sheet_problem")
        self._clock = Choice("Clock", "sheet_clock", "The column that says when")
        self._day = Choice("Day", "sheet_day", "The column of the day, where the clock is a time of day only")
        self._first = Field("First day", "sheet_first_day", "The day of the first row, such as 2026-01-05")
        self._unit = Either("Heats in", "sheet_unit", "What the numbers are in", (("F", "°F"), ("C", "°C")))
        orders = (("month", "3/14/2026"), ("day", "14/3/2026"))
        self._order = Either("Dates as", "sheet_order", "Whether the month or the day comes first", orders)
        self._meanings = QVBoxLayout()
        self._meanings.setSpacing(STEP)
        self._makes = words(role="heading", name="sheet_makes")
        headers = ("When", "What")
        self._rows = RowTable("sheet_rows", "The first rows as they would be kept", headers, stretch=1, shown_rows=6)
        self._wrong = RowTable("sheet_problems", "What is wrong, by line and column", wraps=True, shown_rows=3)
        self._keep = button("Keep them", "sheet_keep", "Keep these sessions in the logbook", role="main")
        self._nothing = button("Keep nothing", "sheet_nothing", "Leave the logbook as it is")
        self._form = QWidget()
        form = QVBoxLayout(self._form)
        form.setContentsMargins(0, 0, 0, 0)
        form.setSpacing(STEP)
        self._heading = words(role="heading", name="sheet_name")
        for part in (self._heading, self._clock, self._day, self._first, self._order, self._unit):
            form.addWidget(part)
        form.addLayout(self._meanings)
        form.addWidget(self._makes)
        form.addWidget(self._rows)
        form.addWidget(self._wrong)
        form.addLayout(row(self._keep, self._nothing))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2 * STEP)
        column.addWidget(self._told)
        column.addWidget(self._problem)
        column.addWidget(self._form)
        self._keep.clicked.connect(self._accept)
        self._nothing.clicked.connect(self._drop)
        self._clock.chosen.connect(lambda key: self._change(clock=key))
        self._day.chosen.connect(lambda key: self._change(day=key))
        self._first.entered.connect(lambda text: self._change(first_day=text.strip()))
        self._unit.chosen.connect(lambda key: self._change(unit=key))
        self._order.chosen.connect(lambda key: self._change(month_first=key == "month"))

    def bring_in(self, path: Path) -> None:
        """Read a table and show what it makes."""
        self._close()
        say(self._told, "Reading …")
        self._ask((path, None))

    def _ask(self, asked: _Asked) -> None:
        self._asked = asked
        self.reading.ask()

    def _read(self, asked: _Asked) -> tuple[Sheet, SheetOffer]:
        given, mapping = asked
        if isinstance(given, Path):
            given, mapping = open_sheet(self._desk, given)
        assert mapping is not None
        return given, offer_sheet(self._desk, given, mapping)

    def _change(self, **changed: object) -> None:
        if self._sheet is not None and self._found is not None:
            self._ask((self._sheet, replace(self._found.mapping, **changed)))  # type: ignore[arg-type]

    def _mean(self, column: str, meant: str) -> None:
        if self._found is not None:
            others = {name: spot for name, spot in self._found.mapping.meanings.items() if name != column}
            self._change(meanings={**others, column: meant} if meant else others)

    def _show(self, found: tuple[Sheet, SheetOffer]) -> None:
        is_new = found[0] is not self._sheet
        self._sheet, self._found = found
        say(self._told, "")
        mapping = self._found.mapping
        self._heading.setText(f"What the columns of {self._sheet.path.name} mean")
        columns = [(name, name) for name in self._sheet.columns]
        self._clock.show_options(columns, mapping.clock)
        self._day.show_options([_IN_CLOCK, *columns], mapping.day)
        self._first.show_text(mapping.first_day)
        self._first.setVisible(not mapping.day)
        self._order.setVisible(_has_slashes(self._sheet, mapping))
        self._unit.show_key(mapping.unit)
        self._order.show_key("month" if mapping.month_first else "day")
        if is_new:
            self._list_columns()
        for name, choice in self._columns.items():
            choice.setVisible(name not in (mapping.clock, mapping.day))
            choice.show_options(meanings(self._desk), mapping.meanings.get(name, ""))
        self._show_offer(self._found)
        self._form.show()
        if is_new:
            self._clock.box.setFocus()

    def _list_columns(self) -> None:
        self._forget_columns()
        assert self._sheet is not None
        for place, name in enumerate(self._sheet.columns):
            example = next((cells[place] for cells in self._sheet.rows if cells[place]), "")
            if not example:
                continue
            made = Choice(name, f"sheet_column_{place}", f"What “{name}” means", beside=(words(example, role="soft"),))
            made.chosen.connect(lambda key, column=name: self._mean(column, key))
            self._columns[name] = made
            self._meanings.addWidget(made)

    def _forget_columns(self) -> None:
        for choice in self._columns.values():
            self._meanings.removeWidget(choice)
            choice.deleteLater()
        self._columns = {}

    def _show_offer(self, found: SheetOffer) -> None:
        say(self._makes, sheet_makes(found.entries, len(found.offer.files), self._desk.stove.name))
        self._rows.show_rows([TableRow(cells=cells) for cells in found.rows])
        self._wrong.show_rows([TableRow(cells=(sentence,)) for sentence in found.offer.problems])
        self._rows.setVisible(bool(found.rows))
        self._wrong.setVisible(bool(found.offer.problems))
        self._keep.setEnabled(found.entries > 0)

    def _fail(self, sentence: str) -> None:
        say(self._told, "")
        say(self._problem, sentence)

    def _accept(self) -> None:
        sheet, found = self._sheet, self._found
        if sheet is None or found is None:
            return
        try:
            keep_mapping(self._desk, sheet, found.mapping)
            added = accept_import(self._desk, found.offer)
        except Problem as problem:
            self._fail(problem.sentence)
            return
        self._close()
        name = self._desk.stove.name
        say(self._told, import_kept(added, found.entries, (name,), name))

    def _drop(self) -> None:
        self._close()
        say(self._told, "Nothing was brought in; the logbook has not changed.")

    def _close(self) -> None:
        self._sheet = self._found = None
        self._forget_columns()
        say(self._told, "")
        say(self._problem, "")
        self._form.hide()
        self.closed.emit()


def _has_slashes(sheet: Sheet, mapping: Mapping) -> bool:
    """Whether days are written so that the month or the day may come first."""
    places = [sheet.columns.index(name) for name in (mapping.clock, mapping.day) if name]
    return any("/" in cells[place] for cells in sheet.rows for place in places)
