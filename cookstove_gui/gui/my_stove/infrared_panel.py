"""An infrared thermometer's setting, what it means on this cooktop, and a contact thermometer held beside it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove import checks
from cookstove_gui.errors import Problem
from cookstove_gui.gui.widgets.form import Field, say, words
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.my_stove.checks import emissivity_words, measured_emissivity_words
from cookstove_gui.stove.stove import Instrument
from cookstove_gui.units import kelvin, tidy

_CONTACT = (
    "Compare: where the cooktop is well over 200 °F (100 °C), press a contact thermometer to it, read the same place "
    "with this one right after, and type both. Hot iron burns: hold the sensor with a tool."
)
_EXAMPLE = kelvin(450.0, "F")  # K, a reading to show what an emissivity setting means
_NARROW, _CAPTION = 110, 170


class InfraredPanel(QWidget):
    """The setting, and the emissivity that a comparison shows."""

    kept = Signal()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._name = ""
        self._emissivity = _field("Emissivity set to", "check_emissivity", "The instrument’s own setting")
        self._means = words(name="check_means", role="note")
        self._contact = _field("Contact one shows", "check_contact", "A contact thermometer on the cooktop")
        self._beside = _field("This one shows", "check_beside", "The infrared one, at the same place")
        self._measured = words(name="check_measured", role="good")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP)
        for part in (
            self._emissivity, self._means, words(_CONTACT, name="check_contact_how", role="note"),
            self._contact, self._beside, self._measured,
        ):  # fmt: skip
            column.addWidget(part)
        self._emissivity.entered.connect(self._keep_setting)
        self._contact.entered.connect(lambda _text: self._measure())
        self._beside.entered.connect(lambda _text: self._measure())

    def show_instrument(self, instrument: Instrument) -> None:
        """Show an infrared thermometer as kept."""
        if instrument.name != self._name:
            say(self._measured, "")
        self._name = instrument.name
        self._emissivity.show_text(tidy(instrument.emissivity, 2))
        for field in (self._contact, self._beside):
            field.show_text(field.text, f"°{self._desk.unit}")
        desk, stove = self._desk, self._desk.stove
        edge = Edge(unit=desk.unit, now=desk.clock(), offset_minutes=desk.offset_minutes)
        found = checks.reading_at(stove, instrument, _EXAMPLE)
        say(self._means, emissivity_words(checks.cooktop_surface(stove), stove.cooktop_surface, found, edge))

    def _keep_setting(self, text: str) -> None:
        if self._emissivity.takes(lambda: checks.set_emissivity(self._desk, self._name, text)):
            self.kept.emit()

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


def _field(caption: str, name: str, tip: str) -> Field:
    return Field(caption, name, tip, width=_NARROW, caption_width=_CAPTION)
