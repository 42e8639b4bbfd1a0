"""The hot side: how much hotter or cooler than the cooktop's mean each spot runs over all sessions, and how sure."""

from dataclasses import replace

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.my_stove.past_answers import HotSide, hot_side
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.forecast.answers import SpotPattern
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.my_stove.sketch import Patch, StoveSketch
from cookstove_gui.gui.widgets.form import words
from cookstove_gui.gui.widgets.heat_colours import heat_colour, heat_ink
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.row_table import RowTable, TableRow
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import readings_count
from cookstove_gui.phrases.my_stove.hot_side import hot_side_words, signed_difference, spot_offset
from cookstove_gui.stove.stove import SpotKind, Stove

_HEADERS = ("spot", "against the cooktop’s mean", "behind it")
_USUAL = 516.5  # K, 470 °F: a cooktop at work, on which the differences are shown


class HotSidePart(QWidget):
    """The cooktop drawn with its differences, the same as a list, and one sentence."""

    def __init__(self, link: DeskLink, look: Look, past: PastSessions, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._past = past
        self._found = HotSide(stove="", pattern=())
        self.setObjectName("hot_side")
        self._sentence = words(name="hot_side_sentence", role="good")
        self._sketch = StoveSketch(look, "hot_side_sketch")
        self._sketch.setFixedHeight(220)
        self._sketch.setMaximumWidth(620)
        self._table = RowTable("hot_side_table", "Spots against the cooktop’s mean", _HEADERS, stretch=1, shown_rows=0)
        column = QVBoxLayout(self)
        column.setSpacing(2 * STEP)
        column.addWidget(words("Which side runs hot", role="heading"))
        column.addWidget(self._sentence)
        column.addWidget(self._sketch)
        column.addWidget(self._table)
        column.addStretch(1)
        self._job = Job(self, lambda: self._desk.stove, lambda stove: hot_side(stove, self._past), self._take)
        self._show_pattern()

    @property
    def is_busy(self) -> bool:
        """Whether past sessions are being searched."""
        return self._job.is_busy

    def show_past(self) -> None:
        """Search the stove's past sessions."""
        self._show_pattern()
        if self.isVisible():
            self._job.ask()

    def _take(self, found: HotSide) -> None:
        self._found = found
        self._show_pattern()

    def _show_pattern(self) -> None:
        stove, unit = self._desk.stove, self._desk.unit
        pattern = self._found.pattern if self._found.stove == stove.name else ()
        self._sentence.setText(hot_side_words(stove, pattern, unit))
        top = replace(stove, spots=stove.spots_of(SpotKind.TOP))
        self._sketch.show_stove(top, _patches(top, pattern, unit), f"Drawing of the cooktop: {self._sentence.text()}")
        self._sketch.setVisible(bool(top.spots))
        self._table.show_rows([TableRow(cells=_cells(row, stove, unit)) for row in pattern])
        self._table.setVisible(bool(pattern))


def _cells(row: SpotPattern, stove: Stove, unit: str) -> tuple[str, ...]:
    spot = stove.spot(row.spot)
    return (
        spot.label if spot else row.spot,
        spot_offset(row, unit),
        readings_count(row.readings),
    )


def _patches(stove: Stove, pattern: tuple[SpotPattern, ...], unit: str) -> dict[str, Patch]:
    patches = {spot.name: Patch(words="not read yet") for spot in stove.spots}
    for row in pattern:
        if row.readings:
            patches[row.spot] = Patch(
                number=signed_difference(row.mean, unit),
                words=readings_count(row.readings),
                fill=heat_colour(_USUAL + row.mean),
                ink=heat_ink(_USUAL + row.mean),
            )
    return patches
