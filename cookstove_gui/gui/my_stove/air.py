"""Height and weather: one setting behind boiling, thermometer checks, baking and draught."""

from collections.abc import Callable

from PySide6.QtWidgets import QVBoxLayout, QWidget

from cookstove_gui.desk.my_stove import air, describing
from cookstove_gui.desk.my_stove import site as site_here
from cookstove_gui.gui.desk_link import DeskLink
from cookstove_gui.gui.widgets.form import Either, Field, say, words
from cookstove_gui.gui.widgets.theme import STEP
from cookstove_gui.phrases.my_stove.air import ABOUT_BAROMETERS, altitude_hints, boiling_line

_NARROW = 130


class AirPart(QWidget):
    """Where the stove is, today's barometer, and what they mean for the cook."""

    def __init__(self, link: DeskLink, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = link.desk
        self.setObjectName("stove_air")
        self._height = Field(
            "Height above the sea", "air_height", "A number, or one with its unit: 4000 ft, 1200 m", width=_NARROW
        )
        self._pressure = Field(
            "Barometer today", "air_pressure", "25.1 inHg or 850 hPa; empty if there is none", width=_NARROW
        )
        self._shows = Either(
            "It shows the pressure", "air_shows", "What the barometer's number means",
            [("sea", "as at the sea"), ("here", "of the air here")],
        )  # fmt: skip
        self._shows.show_key("sea")
        self._question = words(name="air_question", role="problem")
        self._boils = words(name="air_boils", role="good")
        self._line = words(name="air_line")
        self._hints = words(name="air_hints")
        self._no_hints = "Near the sea nothing changes for baking."
        column = QVBoxLayout(self)
        column.setSpacing(2 * STEP)
        column.addWidget(words("Height and weather", role="heading"))
        parts: tuple[QWidget, ...] = (
            self._height, self._pressure, self._shows,
            words(ABOUT_BAROMETERS, role="soft", name="air_about"),
            self._question, self._boils, self._line, words("Baking at this height", role="heading"), self._hints,
        )  # fmt: skip
        for part in parts:
            column.addWidget(part)
        column.addStretch(1)
        self._height.entered.connect(
            lambda text: self._keep(self._height, lambda: site_here.keep_height(self._desk, text))
        )
        self._pressure.entered.connect(self._read)
        self._shows.chosen.connect(lambda _key: self._read(self._pressure.text))
        self.show_stove()

    def show_stove(self) -> None:
        """Show the setting as kept, and what it means."""
        desk = self._desk
        unit = describing.height_unit(desk)
        self._height.show_text(describing.length_text(desk.stove.altitude, unit), unit)
        barometer = site_here.barometer_of(desk)
        if barometer is None or site_here.is_past(desk, barometer):
            self._pressure.show_text("")
        else:
            self._pressure.show_text(site_here.barometer_text(desk, barometer))
            self._shows.show_key("sea" if barometer.as_at_sea else "here")
        site = site_here.site_here(desk)
        say(self._question, air.height_question(desk))
        self._boils.setText(boiling_line(site, desk.unit))
        self._line.setText(air.pressure_line(desk))
        self._hints.setText("\n".join(altitude_hints(site, desk.unit)) or self._no_hints)

    def _read(self, text: str) -> None:
        as_at_sea = self._shows.key == "sea"
        self._keep(self._pressure, lambda: site_here.keep_barometer(self._desk, text, as_at_sea=as_at_sea))

    def _keep(self, field: Field, change: Callable[[], object]) -> None:
        if field.takes(change):
            self.show_stove()
