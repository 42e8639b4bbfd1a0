"""What is said of the selected spot, in the words of the log: typing here moves the drawing."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.log.walking import leave_out, place_on_walk, read_sooner
from cookstove_gui.desk.my_stove import describing
from cookstove_gui.desk.my_stove.reading_with import instruments_of, keep_instrument, keep_surface, surfaces_of
from cookstove_gui.desk.my_stove.redrawing import Redrawing
from cookstove_gui.desk.my_stove.spot_past import SpotPast, spot_past
from cookstove_gui.desk.studying import PastSessions
from cookstove_gui.errors import Problem
from cookstove_gui.gui.background.job import Job
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.my_stove.draw.spot_rings import SpotRings
from cookstove_gui.gui.widgets.form import Choice, Field, button, row, say, words
from cookstove_gui.gui.widgets.look import Look
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.gui.widgets.type import fix_width
from cookstove_gui.phrases.edge import readings_count
from cookstove_gui.phrases.my_stove.drawing import kind_words, place_words
from cookstove_gui.phrases.my_stove.hot_side import usual_words
from cookstove_gui.stove.stove import Spot, SpotKind, Stove
from cookstove_gui.units import tidy

CAPTION = 112
_NAME, _NUMBER = 200, 84
_PLACED = (SpotKind.TOP, SpotKind.OVEN)


class SpotColumn(QWidget):
    """One spot: its name, where it lies, its size, its place on the walk, the readings it has."""

    removed = Signal()
    laid = Signal(str)  # name of the spot after it was said to lie elsewhere

    def __init__(
        self, link: DeskLink, look: Look, redrawing: Redrawing, past: PastSessions, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self._redrawing = redrawing
        self._name = ""
        self._found = SpotPast(stove="", spot="", usual=None, rings=())
        self.setObjectName("spot_column")
        self._title = words(role="heading", name="spot_title")
        self._log_name = words(role="soft", name="spot_log_name")
        self._label = Field("Name", "spot_label", "The spot’s name in the drawing", width=_NAME, caption_width=CAPTION)
        self._lies = Choice(
            "It lies", "spot_kind", "The part of the stove it is on", width=_NAME, caption_width=CAPTION
        )
        self._across = self._number("From left", "spot_across", "Distance from the left edge")
        self._deep = self._number("From front", "spot_deep", "Distance from the front edge")
        self._width = self._number("Width", "spot_width", "Width of its plate")
        self._depth = self._number("Depth", "spot_depth", "Depth of its plate")
        self._surface = Choice(
            "Surface", "spot_surface", "What an infrared thermometer looks at here", width=_NAME, caption_width=CAPTION
        )
        self._instrument = Choice(
            "Read with", "spot_instrument", "The thermometer that reads it", width=_NAME, caption_width=CAPTION
        )
        self._earlier = button("−", "spot_earlier", "One place earlier on the walk")
        self._later = button("+", "spot_later", "One place later on the walk")
        self._skip = button("Skip it", "spot_skip", "The walk goes past it; it can still be read by name or by a press")
        self._skip.setCheckable(True)
        self._earlier.setAccessibleName("Read it earlier")
        self._later.setAccessibleName("Read it later")
        self._place = words(name="spot_place")
        self._remove = button("Take it off", "spot_remove", "Its readings stay in the log (Del)", keys="Del")
        self._readings = words(role="soft", name="spot_readings")
        self._usual = words(role="note", name="spot_usual")
        self._rings = SpotRings(look)
        self._problem = words(role="problem", name="spot_problem")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        walk = words("On the walk")
        fix_width(walk, CAPTION)
        for part in (
            self._title,
            self._log_name,
            self._label,
            self._lies,
            self._across,
            self._deep,
            self._width,
            self._depth,
            self._surface,
            self._instrument,
        ):
            column.addWidget(part)
        column.addLayout(row(walk, self._earlier, self._later, self._place))
        column.addLayout(row(self._skip, self._remove))
        column.addWidget(self._problem)
        column.addWidget(self._readings)
        column.addWidget(self._usual)
        column.addWidget(self._rings)
        column.addStretch(1)
        self._job = Job(self, self._question, lambda asked: spot_past(asked, past), self._show_past)
        self._connect()

    def _number(self, caption: str, name: str, tip: str) -> Field:
        return Field(caption, name, tip, width=_NUMBER, caption_width=CAPTION)

    def _connect(self) -> None:
        desk = self._desk
        self._label.entered.connect(
            lambda text: self._keep(self._label, lambda: describing.rename_spot(desk, self._name, text))
        )
        self._across.entered.connect(
            lambda text: self._keep(self._across, lambda: describing.place_spot(desk, self._name, across_text=text))
        )
        self._deep.entered.connect(
            lambda text: self._keep(self._deep, lambda: describing.place_spot(desk, self._name, deep_text=text))
        )
        self._width.entered.connect(
            lambda text: self._keep(self._width, lambda: describing.size_spot(desk, self._name, width_text=text))
        )
        self._depth.entered.connect(
            lambda text: self._keep(self._depth, lambda: describing.size_spot(desk, self._name, depth_text=text))
        )
        self._lies.chosen.connect(self._lay)
        self._surface.chosen.connect(lambda key: self._say(lambda: keep_surface(desk, self._name, key)))
        self._instrument.chosen.connect(lambda key: self._say(lambda: keep_instrument(desk, self._name, key)))
        self._earlier.clicked.connect(lambda: self._move(-1))
        self._later.clicked.connect(lambda: self._move(1))
        self._skip.clicked.connect(lambda left: self._redrawing.change(lambda: leave_out(desk, left, self._name)))
        self._remove.clicked.connect(self.removed)

    def show_spot(self, name: str) -> None:
        """Show a spot of the desk's stove as kept."""
        stove = self._desk.stove
        spot = stove.spot(name)
        if spot is None:
            return
        self._name = name
        self._title.setText(spot.label)
        self._log_name.setText(f"{kind_words(spot.kind)}; in the log: {spot.name}")
        self._label.show_text(spot.label)
        kinds = describing.kinds_to_add(stove)
        self._lies.setVisible(str(spot.kind) in kinds)
        self._lies.show_options(list(kinds.items()), spot.kind)
        across, deep, unit = describing.span_of(self._desk, spot)
        self._across.show_text(tidy(spot.x * across), unit)
        self._deep.show_text(tidy(spot.y * deep), unit)
        wide, long = describing.size_of(self._desk, spot)
        self._width.show_text(wide, describing.short_unit(self._desk))
        self._depth.show_text(long, describing.short_unit(self._desk))
        for field in (self._across, self._deep):
            field.setVisible(spot.kind in _PLACED)
        for field in (self._width, self._depth):
            field.setVisible(spot.kind is SpotKind.TOP)
        place, count = place_on_walk(self._desk, name)
        self._place.setText(place_words(place, count))
        self._skip.setChecked(not place)
        for key in (self._earlier, self._later):
            key.setEnabled(bool(place))
        for choice, options, said in (
            (self._surface, surfaces_of(stove, spot), spot.surface),
            (self._instrument, instruments_of(stove, spot), spot.instrument),
        ):
            choice.setVisible(bool(options))
            choice.show_options(options, said)
        count = self._redrawing.readings_of(name)
        self._readings.setText(f"{readings_count(count)} here so far.".capitalize())
        if (self._found.stove, self._found.spot) != (stove.name, name):
            self._show_past(SpotPast(stove=stove.name, spot=name, usual=None, rings=()))
        if count:
            self._job.ask()
        self.say_problem("")

    def _question(self) -> tuple[Stove, str] | None:
        return (self._desk.stove, self._name) if self._desk.stove.spot(self._name) else None

    def _show_past(self, found: SpotPast) -> None:
        """How it ran so far; of a spot that is no longer selected, nothing."""
        if found.spot != self._name:
            return
        self._found = found
        of_oven = self._desk.stove.kind_of(found.spot) is SpotKind.OVEN
        against = "the oven’s centre" if of_oven else "the top’s mean"
        said = usual_words(found.usual, self._desk.unit, against) if found.usual is not None and found.rings else ""
        say(self._usual, said)
        self._rings.show_rings(found.rings, self._desk.unit, f"{said}; each ring one reading, the latest at the right")
        self._rings.setVisible(bool(found.rings))

    def say_problem(self, sentence: str) -> None:
        """Say why a change of this spot was refused."""
        say(self._problem, sentence)

    def name_it(self) -> None:
        """Give the keyboard to the spot's name."""
        self._label.edit.setFocus()
        self._label.edit.selectAll()

    def _lay(self, kind: str) -> None:
        found: list[Spot] = []
        try:
            self._redrawing.change(lambda: found.append(describing.lay_spot(self._desk, self._name, SpotKind(kind))))
        except Problem as problem:
            self.show_spot(self._name)
            self.say_problem(problem.sentence)
        else:
            self.laid.emit(found[0].name)

    def _say(self, change: Callable[[], object]) -> None:
        """Make a change that was chosen; one that is refused is told below."""
        try:
            self._redrawing.change(change)
        except Problem as problem:
            self.show_spot(self._name)
            self.say_problem(problem.sentence)

    def _move(self, steps: int) -> None:
        self._redrawing.change(lambda: read_sooner(self._desk, steps, self._name))

    def _keep(self, field: Field, change: Callable[[], object]) -> None:
        field.takes(lambda: self._redrawing.change(change))
