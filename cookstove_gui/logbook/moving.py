"""A whole logbook brought into this one: what is here already stays as it is and comes in no second time."""

import sqlite3
from collections.abc import Iterable
from typing import TYPE_CHECKING

from cookstove_gui.logbook.checksum import is_sound
from cookstove_gui.logbook.database import Database
from cookstove_gui.logbook.keeping import add_tags, put_into_bin
from cookstove_gui.logbook.rows import microseconds
from cookstove_gui.logbook.session_rows import add_session
from cookstove_gui.logbook.stove_facts import write_check, write_stove, write_weather
from cookstove_gui.stove.entries import Session

if TYPE_CHECKING:
    from collections.abc import Sequence

    from cookstove_gui.logbook.package_reading import Packed, PackedSession, PackedStove

# What belongs to this computer or to the session on the table, and never comes in with another logbook
OWN_SETTINGS = frozenset({"stove", "session on the table", "page", "window", "window_state", "backed up at"})


class Moving:
    """What a whole logbook in one file is written from and brought in by, beside what its parts tell."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def settings(self) -> dict[str, str]:
        """Everything the cook has chosen, but for what belongs to this computer."""
        rows = self._database.rows("SELECT key, value, checksum FROM setting ORDER BY key")
        return dict(_settings((str(row[0]), str(row[1])) for row in rows if is_sound(row)))

    def take_in(self, packed: "Packed", sessions: "Sequence[PackedSession]") -> tuple[int, ...]:
        """Keep these sessions of a package and all that is new beside them, all or nothing; the sessions' numbers."""
        with self._database.transaction() as connection:
            here = {str(row[0]) for row in connection.execute("SELECT name FROM stove")}
            for one in packed.stoves:
                if one.stove.name not in here:
                    write_stove(connection, one.stove)
                _add_facts(connection, one)
            numbers = tuple(_add(connection, one) for one in sessions)
            for key, content in packed.dishes.items():
                connection.execute("INSERT OR IGNORE INTO dish (key, content) VALUES (?, ?)", (key, content))
            for key, value in _settings(packed.settings.items()):
                connection.execute("INSERT OR IGNORE INTO setting (key, value) VALUES (?, ?)", (key, value))
        return numbers


def _settings(pairs: Iterable[tuple[str, str]]) -> Iterable[tuple[str, str]]:
    return ((key, value) for key, value in pairs if key not in OWN_SETTINGS)


def _add(connection: sqlite3.Connection, one: "PackedSession") -> int:
    added = add_session(connection, Session(number=0, stove=one.stove, title=one.title, entries=one.entries))
    add_tags(connection, added.number, one.tags)
    if one.binned_at is not None:
        put_into_bin(connection, (added.number,), one.binned_at)
    return added.number


def _add_facts(connection: sqlite3.Connection, one: "PackedStove") -> None:
    """Checks, weather and suppers that are not here yet."""
    name = one.stove.name
    checks = set(
        connection.execute("SELECT instrument, point, shown, day FROM thermometer_check WHERE stove = ?", (name,))
    )
    for check in one.checks:
        if (check.instrument, str(check.point), check.shown, check.on.isoformat()) not in checks:
            write_check(connection, name, check)
    weather = set(connection.execute("SELECT at, kind, value FROM weather WHERE stove = ?", (name,)))
    for reading in one.weather:
        if (microseconds(reading.at), str(reading.kind), reading.value) not in weather:
            write_weather(connection, name, reading)
    suppers = set(connection.execute("SELECT table_at, content FROM supper WHERE stove = ?", (name,)))
    for table_at, content in one.suppers:
        if (microseconds(table_at), content) not in suppers:
            connection.execute(
                "INSERT INTO supper (stove, table_at, content) VALUES (?, ?, ?)",
                (name, microseconds(table_at), content),
            )
