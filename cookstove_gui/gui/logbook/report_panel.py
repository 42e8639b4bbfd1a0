"""A report to hand on: for whom, about what, how it is written; then a file or the printer."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.logbook.reporting import About, Wanted, habits, keep_habits
from cookstove_gui.gui.logbook.writing import Writing
from cookstove_gui.gui.widgets.flow_row import FlowRow
from cookstove_gui.gui.widgets.form import Choice, Either, button, say, words
from cookstove_gui.gui.widgets.theme import STEP

_CAPTION = 90
_VISITOR, _RECORD = "visitor", "record"
_DATES = (("day", "8 November 2026"), ("month", "November 8, 2026"), ("year", "2026-11-08"))
_NOTE = "Heats are in the unit of the screen. It reads in grey too."


class ReportPanel(QWidget):
    """Takes the place of what it is about; `of` begins the names of its controls."""

    closed = Signal()

    def __init__(self, of: str, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._title = ""
        self._abouts: dict[str, About] = {}
        self._cautions: tuple[tuple[str, int], ...] | None = None
        self.setObjectName(f"{of}_report_panel")
        self._about = Choice(
            "About", f"{of}_report_about", "What the report is about", width=300, caption_width=_CAPTION
        )
        self._whom = Either(
            "For", f"{of}_report_whom", "One page for a visitor, or everything for the record",
            ((_VISITOR, "a visitor, one page"), (_RECORD, "the record, all")), caption_width=_CAPTION,
        )  # fmt: skip
        self._whom.show_key(_VISITOR)
        self._dates = Choice("Dates", f"{of}_report_dates", "How dates are written", width=300, caption_width=_CAPTION)
        self._clocks = Either(
            "Clock", f"{of}_report_clock", "How the hours of a day are counted", (("24", "13:10"), ("12", "1:10 pm")),
            caption_width=_CAPTION,
        )  # fmt: skip
        self._pdf = button("Write a PDF …", f"{of}_report_pdf", "A file to print or to send", role="main")
        self._html = button("Write a web page …", f"{of}_report_html", "One file that every browser shows")
        self._print = button("Print …", f"{of}_report_print", "On the printer that you choose")
        self._back = button("Back", f"{of}_report_back", "Leave the report", keys="Esc")
        self._told = words(role="good", name=f"{of}_report_told")
        self._problem = words(role="problem", name=f"{of}_report_problem")
        self.writing = Writing(desk, self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        column.addWidget(words("Report", role="heading"))
        for part in (self._about, self._whom, self._dates, self._clocks):
            column.addWidget(part)
        column.addWidget(words(_NOTE, role="soft"))
        column.addWidget(FlowRow(0, self._pdf, self._html, self._print, self._back))
        column.addWidget(self._told)
        column.addWidget(self._problem)
        column.addStretch(1)
        self._dates.chosen.connect(lambda key: keep_habits(desk, dates=key))
        self._clocks.chosen.connect(lambda key: keep_habits(desk, clocks=key))
        self._pdf.clicked.connect(lambda: self.writing.report(self.wanted, self._name, ".pdf"))
        self._html.clicked.connect(lambda: self.writing.report(self.wanted, self._name, ".html"))
        self._print.clicked.connect(lambda: self.writing.print_report(self.wanted, self._name))
        self._back.clicked.connect(self.closed)
        self.writing.told.connect(lambda text: self._say(told=text))
        self.writing.failed.connect(lambda text: self._say(problem=text))

    def show_about(
        self,
        abouts: Sequence[tuple[str, About]],
        cautions: tuple[tuple[str, int], ...] | None = None,
    ) -> None:
        """Offer a report about one of these, each with what it is called; `cautions` of a season if counted."""
        self._abouts, self._cautions = dict(abouts), cautions
        names = list(self._abouts)
        self._title = names[0]
        self._about.show_options([(name, name) for name in names], names[0])
        self._about.setVisible(len(names) > 1)
        now = habits(self._desk)
        self._dates.show_options(_DATES, now.dates)
        self._clocks.show_key(now.clocks)
        self._say()

    def take_focus(self) -> None:
        """Where Enter writes the usual file."""
        self._pdf.setFocus()

    @property
    def wanted(self) -> Wanted:
        """The report as it is chosen."""
        about = self._abouts[self._name]
        return Wanted(about=about, one_page=self._whom.key == _VISITOR, cautions=self._cautions)

    @property
    def _name(self) -> str:
        return self._about.key or self._title

    def _say(self, *, told: str = "", problem: str = "") -> None:
        say(self._told, told)
        say(self._problem, problem)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc leaves."""
        if event.key() == Qt.Key.Key_Escape:
            self.closed.emit()
        else:
            super().keyPressEvent(event)
