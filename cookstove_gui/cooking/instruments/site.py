"""Where the stove stands: one setting, height or station pressure, behind boiling, baking hints and draught."""

import re
from dataclasses import dataclass

from cookstove_gui.errors import InputProblem
from cookstove_gui.physics.air import pressure_altitude, standard_pressure, station_pressure
from cookstove_gui.physics.water import boiling_temperature
from cookstove_gui.units import METRES_PER_FOOT, PASCALS_PER_INCH_OF_MERCURY, tidy

LOWEST, HIGHEST = -430.0, 5500.0  # m, the lowest shore and the highest village
LEAST_PRESSURE, MOST_PRESSURE = 45_000.0, 108_000.0  # Pa, of the air where people cook
WEATHER_SWING = 5000.0  # Pa, by which weather moves the pressure at most, near enough
_PASCALS = {"hpa": 100.0, "mbar": 100.0, "mb": 100.0, "kpa": 1000.0, "inhg": PASCALS_PER_INCH_OF_MERCURY}
_PASCALS["in"] = PASCALS_PER_INCH_OF_MERCURY
_METRES = {"m": 1.0, "ft": METRES_PER_FOOT, "feet": METRES_PER_FOOT, "metres": 1.0, "meters": 1.0, "'": METRES_PER_FOOT}
_TYPED = re.compile(r"\s*(-?\d+(?:[.,]\d+)?)\s*([a-z']*)\s*", re.IGNORECASE)


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


def site_at(altitude: float, typed_pressure: float | None = None) -> Site:
    """The air at a height [m], by the standard atmosphere or by a barometer [Pa].

    A pressure that the weather cannot make at this height, but that would be usual at the sea's, is taken as reduced to
    sea level, as weather reports and household barometers give it, and brought to the height.

    Raises
    ------
    InputProblem
        If the height is nobody's kitchen, or the pressure fits neither reading.
    """
    if not LOWEST <= altitude <= HIGHEST:
        raise InputProblem(
            f"A kitchen at {tidy(altitude, 0)} m ({tidy(altitude / METRES_PER_FOOT, 0)} ft) is out of reach; "
            "mend the height or its unit."
        )
    usual = float(standard_pressure(altitude))
    if typed_pressure is None:
        return Site(altitude=altitude, pressure=usual)
    if abs(typed_pressure - usual) <= WEATHER_SWING:
        return Site(altitude=altitude, pressure=typed_pressure)
    if abs(typed_pressure - float(standard_pressure(0.0))) <= WEATHER_SWING:
        there = float(station_pressure(typed_pressure, altitude))
        return Site(
            altitude=altitude,
            pressure=there,
            note=f"Taken as reduced to sea level; here it is {tidy(there / 100, 0)} hPa.",
        )
    raise InputProblem(
        f"{tidy(typed_pressure / 100, 0)} hPa does not go with a height of {tidy(altitude, 0)} m, where about "
        f"{tidy(usual / 100, 0)} hPa is usual; mend one of them."
    )


def site_with_barometer(altitude: float, pressure: float, *, as_at_sea: bool) -> Site:
    """The air by a barometer [Pa] and the height [m], when it is known what the barometer shows.

    `as_at_sea` says that the pressure is brought down to the sea's level, as weather reports give it. No weather makes
    a low one there, so that one is always the air's own. A height of 0 counts as not known: the air's own pressure then
    gives it.

    Raises
    ------
    InputProblem
        If the pressure does not go with the height.
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
    way = "; choose “as at the sea” if it is a weather report’s" if possible_at_sea else "; mend one of them"
    raise InputProblem(
        f"{pressure_text(pressure)} does not go with the height of {height_text(altitude)}, where about "
        f"{pressure_text(usual)} is usual{way}."
    )


def is_possible_at_sea(pressure: float) -> bool:
    """Whether weather makes such a pressure [Pa] at the sea's level."""
    return abs(pressure - float(standard_pressure(0.0))) <= WEATHER_SWING


def pressure_from_text(text: str) -> float:
    """The pressure that was typed [Pa]; a bare number is in. of mercury up to 33 and hPa beyond.

    Raises
    ------
    InputProblem
        If it is no pressure of the air.
    """
    match = _TYPED.fullmatch(text)
    unit = match[2].casefold() if match else ""
    if match is None or (unit and unit not in _PASCALS):
        raise InputProblem(f"“{text.strip()}” is no pressure of the air; type it as 25.1 inHg or 850 hPa.")
    number = float(match[1].replace(",", "."))
    pressure = number * _PASCALS[unit or ("inhg" if number <= 33.0 else "hpa")]
    if not LEAST_PRESSURE <= pressure <= MOST_PRESSURE:
        raise InputProblem(f"“{text.strip()}” is no pressure of the air; type it as 25.1 inHg or 850 hPa.")
    return pressure


def pressure_text(pressure: float) -> str:
    """A pressure [Pa] in both usual units."""
    return f"{pressure / PASCALS_PER_INCH_OF_MERCURY:.2f} inHg ({pressure / 100:.0f} hPa)"


def height_text(altitude: float) -> str:
    """A height [m] in both usual units."""
    return f"{altitude / METRES_PER_FOOT:,.0f} ft ({altitude:,.0f} m)"


def site_from_text(text: str, altitude: float = 0.0) -> Site:
    """The site from what is typed: a height (`1200 m`, `4000 ft`) or a pressure (`850 hPa`, `25.1 inHg`).

    A bare number is a height in feet. A pressure goes with the height known so far; where none is known (0), it gives
    the height.

    Raises
    ------
    InputProblem
        If it is neither, or out of reach.
    """
    match = _TYPED.fullmatch(text)
    unit = match[2].casefold() if match else ""
    if match is None or (unit and unit not in _METRES and unit not in _PASCALS):
        raise InputProblem(
            f"“{text.strip()}” is no height or pressure; type it as 1200 m, 4000 ft, 850 hPa or 25.1 inHg."
        )
    number = float(match[1].replace(",", "."))
    if unit not in _PASCALS:
        return site_at(number * _METRES.get(unit, METRES_PER_FOOT))
    pressure = number * _PASCALS[unit]
    if not LEAST_PRESSURE <= pressure <= MOST_PRESSURE:
        raise InputProblem(f"“{text.strip()}” is no pressure of the air; type it as 850 hPa or 25.1 inHg.")
    if altitude == 0.0 and abs(pressure - float(standard_pressure(0.0))) > WEATHER_SWING:
        return Site(altitude=float(pressure_altitude(pressure)), pressure=pressure)
    return site_at(altitude, pressure)
