"""Sessions beside each other: one sentence, the curves, and the table of differences."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.cooking.fires.comparing import Figure
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.logbook.comparing import compared
from cookstove_gui.gui.logbook.compare_picture import ComparePicture
from cookstove_gui.gui.logbook.difference_table import DifferenceTable
from cookstove_gui.gui.widgets.form import Answer, Either, button, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.picture import ways_out_key
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.logbook.compare import compare_behind, compare_headline

_FOOT = "On grey: what differs most. Whether it makes the difference the log alone can’t say."
_LIKELY = "* likely, not read yet. "
_BESIDE = 4  # sessions whose table stands beside the curves; that of more stands below


class CompareView(QWidget):
    """Two to eight sessions."""

    left = Signal()  # back to the list
    others_wanted = Signal()

    def __init__(self, desk: Desk, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._numbers: tuple[int, ...] = ()
        self.setObjectName("compare_view")
        self._sentence = Answer(name="compare_sentence")
        self._behind = words(name="compare_behind", role="soft")
        self._from = Either(
            "From", "compare_from", "Count the time from lighting, or go by the clock",
            [("match", "the match"), ("clock", "the clock")], caption_width=56,
        )  # fmt: skip
        self._from.show_key("match")
        self._more = ways_out_key("compare_more", lambda: {"Curves": self._picture, "Differences": self._table})
        self._others = button("Choose others", "compare_others", "Mark other sessions in the list", keys="Ins")
        self._back = button("Back to the list", "compare_back", "Back to the list of sessions", keys="Esc")
        self._picture = ComparePicture(look)
        self._table = DifferenceTable(look)
        self._foot = words(_FOOT, role="note")
        top = QHBoxLayout()
        top.setSpacing(0)
        top.addWidget(self._from)
        top.addStretch(1)
        top.addWidget(self._more)
        top.addWidget(self._others)
        top.addWidget(self._back)
        right = QVBoxLayout()
        right.setSpacing(STEP)
        right.addWidget(self._table)
        right.addWidget(self._foot)
        right.addStretch(1)
        self._both = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._both.setSpacing(4 * STEP)
        self._both.addWidget(self._picture, 5)
        self._both.addLayout(right, 2)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        column.addLayout(top)
        column.addWidget(self._sentence)
        column.addWidget(self._behind)
        column.addLayout(self._both, 1)
        self._back.clicked.connect(self.left)
        self._others.clicked.connect(self.others_wanted)
        self._from.chosen.connect(lambda _key: self.show_sessions(self._numbers))

    def show_sessions(self, numbers: Sequence[int]) -> None:
        """Compare these, the first with the others."""
        self._numbers = tuple(numbers)
        by_clock = self._from.key == "clock"
        found = compared(self._desk, self._numbers)
        names = [one.name for one in found.sessions]
        likely = Figure.RISE in found.likely and found.sessions[0].coming is not None
        sentence = compare_headline(found.found, names, found.band, likely=likely)
        self._sentence.setText(sentence)
        self._behind.setText(compare_behind(found.found, found.labels, by_clock=by_clock))
        self._picture.show_compared(found, self._desk.unit, sentence, by_clock=by_clock)
        self._table.show_compared(found, self._desk.unit)
        self._foot.setText(f"{_LIKELY if found.likely else ''}{_FOOT}")
        ways = QBoxLayout.Direction
        self._both.setDirection(ways.LeftToRight if len(names) <= _BESIDE else ways.TopToBottom)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc goes back, Ins to other sessions."""
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        elif event.key() == Qt.Key.Key_Insert:
            self.others_wanted.emit()
        else:
            super().keyPressEvent(event)
