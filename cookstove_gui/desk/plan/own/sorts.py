"""What the sorts of things that a cook may change have in common, and how their words are read."""

import re
from abc import ABC, abstractmethod
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from cookstove_gui.errors import InputProblem
from cookstove_gui.resource_files import own_rows
from cookstove_gui.units import TemperatureUnit, degrees, kelvin, parse_number, parse_temperature, tidy

CENTIMETRES = {"C": ("cm", 1.0), "F": ("in", 2.54)}  # unit of lengths beside the unit of temperature
YES, NO = "yes", "no"


@dataclass(frozen=True, slots=True, kw_only=True)
class Blank:
    """One field of the form."""

    key: str
    caption: str
    tip: str
    unit: str = ""
    options: tuple[tuple[str, str], ...] = ()  # key and words, where one is chosen and not typed
    is_long: bool = False  # words, and no number


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One row of the list."""

    key: str
    cells: tuple[str, ...]
    is_own: bool  # added or changed by the cook


@dataclass(frozen=True, slots=True, kw_only=True)
class Filled:
    """The form as it stands, and what it is about."""

    said: Mapping[str, str]
    key: str = ""  # of the one that is changed; empty for a new one
    like: str = ""  # of the one that a new one began as


class Sort(ABC):
    """One sort: how it is listed, what its form asks, and the row that the form makes."""

    key: str
    name: str  # as it is chosen by
    one: str  # what one of it is called
    headers: tuple[str, ...]
    file: str  # its table
    kind: str  # its rows
    row_key = "key"
    adds = True  # the cook may add to it
    changes = True  # or change what is there
    told = ""  # what stands below the list

    def __init__(self, unit: TemperatureUnit) -> None:
        self.unit = unit  # of what is shown and typed

    @abstractmethod
    def lines(self) -> tuple[Line, ...]:
        """All of them, in their order."""

    @abstractmethod
    def blanks(self) -> tuple[Blank, ...]:
        """What the form asks."""

    @abstractmethod
    def words(self, key: str) -> dict[str, str]:
        """One of them as it stands in the form; of an empty key an empty form."""

    @abstractmethod
    def row(self, filled: Filled) -> dict[str, Any]:
        """The row that the form says, checked; raises InputProblem for what cannot be."""

    def as_before(self, row: dict[str, Any], filled: Filled, before: Mapping[str, Any]) -> dict[str, Any]:
        """The row with the numbers that it had before wherever nothing else was typed: what is shown is rounded."""
        shown = self.words(filled.key or filled.like)
        same = {part for part, said in filled.said.items() if part in before and said == shown.get(part)}
        return row | {part: before[part] for part in same}

    def own_keys(self) -> frozenset[str]:
        """Keys of those that are the cook's own, or changed by the cook."""
        return frozenset(str(row.get(self.row_key)) for row in own_rows(self.file, self.kind))


def typed_number(said: Mapping[str, str], blank: str, what: str) -> float:
    """A number that was typed."""
    try:
        return parse_number(said[blank])
    except InputProblem:
        raise InputProblem(f"“{said[blank].strip()}” isn't a number; say {what}.") from None


def typed_heats(text: str, unit: TemperatureUnit, what: str) -> list[float]:
    """Two temperatures [°F], such as 375-425."""
    ends = [end for end in re.split(r"\s*(?:-|–|—|\bto\b)\s*", text.strip()) if end]
    if len(ends) != 2:
        raise InputProblem(f"“{text.strip()}” isn't a range of heat; type {what} such as 375-425.")
    return [typed_heat(end, unit) for end in ends]


def typed_heat(text: str, unit: TemperatureUnit) -> float:
    """A temperature [°F]."""
    value, typed_unit = parse_temperature(text, unit)
    return round(float(degrees(kelvin(value, typed_unit), "F")), 2)


def heats_text(low: float, high: float, unit: TemperatureUnit) -> str:
    """Two temperatures [K] as they are typed."""
    return f"{tidy(degrees(low, unit), 0)}-{tidy(degrees(high, unit), 0)}"


def typed_sizes(text: str, unit: TemperatureUnit) -> list[float]:
    """Three lengths [m], such as 10 x 11 x 21."""
    parts = [part for part in re.split(r"\s*(?:x|×|\*|by)\s*|\s+", text.strip()) if part]
    if len(parts) != 3:
        raise InputProblem(f"“{text.strip()}” isn't three sizes; type height, width and length such as 4 x 4 x 8.")
    name, centimetres = CENTIMETRES[unit]
    try:
        return sorted(round(parse_number(part) * centimetres / 100.0, 4) for part in parts)
    except InputProblem:
        raise InputProblem(f"“{text.strip()}” isn't three sizes in {name}; type such as 4 x 4 x 8.") from None


def sizes_text(sizes: tuple[float, float, float], unit: TemperatureUnit) -> str:
    """Three lengths [m] as they are typed."""
    return " x ".join(tidy(100.0 * side / CENTIMETRES[unit][1]) for side in sizes)


def yes_or_no(wanted: bool) -> str:
    """As it is chosen."""
    return YES if wanted else NO
