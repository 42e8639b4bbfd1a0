"""The cautions of a season: counted when the cook asks, since every log is followed for it."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.logbook.season_cautions import CautionCounts, Counted
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.logbook.caution_bars import CautionBars
from cookstove_gui.gui.widgets.form import button, row, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.logbook.seasons import counted_words, counting_words


class SeasonCautions(QWidget):
    """A heading, a key, and what was found."""

    def __init__(self, desk: Desk, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._counts = CautionCounts(desk)
        self._numbers: tuple[int, ...] = ()
        self.counted: tuple[tuple[str, int], ...] | None = None  # title, sessions; none until counted
        self.setObjectName("season_cautions")
        self._counting = Job(self, lambda: self._numbers, self._work, self._show_counted)
        self._counting.progressed.connect(self._tell)
        self._press = button("Count the cautions", "cautions_count", "In how many sessions each caution was due")
        self._words = words(role="soft", name="cautions_words")
        self.bars = CautionBars(look)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        column.addWidget(words("Cautions", role="heading"))
        column.addWidget(self._words)
        column.addLayout(row(self._press))
        column.addWidget(self.bars)
        self._press.clicked.connect(self._count)
        self.bars.hide()

    def show_sessions(self, numbers: tuple[int, ...]) -> None:
        """Offer to count the cautions of these."""
        if numbers == self._numbers:
            return
        self._counting.cancel()
        self._numbers, self.counted = numbers, None
        self._words.setText(counting_words(0, len(numbers)))
        self._press.show()
        self.bars.hide()

    def _count(self) -> None:
        self._press.hide()
        self._counting.ask()

    def _work(self, numbers: tuple[int, ...]) -> Counted | None:
        return self._counts.counted(numbers, self._counting.report, self._counting.is_cancelled)

    def _tell(self, done: int, total: int) -> None:
        self._words.setText(counting_words(done, total))

    def _show_counted(self, found: Counted | None) -> None:
        if found is None or found.sessions != len(self._numbers):
            return
        self.counted = found.cautions
        self._words.setText(counted_words(found.sessions, found.cautions))
        self.bars.show_counted(found)
        self.bars.setVisible(bool(found.cautions))
