"""What the cook chose for the screen: units, and the band wanted for the oven."""

from cookstove_gui.cooking.fit.bands import DEFAULT_TABLE, band_from_text, oven_bands
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import MassUnit, TemperatureUnit, mass_unit_beside

_FIRST_BAND = "bread"


class Settings:
    """Settings kept in the logbook; the band as it was typed, with the unit it was typed in."""

    def __init__(self, logbook: Logbook) -> None:
        self._logbook = logbook
        self._unit_shown: TemperatureUnit | None = None  # as it was read last
        self.band = self._kept_band()

    @property
    def unit(self) -> TemperatureUnit:
        """Unit of temperature on the screen."""
        if self._unit_shown is None:
            self._unit_shown = self._unit("unit")
        return self._unit_shown

    def read_again(self) -> None:
        """What the logbook has may be another by now, and so may the heat that a band's name means."""
        self._unit_shown = None
        self.band = self._kept_band()

    @property
    def mass_unit(self) -> MassUnit:
        """Unit of mass on the screen; it goes with the unit of temperature."""
        return mass_unit_beside(self.unit)

    @property
    def bands(self) -> tuple[HeatBand, ...]:
        """The bands that have a name in the table of oven heats that was chosen."""
        return oven_bands(self._band_table)

    def choose_band(self, text: str) -> None:
        """The band that a text means, kept for the next start; InputProblem, with nothing kept, if it means none."""
        self.band = band_from_text(text, self.unit, self._band_table)
        self._logbook.set_setting("band", text)
        self._logbook.set_setting("band_unit", self.unit)

    def _kept_band(self) -> HeatBand:
        """The band kept last; bread heat before the first, or when the kept text means nothing any more."""
        text = self._logbook.setting("band", _FIRST_BAND)
        try:
            return band_from_text(text, self._unit("band_unit"), self._band_table)
        except InputProblem:
            return band_from_text(_FIRST_BAND, "F")

    @property
    def _band_table(self) -> str:
        return self._logbook.setting("band_table", DEFAULT_TABLE)

    def _unit(self, key: str) -> TemperatureUnit:
        return "C" if self._logbook.setting(key) == "C" else "F"
