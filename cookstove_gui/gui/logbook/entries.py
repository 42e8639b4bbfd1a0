"""The entries of an opened session: listed, corrected, taken back, and the place where the session is split."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.log.correcting import text_of
from cookstove_gui.desk.logbook import changing
from cookstove_gui.errors import Problem
from cookstove_gui.gui.widgets.flow_row import FlowRow
from cookstove_gui.gui.widgets.form import Field, button, say, words
from cookstove_gui.gui.widgets.form import row as side_by_side
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.entries import entry_words
from cookstove_gui.stove.entries import Entry, Session, fold
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import clock_text

_CAPTION, _WIDE, _AT, _CLOCK = 100, 230, 24, 96


class EntriesView(QWidget):
    """Rows in order of time; what is typed below takes the place of the marked one."""

    was_split = Signal(int)  # number of the first session made of this one

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._number = 0
        self._rows: dict[int, Entry] = {}
        self.setObjectName("session_entries")
        self._table = RowTable("entries_table", "Entries of the session in order of time", ("at", "entry"), stretch=1)
        self._table.setMinimumHeight(110)
        self._text = Field("Correct to", "entry_text", "What it should be", caption_width=_CAPTION, width=_WIDE)
        self._at = Field("at", "entry_at", "When it was, such as 4:10", caption_width=_AT, width=_CLOCK)
        self._correct = button("Correct", "entry_correct", "Put this in the place of the marked entry")
        self._back = button("Take back", "entry_back", "The marked entry no longer counts")
        self._undo = button("Undo", "entry_undo", "Undo the latest change in this session")
        self._split = button("Split here", "entry_split", "Two sessions: the second begins with the marked entry")
        keys = FlowRow(0, self._correct, self._back, self._undo, self._split)
        self._problem = words(role="problem", name="entries_problem")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        column.addWidget(self._table, 1)
        column.addLayout(side_by_side(self._text, self._at))
        column.addWidget(keys)
        column.addWidget(self._problem)
        say(self._problem, "")
        self._table.chosen.connect(lambda _key: self._show_row())
        self._table.opened.connect(lambda _key: self._text.edit.setFocus())
        self._text.entered.connect(lambda _text: self._save())
        self._at.entered.connect(lambda _text: self._save())
        self._correct.clicked.connect(self._save)
        self._back.clicked.connect(lambda: self._change(changing.take_back_row))
        self._undo.clicked.connect(lambda: self._try(lambda: changing.undo_row(self._desk, self._number)))
        self._split.clicked.connect(self._part)

    def show_session(self, session: Session, stove: Stove) -> None:
        """Show the entries in force of a session."""
        same = session.number == self._number
        if not same:
            say(self._problem, "")
        self._number = session.number
        rows = fold(session.entries)
        new = [str(row.number) for row in rows if row.number not in self._rows] if same else []
        self._rows = {row.number: row for row in rows}
        self._table.show_rows(
            [
                TableRow(
                    cells=(clock_text(row.at, row.offset_minutes), entry_words(row, stove)), key=str(row.number)
                )
                for row in rows
            ]
        )  # fmt: skip
        if len(new) == 1:
            self._table.choose(new[0])  # the corrected row keeps the mark
        for part in (self._text, self._at, self._correct, self._back, self._split):
            part.setEnabled(bool(rows))
        self._show_row()

    @property
    def row(self) -> Entry | None:
        """The marked one."""
        return self._rows.get(int(self._table.key or 0))

    def _show_row(self) -> None:
        row = self.row
        self._text.show_text(text_of(row) if row else "")
        self._at.show_text(clock_text(row.at, row.offset_minutes) if row else "")

    def _save(self) -> None:
        row = self.row
        if row is None:
            return
        at = self._at.text.strip()
        at = "" if at == clock_text(row.at, row.offset_minutes) else at
        if self._text.text.strip() == text_of(row) and not at:
            return
        self._try(lambda: changing.correct_row(self._desk, self._number, row.number, self._text.text, at))

    def _change(self, change: Callable[[Desk, int, int], None]) -> None:
        row = self.row
        if row is not None:
            self._try(lambda: change(self._desk, self._number, row.number))

    def _part(self) -> None:
        row = self.row
        if row is not None:
            self._try(lambda: self.was_split.emit(changing.split(self._desk, self._number, row)[0].number))

    def _try(self, change: Callable[[], object]) -> None:
        try:
            change()
        except Problem as problem:
            say(self._problem, problem.sentence)
        else:
            say(self._problem, "")
