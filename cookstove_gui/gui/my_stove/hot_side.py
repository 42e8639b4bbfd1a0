"""The hot side: how each spot runs against the cooktop's mean, or the oven's centre, drawn on the stove itself."""

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.cooking.fires.abilities import Ability, Figure
from cookstove_gui.desk.my_stove.abilities import key_of
from cookstove_gui.desk.my_stove.hot_side import NOTHING, BypassPlace, FireStage, HotSide, HotSideAsked, hot_side
from cookstove_gui.desk.my_stove.picture_values import hot_side_values
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.forecast.answers import SpotPattern
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.drawn_stove.face import Face
from cookstove_gui.gui.drawn_stove.heat_face import whisker
from cookstove_gui.gui.drawn_stove.iron import Settings
from cookstove_gui.gui.my_stove.ability_list import AbilityList
from cookstove_gui.gui.my_stove.drawing import DrawingToKeep
from cookstove_gui.gui.my_stove.known import KnownAbilities
from cookstove_gui.gui.my_stove.rises_picture import RisesPicture
from cookstove_gui.gui.widgets.form import Choice, row, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.picture import WaysOut, ways_out_key
from cookstove_gui.gui.widgets.side_by_side import SideBySide
from cookstove_gui.gui.widgets.steps import px
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import readings_count, spot_label
from cookstove_gui.phrases.my_stove.abilities import ability_name, figure_range, figure_value
from cookstove_gui.phrases.my_stove.hot_side import (
    behind_words,
    half_interval,
    hot_side_words,
    signed_difference,
    spot_offset,
    unknown_words,
    when_words,
)
from cookstove_gui.stove.drawn.heat_colours import heat_colour, heat_ink
from cookstove_gui.stove.stove import Spot, SpotKind, Stove

_FOOT = "Top: against its mean. Oven: against its centre. ± is how sure, eight times in ten."
_WIDEST = 640  # px of the design
_LARGE_TEXT_HIGH = 340  # px of the design; with large text the page scrolls in any case, and the small spots are read
_DRAWN = (SpotKind.TOP, SpotKind.OVEN)
_ANY = "any"
_STAGES = {
    FireStage.KINDLING: "a kindling fire",
    FireStage.STEADY: "a steady fire",
    FireStage.FULL: "a full fire",
    FireStage.DYING: "a fire dying down",
}
_MAIN = (Ability.RISE, Ability.HOLD_TWO, Ability.LIFT, Ability.FALL, Ability.BOIL, Ability.HOTTEST_TOP)


class HotSidePart(QWidget):
    """The stove drawn with its differences and one sentence; beside it the main figures and every rise."""

    figure_wanted = Signal(str)  # key of a figure whose firings are asked for

    def __init__(
        self, link: DeskLink, look: Look, past: PastSessions, known: KnownAbilities, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._desk, self._look, self._known = link.desk, look, known
        self._found: HotSide = NOTHING
        self._stage, self._bypass = "", ""
        self._of = link.desk.stove.name  # the stove that these were chosen for
        self.setObjectName("hot_side")
        self._build(look)
        self._job = Job(self, self._question, lambda asked: hot_side(asked, past), self._take)
        self._stages.chosen.connect(self._choose_stage)
        self._bypasses.chosen.connect(self._choose_bypass)
        self._list.chosen.connect(self.figure_wanted)
        known.changed.connect(self._show_figures)
        look.changed.connect(self._show_pattern)
        look.changed.connect(self._fit_drawing)
        self._fit_drawing()
        self._show_pattern()
        self._show_figures()

    def _build(self, look: Look) -> None:
        self._sentence = words(name="hot_side_sentence", role="heading")
        self._behind = words(name="hot_side_behind", role="note")
        self._stages = Choice("Read on", "hot_side_stage", "What the fire was doing", width=200, caption_width=70)
        self._bypasses = Choice("Bypass", "hot_side_bypass", "Where the bypass stood", width=96, caption_width=64)
        self._drawing = DrawingToKeep(look, "hot_side_drawing")
        self._drawing.values = lambda: hot_side_values(self._of_this_stove(), self._desk.unit)
        self._unknown = words(name="hot_side_unknown", role="place")
        left = QVBoxLayout()
        left.setSpacing(STEP // 2)
        left.addWidget(self._sentence)
        left.addWidget(self._behind)
        left.addLayout(row(self._stages, self._bypasses))
        left.addWidget(self._drawing, 1)
        left.addWidget(self._unknown)
        left.addWidget(words(_FOOT, role="note"))
        self._list = AbilityList(look, "main_abilities")
        self._rises_title = words("Every rise so far, from the match", role="strong", name="rises_title")
        self._rises = RisesPicture(look, "rises")
        self._more = ways_out_key("hot_side_more", self._pictures)
        right = QVBoxLayout()
        right.setSpacing(STEP // 2)
        right.addWidget(words("What this stove can do", role="heading"))
        right.addWidget(self._list)
        title = QHBoxLayout()
        title.addWidget(self._rises_title, 1)
        title.addWidget(self._more)
        right.addLayout(title)
        right.addWidget(self._rises, 1)
        right.addStretch(0)
        whole = QVBoxLayout(self)
        whole.addWidget(SideBySide(left, right, shares=(14, 11), apart=4 * STEP))

    def _fit_drawing(self) -> None:
        """As large as its words want to be written."""
        self._drawing.setMaximumWidth(px(_WIDEST))
        self._drawing.setMinimumHeight(px(_LARGE_TEXT_HIGH) if self._look.text_size > 1.0 else 0)

    @property
    def is_busy(self) -> bool:
        """Whether past sessions are being searched."""
        return self._job.is_busy

    def show_past(self) -> None:
        """Search the stove's past sessions; of another stove all readings."""
        if self._of != self._desk.stove.name:
            self._of, self._stage, self._bypass = self._desk.stove.name, "", ""
        self._show_pattern()
        self._show_figures()
        if self.isVisible():
            self._job.ask()
            self._known.ask()

    def _question(self) -> HotSideAsked:
        return HotSideAsked(
            stove=self._desk.stove,
            stage=FireStage(self._stage) if self._stage else None,
            bypass=BypassPlace(self._bypass) if self._bypass else None,
        )

    def _choose_stage(self, key: str) -> None:
        self._stage = "" if key == _ANY else key
        self._job.ask()

    def _choose_bypass(self, key: str) -> None:
        self._bypass = "" if key == _ANY else key
        self._job.ask()

    def _take(self, found: HotSide) -> None:
        self._found = found
        self._show_pattern()

    def _of_this_stove(self) -> HotSide:
        return self._found if self._found.asked.stove.name == self._desk.stove.name else NOTHING

    def _pictures(self) -> dict[str, WaysOut]:
        """The pictures that are shown, by what they are called."""
        shown: dict[str, WaysOut] = {"Hot side": self._drawing}
        return shown | ({"Rises": self._rises} if self._known.found.rises else {})

    def _show_pattern(self) -> None:
        stove, unit, found = self._desk.stove, self._desk.unit, self._of_this_stove()
        asked = found.asked
        self._sentence.setText(hot_side_words(found.sides, unit))
        when = when_words(str(asked.stage or ""), str(asked.bypass or ""))
        say(self._behind, behind_words(found.sessions, found.pattern, unit, when))
        say(self._unknown, unknown_words(stove, found.pattern, found.next_round, unit, found.sessions))
        stages = [(_ANY, "any fire"), *((one, _STAGES[one]) for one in FireStage if one in found.stages)]
        self._stages.show_options(stages, self._stage or _ANY)
        bypasses = [(_ANY, "any"), *((one, str(one)) for one in BypassPlace if one in found.bypasses)]
        self._bypasses.show_options(bypasses, self._bypass or _ANY)
        self._stages.setVisible(len(stages) > 2 or bool(self._stage))
        self._bypasses.setVisible(len(bypasses) > 2 or bool(self._bypass))
        shown = replace(stove, spots=tuple(spot for spot in stove.spots if spot.kind in _DRAWN))
        self._more.setVisible(found.sessions > 0)
        self._drawing.show_stove(shown)
        self._drawing.show_settings(Settings())
        self._drawing.setAccessibleName(f"Drawing of the stove: {self._sentence.text()}")
        rows = {one.spot: one for one in (*found.pattern, *found.oven)}
        self._drawing.show_faces({spot.name: _face(shown, spot, rows.get(spot.name), unit) for spot in shown.spots})
        for spot in shown.spots:
            self._drawing.patch(spot.name).say(*_said(spot, rows.get(spot.name), unit))

    def _show_figures(self) -> None:
        found, unit = self._known.found, self._desk.unit
        main = [next((one for one in found.figures if one.ability is ability), None) for ability in _MAIN]
        self._list.show_rows([self._row(one) for one in main if one is not None])
        for part in (self._rises_title, self._rises):
            part.setVisible(bool(found.rises))
        if found.asked is not None:
            self._rises.show_rises(found.rises, found.asked.band, unit)

    def _row(self, figure: Figure) -> tuple[str, str, str, str]:
        unit = self._desk.unit
        spot = spot_label(self._desk.stove, figure.spot).removeprefix("top ") if figure.spot else ""
        name = ability_name(figure, unit, self._known.fall, spot)
        return key_of(figure), name, figure_value(figure, unit), figure_range(figure, unit, spot)


def _face(stove: Stove, spot: Spot, row: SpotPattern | None, unit: str) -> Face:
    """The difference in the colour of the spot's usual heat; of one that was not read, how far it may be off."""
    is_centre = spot.name == stove.oven_spot
    name = "centre" if is_centre else ""
    if row is None or row.usual is None:
        return Face(name=name)
    doubt = 0.0 if is_centre else whisker((row.p90 - row.p10) / 2)
    captions = () if is_centre else (half_interval(row, unit),)
    if row.readings == 0:
        return Face(name=name, doubt=doubt, captions=captions)
    return Face(
        name=name,
        number=signed_difference(row.mean, unit),
        is_strong=True,
        doubt=doubt,
        captions=captions,
        fill=heat_colour(row.usual),
        ink=heat_ink(row.usual),
    )


def _said(spot: Spot, row: SpotPattern | None, unit: str) -> tuple[str, str]:
    """A spot's difference, and the readings behind it."""
    if row is None or row.readings == 0:
        return f"{spot.label}, not read yet", ""
    against = "the mean" if spot.kind is SpotKind.TOP else "the centre"
    return f"{spot.label}, {spot_offset(row, unit, against)}", readings_count(row.readings)
