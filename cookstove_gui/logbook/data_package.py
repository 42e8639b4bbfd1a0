"""Everything as one file: a Frictionless data package, a folder of logs for each stove and what describes them.

Source of the form: Frictionless Data, Data Package and Table Schema (profiles `tabular-data-package`, `table-schema`).
The folders inside are folders of logs, so that each can be read back by itself; `package_reading.py` reads back all.
"""

import io
import json
import zipfile
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from cookstove_gui.logbook.log_file import log_text
from cookstove_gui.logbook.package_tables import (
    CHECKS,
    DISHES,
    LOG_FIELDS,
    OWN_FOLDER,
    PHOTOS,
    SESSIONS,
    SETTINGS,
    SUPPERS,
    WEATHER,
    Table,
    check_cells,
    day_of,
    free_name,
    plain_name,
    table_text,
    weather_cells,
)
from cookstove_gui.logbook.plain_cells import guarded
from cookstove_gui.logbook.stove_file import FILE_NAME, stove_text
from cookstove_gui.logbook.suppers import SupperRow
from cookstove_gui.logbook.whole_file import write_whole
from cookstove_gui.stove.checks import Check
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove
from cookstove_gui.stove.weather import WeatherReading
from cookstove_gui.units import iso_clock

_MADE_AT = (1980, 1, 1, 0, 0, 0)  # the same content is the same file
_DIALECT = {"delimiter": ",", "quoteChar": '"', "lineTerminator": "\r\n", "header": True}


class StoveRecord(NamedTuple):
    """All that is kept of one stove; tags, bin and photos by the number of a session."""

    stove: Stove
    sessions: tuple[Session, ...]
    checks: tuple[Check, ...] = ()  # of its thermometers
    tags: Mapping[int, tuple[str, ...]] = {}
    binned: Mapping[int, str] = {}  # since when, as ISO clock
    photos: Mapping[int, tuple[Path, ...]] = {}
    weather: tuple[WeatherReading, ...] = ()
    suppers: tuple[SupperRow, ...] = ()


class Aside(NamedTuple):
    """What belongs to no stove."""

    dishes: Mapping[str, str] = {}  # the cook's own, by key
    settings: Mapping[str, str] = {}
    tables: Mapping[str, str] = {}  # the cook's own tasks, bakes, foods and words: files of TOML by name


NOTHING = Aside()


def write_package(path: Path, name: str, title: str, records: Iterable[StoveRecord], aside: Aside = NOTHING) -> None:
    """Write a data package as one .zip file, whole or not at all."""
    made = _Package()
    for record in records:
        made.add_stove(record)
    made.add_table("sessions.csv", SESSIONS, made.sessions)
    made.add_table("photos.csv", PHOTOS, [(log, place, guarded(photo.name)) for place, log, photo in made.photos])
    made.add_table("dishes.csv", DISHES, [(key, guarded(text)) for key, text in aside.dishes.items()])
    made.add_table("settings.csv", SETTINGS, [(key, guarded(text)) for key, text in aside.settings.items()])
    made.files |= {f"{OWN_FOLDER}/{table}": text for table, text in aside.tables.items()}
    made.files["datapackage.json"] = package_text(
        name, title, "Logs of wood cookstoves, a folder a stove.", made.resources
    )
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        for place, text in made.files.items():
            archive.writestr(zipfile.ZipInfo(place, _MADE_AT), text.encode("utf-8"), zipfile.ZIP_DEFLATED)
        for place, _, photo in made.photos:
            archive.writestr(zipfile.ZipInfo(place, _MADE_AT), photo.read_bytes(), zipfile.ZIP_STORED)
    write_whole(path, stream.getvalue())


class _Package:
    """Files and their descriptors as they are gathered."""

    def __init__(self) -> None:
        self.files: dict[str, str] = {}
        self.resources: list[dict[str, Any]] = []
        self.sessions: list[tuple[str, ...]] = []
        self.photos: list[tuple[str, str, Path]] = []  # place inside, log it belongs to, file

    def add_stove(self, record: StoveRecord) -> None:
        """Its description, logs, and what is known beside them."""
        name = record.stove.name
        folder = free_name(plain_name(name), {OWN_FOLDER, *(path.partition("/")[0] for path in self.files)})
        self.files[f"{folder}/{FILE_NAME}"] = stove_text(record.stove)
        for session in record.sessions:
            self._add_session(folder, record, session)
        # Each in a folder of its own, for they are no logs.
        if record.checks:
            rows = map(check_cells, record.checks)
            self.add_table(f"{folder}/thermometers/checks.csv", CHECKS, rows, f"{name}: {CHECKS.title}")
        if record.weather:
            rows = map(weather_cells, record.weather)
            self.add_table(f"{folder}/weather/weather.csv", WEATHER, rows, f"{name}: {WEATHER.title}")
        if record.suppers:
            kept = [(iso_clock(one.table_at, 0), guarded(one.content)) for one in record.suppers]
            self.add_table(f"{folder}/suppers/suppers.csv", SUPPERS, kept, f"{name}: {SUPPERS.title}")

    def add_table(self, place: str, table: Table, rows: Iterable[tuple[str, ...]], title: str = "") -> None:
        """One table with its descriptor; none where it has no row, but for the list of sessions."""
        kept = list(rows)
        if kept or table is SESSIONS:
            self.files[place] = table_text(table.fields, kept)
            self.resources.append(tabular_resource(place, title or table.title, table.fields))

    def _add_session(self, folder: str, record: StoveRecord, session: Session) -> None:
        place = free_name(f"{folder}/{day_of(session.entries)}_{plain_name(session.title)}", set(self.files), ".csv")
        self.files[place] = log_text(session.entries)
        self.resources.append(tabular_resource(place, f"{record.stove.name}: {session.title}", LOG_FIELDS))
        tags = "; ".join(record.tags.get(session.number, ()))
        cells = map(guarded, (record.stove.name, session.title, tags))
        self.sessions.append((place, *cells, record.binned.get(session.number, "")))
        taken = {one for one, _, _ in self.photos}
        for photo in record.photos.get(session.number, ()):
            stem = f"{folder}/photos/{Path(place).stem}_{plain_name(photo.stem)}"
            inside = free_name(stem, taken, photo.suffix.lower())
            taken.add(inside)
            self.photos.append((inside, place, photo))


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
        "name": plain_name(path.removesuffix(".csv")).replace("_", "-"),
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
