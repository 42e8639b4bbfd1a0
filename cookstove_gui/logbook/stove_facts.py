"""What was measured about a stove beside its sessions: checks of its thermometers, and the weather; only ever added.

The description of a stove goes along where a check changes it, in the same transaction.
"""

import sqlite3
from datetime import date

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.database import Database, Row
from cookstove_gui.logbook.rows import instant, microseconds
from cookstove_gui.logbook.stove_file import stove_from_text, stove_text
from cookstove_gui.stove.checks import Check, CheckPoint
from cookstove_gui.stove.stove import Stove, stove_with_default_spots
from cookstove_gui.stove.weather import WeatherKind, WeatherReading


class StoveFacts:
    """The checks and the weather readings of every stove in a logbook."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def checks(self, stove: str) -> dict[int, Check]:
        """The checks of a stove's thermometers that were not taken back, by number, in the order they were entered."""
        rows = self._database.rows(
            "SELECT number, instrument, point, shown, day, pressure FROM thermometer_check AS own "
            "WHERE stove = ? AND takes_back IS NULL AND NOT EXISTS "
            "(SELECT 1 FROM thermometer_check WHERE stove = own.stove AND takes_back = own.number) ORDER BY number",
            (stove,),
        )
        return {int(row[0]): _check_of(row[1:]) for row in rows}

    def add_check(self, stove: Stove, check: Check) -> None:
        """Keep a check, and the stove as the check shows it."""
        with self._database.transaction() as connection:
            write_stove(connection, stove)
            write_check(connection, stove.name, check)

    def take_back_check(self, stove: Stove, number: int, on: date) -> None:
        """Take a check back by a row of its own, and keep the stove as it is without it."""
        with self._database.transaction() as connection:
            write_stove(connection, stove)
            connection.execute(
                "INSERT INTO thermometer_check (stove, number, day, takes_back) VALUES (?, ?, ?, ?)",
                (stove.name, _next_number(connection, "thermometer_check", stove.name), on.isoformat(), number),
            )

    def readings_by_spot(self, stove: str) -> dict[str, int]:
        """How many readings the log holds of each spot, those taken back among them."""
        return dict(
            self._database.rows(
                "SELECT spot, count(*) FROM entry JOIN session ON session.number = entry.session "
                "WHERE session.stove = ? AND kind = 'reading' GROUP BY spot",
                (stove,),
            )
        )

    def latest_weather(self, stove: str, *kinds: WeatherKind) -> WeatherReading | None:
        """The latest reading among these kinds; none before any, or where the latest says that none holds."""
        marks = ", ".join("?" * len(kinds))
        row = self._database.row(
            f"SELECT kind, value, at, offset_minutes FROM weather WHERE stove = ? AND kind IN ({marks}) "
            "ORDER BY number DESC LIMIT 1",
            (stove, *map(str, kinds)),
        )
        if row is None or row[1] is None:
            return None
        return WeatherReading(kind=WeatherKind(row[0]), value=row[1], at=instant(row[2]), offset_minutes=row[3])

    def all_weather(self, stove: str) -> tuple[WeatherReading, ...]:
        """Every reading in the order they were typed, those among them that say that none holds."""
        rows = self._database.rows(
            "SELECT kind, value, at, offset_minutes FROM weather WHERE stove = ? ORDER BY number", (stove,)
        )
        return tuple(
            WeatherReading(kind=WeatherKind(kind), value=value, at=instant(at), offset_minutes=offset)
            for kind, value, at, offset in rows
        )

    def add_weather(self, stove: Stove, reading: WeatherReading) -> None:
        """Keep a reading, and the stove as it is described with it."""
        with self._database.transaction() as connection:
            write_stove(connection, stove)
            write_weather(connection, stove.name, reading)


def kept_stove(name: str, text: str) -> Stove:
    """The stove described; one with the usual spots where its description cannot be read, so that its log opens."""
    try:
        return stove_from_text(text, f"stove “{name}” in the logbook")
    except InputProblem:
        return stove_with_default_spots(name)


def write_stove(connection: sqlite3.Connection, stove: Stove) -> None:
    """Keep a stove's description, new or changed."""
    if not stove.name.strip():
        raise InputProblem("A stove needs a name; type one, such as Kitchen stove.")
    connection.execute(
        "INSERT INTO stove (name, description) VALUES (?, ?) "
        "ON CONFLICT (name) DO UPDATE SET description = excluded.description",
        (stove.name, stove_text(stove)),
    )


def write_check(connection: sqlite3.Connection, stove: str, check: Check) -> None:
    """Keep one check."""
    connection.execute(
        "INSERT INTO thermometer_check (stove, number, day, instrument, point, shown, pressure) "
        "VALUES (?, ?, ?, ?, ?, ?, ?)",
        (
            stove,
            _next_number(connection, "thermometer_check", stove),
            check.on.isoformat(),
            check.instrument,
            str(check.point),
            check.shown,
            check.pressure,
        ),
    )


def write_weather(connection: sqlite3.Connection, stove: str, reading: WeatherReading) -> None:
    """Keep one reading of the weather."""
    connection.execute(
        "INSERT INTO weather (stove, number, at, offset_minutes, kind, value) VALUES (?, ?, ?, ?, ?, ?)",
        (
            stove,
            _next_number(connection, "weather", stove),
            microseconds(reading.at),
            reading.offset_minutes,
            str(reading.kind),
            reading.value,
        ),
    )


def move_facts(connection: sqlite3.Connection, old: str, new: str) -> None:
    """Checks and weather go with a stove that gets another name."""
    for table in ("thermometer_check", "weather"):
        connection.execute(f"UPDATE {table} SET stove = ? WHERE stove = ?", (new, old))


def _check_of(row: Row) -> Check:
    instrument, point, shown, day, pressure = row
    return Check(
        instrument=instrument, point=CheckPoint(point), shown=shown, on=date.fromisoformat(day), pressure=pressure
    )


def _next_number(connection: sqlite3.Connection, table: str, stove: str) -> int:
    row = connection.execute(f"SELECT coalesce(max(number), 0) + 1 FROM {table} WHERE stove = ?", (stove,)).fetchone()
    return int(row[0])
