"""The track record: what was projected when, and what came true."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.forecast.answers import RecordRow
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.logbook.study_line import StudyLine
from cookstove_gui.gui.widgets.form import say, words
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.theme import STEP, TARGET_PIXELS
from cookstove_gui.phrases.logbook.record import (
    arrival_window,
    came_true,
    recalibrated,
    record_behind,
    row_edge,
    says_something,
    track_record_words,
)
from cookstove_gui.phrases.logbook.sessions import dated

_HEADERS = ("session", "at", "heat", "projected window", "came true")


class RecordPart(QWidget):
    """One sentence, and the rows behind it."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("record_part")
        self._study = StudyLine(link, "record_study")
        self._sentence = words(name="record_sentence", role="good")
        self._behind = words(name="record_behind", role="soft")
        self._recalibrated = words(name="record_recalibrated", role="soft")
        self._table = RowTable("record_table", "Projections and what came true", _HEADERS, wraps=True)
        self._table.setMinimumHeight(5 * TARGET_PIXELS)
        column = QVBoxLayout(self)
        column.setSpacing(2 * STEP)
        column.addWidget(words("How past projections turned out", role="heading"))
        column.addWidget(self._study)
        column.addWidget(self._sentence)
        column.addWidget(self._behind)
        column.addWidget(self._recalibrated)
        column.addWidget(self._table, 1)
        column.addStretch()  # takes the room while there is no table
        self.show_record()

    def show_record(self) -> None:
        """Show what the latest study found."""
        self._study.show_study()
        found = self._desk.study
        rows = found.record.rows if found and says_something(found.record) else ()
        self._sentence.setText(track_record_words(found.record) if found else self._not_yet())
        self._behind.setText(record_behind(found.record) if found else "")
        say(self._recalibrated, recalibrated(found.width_at_an_hour, found.record) if found else "")
        self._table.setVisible(bool(rows))
        latest_first = sorted(rows, key=lambda one: one.made_at, reverse=True)
        self._table.show_rows([TableRow(cells=self._cells(row)) for row in latest_first])

    def _not_yet(self) -> str:
        if not self._desk.sessions:
            return "No session yet; after the first few you see here how far the projections can be trusted."
        return "The past sessions have not been studied yet."

    @staticmethod
    def _cells(row: RecordRow) -> tuple[str, ...]:
        return (
            dated(row.session, row.made_at, row.offset_minutes),
            row_edge(row).clock(0),
            row.band.name,
            arrival_window(row),
            came_true(row),
        )
