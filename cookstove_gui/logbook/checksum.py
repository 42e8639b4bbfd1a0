"""A checksum for every row, since a page of SQLite has none: a flipped bit would pass as another reading."""

import zlib
from typing import Any

# The columns that each table's checksum is made of, in the order of migrations/0005_checksums.sql.
SUMMED = {
    "stove": ("name", "description"),
    "session": ("number", "stove", "title"),
    "entry": ("session", "number", "at", "offset_minutes", "kind", "spot", "value", "unit", "note"),
    "setting": ("key", "value"),
    "character": ("stove", "made_by", "of_sessions", "content"),
    "thermometer_check": ("number", "day", "instrument", "point", "shown", "pressure", "takes_back"),
    "weather": ("number", "at", "offset_minutes", "kind", "value"),
}


def row_checksum(*values: Any) -> int:
    """CRC-32 of a row's values as SQLite gives them (integers, floats, texts, None)."""
    return zlib.crc32(ascii(values).encode("ascii"))
