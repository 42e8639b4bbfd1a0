"""Thermometer checks in ice water and boiling water, the offset they show, and an infrared one's setting."""

from collections.abc import Callable

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.my_stove import checks
from cookstove_gui.errors import Problem
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.form import Choice, Either, Field, button, row, say, words
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.my_stove.checks import (
    check_line,
    drifted,
    emissivity_words,
    gain_words,
    instrument_words,
    measured_emissivity_words,
)
from cookstove_gui.stove.checks import CheckPoint
from cookstove_gui.stove.stove import INFRARED, THERMOMETERS, Instrument
from cookstove_gui.units import degrees, kelvin, tidy

_HOW = {
    CheckPoint.ICE: "Fill a glass with crushed ice, top it up with cold water, stir, hold the sensor in the middle.",
    CheckPoint.BOIL: "Hold the sensor in water at a rolling boil, off the pot’s bottom. Mind the steam: it scalds.",
}
_POINTED = (
    "Fill a bowl to the brim with crushed ice and cold water, stir, point straight down at it from a hand’s breadth. "
    "Never over boiling water: steam blinds it."
)
_FLUE = "A flue thermometer is not for water. Set it beside one that was checked, on the same place, and compare."
_CONTACT = (
    "To measure it: where the cooktop is well over 200 °F (100 °C), press a contact thermometer to it, "
    "read the same place with this one right after, and type both. Hot iron burns: hold the sensor with a tool."
)
_EXAMPLE = kelvin(450.0, "F")  # K, a reading to show what an emissivity setting means
_NARROW = 130
_SHOWN_CHECKS = 6


class ChecksPart(QWidget):
    """Checks of one thermometer at a time, and new thermometers."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("stove_checks")
        self._build()
        self._connect()
        self.show_stove()

    def _build(self) -> None:
        self._which = Choice("Thermometer", "check_instrument", "The thermometer to check")
        self._standing = words(name="check_standing", role="good")
        self._drift = words(name="check_drift", role="problem")
        self._point = Either(
            "Check", "check_point", "What it is held against",
            [(CheckPoint.ICE, "in ice water"), (CheckPoint.BOIL, "in boiling water")],
        )  # fmt: skip
        self._point.show_key(CheckPoint.BOIL)
        self._how = words(name="check_how")
        self._shown = Field("It shows", "check_shown", "What the thermometer shows; Enter records it", width=_NARROW)
        self._keep_it = button("Keep it as it is", "check_keep", "Keep this check, far off as it is")
        self._undo = button("Take back the latest", "check_undo", "Take back the latest check of this thermometer")
        self._list = words(name="check_list", role="soft")
        self._emissivity = Field("Emissivity set to", "check_emissivity", "The instrument’s own setting", width=_NARROW)
        self._means = words(name="check_means")
        self._method = words(_CONTACT, name="check_contact_how", role="soft")
        self._contact = Field(
            "Contact one shows", "check_contact", "A contact thermometer on the cooktop", width=_NARROW
        )
        self._beside = Field("This one shows", "check_beside", "The infrared one, at the same place", width=_NARROW)
        self._measured = words(name="check_measured", role="good")
        self._kind = Choice("Kind", "new_instrument_kind", "What kind of thermometer it is")
        self._kind.show_options([(kind, kind) for kind in THERMOMETERS], THERMOMETERS[0])
        self._new = Field("Name", "new_instrument", "Type its name and press Enter to add it")
        self._chosen = QWidget()
        inner = QVBoxLayout(self._chosen)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.setSpacing(2 * STEP)
        parts: tuple[QWidget, ...] = (self._which, self._standing, self._drift, self._point, self._how, self._shown)
        for part in parts:
            inner.addWidget(part)
        inner.addLayout(row(self._keep_it, self._undo))
        infrared = (self._method, self._contact, self._beside, self._measured)
        for part in (self._list, self._emissivity, self._means, *infrared):
            inner.addWidget(part)
        column = QVBoxLayout(self)
        column.setSpacing(2 * STEP)
        column.addWidget(words("Thermometer checks", role="heading"))
        column.addWidget(self._chosen)
        column.addWidget(words("Add a thermometer", role="heading"))
        column.addWidget(self._kind)
        column.addWidget(self._new)
        column.addStretch(1)

    def _connect(self) -> None:
        self._which.chosen.connect(lambda _key: self.show_stove())
        self._point.chosen.connect(lambda _key: self.show_stove())
        self._shown.entered.connect(self._record)
        self._keep_it.clicked.connect(lambda: self._record(self._shown.text, sure=True))
        self._undo.clicked.connect(self._take_back)
        self._emissivity.entered.connect(
            lambda text: self._keep(self._emissivity, lambda: checks.set_emissivity(self._desk, self._name, text))
        )
        self._contact.entered.connect(lambda _text: self._measure())
        self._beside.entered.connect(lambda _text: self._measure())
        self._new.entered.connect(self._add)

    @property
    def _name(self) -> str:
        return self._which.key

    def show_stove(self) -> None:
        """Show the thermometers as kept."""
        desk, unit = self._desk, self._desk.unit
        instruments = desk.stove.instruments
        self._chosen.setVisible(bool(instruments))
        if not instruments:
            return
        names = [(one.name, f"{one.name} ({one.kind})") for one in instruments]
        self._which.show_options(names, self._name)
        chosen = next(one for one in instruments if one.name == self._name)
        own = [check for check in checks.checks_of(desk) if check.instrument == chosen.name]
        standing = instrument_words(chosen, checks.heat_cooked_with(desk), unit)
        self._standing.setText(f"{standing} {gain_words(chosen, own, unit)}".strip())
        changed = checks.drift(desk, chosen.name)
        say(self._drift, drifted(changed, unit) if changed else "")
        points = checks.points(desk, chosen.name)
        self._point.setVisible(len(points) > 1)
        self._shown.setVisible(bool(points))
        self._how.setText(self._how_to(chosen))
        self._shown.show_text("", f"°{unit}")
        self._keep_it.hide()
        latest = own[: -_SHOWN_CHECKS - 1 : -1]
        say(self._list, "\n".join(check_line(check, unit) for check in latest))
        self._undo.setVisible(bool(own))
        self._show_emissivity(chosen)

    @property
    def _chosen_point(self) -> CheckPoint:
        points = checks.points(self._desk, self._name)
        return next((point for point in points if point == self._point.key), CheckPoint.ICE)

    def _how_to(self, chosen: Instrument) -> str:
        if not checks.points(self._desk, chosen.name):
            return _FLUE
        point = self._chosen_point
        right = degrees(checks.right_reading(self._desk, point), self._desk.unit)
        how = _POINTED if chosen.kind == INFRARED else _HOW[point]
        return f"{how} A right one shows {tidy(right)} °{self._desk.unit} in the air here."

    def _show_emissivity(self, chosen: Instrument) -> None:
        infrared = chosen.kind == INFRARED
        for part in (self._emissivity, self._method, self._contact, self._beside):
            part.setVisible(infrared)
        say(self._measured, self._measured.text() if infrared else "")
        if not infrared:
            say(self._means, "")
            return
        stove = self._desk.stove
        self._emissivity.show_text(tidy(chosen.emissivity, 2))
        for field in (self._contact, self._beside):
            field.show_text(field.text, f"°{self._desk.unit}")
        edge = Edge(unit=self._desk.unit, now=self._desk.clock(), offset_minutes=self._desk.offset_minutes)
        found = checks.reading_at(stove, chosen, _EXAMPLE)
        surface = checks.cooktop_surface(stove)
        say(self._means, emissivity_words(surface, stove.cooktop_surface, found, edge))

    def _record(self, text: str, *, sure: bool = False) -> None:
        self._keep_it.hide()
        if not text.strip():
            self._shown.show_problem("")
            return
        try:
            question = checks.record_check(self._desk, self._name, self._chosen_point, text, sure=sure)
        except Problem as problem:
            self._shown.show_problem(problem.sentence)
            return
        if question:
            self._shown.show_problem(question)
            self._keep_it.show()
            return
        self._shown.clear()
        self.show_stove()

    def _measure(self) -> None:
        """Once both readings are typed, say the emissivity they show."""
        say(self._measured, "")
        if not self._contact.text.strip() or not self._beside.text.strip():
            return
        try:
            found = checks.measured_emissivity(self._desk, self._name, self._contact.text, self._beside.text)
        except Problem as problem:
            self._beside.show_problem(problem.sentence)
        else:
            self._beside.show_problem("")
            say(self._measured, measured_emissivity_words(found))

    def _take_back(self) -> None:
        self._keep(self._shown, lambda: checks.take_back_latest(self._desk, self._name))

    def _add(self, text: str) -> None:
        if not text.strip():
            return
        name = " ".join(text.split())
        if self._keep(self._new, lambda: checks.add_instrument(self._desk, text, self._kind.key)):
            self._new.clear()
            self._which.box.setCurrentIndex(self._which.box.findData(name))
            self.show_stove()
            self._shown.edit.setFocus()

    def _keep(self, field: Field, change: Callable[[], object]) -> bool:
        taken = field.takes(change)
        if taken:
            self.show_stove()
        return taken
