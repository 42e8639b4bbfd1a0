"""A data package of a whole logbook read back: every stove, session and photo, and what is known beside them."""

import csv
import zipfile
import zlib
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path, PurePosixPath
from typing import TypeVar

from cookstove_gui.errors import InputProblem, SurroundingsProblem
from cookstove_gui.logbook.log_file import LARGEST_FILE, read_log_text
from cookstove_gui.logbook.package_tables import OWN_FOLDER, check_of, supper_of, table_rows, weather_of
from cookstove_gui.logbook.stove_file import FILE_NAME, stove_from_text
from cookstove_gui.resource_files import OWN_FILES
from cookstove_gui.stove.checks import Check
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import Stove
from cookstove_gui.stove.weather import WeatherReading
from cookstove_gui.units import parse_iso_clock

Kept = TypeVar("Kept")
_MOST_FILES = 200_000
_LARGEST = 4_000_000_000  # bytes, unpacked
_LARGEST_PHOTO = 100_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class PackedSession:
    """One session of a package."""

    stove: str
    title: str
    tags: tuple[str, ...]
    binned_at: datetime | None
    entries: tuple[Entry, ...]
    photos: tuple[tuple[str, str], ...]  # places inside the package, and names


@dataclass(frozen=True, slots=True, kw_only=True)
class PackedStove:
    """One stove of a package."""

    stove: Stove
    checks: tuple[Check, ...]
    weather: tuple[WeatherReading, ...]
    suppers: tuple[tuple[datetime, str], ...]  # when it was to be on the table, content


@dataclass(frozen=True, slots=True, kw_only=True)
class Packed:
    """A whole package; `problems` are sentences about what could not be read."""

    path: Path
    stoves: tuple[PackedStove, ...]
    sessions: tuple[PackedSession, ...]
    dishes: Mapping[str, str]
    settings: Mapping[str, str]
    tables: Mapping[str, str]  # the cook's own, TOML by the name of the file
    problems: tuple[str, ...]

    def photo(self, place: str) -> bytes:
        """The bytes of a photo."""
        with _opened(self.path) as archive:
            return _unpacked(archive, place, self.path)


def read_package(path: Path) -> Packed:
    """The package; raises InputProblem for a file that is none."""
    with _opened(path) as archive:
        return _Reader(path, archive).packed()


@contextmanager
def _opened(path: Path) -> Iterator[zipfile.ZipFile]:
    """A .zip file that is open; what is wrong with it is told in one sentence."""
    try:
        archive = zipfile.ZipFile(path)
    except (zipfile.BadZipFile, NotImplementedError, EOFError, ValueError) as error:
        raise _damaged(path, error) from error
    except OSError as error:
        raise SurroundingsProblem(f"{path} can't be read ({error.strerror}).") from error
    with archive:
        yield archive


def _unpacked(archive: zipfile.ZipFile, place: str, path: Path) -> bytes:
    """The bytes of one file inside; zipfile tells of a locked one by RuntimeError, of one that is gone by KeyError."""
    try:
        return archive.read(place)
    except (zipfile.BadZipFile, zlib.error, EOFError, NotImplementedError, RuntimeError, KeyError) as error:
        raise _damaged(path, error) from error
    except OSError as error:
        raise SurroundingsProblem(f"{path} can't be read ({error.strerror}).") from error


def _damaged(path: Path, error: Exception) -> InputProblem:
    return InputProblem(f"{path.name} isn't a logbook written by this program, or is damaged ({error}).")


class _Reader:
    def __init__(self, path: Path, archive: zipfile.ZipFile) -> None:
        self._path, self._archive = path, archive
        self._problems: list[str] = []
        sizes = {one.filename: one.file_size for one in archive.infolist()}
        if len(sizes) > _MOST_FILES or sum(sizes.values()) > _LARGEST:
            raise InputProblem(f"{path.name} unpacks to more than any logbook holds; is it the right file?")
        if "sessions.csv" not in sizes:
            raise InputProblem(f"{path.name} holds no sessions.csv, so it isn't a logbook written by this program.")
        self._sizes = sizes

    def packed(self) -> Packed:
        photos: dict[str, list[tuple[str, str]]] = {}
        for row in self._table("photos.csv"):
            place = row.get("photo", "")
            if self._sizes.get(place, _LARGEST_PHOTO) < _LARGEST_PHOTO:
                name = row.get("name", "") or PurePosixPath(place).name
                photos.setdefault(row.get("log", ""), []).append((place, name))
            else:
                self._problems.append(f"The photo {place} is missing or too large; it was left out.")
        sessions = [one for row in self._table("sessions.csv") if (one := self._session(row, photos)) is not None]
        stoves = [self._stove(place) for place in sorted(self._sizes) if PurePosixPath(place).name == FILE_NAME]
        return Packed(
            path=self._path,
            stoves=tuple(one for one in stoves if one is not None),
            sessions=tuple(sessions),
            dishes={row.get("key", ""): row.get("content", "") for row in self._table("dishes.csv")},
            settings={row.get("key", ""): row.get("value", "") for row in self._table("settings.csv")},
            tables=dict(self._own_tables()),
            problems=tuple(self._problems),
        )

    def _own_tables(self) -> Iterator[tuple[str, str]]:
        for name in OWN_FILES:
            place = f"{OWN_FOLDER}/{name}"
            if place in self._sizes:
                try:
                    yield name, self._text(place)
                except InputProblem as problem:
                    self._problems.append(problem.sentence)

    def _text(self, place: str) -> str:
        if self._sizes[place] > LARGEST_FILE:
            raise InputProblem(f"{place} in {self._path.name} is larger than any log; is it the right file?")
        try:
            return _unpacked(self._archive, place, self._path).decode("utf-8")
        except UnicodeDecodeError:
            raise InputProblem(f"{place} in {self._path.name} is not UTF-8 text; choose another copy of it.") from None

    def _table(self, place: str) -> list[dict[str, str]]:
        try:
            return table_rows(self._text(place)) if place in self._sizes else []
        except csv.Error as error:
            raise InputProblem(f"{place} in {self._path.name} isn't a table ({error}); choose another copy.") from None

    def _read(self, place: str, of: Callable[[Mapping[str, str]], Kept]) -> Iterator[Kept]:
        for number, row in enumerate(self._table(place), start=2):
            try:
                yield of(row)
            except (ValueError, KeyError, InputProblem):
                self._problems.append(f"{place} line {number} can't be read; it was left out.")

    def _session(self, row: Mapping[str, str], photos: Mapping[str, list[tuple[str, str]]]) -> PackedSession | None:
        place = row.get("path", "")
        if place not in self._sizes:
            self._problems.append(f"The log {place} is missing; its session was left out.")
            return None
        reading = read_log_text(self._text(place), place)
        self._problems += [problem.sentence for problem in reading.unreadable]
        since = row.get("in_bin_since", "")
        return PackedSession(
            stove=row.get("stove", ""),
            title=row.get("title", ""),
            tags=tuple(tag for tag in row.get("tags", "").split("; ") if tag),
            binned_at=parse_iso_clock(since)[0] if since else None,
            entries=tuple(sorted((*reading.entries, *reading.repeats), key=lambda one: one.number)),
            photos=tuple(photos.get(place, ())),
        )

    def _stove(self, place: str) -> PackedStove | None:
        folder = place.removesuffix(FILE_NAME)
        try:
            stove = stove_from_text(self._text(place), place)
        except InputProblem as problem:
            self._problems.append(problem.sentence)
            return None
        return PackedStove(
            stove=stove,
            checks=tuple(self._read(f"{folder}thermometers/checks.csv", check_of)),
            weather=tuple(self._read(f"{folder}weather/weather.csv", weather_of)),
            suppers=tuple(self._read(f"{folder}suppers/suppers.csv", supper_of)),
        )
