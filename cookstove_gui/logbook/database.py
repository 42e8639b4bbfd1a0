"""The connection to the logbook's SQLite file, the only module that talks to sqlite3.

Every sqlite3 error, of reads too, leaves here as one of our own problems with a sentence. Each thread has a connection
of its own to a file (SQLite lets others read while one writes); a logbook in memory has one connection and a lock.
"""

import sqlite3
import threading
import weakref
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager, nullcontext
from pathlib import Path
from typing import Any, TypeAlias

from cookstove_gui.errors import InputProblem, Problem, SurroundingsProblem

IN_MEMORY = ":memory:"
_WAIT_FOR_LOCK = 5.0  # s
_PRIMARY_CODE = 0xFF  # the low byte of SQLite's extended result codes

Row: TypeAlias = tuple[Any, ...]
Values: TypeAlias = Sequence[Any] | Mapping[str, Any]


class Database:
    """A logbook file, opened; `path` is None for one in memory."""

    def __init__(self, path: Path | None) -> None:
        self.path = path
        self._lock = threading.RLock()
        self._of_thread = _OfThread()
        self._held: weakref.WeakSet[_Held] = weakref.WeakSet()
        self._closed = False
        self._shared: _Held | None = None
        try:
            if path is None:
                self._shared = self._connect()
            self.rows("SELECT count(*) FROM sqlite_master")  # a file that is not a database is refused here, not later
        except BaseException:
            self.close()
            raise

    def rows(self, sql: str, values: Values = ()) -> list[Row]:
        """All rows of a query."""
        with self._connection() as connection:
            return connection.execute(sql, values).fetchall()

    def row(self, sql: str, values: Values = ()) -> Row | None:
        """The first row of a query, or none."""
        rows = self.rows(sql, values)
        return rows[0] if rows else None

    @contextmanager
    def transaction(self) -> Iterator[sqlite3.Connection]:
        """Everything done inside is on the disk when the block ends, or nothing of it."""
        with self._connection() as connection:
            connection.execute("BEGIN IMMEDIATE")
            try:
                yield connection
                connection.execute("COMMIT")
            except BaseException:
                if connection.in_transaction:
                    connection.execute("ROLLBACK")
                raise

    def run_script(self, statements: str) -> None:
        """Run several statements as one transaction."""
        with self._connection() as connection:
            try:
                connection.executescript(f"BEGIN IMMEDIATE;\n{statements}\nCOMMIT;")
            except BaseException:
                if connection.in_transaction:
                    connection.execute("ROLLBACK")
                raise

    def copy_to(self, side: Path) -> None:
        """SQLite's own online copy of everything that is committed, into a file that is not there yet."""
        with self._connection() as connection, told(side):
            target = sqlite3.connect(side, isolation_level=None)
            try:
                connection.backup(target)
                # The copy carries the WAL mark; on its own it should be one plain file.
                target.execute("PRAGMA journal_mode = DELETE")
            finally:
                target.close()

    def close(self) -> None:
        """Close the connections of all threads."""
        with self._lock, told(self.path):
            self._closed = True
            for held in list(self._held):
                held.connection.close()

    @contextmanager
    def _connection(self) -> Iterator[sqlite3.Connection]:
        if self._closed:
            raise SurroundingsProblem("The logbook has been closed; open it again.")
        with told(self.path), self._lock if self._shared else nullcontext():
            yield (self._shared or self._of_this_thread()).connection

    def _of_this_thread(self) -> "_Held":
        if self._of_thread.held is None:
            self._of_thread.held = self._connect()
        return self._of_thread.held

    def _connect(self) -> "_Held":
        # One thread uses a connection, but the one that closes the logbook may be another.
        connection = sqlite3.connect(
            self.path or IN_MEMORY, timeout=_WAIT_FOR_LOCK, isolation_level=None, check_same_thread=False
        )
        held = _Held(connection)
        self._held.add(held)
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("PRAGMA recursive_triggers = ON")
        if self.path is not None:
            connection.execute("PRAGMA journal_mode = WAL")
            # An entry must be on the disk before the window says so.
            connection.execute("PRAGMA synchronous = FULL")
        return held


class _OfThread(threading.local):
    """The connection of the thread that asks."""

    held: "_Held | None" = None


class _Held:
    """Keeps a connection open for as long as its thread lives."""

    def __init__(self, connection: sqlite3.Connection) -> None:
        self.connection = connection

    def __del__(self) -> None:
        self.connection.close()


@contextmanager
def told(path: Path | None) -> Iterator[None]:
    """Turn an error of SQLite into a problem with a sentence."""
    try:
        yield
    except sqlite3.Error as error:
        raise _problem(error, f"The logbook {path}" if path else "The logbook in memory") from error


def _problem(error: sqlite3.Error, what: str) -> Problem:
    try:
        primary = error.sqlite_errorcode & _PRIMARY_CODE
    except AttributeError:  # only what SQLite itself reports has a code
        primary = sqlite3.SQLITE_ERROR
    match primary:
        case sqlite3.SQLITE_CORRUPT | sqlite3.SQLITE_NOTADB:
            return SurroundingsProblem(
                f"{what} is damaged or not a logbook at all; open a backup of it or another logbook."
            )
        case sqlite3.SQLITE_BUSY | sqlite3.SQLITE_LOCKED:
            return SurroundingsProblem(f"{what} is in use by another program; close that one and try again.")
        case sqlite3.SQLITE_READONLY | sqlite3.SQLITE_PERM | sqlite3.SQLITE_AUTH:
            return SurroundingsProblem(f"{what} is write-protected; change its permissions, or open another logbook.")
        case sqlite3.SQLITE_CANTOPEN:
            return SurroundingsProblem(f"{what} cannot be opened; check that its folder exists and can be written to.")
        case sqlite3.SQLITE_FULL:
            return SurroundingsProblem(f"{what} cannot grow because the disk is full; make room and enter it again.")
        case sqlite3.SQLITE_IOERR:
            return SurroundingsProblem(
                f"{what} cannot be read or written because the disk is failing; try a backup on another disk."
            )
        case sqlite3.SQLITE_CONSTRAINT:
            return InputProblem(f"{what} refused this because it breaks one of its rules ({error}).")
        case _:
            return SurroundingsProblem(f"{what} cannot be used ({error}).")
