"""Sessions beside each other: one sentence, the curves, and the table of differences."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.cooking.fires.comparing import Figure
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.logbook.comparing import Compared, compared
from cookstove_gui.gui.logbook.compare_picture import ComparePicture
from cookstove_gui.gui.logbook.difference_table import DifferenceTable
from cookstove_gui.gui.logbook.many_differences import ManyDifferences, heads_of
from cookstove_gui.gui.widgets.form import Answer, Either, button, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.picture import WaysOut, ways_out_key
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.logbook.compare import FEW, compare_behind, compare_rungs, unlike

_FOOT = "On grey: what differs most. Whether it makes the difference the log alone can’t say."
_MANY = "Enter in a row lets its session stand out among the others, Enter again takes it back. "
_LIKELY = "* likely, not read yet. "
_BESIDE = 4  # sessions whose table stands beside the curves; that of some more stands below


class CompareView(QWidget):
    """Two sessions or any more; of more than eight those stand out that are chosen."""

    left = Signal()  # back to the list
    others_wanted = Signal()

    def __init__(self, desk: Desk, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._numbers: tuple[int, ...] = ()
        self._found: Compared | None = None
        self._chosen: list[int] = []  # numbers of the sessions that are to stand out, where there are many
        self.setObjectName("compare_view")
        self._sentence = Answer(name="compare_sentence")
        self._behind = words(name="compare_behind", role="soft")
        self._from = Either(
            "From", "compare_from", "Count the time from lighting, or go by the clock",
            [("match", "the match"), ("clock", "the clock")], caption_width=56,
        )  # fmt: skip
        self._from.show_key("match")
        self._more = ways_out_key("compare_more", self._pictures)
        self._others = button("Choose others", "compare_others", "Mark other sessions in the list", keys="Ins")
        self._back = button("Back to the list", "compare_back", "Back to the list of sessions", keys="Esc")
        self._picture = ComparePicture(look)
        self._table = DifferenceTable(look)
        self._many = ManyDifferences(())
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
        right.addWidget(self._many, 1)
        right.addWidget(self._foot)
        right.addStretch(0)
        self._right = right
        self._both = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._both.setSpacing(4 * STEP)
        self._both.addWidget(self._picture, 5)
        self._both.addLayout(right, 3)
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
        if tuple(numbers) != self._numbers:
            self._numbers, self._chosen = tuple(numbers), []
        self._show(compared(self._desk, self._numbers))

    def _show(self, found: Compared) -> None:
        self._found, by_clock = found, self._from.key == "clock"
        names = [one.name for one in found.sessions]
        likely = Figure.RISE in found.likely and found.sessions[0].coming is not None
        sentence, *shorter = compare_rungs(found.found, names, found.band, likely=likely)
        self._sentence.show_rungs((sentence, *shorter))
        self._behind.setText(compare_behind(found.found, found.labels, names, by_clock=by_clock))
        is_many = len(names) > FEW
        strong = self._standing_out(found) if is_many else range(len(names))
        self._picture.show_compared(found, self._desk.unit, sentence, strong, by_clock=by_clock)
        self._show_table(found, strong, is_many=is_many)
        told = _MANY if is_many else _FOOT
        self._foot.setText(f"{_LIKELY if found.likely else ''}{told}")
        ways = QBoxLayout.Direction
        self._both.setDirection(ways.LeftToRight if is_many or len(names) <= _BESIDE else ways.TopToBottom)

    def _standing_out(self, found: Compared) -> list[int]:
        """The first, and those chosen; until one is, the one that rises most differently."""
        places = [place for place, one in enumerate(found.sessions) if one.number in self._chosen and place]
        other = unlike(found.found)
        if not self._chosen and other is not None:
            places = [other]
        return [0, *places][:FEW]

    def _show_table(self, found: Compared, strong: Sequence[int], *, is_many: bool) -> None:
        self._table.setVisible(not is_many)
        self._many.setVisible(is_many)
        if not is_many:
            self._table.show_compared(found, self._desk.unit)
            return
        if self._many.heads != heads_of(found):
            old, self._many = self._many, ManyDifferences(heads_of(found))
            self._right.replaceWidget(old, self._many)
            old.setParent(None)
            old.deleteLater()
            self._many.opened.connect(self._choose)
        self._many.show_compared(found, self._desk.unit, strong)

    def _choose(self, key: str) -> None:
        """Let the session of a row stand out, or no longer; the first always does."""
        number = int(key)
        if number in self._chosen:
            self._chosen.remove(number)
        elif len(self._chosen) < FEW - 1:
            self._chosen.append(number)
        if self._found is not None:
            self._show(self._found)

    def _pictures(self) -> dict[str, WaysOut]:
        """What is shown, by what it is called."""
        return {"Curves": self._picture, "Differences": self._many if self._table.isHidden() else self._table}

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc goes back, Ins to other sessions."""
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        elif event.key() == Qt.Key.Key_Insert:
            self.others_wanted.emit()
        else:
            super().keyPressEvent(event)
