"""Where the stove stands: its height and the pressure of its air, behind boiling, baking hints and draught.

What is typed and cannot be such a height or pressure raises InputProblem.
"""

import re
from dataclasses import dataclass

from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.air import pressure_altitude, standard_pressure, station_pressure
from cookstove_gui.physics.water import boiling_temperature
from cookstove_gui.stove.stove import ALTITUDES
from cookstove_gui.units import METRES_PER_FOOT, PASCALS_PER_INCH_OF_MERCURY

LEAST_PRESSURE, MOST_PRESSURE = 45_000.0, 108_000.0  # Pa, of the air where people cook
WEATHER_SWING = 5000.0  # Pa, about the most that weather changes the pressure
_PASCALS = {"hpa": 100.0, "mbar": 100.0, "mb": 100.0, "kpa": 1000.0, "inhg": PASCALS_PER_INCH_OF_MERCURY}
_PASCALS["in"] = PASCALS_PER_INCH_OF_MERCURY
_METRES = {"m": 1.0, "ft": METRES_PER_FOOT, "feet": METRES_PER_FOOT, "metres": 1.0, "meters": 1.0, "'": METRES_PER_FOOT}
_TYPED = re.compile(r"\s*(-?\d+(?:[.,]\d+)?)\s*([a-z']*)\s*", re.IGNORECASE)
_THOUSANDS = re.compile(r"(?<=\d),(?=\d{3}(?!\d))")  # the comma of 4,000 ft


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """The air where the stove stands."""

    altitude: float  # m above the sea
    pressure: float  # Pa, absolute, there
    note: str = ""  # how a typed pressure was taken, where that could be doubted

    @property
    def boiling(self) -> float:
        """Where water boils [K]."""
        return float(boiling_temperature(self.pressure))


def site_at(altitude: float) -> Site:
    """The usual air at a height [m], by the standard atmosphere."""
    return Site(altitude=altitude, pressure=float(standard_pressure(altitude)))


def site_with_barometer(altitude: float, pressure: float, *, as_at_sea: bool) -> Site:
    """The air by a barometer [Pa] and the height [m]; raises InputProblem where the two do not agree.

    `as_at_sea` says that the pressure is reduced to sea level, as weather reports give it. Weather never makes it very
    low there, so a very low one is always the air's own. A height of 0 counts as unknown: the air's own pressure then
    gives it.
    """
    possible_at_sea = is_possible_at_sea(pressure)
    if as_at_sea and possible_at_sea:
        there = float(station_pressure(pressure, altitude))
        return Site(altitude=altitude, pressure=there, note="It was converted from sea level to this height.")
    if altitude == 0.0 and not possible_at_sea:
        height = float(pressure_altitude(pressure))
        return Site(altitude=height, pressure=pressure, note="The height was worked out from this pressure.")
    usual = float(standard_pressure(altitude))
    if abs(pressure - usual) <= WEATHER_SWING:
        return Site(altitude=altitude, pressure=pressure)
    way = "choose “as at the sea” if it is a weather report’s" if possible_at_sea else "correct one of them"
    raise InputProblem(
        f"{pressure_text(pressure)} does not fit the height of {height_text(altitude)}, where about "
        f"{pressure_text(usual)} is usual; {way}."
    )


def is_possible_at_sea(pressure: float) -> bool:
    """Whether weather makes such a pressure [Pa] at sea level."""
    return abs(pressure - float(standard_pressure(0.0))) <= WEATHER_SWING


def pressure_from_text(text: str) -> float:
    """The air pressure that was typed [Pa]; a bare number is inches of mercury up to 33, and hPa beyond."""
    typed = _number_and_unit(text)
    number, unit = typed or (0.0, "")
    pressure = number * _PASCALS.get(unit or ("inhg" if number <= 33.0 else "hpa"), 0.0)
    if not LEAST_PRESSURE <= pressure <= MOST_PRESSURE:
        raise InputProblem(f"“{text.strip()}” isn't a plausible air pressure; type it as 25.1 inHg or 850 hPa.")
    return pressure


def height_from_text(text: str, bare_unit: str = "ft") -> float:
    """The height above the sea that was typed [m]: `4000`, `4,000 ft`, `1200 m`; a bare number is in `bare_unit`."""
    typed = _number_and_unit(_THOUSANDS.sub("", text))
    number, unit = typed or (0.0, "")
    metres_per_unit = _METRES.get(unit or bare_unit)
    if typed is None or metres_per_unit is None:
        raise InputProblem(f"“{text.strip()}” isn't a height; type it as 1200 m or 4000 ft.")
    altitude = number * metres_per_unit
    lowest, highest = ALTITUDES
    if not lowest <= altitude <= highest:
        raise InputProblem(
            f"{height_text(altitude)} isn't a plausible height for a kitchen; type a number from "
            f"{height_text(lowest)} to {height_text(highest)}."
        )
    return altitude


def _number_and_unit(text: str) -> tuple[float, str] | None:
    match = _TYPED.fullmatch(text)
    return (float(match[1].replace(",", ".")), match[2].casefold()) if match else None


def pressure_text(pressure: float) -> str:
    """A pressure [Pa] in both usual units."""
    return f"{pressure / PASCALS_PER_INCH_OF_MERCURY:.2f} inHg ({pressure / 100:.0f} hPa)"


def height_text(altitude: float) -> str:
    """A height [m] in both usual units."""
    return f"{altitude / METRES_PER_FOOT:,.0f} ft ({altitude:,.0f} m)"
