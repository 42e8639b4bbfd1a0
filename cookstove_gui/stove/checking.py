"""What an entry of the log may say: meaningless entries are refused, unlikely ones are kept and questioned.

Rows that are typed and rows read from a file are judged alike, each once, before the logbook gets them.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.carried import carried_of
from cookstove_gui.stove.entries import Entry, Kind, reading_kelvin, stated_mass
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import clock_text, degrees, kelvin, parse_number, tidy

# Hotter than any flame of wood (adiabatic flame temperature about 2250 K; from memory), so never a reading.
HOTTEST_MEANT = 3000.0  # K
# Readings of an ordinary cookstove stay below these (common practice, no source).
HOTTEST_LIKELY = {
    SpotKind.OVEN: kelvin(700.0, "F"),
    SpotKind.TOP: kelvin(1050.0, "F"),
    SpotKind.SIDE: kelvin(700.0, "F"),
    SpotKind.GLASS: kelvin(1100.0, "F"),
    SpotKind.FLUE: kelvin(1500.0, "F"),
    SpotKind.ROOM: kelvin(125.0, "F"),
    SpotKind.WALL: kelvin(300.0, "F"),
}  # K
COLDEST_LIKELY = kelvin(-40.0, "F")  # K
HEAVIEST_LIKELY_LOAD = 30.0  # kg
COLDEST_FOOD, HOTTEST_FOOD = kelvin(-10.0, "F"), kelvin(250.0, "F")  # K, of a core: frozen, and past any boiling point
LONGEST_TEXT = {"spot": 80, "value": 400, "unit": 40, "note": 20_000}  # letters
LONGEST_DUE = 24 * 60.0  # min
_LONG_BEFORE_SESSION = timedelta(hours=12)
_CLOCK_SLACK = timedelta(minutes=5)
_LONGEST_OFFSET = 24 * 60  # min
_LATELY = timedelta(minutes=45)
MUCH_NEARER = 4.0  # times, by which the other unit must come nearer to what was expected to be asked about
_UNIT_SLIP = 25.0  # K; a jump beyond this since lately, that the other unit would explain, is questioned


class FieldProblem(InputProblem):
    """An entry that cannot be understood, and the field at fault."""

    def __init__(self, field: str, why: str, sentence: str) -> None:
        super().__init__(sentence)
        self.field = field
        self.why = why


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """A question about an unlikely entry that was kept."""

    field: str
    why: str
    sentence: str


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


def doubt(entry: Entry, stove: Stove, earlier: Sequence[Entry] = (), now: datetime | None = None) -> Doubt | None:
    """The first question about a checked entry, or none.

    `earlier` are the session's other standing entries in order of time; `now` is left out for a file from another day.
    """
    question = _clock_doubt(entry, earlier, now)
    if question is None and entry.kind is Kind.READING:
        question = _reading_doubt(entry, stove) or _unit_doubt(entry, earlier)
    if question is None and entry.kind is Kind.PROBE and not COLDEST_FOOD <= reading_kelvin(entry) <= HOTTEST_FOOD:
        question = Doubt(
            field="value",
            why="no core has it",
            sentence=f"{entry.value} °{entry.unit} is not what a probe in food shows; is the number right?",
        )
    if question is None and entry.kind is Kind.WOOD:
        mass = stated_mass(entry)
        if mass is not None and mass > HEAVIEST_LIKELY_LOAD:
            question = Doubt(
                field="value",
                why="more wood than a firebox holds",
                sentence=f"{entry.value} {entry.unit} is more wood than a firebox holds; is the number right?",
            )
    return question


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


def _clock_doubt(entry: Entry, earlier: Sequence[Entry], now: datetime | None) -> Doubt | None:
    clock = clock_text(entry.at, entry.offset_minutes)
    if now is not None and entry.at > now + _CLOCK_SLACK:
        minutes = round((entry.at - now).total_seconds() / 60)
        return Doubt(
            field="clock",
            why="in the future",
            sentence=f"{clock} is {_spell(minutes)} ahead of the clock; is the time right?",
        )
    if earlier:
        first = min(row.at for row in earlier)
        if entry.at < first - _LONG_BEFORE_SESSION:
            minutes = round((first - entry.at).total_seconds() / 60)
            return Doubt(
                field="clock",
                why="before the session",
                sentence=f"{clock} is {_spell(minutes)} before this session began; is the day right?",
            )
    return None


def _spell(minutes: int) -> str:
    if minutes < 120:
        return f"{minutes} minutes"
    hours = minutes / 60
    return f"{hours:.0f} hours" if hours < 48 else f"{hours / 24:.0f} days"


def _reading_doubt(entry: Entry, stove: Stove) -> Doubt | None:
    spot = stove.spot(entry.spot)
    kind = stove.kind_of(entry.spot)
    label = spot.label if spot else entry.spot.replace("_", " ")
    temperature = reading_kelvin(entry)
    if temperature > HOTTEST_LIKELY[kind]:
        typed = f"{entry.value} °{entry.unit}"
        if entry.unit == "C" and kelvin(parse_number(entry.value), "F") <= HOTTEST_LIKELY[kind]:
            other = tidy(degrees(temperature, "F"), 0)
            return Doubt(
                field="unit",
                why="unit does not fit the stove",
                sentence=f"{typed} at {label} is {other} °F, more than a stove reaches; was {entry.value} °F meant?",
            )
        return Doubt(
            field="value",
            why="no stove reaches it",
            sentence=f"{typed} at {label} is more than a stove reaches there; is the number right?",
        )
    if temperature < COLDEST_LIKELY:
        return Doubt(
            field="value",
            why="colder than any kitchen",
            sentence=f"{entry.value} °{entry.unit} at {label} is colder than any kitchen; is the number right?",
        )
    return None


def _unit_doubt(entry: Entry, earlier: Sequence[Entry]) -> Doubt | None:
    lately = [
        row
        for row in earlier
        if row.kind is Kind.READING and row.spot == entry.spot and timedelta() <= entry.at - row.at <= _LATELY
    ]
    if not lately:
        return None
    last = max(lately, key=lambda row: row.at)
    before, typed = reading_kelvin(last), reading_kelvin(entry)
    other_unit = "C" if entry.unit == "F" else "F"
    meant = kelvin(parse_number(entry.value), other_unit)
    if abs(typed - before) > _UNIT_SLIP and abs(meant - before) < abs(typed - before) / MUCH_NEARER:
        return Doubt(
            field="unit",
            why="unit does not fit the last reading",
            sentence=(
                f"{entry.value} °{entry.unit} is far from the last reading there, {last.value} °{last.unit}; "
                f"was {entry.value} °{other_unit} meant?"
            ),
        )
    return None
