"""How sessions are kept in order: tags, the bin, sessions joined and split. Nothing is gone until the bin is emptied.

A session that was joined or split lies in the bin as it was, and comes back from there.
"""

import sqlite3
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.checksum import is_sound
from cookstove_gui.logbook.database import Database
from cookstove_gui.logbook.joining import joined_rows, split_rows
from cookstove_gui.logbook.rows import SessionSummary, instant, microseconds, sound_entries, summary_of
from cookstove_gui.logbook.session_rows import ENTRY_FIELDS, SUMMARY_FIELDS, add_session, expect_session
from cookstove_gui.stove.entries import Session

NOT_IN_BIN = "number NOT IN (SELECT session FROM bin)"


@dataclass(frozen=True, slots=True, kw_only=True)
class Binned:
    """A session in the bin, and since when."""

    summary: SessionSummary
    at: datetime


class Keeping:
    """Tags and bin of all sessions in a logbook."""

    def __init__(self, database: Database) -> None:
        self._database = database

    # Tags

    def tags(self) -> dict[int, tuple[str, ...]]:
        """The tags of every session that has any, by its number, in order of their letters."""
        found: dict[int, list[str]] = {}
        for row in self._database.rows("SELECT session, name, checksum FROM tag ORDER BY session, name"):
            if is_sound(row):
                found.setdefault(row[0], []).append(row[1])
        return {number: tuple(names) for number, names in found.items()}

    def set_tags(self, number: int, names: Iterable[str]) -> None:
        """Give a session these tags and no others."""
        with self._database.transaction() as connection:
            expect_session(connection, number)
            connection.execute("DELETE FROM tag WHERE session = ?", (number,))
            add_tags(connection, number, names)

    # The bin

    def binned(self, stove: str) -> tuple[Binned, ...]:
        """A stove's sessions in the bin, the one put there last first."""
        rows = self._database.rows(
            f"SELECT {SUMMARY_FIELDS}, bin.at FROM session JOIN bin ON bin.session = number "
            "WHERE stove = ? ORDER BY bin.at DESC, number DESC",
            (stove,),
        )
        return tuple(Binned(summary=summary_of(row[:-1]), at=instant(row[-1])) for row in rows)

    def put_in_bin(self, numbers: Iterable[int], at: datetime) -> None:
        """Put sessions into the bin, all or none."""
        with self._database.transaction() as connection:
            put_into_bin(connection, numbers, at)

    def take_out(self, numbers: Iterable[int]) -> None:
        """Bring sessions back from the bin, all or none."""
        with self._database.transaction() as connection:
            for number in numbers:
                expect_session(connection, number)
                connection.execute("DELETE FROM bin WHERE session = ?", (number,))

    def empty_bin(self, numbers: Iterable[int]) -> None:
        """Delete sessions for good, all or none; raises InputProblem for one that isn't in the bin."""
        with self._database.transaction() as connection:
            for number in numbers:
                if connection.execute("SELECT 1 FROM bin WHERE session = ?", (number,)).fetchone() is None:
                    raise InputProblem(f"Session {number} isn't in the bin any more; look at the list again.")
                for table in ("entry", "tag", "bin"):
                    connection.execute(f"DELETE FROM {table} WHERE session = ?", (number,))
                connection.execute("DELETE FROM session WHERE number = ?", (number,))

    # Joining and splitting

    def join(self, numbers: Sequence[int], at: datetime) -> Session:
        """One session with the rows and tags of several; those go into the bin."""
        with self._database.transaction() as connection:
            sessions = sorted((_session(connection, one) for one in dict.fromkeys(numbers)), key=_began)
            if len(sessions) < 2:
                raise InputProblem("Choose two sessions or more to join.")
            if len({session.stove for session in sessions}) > 1:
                raise InputProblem("Sessions of different stoves can't be joined; choose sessions of one stove.")
            first = sessions[0]
            rows = joined_rows(sessions)
            made = add_session(connection, Session(number=0, stove=first.stove, title=first.title, entries=rows))
            add_tags(connection, made.number, (tag for one in sessions for tag in _tags_of(connection, one.number)))
            put_into_bin(connection, (session.number for session in sessions), at)
        return made

    def split(self, number: int, before: datetime, at: datetime) -> tuple[Session, Session]:
        """Two sessions of one: the rows before an instant, and those from it on; the one goes into the bin."""
        with self._database.transaction() as connection:
            whole = _session(connection, number)
            tags = _tags_of(connection, number)
            made = []
            for rows, title in zip(split_rows(whole.entries, before), (whole.title, f"{whole.title} 2"), strict=True):
                part = add_session(connection, Session(number=0, stove=whole.stove, title=title, entries=rows))
                add_tags(connection, part.number, tags)
                made.append(part)
            put_into_bin(connection, (number,), at)
        return made[0], made[1]


def take_out_if_binned(connection: sqlite3.Connection, number: int) -> None:
    """Something was added to a session that another window put into the bin: it is wanted."""
    connection.execute("DELETE FROM bin WHERE session = ?", (number,))


def put_into_bin(connection: sqlite3.Connection, numbers: Iterable[int], at: datetime) -> None:
    """Put sessions there, inside a transaction."""
    for number in numbers:
        expect_session(connection, number)
        connection.execute("INSERT OR IGNORE INTO bin (session, at) VALUES (?, ?)", (number, microseconds(at)))


def _session(connection: sqlite3.Connection, number: int) -> Session:
    """A session that isn't in the bin, with its sound rows."""
    row = connection.execute(
        f"SELECT stove, title FROM session WHERE number = ? AND {NOT_IN_BIN}", (number,)
    ).fetchone()
    if row is None:
        raise InputProblem(f"The logbook holds no session {number} any more; choose one from its list.")
    rows = connection.execute(
        f"SELECT {ENTRY_FIELDS}, checksum FROM entry WHERE session = ? ORDER BY number", (number,)
    ).fetchall()
    return Session(number=number, stove=row[0], title=row[1], entries=sound_entries(rows))


def _began(session: Session) -> tuple[datetime, int]:
    if not session.entries:
        raise InputProblem(f"“{session.title}” has no entries yet; there is nothing to join.")
    return min(row.at for row in session.entries), session.number


def _tags_of(connection: sqlite3.Connection, number: int) -> tuple[str, ...]:
    return tuple(name for (name,) in connection.execute("SELECT name FROM tag WHERE session = ?", (number,)))


def add_tags(connection: sqlite3.Connection, number: int, names: Iterable[str]) -> None:
    """Give a session more tags, inside a transaction."""
    connection.executemany(
        "INSERT OR IGNORE INTO tag (session, name) VALUES (?, ?)",
        [(number, tidied) for name in names if (tidied := " ".join(name.split()).casefold())],
    )
