"""Questions about entries that have a meaning but are unlikely: they are kept all the same."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from cookstove_gui.stove.entries import Entry, Kind, reading_kelvin, stated_mass
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import clock_text, degrees, kelvin, parse_number, tidy

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
_LONG_BEFORE_SESSION = timedelta(hours=12)
_CLOCK_SLACK = timedelta(minutes=5)
LATELY = timedelta(minutes=45)  # how far back a reading is compared with an earlier one of its spot
MUCH_NEARER = 4.0  # times, by which the other unit must come nearer to what was expected to be asked about
_UNIT_SLIP = 25.0  # K; a jump beyond this since lately, that the other unit would explain, is questioned


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """A question about an unlikely entry that was kept."""

    field: str
    why: str
    sentence: str


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
    if question is None and entry.kind is Kind.PAN and stove.kind_of(entry.spot) is not SpotKind.TOP:
        sentence = f"No pan stands on the {_label(stove, entry.spot)}; is the spot right?"
        question = Doubt(field="spot", why="not the cooktop", sentence=sentence)
    if question is None and entry.kind is Kind.WOOD:
        mass = stated_mass(entry)
        if mass is not None and mass > HEAVIEST_LIKELY_LOAD:
            question = Doubt(
                field="value",
                why="more wood than a firebox holds",
                sentence=f"{entry.value} {entry.unit} is more wood than a firebox holds; is the number right?",
            )
    return question


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
    kind, label = stove.kind_of(entry.spot), _label(stove, entry.spot)
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
        if row.kind is Kind.READING and row.spot == entry.spot and timedelta() <= entry.at - row.at <= LATELY
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


def _label(stove: Stove, name: str) -> str:
    spot = stove.spot(name)
    return spot.label if spot else name.replace("_", " ")
