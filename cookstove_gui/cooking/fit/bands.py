"""Bands of oven heat: the traditional names as one chosen table gives them, or a range or number typed instead."""

import re
from dataclasses import dataclass
from functools import cache

from cookstove_gui.cooking.by_name import by_name
from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.errors import InputProblem
from cookstove_gui.resource_files import made_of_tables, table
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.units import TemperatureUnit, degrees, kelvin, tidy

HALF_WIDTH = 25.0 / 1.8  # K, either side of a single number that is typed: 25 °F, common practice, no source
OVEN_LOWEST = kelvin(60.0, "F")  # K, a cold kitchen; common practice, no source
OVEN_HIGHEST = kelvin(700.0, "F")  # K, above what cookstove ovens reach; common practice, no source
DEFAULT_TABLE = "wide"

_NUMBER = r"(\d+(?:[.,]\d+)?)\s*°?\s*([FfCc]?)"
_RANGE = re.compile(rf"\s*{_NUMBER}\s*(?:-|–|—|to|\.\.)\s*{_NUMBER}\s*", re.IGNORECASE)
_SINGLE = re.compile(rf"\s*{_NUMBER}\s*")


@dataclass(frozen=True, slots=True, kw_only=True)
class BandTable:
    """One published table of oven heats."""

    key: str
    label: str
    source: str
    bands: tuple[HeatBand, ...]


@cache
def band_tables() -> tuple[BandTable, ...]:
    """The published tables of `resources/bands.toml`."""
    return tuple(
        BandTable(
            key=row["key"],
            label=row["label"],
            source=row["source"],
            bands=tuple(
                HeatBand(name=band["name"], low=kelvin(float(band["low"]), "F"), high=kelvin(float(band["high"]), "F"))
                for band in row["bands"]
            ),
        )
        for row in table("bands.toml")["table"]
    )


@made_of_tables
def oven_bands(table_key: str = DEFAULT_TABLE) -> tuple[HeatBand, ...]:
    """The bands a cook may pick by name: first those of what is baked, then the heats of one table."""
    return _bands_of_bakes() + by_name(band_tables(), table_key, "table of oven heats", lambda one: one.key).bands


def band_from_text(text: str, unit: TemperatureUnit, table_key: str = DEFAULT_TABLE) -> HeatBand:
    """The band that was typed: a name, a range such as `425-475` or `425 to 475 F`, or `425` (25 °F either side).

    A unit after either number holds for both; `unit` is assumed when none is typed.

    Raises
    ------
    InputProblem
        If it isn't a band, its ends are the wrong way round, or no oven gets that hot or that cold.
    """
    typed = " ".join(text.split())
    known = {band.name: band for band in oven_bands(table_key)}
    if typed.casefold() in known:
        return known[typed.casefold()]
    ranged = _RANGE.fullmatch(typed)
    if ranged:
        meant = _unit_of(ranged[2], ranged[4], unit)
        low, high = _number(ranged[1]), _number(ranged[3])
        if low >= high:
            raise InputProblem(
                f"“{typed}” runs from high to low; write the lower end first: {tidy(high)}-{tidy(low)}."
                if low > high
                else f"“{typed}” has no width; write two different numbers, or {tidy(low)} alone."
            )
        return _within_reach(
            typed, kelvin(low, meant), kelvin(high, meant), meant, f"{tidy(low)}–{tidy(high)} °{meant}"
        )
    single = _SINGLE.fullmatch(typed)
    if single:
        meant = _unit_of(single[2], "", unit)
        middle = kelvin(_number(single[1]), meant)
        name = f"about {tidy(_number(single[1]))} °{meant}"
        return _within_reach(typed, middle - HALF_WIDTH, middle + HALF_WIDTH, meant, name)
    raise InputProblem(
        f"“{typed}” is not an oven heat; type a range such as 425-475, one number, or one of these names: "
        f"{', '.join(known)}."
    )


@made_of_tables
def _bands_of_bakes() -> tuple[HeatBand, ...]:
    baked = table("bands.toml")["baked"].items()
    return tuple(
        HeatBand(name=name, low=task.low, high=task.high) for name, key in baked if (task := task_of(key)) is not None
    )


def minutes_of_bake(band: HeatBand) -> float:
    """How long the bake takes that a band is named for [min]; 0 for a band that is named for none."""
    task = task_of(table("bands.toml")["baked"].get(band.name, ""))
    return 0.0 if task is None else task.minutes


def _number(text: str) -> float:
    return float(text.replace(",", "."))


def _unit_of(first: str, second: str, unit: TemperatureUnit) -> TemperatureUnit:
    letters = {letter.upper() for letter in (first, second) if letter}
    if len(letters) > 1:
        raise InputProblem("The two ends have different units; write both in °F or both in °C.")
    if not letters:
        return unit
    return "C" if "C" in letters else "F"


def _within_reach(typed: str, low: float, high: float, unit: TemperatureUnit, name: str) -> HeatBand:
    if low < OVEN_LOWEST or high > OVEN_HIGHEST:
        other = "F" if unit == "C" else "C"
        raise InputProblem(
            f"“{typed}” in °{unit} is beyond what an oven reaches ({tidy(degrees(OVEN_LOWEST, unit), 0)} to "
            f"{tidy(degrees(OVEN_HIGHEST, unit), 0)} °{unit}); correct the number, or write {other} after it."
        )
    return HeatBand(name=name, low=low, high=high)
