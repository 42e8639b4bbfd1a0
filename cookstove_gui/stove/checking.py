"""What an entry of the log may say: meaningless entries are refused, unlikely ones are kept and questioned.

Rows that are typed and rows read from a file are judged alike, each once, before the logbook gets them.
"""

import math
from dataclasses import replace
from datetime import datetime

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.carried import carried_of
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import kelvin, parse_number

# Hotter than any flame of wood (adiabatic flame temperature about 2250 K; from memory), so never a reading.
HOTTEST_MEANT = 3000.0  # K
LONGEST_TEXT = {"spot": 80, "value": 400, "unit": 40, "note": 20_000}  # letters
LONGEST_DUE = 24 * 60.0  # min
_LONGEST_OFFSET = 24 * 60  # min


class FieldProblem(InputProblem):
    """An entry that cannot be understood, and the field at fault."""

    def __init__(self, field: str, why: str, sentence: str) -> None:
        super().__init__(sentence)
        self.field = field
        self.why = why


def check_entry(
    *,
    at: datetime,
    offset_minutes: int,
    kind: str,
    spot: str = "",
    value: str = "",
    unit: str = "",
    note: str = "",
    number: int = 0,
) -> Entry:
    """Make an entry from what was typed or read from a file, judged once; raises FieldProblem for what has no meaning.

    Blanks round the short fields go, kind and unit are spelled as in the log file. The value stays as typed and the
    note is kept to the letter.
    """
    return checked(
        Entry(
            number=number,
            at=at,
            offset_minutes=offset_minutes,
            kind=_kind(kind),
            spot=spot,
            value=value,
            unit=unit,
            note=note,
        )
    )


def checked(entry: Entry) -> Entry:
    """A changed entry, judged and tidied like a new one."""
    if entry.at.tzinfo is None:
        raise FieldProblem("clock", "no offset", f"The clock {entry.at.isoformat()} has no UTC offset; add it.")
    if abs(entry.offset_minutes) >= _LONGEST_OFFSET:
        raise FieldProblem(
            "clock", "offset", f"No local clock is {entry.offset_minutes} minutes from UTC; correct the offset."
        )
    spot, value, unit = entry.spot.strip(), entry.value.strip(), entry.unit.strip()
    _check_text(spot=spot, value=value, unit=unit, note=entry.note)
    match entry.kind:
        case Kind.READING:
            unit = _check_reading(spot, value, unit)
        case Kind.WOOD:
            unit = _check_mass(value, unit, "wood")
        case Kind.OVEN_IN:
            if not entry.note.strip():
                raise FieldProblem("note", "missing", "What went into the oven? Name it in the note, as loaf of bread.")
            unit = _check_mass(value, unit, "food")
        case Kind.PROBE:
            unit = _check_heat(value, unit, "A probe")
        case Kind.CARRIED:
            unit = _check_heat(value, unit, "A carried heat")
            _check_carried(replace(entry, value=value, unit=unit))
        case Kind.DUE:
            _check_due(value)
            unit = "min"
        case Kind.AIR | Kind.BYPASS:
            _check_fraction(entry.kind, value)
        case Kind.OVEN_DOOR:
            value = _one_of(entry.kind, value, ("open", "closed"))
        case Kind.PAN:
            if not spot:
                raise FieldProblem("spot", "missing", "A pan needs the spot it was put on or taken from.")
            value = _one_of(entry.kind, value, ("on", "off"))
        case Kind.VOID | Kind.KEPT:
            value = _check_row_number(entry.kind, value, entry.number)
        case Kind.LIT | Kind.OUT | Kind.NOTE | Kind.TURNED | Kind.OVEN_OUT:
            pass
    return replace(entry, spot=spot, value=value, unit=unit)


def check_place(entry: Entry, stove: Stove) -> None:
    """Refuse a pan where none can stand; raises FieldProblem."""
    if entry.kind is Kind.PAN and stove.kind_of(entry.spot) is not SpotKind.TOP:
        spot = stove.spot(entry.spot)
        label = spot.label if spot else entry.spot.replace("_", " ")
        raise FieldProblem(
            "spot", "not the cooktop", f"No pan stands on the {label}; choose a spot of the cooktop, as front left."
        )


def _check_text(**fields: str) -> None:
    for field, text in fields.items():
        if len(text) > LONGEST_TEXT[field]:
            raise FieldProblem(
                field, "too long", f"The {field} is longer than {LONGEST_TEXT[field]} letters; shorten it."
            )
        if any(0xD800 <= ord(letter) <= 0xDFFF for letter in text):
            raise FieldProblem(
                field, "broken text", f"The {field} holds half a letter that cannot be saved; type it again."
            )


def _kind(text: str) -> Kind:
    tidied = text.strip().lower().replace(" ", "_")
    try:
        return Kind(tidied)
    except ValueError:
        names = ", ".join(Kind)
        raise FieldProblem(
            "kind", "unknown kind", f"“{text.strip()}” is not a kind of entry; use one of {names}."
        ) from None


def _number(value: str, what: str) -> float:
    try:
        number = parse_number(value, what)
    except InputProblem as problem:
        raise FieldProblem("value", "not a number", problem.sentence) from None
    if not math.isfinite(number):
        raise FieldProblem("value", "not a number", f"“{value[:12]}…” is too long for a {what}; type it again.")
    return number


def _check_reading(spot: str, value: str, unit: str) -> str:
    if not spot:
        raise FieldProblem("spot", "missing", "A reading needs a spot, such as oven_centre.")
    return _check_heat(value, unit, "A reading")


def _check_heat(value: str, unit: str, what: str) -> str:
    if not value:
        raise FieldProblem("value", "missing", f"{what} needs a number, such as 185.")
    number = _number(value, "temperature")
    tidied = unit.upper().removeprefix("°").removeprefix("DEG").strip()
    if tidied not in ("F", "C"):
        shown = f"“{unit}” is not a temperature unit" if unit else f"{what} needs its unit"
        raise FieldProblem("unit", "unknown unit" if unit else "missing", f"{shown}; write F or C.")
    temperature = kelvin(number, tidied)
    if temperature < 0.0:
        raise FieldProblem(
            "value", "below absolute zero", f"{value} °{tidied} is colder than anything can be; correct the number."
        )
    if temperature > HOTTEST_MEANT:
        raise FieldProblem(
            "value", "hotter than fire", f"{value} °{tidied} is hotter than any wood fire; correct the number."
        )
    return tidied


def _check_carried(entry: Entry) -> None:
    try:
        carried_of(entry)
    except InputProblem as problem:
        raise FieldProblem("note", "unknown part", problem.sentence) from None


def _check_due(value: str) -> None:
    if not value:
        raise FieldProblem("value", "missing", "In how many minutes is it to be looked at? Write a number such as 20.")
    if not 0.0 <= _number(value, "number of minutes") <= LONGEST_DUE:
        raise FieldProblem("value", "not within a day", f"“{value}” minutes is not within a day; write 0 to 1440.")


def _check_mass(value: str, unit: str, what: str) -> str:
    tidied = {"kgs": "kg", "lbs": "lb"}.get(unit.lower(), unit.lower())
    if not value:
        return tidied if tidied in ("kg", "lb") else unit
    number = _number(value, "mass")
    if number <= 0.0:
        raise FieldProblem(
            "value", "not above zero", f"“{value}” isn't a mass of {what}; type more than 0, or leave it blank."
        )
    if tidied not in ("kg", "lb"):
        shown = f"“{unit}” is not a unit of mass" if unit else f"A mass of {what} needs its unit"
        raise FieldProblem("unit", "unknown unit" if unit else "missing", f"{shown}; write kg or lb.")
    return tidied


def _check_fraction(kind: Kind, value: str) -> None:
    if not value:
        raise FieldProblem("value", "missing", f"{kind} needs how far it is open, from 0 (shut) to 1 (wide open).")
    number = _number(value.removesuffix("%"), "fraction")
    if value.endswith("%") or not 0.0 <= number <= 1.0:
        raise FieldProblem(
            "value",
            "not from 0 to 1",
            f"“{value}” does not say how far {kind} is open; write 0 (shut) to 1 (wide open), a third as 0.33.",
        )


def _one_of(kind: Kind, value: str, words: tuple[str, ...]) -> str:
    tidied = value.lower()
    if tidied not in words:
        raise FieldProblem("value", "unknown word", f"“{value}” does not fit {kind}; write {' or '.join(words)}.")
    return tidied


def _check_row_number(kind: Kind, value: str, number: int) -> str:
    if not value:
        what = "takes back" if kind is Kind.VOID else "lets stand"
        raise FieldProblem("value", "missing", f"A {kind} row needs the number of the row it {what}.")
    row = _number(value, "row number")
    if row < 1 or row != int(row):
        raise FieldProblem(
            "value", "not a row number", f"“{value}” is not a row number; rows count from 1 under the header."
        )
    if number and row == number:
        raise FieldProblem("value", "names itself", f"Row {number} names itself; write the number of another row.")
    return str(int(row))
