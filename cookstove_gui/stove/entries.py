"""A session's log: append-only entries, and the fold that applies what was taken back."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from operator import attrgetter

from cookstove_gui.errors import InputProblem
from cookstove_gui.units import kelvin, kilograms, parse_number


class Kind(StrEnum):
    """What an entry says: somebody read, did or noted something."""

    READING = "reading"
    CARRIED = "carried"
    LIT = "lit"
    OUT = "out"
    WOOD = "wood"
    AIR = "air"
    BYPASS = "bypass"
    OVEN_DOOR = "oven_door"
    PAN = "pan"
    OVEN_IN = "oven_in"
    PROBE = "probe"
    TURNED = "turned"
    DUE = "due"
    OVEN_OUT = "oven_out"
    NOTE = "note"
    KEPT = "kept"
    VOID = "void"


ABOUT_A_ROW = frozenset({Kind.KEPT, Kind.VOID})  # they speak of another row of the log, not of the stove


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One row of the log, exactly as it was typed: the value stays text so that files round-trip."""

    number: int  # its row in the session's log, from 1
    at: datetime  # aware UTC
    offset_minutes: int  # offset of the local clock it was written with
    kind: Kind
    spot: str = ""
    value: str = ""
    unit: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatBand:
    """A named range of temperature [K], both ends included."""

    name: str
    low: float
    high: float

    def holds(self, temperature: float) -> bool:
        """Whether a temperature [K] lies in the band."""
        return self.low <= temperature <= self.high


@dataclass(frozen=True, slots=True, kw_only=True)
class Session:
    """One firing of one stove, with all its entries."""

    number: int
    stove: str
    title: str
    entries: tuple[Entry, ...]


_IN_TIME = attrgetter("at", "number")


def fold(entries: Iterable[Entry], until: datetime | None = None) -> tuple[Entry, ...]:
    """What was read and done after corrections, in order of time: without voided rows and rows about another row.

    Rows later than `until` are not looked at. Voids are read from the last to the first, so that a void which was
    itself taken back has no effect.
    """
    seen = [entry for entry in entries if until is None or entry.at <= until]
    taken_back = numbers_taken_back(seen)
    standing = [row for row in seen if row.kind not in ABOUT_A_ROW and row.number not in taken_back]
    standing.sort(key=_IN_TIME)
    return tuple(standing)


def numbers_taken_back(entries: Iterable[Entry]) -> set[int]:
    """Numbers of the rows, void rows among them, that a void row in force takes back."""
    taken_back: set[int] = set()
    voids = [entry for entry in entries if entry.kind is Kind.VOID]
    for entry in sorted(voids, key=lambda row: row.number, reverse=True):
        if entry.number not in taken_back:
            taken_back.add(named_number(entry))
    return taken_back


def numbers_kept(entries: Sequence[Entry]) -> set[int]:
    """Numbers of the rows that the cook kept as typed when they were questioned."""
    taken_back = numbers_taken_back(entries)
    return {named_number(row) for row in entries if row.kind is Kind.KEPT and row.number not in taken_back}


def named_number(entry: Entry) -> int:
    """Number of the row that a void row takes back or a kept row lets stand."""
    try:
        return int(entry.value)
    except ValueError:
        sentence = f"“{entry.value}” is not a row number; a {entry.kind} row's value is the number of another row."
        raise InputProblem(sentence) from None


def reading_kelvin(entry: Entry) -> float:
    """Temperature [K] of a reading or of a probe in what is in the oven, as typed."""
    return kelvin(parse_number(entry.value, "temperature"), entry.unit)


def fraction_open(entry: Entry) -> float:
    """How far open (0 to 1) an air or bypass row says."""
    return parse_number(entry.value, "fraction")


def pans_standing(entries: Iterable[Entry]) -> set[str]:
    """Names of the spots where a pan stands after entries in order of time."""
    last = {row.spot: row.value for row in entries if row.kind is Kind.PAN}
    return {spot for spot, value in last.items() if value == "on"}


def door_is_open(entry: Entry) -> bool:
    """Whether an oven-door row says open."""
    return entry.value == "open"


USUAL_KINDLING = 0.9  # kg, under a fire that is lit; common practice, no source
USUAL_SPLIT = 1.1  # kg: 35 cm of a log 20 cm thick, split in six, 600 kg/m3
_COUNT_WORDS = {
    "a": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0, "seven": 7.0, "eight": 8.0,
    "half": 0.5,
}  # fmt: skip


def stated_mass(entry: Entry) -> float | None:
    """Mass [kg] that a row of wood or of something put into the oven states, or none when it states no mass."""
    return kilograms(parse_number(entry.value, "mass"), entry.unit) if entry.value else None


def wood_count(entry: Entry) -> float | None:
    """How many splits or logs a wood row's note names (“two splits”), or none."""
    for word in re.findall(r"[a-z]+|\d+(?:\.\d+)?", entry.note.lower()):
        if word in _COUNT_WORDS:
            return _COUNT_WORDS[word]
        if word[0].isdigit():
            return float(word)
    return None
