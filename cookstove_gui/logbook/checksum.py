"""A checksum for every row, since a page of SQLite has none: a flipped bit would pass as another reading."""

import sqlite3
import zlib
from collections.abc import Sequence
from typing import Any

# The columns that each table's checksum is made of, and those that a row is found by.
SUMMED = {
    "stove": ("name", "description"),
    "session": ("number", "stove", "title"),
    "entry": ("session", "number", "at", "offset_minutes", "kind", "spot", "value", "unit", "note"),
    "setting": ("key", "value"),
    "character": ("stove", "made_by", "of_sessions", "content"),
    "thermometer_check": ("number", "day", "instrument", "point", "shown", "pressure", "takes_back"),
    "weather": ("number", "at", "offset_minutes", "kind", "value"),
    "tag": ("session", "name"),
    "bin": ("session", "at"),
    "dish": ("key", "content"),
    "supper": ("number", "table_at", "content"),
}
KEYS = {
    "stove": ("name",),
    "session": ("number",),
    "entry": ("session", "number"),
    "setting": ("key",),
    "character": ("stove",),
    "thermometer_check": ("stove", "number"),
    "weather": ("stove", "number"),
    "tag": ("session", "name"),
    "bin": ("session",),
    "dish": ("key",),
    "supper": ("number",),
}
_SUMMED_FROM = 6  # version of a logbook from which its rows have checksums
_SINCE = {"tag": 7, "bin": 7, "dish": 8, "supper": 8}  # version from which a later table is there


def summed_tables(version: int) -> tuple[str, ...]:
    """The tables of a logbook of that version whose rows have checksums."""
    return tuple(table for table in SUMMED if version >= _SINCE.get(table, _SUMMED_FROM))


def row_checksum(*values: Any) -> int:
    """CRC-32 of a row's values as SQLite gives them (integers, floats, texts, None)."""
    return zlib.crc32(ascii(values).encode("ascii"))


def is_sound(row: Sequence[Any]) -> bool:
    """Whether the last value of a row is the checksum of the others."""
    return bool(row_checksum(*row[:-1]) == row[-1])


def add_missing(connection: sqlite3.Connection) -> None:
    """Give its checksum to every row that has none; called at the end of a transaction.

    Not a function of SQL: SQLite would call it back into a thread that is ending, which ends the program.
    """
    for table in summed_tables(connection.execute("PRAGMA user_version").fetchone()[0]):
        columns, keys = SUMMED[table], KEYS[table]
        rows = connection.execute(
            f"SELECT {', '.join((*keys, *columns))} FROM {table} WHERE checksum IS NULL"
        ).fetchall()
        found_by = " AND ".join(f"{key} = ?" for key in keys)
        connection.executemany(
            f"UPDATE {table} SET checksum = ? WHERE {found_by}",
            [(row_checksum(*row[len(keys) :]), *row[: len(keys)]) for row in rows],
        )
