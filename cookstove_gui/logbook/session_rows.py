"""Sessions and their entries as rows written inside a transaction, shared by all that adds sessions."""

import sqlite3
from dataclasses import replace

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.rows import renumbered, row_of
from cookstove_gui.stove.entries import Session

ENTRY_FIELDS = "session, number, at, offset_minutes, kind, spot, value, unit, note"
INSERT_ENTRY = f"INSERT INTO entry ({ENTRY_FIELDS}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)"
SUMMARY_FIELDS = "number, stove, title, first_at, last_at, offset_minutes, entry_count"


def add_session(connection: sqlite3.Connection, session: Session) -> Session:
    """Add a session with its rows; the logbook gives the numbers."""
    expect_stove(connection, session.stove)
    cursor = connection.execute("INSERT INTO session (stove, title) VALUES (?, ?)", (session.stove, session.title))
    added = replace(session, number=int(cursor.lastrowid or 0), entries=renumbered(session.entries))
    connection.executemany(INSERT_ENTRY, [row_of(added.number, entry) for entry in added.entries])
    return added


def expect_stove(connection: sqlite3.Connection, name: str) -> None:
    """Raises InputProblem where there is no such stove."""
    if connection.execute("SELECT 1 FROM stove WHERE name = ?", (name,)).fetchone() is None:
        raise InputProblem(f"The logbook knows no stove “{name}”; describe it on the page My stove first.")


def expect_session(connection: sqlite3.Connection, number: int) -> None:
    """Raises InputProblem where there is no such session."""
    if connection.execute("SELECT 1 FROM session WHERE number = ?", (number,)).fetchone() is None:
        raise InputProblem(f"The logbook holds no session {number}; choose one from its list.")


def next_number(connection: sqlite3.Connection, session_number: int) -> int:
    """Number of the row that comes next in a session."""
    expect_session(connection, session_number)
    row = connection.execute(
        "SELECT coalesce(max(number), 0) + 1 FROM entry WHERE session = ?", (session_number,)
    ).fetchone()
    return int(row[0])
