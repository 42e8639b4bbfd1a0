"""A cook's own dishes and the suppers that were planned, as texts that other rooms write and read."""

from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.logbook.checksum import is_sound
from cookstove_gui.logbook.database import Database
from cookstove_gui.logbook.rows import instant, microseconds


@dataclass(frozen=True, slots=True, kw_only=True)
class SupperRow:
    """One supper as it is kept."""

    number: int
    table_at: datetime
    content: str


class Suppers:
    """The dishes and suppers of a logbook; those that are damaged are left out."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def dishes(self) -> dict[str, str]:
        """The cook's own dishes by their keys."""
        rows = self._database.rows("SELECT key, content, checksum FROM dish ORDER BY key")
        return {str(row[0]): str(row[1]) for row in rows if is_sound(row)}

    def keep_dish(self, key: str, content: str) -> None:
        """Keep a dish in place of the one of the same key."""
        with self._database.transaction() as connection:
            connection.execute(
                "INSERT INTO dish (key, content) VALUES (?, ?) "
                "ON CONFLICT (key) DO UPDATE SET content = excluded.content",
                (key, content),
            )

    def leave_dish(self, key: str) -> None:
        """Keep a dish no longer."""
        with self._database.transaction() as connection:
            connection.execute("DELETE FROM dish WHERE key = ?", (key,))

    def of(self, stove: str) -> tuple[SupperRow, ...]:
        """The suppers planned for a stove, the latest kept first."""
        rows = self._database.rows(
            "SELECT number, table_at, content, checksum FROM supper WHERE stove = ? ORDER BY number DESC", (stove,)
        )
        return tuple(
            SupperRow(number=int(row[0]), table_at=instant(row[1]), content=str(row[2]))
            for row in rows
            if is_sound(row)
        )

    def add(self, stove: str, table_at: datetime, content: str) -> int:
        """Keep a new supper; its number."""
        with self._database.transaction() as connection:
            cursor = connection.execute(
                "INSERT INTO supper (stove, table_at, content) VALUES (?, ?, ?)",
                (stove, microseconds(table_at), content),
            )
            return int(cursor.lastrowid or 0)

    def change(self, number: int, table_at: datetime, content: str) -> None:
        """Keep a supper as it is now."""
        with self._database.transaction() as connection:
            connection.execute(
                "UPDATE supper SET table_at = ?, content = ? WHERE number = ?",
                (microseconds(table_at), content, number),
            )

    def remove(self, number: int) -> None:
        """Keep a supper no longer."""
        with self._database.transaction() as connection:
            connection.execute("DELETE FROM supper WHERE number = ?", (number,))
