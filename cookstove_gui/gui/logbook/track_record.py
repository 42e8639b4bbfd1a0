"""The track record: of the windows said about an hour ahead how many held, by how much they miss, is it learning."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.studying import has_past
from cookstove_gui.forecast.learning.record_by_session import LEAST_WINDOWS, RecordBySession, record_by_session
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.logbook.learning_picture import LearningPicture
from cookstove_gui.gui.logbook.record_picture import RecordPicture
from cookstove_gui.gui.logbook.study_line import StudyLine
from cookstove_gui.gui.widgets.form import Answer, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.picture import ways_out_key
from cookstove_gui.gui.widgets.side_by_side import SideBySide
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.logbook.record import (
    held_behind,
    held_headline,
    misses_words,
    recalibrated,
    says_something,
    trend_words,
)

_NO_PAST = "No past session yet; after the first few you see here how far the projections can be trusted."
_NOT_STUDIED = "The past sessions have not been studied yet."


class RecordPart(QWidget):
    """One sentence, the windows behind it, and beside them whether they get better."""

    def __init__(self, link: DeskLink, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("record_part")
        self._study = StudyLine(link, "record_study", self)
        self._sentence = Answer(name="record_sentence")
        self._behind = words(name="record_behind", role="soft")
        self._picture = RecordPicture(look)
        self._learning = LearningPicture(look)
        self._trend_title = words("Is it learning?", role="heading")
        self._trend = words(name="record_trend")
        self._more = ways_out_key("record_more", lambda: {"Windows": self._picture, "Learning": self._learning})
        self._misses = words(name="record_misses", role="note")
        self._recalibrated = words(name="record_recalibrated", role="note")
        right = QVBoxLayout()
        right.setSpacing(STEP)
        for part in (self._trend_title, self._trend):
            right.addWidget(part)
        right.addWidget(self._learning)
        right.addWidget(self._misses)
        right.addWidget(self._more)
        right.addStretch(1)
        left = QVBoxLayout()
        left.addWidget(self._picture)
        left.addStretch(1)
        column = QVBoxLayout(self)
        column.setSpacing(STEP)
        column.addWidget(self._study)
        column.addWidget(self._sentence)
        column.addWidget(self._behind)
        column.addWidget(self._recalibrated)
        column.addSpacing(STEP)
        column.addWidget(SideBySide(left, right, shares=(21, 11), apart=5 * STEP))
        column.addStretch(1)  # takes the room while there is no picture
        self.show_record()

    def show_record(self) -> None:
        """Show what the latest study found."""
        self._study.show_study()
        study = self._desk.study
        record = study.record if study else None
        found = record_by_session(record.rows) if record and says_something(record) else None
        if study is None or record is None or found is None:
            none = _NOT_STUDIED if has_past(self._desk) else _NO_PAST
            empty = record_by_session(())
            self._sentence.setText(held_headline(empty, record) if record else none)
            self._behind.setText("")
        else:
            self._sentence.setText(held_headline(found, record))
            self._behind.setText(held_behind(found, record))
        self._show_pictures(found if found and found.all.windows >= LEAST_WINDOWS else None)
        say(self._recalibrated, recalibrated(study.width_at_an_hour, study.record) if study and found else "")

    def _show_pictures(self, found: RecordBySession | None) -> None:
        for part in (self._picture, self._learning, self._trend_title, self._more):
            part.setVisible(found is not None)
        self._picture.show_record(found, self._sentence.text())
        self._learning.show_record(found, trend_words(found.trend) if found else "")
        say(self._trend, trend_words(found.trend) if found else "")
        say(self._misses, misses_words(found) if found else "")
