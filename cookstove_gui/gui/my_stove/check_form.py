"""A check made now: what the thermometer is held against, what it shows, and the question about one that is far off."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QVBoxLayout, QWidget

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove import checks
from cookstove_gui.errors import Problem
from cookstove_gui.gui.widgets.form import Field, say, words
from cookstove_gui.gui.widgets.key import Key, named_key
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.stove.checks import CheckPoint
from cookstove_gui.stove.stove import INFRARED, Instrument
from cookstove_gui.units import degrees, tidy

_HOW = {
    CheckPoint.ICE: "Crushed ice topped up with cold water, stirred; hold the sensor in the middle.",
    CheckPoint.BOIL: "Water at a rolling boil, off the bottom. Mind the steam: it scalds.",
}
_POINTED = (
    "A bowl brimful of crushed ice and cold water, stirred; point straight down at it from a hand’s breadth. "
    "Never over boiling water: steam blinds it."
)
_FLUE = "A flue thermometer is not for water. Set it beside a checked one on the same place, and compare."


class CheckForm(QWidget):
    """Ice or boil, a number, Keep."""

    kept = Signal()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._name = ""
        self._build()
        self._connect()

    def _build(self) -> None:
        self._points = QWidget()
        self._points.setObjectName("check_point")
        choice = QHBoxLayout(self._points)
        choice.setContentsMargins(0, 0, 0, 0)
        choice.setSpacing(0)
        self._group = QButtonGroup(self)
        self._keys = {}
        for point in CheckPoint:
            made = Key(point.value)
            made.setObjectName(f"check_point_{point}")
            made.setAccessibleName(f"Check in {'ice water' if point is CheckPoint.ICE else 'boiling water'}")
            made.setCheckable(True)
            made.clicked.connect(self._show_how)
            self._group.addButton(made)
            choice.addWidget(made)
            self._keys[point] = made
        self._keys[CheckPoint.BOIL].setChecked(True)
        self._shown = Field("", "check_shown", "What the thermometer shows; Enter keeps it", width=110, caption_width=0)
        self._shown.edit.setAccessibleName("It shows")
        self._keep = named_key("Keep", "check_keep", "Keep this check", role="main")
        self._as_it_is = named_key("Keep it as it is", "check_keep_far_off", "Keep this check, far off as it is")
        self._how = words(name="check_how", role="note")
        title = words("Check now", role="strong")
        title.setWordWrap(False)
        self._line = QHBoxLayout()
        self._line.setSpacing(STEP)
        for part in (title, self._points, self._shown, self._keep):
            self._line.addWidget(part)
        self._line.addStretch(1)
        self._problem = words(role="problem", name="check_problem")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP // 2)
        column.addLayout(self._line)
        column.addWidget(self._problem)
        column.addWidget(self._as_it_is)
        column.addWidget(self._how)
        say(self._problem, "")

    def _connect(self) -> None:
        self._shown.entered.connect(self._record)
        self._keep.clicked.connect(lambda: self._record(self._shown.text))
        self._as_it_is.clicked.connect(lambda: self._record(self._shown.text, sure=True))

    def show_instrument(self, instrument: Instrument) -> None:
        """Show what a thermometer can be checked in; what was typed for it stays until it is kept."""
        if instrument.name != self._name:
            self._shown.clear()
            self._answered()
        self._name = instrument.name
        points = checks.points(self._desk, instrument.name)
        for point, key in self._keys.items():
            key.setVisible(point in points)
        if points and self._point not in points:
            self._keys[points[0]].setChecked(True)
        self._points.setVisible(len(points) > 1)
        for part in (self._shown, self._keep):
            part.setVisible(bool(points))
        self._shown.show_text(self._shown.text, f"°{self._desk.unit}")
        self._show_how()

    @property
    def _point(self) -> CheckPoint:
        return next(point for point, key in self._keys.items() if key.isChecked())

    def _show_how(self) -> None:
        instrument = next(one for one in self._desk.stove.instruments if one.name == self._name)
        if not checks.points(self._desk, self._name):
            self._how.setText(_FLUE)
            return
        right = degrees(checks.right_reading(self._desk, self._point), self._desk.unit)
        how = _POINTED if instrument.kind == INFRARED else _HOW[self._point]
        self._how.setText(f"{how} A right one shows {tidy(right)} °{self._desk.unit} in the air here.")

    def _answered(self) -> None:
        say(self._problem, "")
        self._as_it_is.hide()

    def _record(self, text: str, *, sure: bool = False) -> None:
        self._answered()
        if not text.strip():
            return
        try:
            question = checks.record_check(self._desk, self._name, self._point, text, sure=sure)
        except Problem as problem:
            say(self._problem, problem.sentence)
            return
        if question:
            say(self._problem, question)
            self._as_it_is.show()
            return
        self._shown.clear()
        self.kept.emit()
