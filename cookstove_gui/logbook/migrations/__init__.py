"""Numbered steps that bring an older logbook up to date: one SQL file each, all in one transaction."""

import sqlite3
from collections.abc import Callable
from functools import cache
from pathlib import Path

from cookstove_gui.errors import SurroundingsProblem
from cookstove_gui.logbook.database import Database
from cookstove_gui.logbook.file_header import APPLICATION_ID, another_programs


def steps() -> tuple[Path, ...]:
    """The SQL files in the order of their numbers; step n makes version n."""
    return tuple(sorted(Path(__file__).parent.glob("*.sql")))


def version(database: Database) -> int:
    """Version of a logbook; 0 for an empty file."""
    row = database.row("PRAGMA user_version")
    return int(row[0]) if row else 0


def migrate(database: Database, before: Callable[[int], object], up_to: int | None = None) -> None:
    """Bring a logbook up to date; `before` is told the old version before anything that exists is touched.

    Raises SurroundingsProblem for the logbook of a newer program and for the database of another one.
    """
    newest = len(steps()) if up_to is None else up_to
    found = version(database)
    where = database.path or "in memory"
    if found > newest:
        raise SurroundingsProblem(
            f"The logbook {where} was written by a newer version of this program (its version {found}, ours {newest}); "
            "update the program, or open another logbook or a backup."
        )
    mark = database.row("PRAGMA application_id")
    tables = database.row("SELECT count(*) FROM sqlite_master")
    if (found and mark != (APPLICATION_ID,)) or (not found and tables != (0,)):
        raise another_programs(where)
    if 0 < found < newest:
        before(found)
    if found == newest:
        return
    # All steps at once, so that nobody sees a logbook between two versions.
    with database.transaction() as connection:
        (now_at,) = connection.execute("PRAGMA user_version").fetchone()  # another window may have been quicker
        for step in steps()[now_at:newest]:
            for statement in _statements(step):
                connection.execute(statement)
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        connection.execute(f"PRAGMA user_version = {max(now_at, newest)}")


@cache
def _statements(step: Path) -> tuple[str, ...]:
    """The statements of an SQL file; one ends where SQLite finds it complete, for triggers hold semicolons too."""
    found, statement = [], ""
    for line in step.read_text("utf-8").splitlines(keepends=True):
        statement += line
        if sqlite3.complete_statement(statement):
            found.append(statement)
            statement = ""
    return tuple(found)
