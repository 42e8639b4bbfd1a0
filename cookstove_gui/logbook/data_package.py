"""Everything as one file: a Frictionless data package, a folder of logs for each stove and what describes them.

Source of the form: Frictionless Data, Data Package and Table Schema (profiles `tabular-data-package`, `table-schema`).
The folders inside are folders of logs, so that each can be read back by itself.
"""

import csv
import io
import json
import re
import zipfile
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from cookstove_gui.logbook.log_file import log_text
from cookstove_gui.logbook.plain_cells import guarded
from cookstove_gui.logbook.stove_file import FILE_NAME, stove_text
from cookstove_gui.logbook.whole_file import write_whole
from cookstove_gui.stove.checks import Check
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import iso_clock

_MADE_AT = (1980, 1, 1, 0, 0, 0)  # the same content is the same file
_DIALECT = {"delimiter": ",", "quoteChar": '"', "lineTerminator": "\r\n", "header": True}
LOG_FIELDS: list[dict[str, Any]] = [
    {
        "name": "clock",
        "type": "string",
        "description": "ISO 8601 with UTC offset",
        "constraints": {"required": True, "pattern": r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d"},
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
_CHECK_FIELDS: list[dict[str, Any]] = [
    {"name": "thermometer", "type": "string", "constraints": {"required": True}},
    {"name": "point", "type": "string", "constraints": {"enum": ["ice", "boil"]}},
    {"name": "shown_kelvin", "type": "number"},
    {"name": "day", "type": "date"},
    {"name": "pressure_pascal", "type": "number", "description": "of the air at the stove"},
]
_SESSION_FIELDS: list[dict[str, Any]] = [
    {"name": "path", "type": "string", "description": "of its log", "constraints": {"required": True, "unique": True}},
    {"name": "stove", "type": "string", "constraints": {"required": True}},
    {"name": "title", "type": "string"},
    {"name": "tags", "type": "string", "description": "separated by semicolons"},
]


class StoveRecord(NamedTuple):
    """All that is kept of one stove."""

    stove: Stove
    sessions: tuple[Session, ...]
    checks: tuple[Check, ...] = ()  # of its thermometers
    tags: Mapping[int, tuple[str, ...]] = {}  # by the number of a session


def write_package(path: Path, name: str, title: str, records: Iterable[StoveRecord]) -> None:
    """Write a data package as one .zip file, whole or not at all."""
    files: dict[str, str] = {}
    resources: list[dict[str, Any]] = []
    listed: list[tuple[str, ...]] = []
    for record in records:
        folder = _free(_plain(record.stove.name), {path.partition("/")[0] for path in files})
        files[f"{folder}/{FILE_NAME}"] = stove_text(record.stove)
        for session in record.sessions:
            place = _free(f"{folder}/{_day(session.entries)}_{_plain(session.title)}", set(files), ".csv")
            files[place] = log_text(session.entries)
            resources.append(tabular_resource(place, f"{record.stove.name}: {session.title}", LOG_FIELDS))
            tags = "; ".join(record.tags.get(session.number, ()))
            listed.append((place, *map(guarded, (record.stove.name, session.title, tags))))
        if record.checks:
            place = f"{folder}/thermometers/checks.csv"  # in a folder of its own, for it is no log
            files[place] = _table_text(_CHECK_FIELDS, map(_check_cells, record.checks))
            resources.append(tabular_resource(place, f"{record.stove.name}: checks of thermometers", _CHECK_FIELDS))
    files["sessions.csv"] = _table_text(_SESSION_FIELDS, listed)
    resources.append(tabular_resource("sessions.csv", "The sessions, their titles and tags", _SESSION_FIELDS))
    files["datapackage.json"] = package_text(name, title, "Logs of wood cookstoves, a folder a stove.", resources)
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        for place, text in files.items():
            archive.writestr(zipfile.ZipInfo(place, _MADE_AT), text.encode("utf-8"), zipfile.ZIP_DEFLATED)
    write_whole(path, stream.getvalue())


def package_text(name: str, title: str, description: str, resources: list[dict[str, Any]]) -> str:
    """The descriptor `datapackage.json`."""
    package = {
        "profile": "tabular-data-package",
        "name": name,
        "title": title,
        "description": description,
        "version": "1.0.0",
        "resources": resources,
    }
    return json.dumps(package, indent=2, ensure_ascii=False) + "\n"


def tabular_resource(path: str, title: str, fields: list[dict[str, Any]], description: str = "") -> dict[str, Any]:
    """The descriptor of one table."""
    told = {"description": description} if description else {}
    return {
        "name": _plain(path.removesuffix(".csv")).replace("_", "-"),
        "path": path,
        "title": title,
        **told,
        "profile": "tabular-data-resource",
        "format": "csv",
        "mediatype": "text/csv",
        "encoding": "utf-8",
        "dialect": _DIALECT,
        "schema": {"fields": fields, "missingValues": [""]},
    }


def _table_text(fields: Iterable[Mapping[str, Any]], rows: Iterable[tuple[str, ...]]) -> str:
    stream = io.StringIO(newline="")
    writer = csv.writer(stream, lineterminator="\r\n")
    writer.writerow([field["name"] for field in fields])
    writer.writerows(rows)
    return stream.getvalue()


def _check_cells(check: Check) -> tuple[str, ...]:
    name = guarded(check.instrument)
    return name, str(check.point), f"{check.shown:.2f}", check.on.isoformat(), f"{check.pressure:.0f}"


def _day(entries: Iterable[Entry]) -> str:
    """The local day of the first row."""
    first = min(entries, key=lambda row: row.at, default=None)
    return "empty" if first is None else iso_clock(first.at, first.offset_minutes)[:10]


def _plain(text: str) -> str:
    """Text as a name of a file that every system takes."""
    return re.sub(r"[^a-z0-9]+", "_", text.casefold()).strip("_")[:60] or "unnamed"


def _free(name: str, taken: set[str], ending: str = "") -> str:
    number, free = 2, f"{name}{ending}"
    while free in taken:
        free, number = f"{name}_{number}{ending}", number + 1
    return free
