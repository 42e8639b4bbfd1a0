"""The hot side: how each spot runs against the cooktop's mean, or the oven's centre, drawn on the stove itself."""

from dataclasses import replace

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.my_stove.past_answers import HotSide, hot_side
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.forecast.answers import SpotPattern
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.drawn_stove.face import Face
from cookstove_gui.gui.drawn_stove.heat_face import whisker
from cookstove_gui.gui.drawn_stove.iron import Settings
from cookstove_gui.gui.drawn_stove.stove_view import StoveView
from cookstove_gui.gui.widgets.form import say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import readings_count
from cookstove_gui.phrases.my_stove.hot_side import (
    behind_words,
    half_interval,
    hot_side_words,
    signed_difference,
    spot_offset,
)
from cookstove_gui.stove.drawn.heat_colours import heat_colour, heat_ink
from cookstove_gui.stove.stove import Spot, SpotKind, Stove

_FOOT = "Top: against its mean. Oven: against its centre. ± is how sure, eight times in ten."
_WIDEST, _LOWEST = 640, 330  # px
_DRAWN = (SpotKind.TOP, SpotKind.OVEN)


class HotSidePart(QWidget):
    """The stove drawn with its differences, and one sentence."""

    def __init__(self, link: DeskLink, look: Look, past: PastSessions, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._past = past
        self._found = HotSide(stove="", sessions=0, pattern=(), oven=())
        self.setObjectName("hot_side")
        self._sentence = words(name="hot_side_sentence", role="answer")
        self._behind = words(name="hot_side_behind", role="soft")
        self._drawing = StoveView(look, "hot_side_drawing")
        self._drawing.setMinimumHeight(_LOWEST)
        self._drawing.setMaximumWidth(_WIDEST)
        column = QVBoxLayout(self)
        column.setSpacing(STEP)
        column.addWidget(self._sentence)
        column.addWidget(self._behind)
        column.addWidget(self._drawing, 1)
        column.addWidget(words(_FOOT, role="soft"))
        self._job = Job(self, lambda: self._desk.stove, lambda stove: hot_side(stove, self._past), self._take)
        look.changed.connect(self._show_pattern)
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
        is_of_it = self._found.stove == stove.name
        pattern = self._found.pattern if is_of_it else ()
        self._sentence.setText(hot_side_words(stove, pattern, unit))
        say(self._behind, behind_words(self._found.sessions, pattern, unit))
        shown = replace(stove, spots=tuple(spot for spot in stove.spots if spot.kind in _DRAWN))
        self._drawing.show_stove(shown)
        self._drawing.show_settings(Settings())
        self._drawing.setAccessibleName(f"Drawing of the stove: {self._sentence.text()}")
        rows = {row.spot: row for row in (*pattern, *(self._found.oven if is_of_it else ()))}
        self._drawing.show_faces({spot.name: _face(shown, spot, rows.get(spot.name), unit) for spot in shown.spots})
        for spot in shown.spots:
            self._drawing.patch(spot.name).say(*_said(spot, rows.get(spot.name), unit))


def _face(stove: Stove, spot: Spot, row: SpotPattern | None, unit: str) -> Face:
    """The difference in the colour of the spot's usual heat."""
    is_centre = spot.name == stove.oven_spot
    name = "centre" if is_centre else ""
    if row is None or row.readings == 0 or row.usual is None:
        return Face(name=name)
    return Face(
        name=name,
        number=signed_difference(row.mean, unit),
        is_strong=True,
        doubt=0.0 if is_centre else whisker((row.p90 - row.p10) / 2),
        captions=() if is_centre else (half_interval(row, unit),),
        fill=heat_colour(row.usual),
        ink=heat_ink(row.usual),
    )


def _said(spot: Spot, row: SpotPattern | None, unit: str) -> tuple[str, str]:
    """A spot's difference, and the readings behind it."""
    if row is None or row.readings == 0:
        return f"{spot.label}, not read yet", ""
    against = "the mean" if spot.kind is SpotKind.TOP else "the centre"
    return f"{spot.label}, {spot_offset(row, unit, against)}", readings_count(row.readings)
