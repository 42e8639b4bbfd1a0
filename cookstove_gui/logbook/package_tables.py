"""The tables of a data package beside the logs: their fields, and their rows written and read."""

import csv
import io
import re
from collections.abc import Iterable, Mapping
from datetime import date, datetime
from typing import Any, NamedTuple

from cookstove_gui.logbook.plain_cells import guarded, unguarded
from cookstove_gui.stove.checks import Check, CheckPoint
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.weather import WeatherKind, WeatherReading
from cookstove_gui.units import iso_clock, parse_iso_clock

ENDING = ".zip"  # of a package
OWN_FOLDER = "own_tables"  # inside, of the cook's own tasks, bakes, foods and words


class Table(NamedTuple):
    """A table's title and the fields of its schema."""

    title: str
    fields: list[dict[str, Any]]


LOG_FIELDS: list[dict[str, Any]] = [
    {
        "name": "clock",
        "type": "string",
        "description": "ISO 8601 with UTC offset",
        "constraints": {"required": True, "pattern": r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?[+-]\d\d:\d\d"},
    },
    {
        "name": "kind",
        "type": "string",
        "description": "what was done or read",
        "constraints": {"required": True, "enum": [str(kind) for kind in Kind]},
    },
    {"name": "spot", "type": "string", "description": "where it was read, or where a pan stands"},
    {"name": "value", "type": "string", "description": "temperature, mass, fraction open, state, minutes, or a row"},
    {
        "name": "unit",
        "type": "string",
        "description": "F or C, kg or lb, min",
        "constraints": {"enum": ["F", "C", "kg", "lb", "min"]},
    },
    {"name": "note", "type": "string", "description": "free words; what went into the oven"},
]
_CLOCK = {"name": "clock", "type": "string", "description": "ISO 8601 with UTC offset"}
CHECKS = Table(
    "checks of thermometers",
    [
        {"name": "thermometer", "type": "string", "constraints": {"required": True}},
        {"name": "point", "type": "string", "constraints": {"enum": [str(point) for point in CheckPoint]}},
        {"name": "shown_kelvin", "type": "number"},
        {"name": "day", "type": "date"},
        {"name": "pressure_pascal", "type": "number", "description": "of the air at the stove"},
    ],
)
WEATHER = Table(
    "the weather as it was read",
    [
        _CLOCK,
        {"name": "kind", "type": "string", "constraints": {"enum": [str(kind) for kind in WeatherKind]}},
        {"name": "value", "type": "number", "description": "in K or Pa; empty: the one before no longer holds"},
    ],
)
SUPPERS = Table(
    "suppers that were planned",
    [
        {"name": "table_at", "type": "string", "description": "ISO 8601, when it was to be on the table"},
        {"name": "content", "type": "string", "description": "dishes and plan, JSON"},
    ],
)
SESSIONS = Table(
    "The sessions, their titles and tags",
    [
        {
            "name": "path",
            "type": "string",
            "description": "of its log",
            "constraints": {"required": True, "unique": True},
        },
        {"name": "stove", "type": "string", "constraints": {"required": True}},
        {"name": "title", "type": "string"},
        {"name": "tags", "type": "string", "description": "separated by semicolons"},
        {"name": "in_bin_since", "type": "string", "description": "ISO 8601; empty: it isn't in the bin"},
    ],
)
PHOTOS = Table(
    "Photos of the sessions",
    [
        {"name": "log", "type": "string", "description": "path of the session's log"},
        {"name": "photo", "type": "string", "description": "path of the picture"},
        {"name": "name", "type": "string", "description": "its own name"},
    ],
)
DISHES = Table(
    "The cook's own dishes",
    [{"name": "key", "type": "string"}, {"name": "content", "type": "string", "description": "TOML"}],
)
SETTINGS = Table("What the cook chose", [{"name": "key", "type": "string"}, {"name": "value", "type": "string"}])


def table_text(fields: Iterable[Mapping[str, Any]], rows: Iterable[tuple[str, ...]]) -> str:
    """A table as CSV (RFC 4180)."""
    stream = io.StringIO(newline="")
    writer = csv.writer(stream, lineterminator="\r\n")
    writer.writerow([field["name"] for field in fields])
    writer.writerows(rows)
    return stream.getvalue()


def table_rows(text: str) -> list[dict[str, str]]:
    """The rows of such a table by the names of its fields, as they were before they were guarded."""
    rows = csv.DictReader(io.StringIO(text, newline=""))
    return [{name: unguarded(cell or "") for name, cell in row.items() if name} for row in rows]


def check_cells(check: Check) -> tuple[str, ...]:
    """A check as a row."""
    name = guarded(check.instrument)
    return name, str(check.point), repr(check.shown), check.on.isoformat(), repr(check.pressure)


def check_of(row: Mapping[str, str]) -> Check:
    """A check from its row; raises ValueError or KeyError for one that isn't."""
    return Check(
        instrument=row["thermometer"],
        point=CheckPoint(row["point"]),
        shown=float(row["shown_kelvin"]),
        on=date.fromisoformat(row["day"]),
        pressure=float(row["pressure_pascal"]),
    )


def weather_cells(reading: WeatherReading) -> tuple[str, ...]:
    """A reading of the weather as a row."""
    value = "" if reading.value is None else repr(reading.value)
    return iso_clock(reading.at, reading.offset_minutes), str(reading.kind), value


def weather_of(row: Mapping[str, str]) -> WeatherReading:
    """A reading from its row; raises ValueError or KeyError for one that isn't."""
    at, offset = parse_iso_clock(row["clock"])
    value = float(row["value"]) if row["value"] else None
    return WeatherReading(kind=WeatherKind(row["kind"]), value=value, at=at, offset_minutes=offset)


def supper_of(row: Mapping[str, str]) -> tuple[datetime, str]:
    """A supper from its row: when it was to be on the table, and its content."""
    return parse_iso_clock(row["table_at"])[0], row["content"]


def day_of(entries: Iterable[Entry]) -> str:
    """The local day of the first row."""
    first = min(entries, key=lambda row: row.at, default=None)
    return "empty" if first is None else iso_clock(first.at, first.offset_minutes)[:10]


def plain_name(text: str) -> str:
    """Text as a name of a file that every system takes."""
    return re.sub(r"[^a-z0-9]+", "_", text.casefold()).strip("_")[:60] or "unnamed"


def free_name(name: str, taken: set[str], ending: str = "") -> str:
    """A name that isn't taken yet."""
    number, free = 2, f"{name}{ending}"
    while free in taken:
        free, number = f"{name}_{number}{ending}", number + 1
    return free
