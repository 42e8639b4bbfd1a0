"""The sessions: find one, open it, rename it, begin a new one, write it to a file, compare its oven with another's."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from cookstove_gui.desk import files
from cookstove_gui.desk.desk import Desk
from cookstove_gui.errors import Problem
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.logbook.curves import OvenCurves
from cookstove_gui.gui.widgets.flow_layout import FlowLayout
from cookstove_gui.gui.widgets.form import Choice, Field, button, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.logbook.logbook import SessionSummary
from cookstove_gui.phrases.edge import entries_count, session_day, sessions_count
from cookstove_gui.phrases.logbook import session_span

_NO_OTHER = "0"
_ROW_HEIGHT = 68  # px, two lines
_TABLES = {"Spreadsheet (*.xlsx)": ".xlsx", "CSV table (*.csv)": ".csv", "Parquet (*.parquet)": ".parquet"}
_Wanted = tuple[Callable[[Desk, int, Path], None], int, Path]  # what writes which session (0: all) where
_PDF, _HTML = "PDF (*.pdf)", "Web page (*.html)"


class SessionsPart(QWidget):
    """The list on the left, the chosen session on the right."""

    opened = Signal()  # a session was opened

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._wanted: _Wanted = (files.write_report, 0, Path())
        # A PDF or a table takes a second or two, so it is written in the background.
        self.writing = Job(
            self, lambda: self._wanted, self._write, self._tell_written, lambda why: self._say(problem=why)
        )
        self.setObjectName("sessions_part")
        self._build(look)
        self._connect()
        self.show_sessions()

    def _build(self, look: Look) -> None:
        self._find = QLineEdit()
        self._find.setObjectName("session_find")
        self._find.setAccessibleName("Find a session")
        self._find.setPlaceholderText("find by title or date")
        self._find.setToolTip("Show only sessions with these letters in the title or date")
        self._find.setClearButtonEnabled(True)
        self._list = RowTable("session_list", "Sessions, the latest first", row_height=_ROW_HEIGHT)
        self._list.setToolTip("Up and down choose a session, Enter opens it")
        self._list.setMinimumHeight(140)  # two sessions, also below a long caution
        self._count = words(role="soft", name="session_count")
        self._new = button("New session", "session_new", "Start a new session")
        left = QVBoxLayout()
        left.setSpacing(STEP)
        left.addWidget(self._find)
        left.addWidget(self._list, 1)
        left.addWidget(self._count)
        self._all_table = button(
            "All as a table …", "sessions_table", "Every entry of all sessions, for a spreadsheet or other programs"
        )
        start_or_write = FlowLayout(STEP)
        for press in (self._new, self._all_table):
            start_or_write.addWidget(press)
        left.addLayout(start_or_write)
        self._title = Field("Title", "session_title", "Type a new title, then Enter", caption_width=100, width=300)
        self._facts = words(role="soft", name="session_facts")
        self._open = button("Open", "session_open", "Open it on the Cook page", role="main")
        self._export = button("Write as CSV …", "session_export", "Write its log to a CSV file")
        self._report = button("Report …", "session_report", "A dated page to hand on, as PDF or HTML")
        self._table = button("Table …", "session_table", "Its entries as numbers, for a spreadsheet or other programs")
        presses = FlowLayout(STEP)
        for press in (self._open, self._export, self._table, self._report):
            presses.addWidget(press)
        self._told = words(role="good", name="session_told")
        self._problem = words(role="problem", name="session_problem")
        self._other = Choice("Compare", "session_other", "Draw another session’s oven over this one", caption_width=100)
        self._curves = OvenCurves(look)
        self._legend = words(role="soft", name="session_legend")
        right = QVBoxLayout()
        right.setSpacing(STEP)
        right.addWidget(self._title)
        right.addWidget(self._facts)
        right.addLayout(presses)
        right.addWidget(self._told)
        right.addWidget(self._problem)
        right.addWidget(self._other)
        right.addWidget(self._curves, 1)
        right.addWidget(self._legend)
        self._right = QWidget()
        self._right.setLayout(right)
        right.setContentsMargins(0, 0, 0, 0)
        whole = QHBoxLayout(self)
        whole.setSpacing(3 * STEP)
        whole.addLayout(left, 2)
        whole.addWidget(self._right, 3)
        say(self._told, "")
        say(self._problem, "")

    def _connect(self) -> None:
        self._find.textChanged.connect(self._list.show_only)
        self._list.chosen.connect(lambda _key: self._show_chosen())
        self._list.opened.connect(lambda _key: self._put_on_table())
        self._new.clicked.connect(self._begin)
        self._title.entered.connect(self._rename)
        self._open.clicked.connect(self._put_on_table)
        self._export.clicked.connect(self._ask_where)
        self._report.clicked.connect(self._ask_where_report)
        self._table.clicked.connect(lambda: self._ask_where_table(self.number))
        self._all_table.clicked.connect(lambda: self._ask_where_table(0))
        self._other.chosen.connect(lambda _key: self._show_curves())

    @property
    def number(self) -> int:
        """Number of the chosen session; 0 when there is none."""
        return int(self._list.key or 0)

    def show_sessions(self) -> None:
        """Show the sessions in the logbook, keeping the chosen one."""
        chosen = self.number
        rows = self._desk.sessions
        open_number = self._desk.session.number if self._desk.session else 0
        self._list.show_rows([_table_row(row, is_open=row.number == open_number) for row in rows])
        self._all_table.setEnabled(any(row.entry_count for row in rows))
        self._count.setText(f"{sessions_count(len(rows))} of {self._desk.stove.name}")
        self._list.choose(str(chosen or open_number))
        self._show_chosen()

    def _show_chosen(self) -> None:
        row = self._summary()
        self._right.setEnabled(row is not None)
        if row is None:
            self._title.show_text("")
            self._facts.setText("No session yet: light the fire and enter it on the Cook page, or import logs.")
            return
        self._title.show_text(row.title)
        span = session_span(row.first_at, row.last_at, row.offset_minutes)
        self._facts.setText(f"{span}. {entries_count(row.entry_count).capitalize()}.")
        on_table = self._desk.session is not None and self._desk.session.number == row.number
        self._open.setVisible(not on_table)
        self._export.setEnabled(row.entry_count > 0)
        self._report.setEnabled(row.entry_count > 0)
        others = [(str(other.number), other.title) for other in self._desk.sessions if other.number != row.number]
        self._other.show_options([(_NO_OTHER, "no other session"), *others], self._other.key)
        self._show_curves()

    def _summary(self) -> SessionSummary | None:
        return next((row for row in self._desk.sessions if row.number == self.number), None)

    def _show_curves(self) -> None:
        numbers = [self.number] + ([int(self._other.key)] if self._other.key not in ("", _NO_OTHER) else [])
        sessions = tuple(self._desk.logbook.session(number) for number in numbers if number)
        self._curves.show_sessions(self._desk.stove, sessions, self._desk.unit)
        parts = ["Oven, in hours since the first entry."]
        if len(sessions) == 2:
            parts.append(f"Line and circles: {sessions[0].title}. Dashes and diamonds: {sessions[1].title}.")
        self._legend.setText(" ".join(parts))

    def _begin(self) -> None:
        latest = max(self._desk.sessions, key=lambda row: row.number, default=None)
        # An empty session started before is used again, so that pressing twice leaves no empty ones behind.
        if latest is not None and latest.entry_count == 0:
            self._desk.open_session(latest.number)
        else:
            self._desk.ask_new_session()
        if self._desk.warm_start is not None:
            self._say(told="The stove is still warm: say above how the new session begins.")
            return
        self._find.clear()
        self.show_sessions()
        self._list.choose(str(self._desk.session.number) if self._desk.session else "")
        self._say(told="It is open. Give it a title if you like, and carry on at the Cook page.")
        self._title.edit.setFocus()
        self._title.edit.selectAll()

    def _rename(self, text: str) -> None:
        if self._title.takes(lambda: self._desk.rename_session(self.number, text)):
            self.show_sessions()

    def _put_on_table(self) -> None:
        if not self.number:
            return
        try:
            self._desk.open_session(self.number)
        except Problem as problem:
            self._say(problem=problem.sentence)
            return
        self.show_sessions()
        self._say(told="It is open: the Cook page shows it.")
        self.opened.emit()

    def _ask_where(self) -> None:
        row = self._summary()
        name = f"{row.title if row else 'session'}.csv".replace("/", "-")
        path, _ = QFileDialog.getSaveFileName(self, "Write the log as", name, "CSV files (*.csv)")
        if path:
            self.export_to(Path(path))

    def export_to(self, path: Path) -> None:
        """Write the chosen session's log."""
        target = path if path.suffix else path.with_suffix(".csv")
        try:
            files.export_log(self._desk, self.number, target)
        except Problem as problem:
            self._say(problem=problem.sentence)
        else:
            self._say(told=f"Written: {target}")

    def _ask_where_report(self) -> None:
        row = self._summary()
        name = f"{row.title if row else 'session'}.pdf".replace("/", "-")
        path, chosen = QFileDialog.getSaveFileName(self, "Write the report as", name, f"{_PDF};;{_HTML}")
        if path:
            target = Path(path)
            self.report_to(target if target.suffix else target.with_suffix(".html" if chosen == _HTML else ".pdf"))

    def report_to(self, path: Path) -> None:
        """Write the chosen session's report, .pdf or .html."""
        self._ask_for(files.write_report, self.number, path)

    def _ask_where_table(self, number: int) -> None:
        row = self._summary() if number else None
        name = f"{row.title if row else self._desk.stove.name}.xlsx".replace("/", "-")
        path, chosen = QFileDialog.getSaveFileName(self, "Write the table as", name, ";;".join(_TABLES))
        if path:
            target = Path(path)
            target = target if target.suffix else target.with_suffix(_TABLES.get(chosen, ".xlsx"))
            self._ask_for(files.write_table, number, target)

    def _ask_for(self, write: Callable[[Desk, int, Path], None], number: int, path: Path) -> None:
        self._wanted = (write, number, path)
        self._say(told=f"Writing {path.name} …")
        self.writing.ask()

    def _write(self, wanted: _Wanted) -> Path:
        write, number, path = wanted
        write(self._desk, number, path)
        return path

    def _tell_written(self, path: Path) -> None:
        self._say(told=f"Written: {path}")

    def _say(self, *, told: str = "", problem: str = "") -> None:
        say(self._told, told)
        say(self._problem, problem)


def _table_row(row: SessionSummary, *, is_open: bool) -> TableRow:
    """Its title, and on a second line when it was."""
    title = f"{row.title} (open)" if is_open else row.title
    return TableRow(cells=(f"{title}\n{session_day(row.first_at, row.offset_minutes)}",), key=str(row.number))
