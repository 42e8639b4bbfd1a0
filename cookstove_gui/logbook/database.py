"""The connection to the logbook's SQLite file, the only module that talks to sqlite3.

Every sqlite3 error, of reads too, leaves here as one of our own problems with a sentence. Each thread has a connection
of its own to a file (SQLite lets others read while one writes); a logbook in memory has one connection and a lock.
After each transaction the file is looked for at its path: SQLite goes on writing into a file that was deleted or
replaced, and everything written so would be gone when the program ends.
"""

import os
import sqlite3
import threading
import time
import weakref
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager, nullcontext
from pathlib import Path
from typing import Any, TypeAlias

from cookstove_gui.errors import InputProblem, Problem, SurroundingsProblem
from cookstove_gui.logbook.checksum import add_missing
from cookstove_gui.logbook.file_header import APPLICATION_ID, another_programs, check_is_ours

IN_MEMORY = ":memory:"
_WAIT_FOR_LOCK = 0.5  # s; the window waits as long
_WAIT_FOR_OPENING = 5.0  # s; two programs may open a new logbook at once
_PRIMARY_CODE = 0xFF  # the low byte of SQLite's extended result codes

Row: TypeAlias = tuple[Any, ...]
Values: TypeAlias = Sequence[Any] | Mapping[str, Any]


class Database:
    """A logbook file, opened; `path` is None for one in memory.

    With `read_only` nothing is written, not even side files, so that a copy on a read-only stick opens.
    `tell` takes the sentence about a file that went missing or was replaced while it was open.
    """

    def __init__(self, path: Path | None, *, read_only: bool = False) -> None:
        self.path = path
        self.tell: Callable[[str], object] | None = None
        self._read_only = read_only
        self._untold: list[str] = []
        self._generation = 0  # of the connections; a file that was moved to is another one
        self._lock = threading.RLock()
        self._of_thread = _OfThread()
        self._held: weakref.WeakSet[_Held] = weakref.WeakSet()
        self._closed = False
        self._shared: _Held | None = None
        if path is not None:
            if check_is_ours(path):
                _refuse_another_programs(path)
            elif not read_only:
                _create(path)
        try:
            if path is None:
                self._shared = self._connect()
            self._identity = _identity(path)
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
                add_missing(connection)
                connection.execute("COMMIT")
            except BaseException:
                if connection.in_transaction:
                    connection.execute("ROLLBACK")
                raise
        self.look_after_file()

    def data_version(self) -> int:
        """A number that changes when anybody else has written to the file."""
        row = self.row("PRAGMA data_version")
        return int(row[0]) if row else 0

    def fold_in(self) -> None:
        """Bring everything from the side file into the file itself, so that a copy of the file alone is whole."""
        if self.path is not None and not self._read_only:
            self.rows("PRAGMA wal_checkpoint(TRUNCATE)")

    def look_after_file(self) -> None:
        """Where the file is no longer at its path, write all of it to a new one and go on there, and say so."""
        path = self.path
        if path is None or self._closed or self._read_only or _identity(path) == self._identity:
            return
        is_free = not path.exists()
        target = path if is_free else _kept_name(path)
        try:
            target.parent.mkdir(parents=True, exist_ok=True)
            self.copy_to(target)
        except OSError as error:
            raise SurroundingsProblem(
                f"The logbook {path} was moved or removed while it was open, and {target} cannot be written "
                f"({error.strerror}). Put it back or make room; until then nothing more is saved."
            ) from error
        self._move_to(target)
        what = (
            f"The logbook {path} was removed while it was open. All of it was written there again."
            if is_free
            else f"Another file took the place of the logbook {path} while it was open. What this window shows is in "
            f"{target} and goes on being written there; keep both until you know which one you want."
        )
        if self.tell is None:
            self._untold.append(what)
        else:
            self.tell(what)

    def untold(self) -> tuple[str, ...]:
        """What nobody was there to be told; it is given once."""
        told_now, self._untold = tuple(self._untold), []
        return told_now

    def _move_to(self, target: Path) -> None:
        with self._lock:
            self._generation += 1
            self.path = target
            self._identity = _identity(target)

    def copy_to(self, side: Path) -> None:
        """SQLite's own online copy of everything that is committed, into a file that is not there yet."""
        with self._connection() as connection, told(side):
            _create(side)
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
        held = self._of_thread.held
        if held is None or held.generation != self._generation:
            held = self._of_thread.held = self._connect()
        return held

    def _connect(self) -> "_Held":
        # One thread uses a connection, but the one that closes the logbook may be another.
        where, is_address = (self.path or IN_MEMORY), False
        if self._read_only and self.path is not None:
            where, is_address = f"{self.path.resolve().as_uri()}?mode=ro&immutable=1", True
        connection = sqlite3.connect(
            where, timeout=_WAIT_FOR_LOCK, isolation_level=None, check_same_thread=False, uri=is_address
        )
        held = _Held(connection, self._generation)
        self._held.add(held)
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("PRAGMA recursive_triggers = ON")
        if self.path is not None and not self._read_only:
            _keep_side_file(connection)
            # An entry must be on the disk before the window says so.
            connection.execute("PRAGMA synchronous = FULL")
        return held


class _OfThread(threading.local):
    """The connection of the thread that asks."""

    held: "_Held | None" = None


class _Held:
    """Keeps a connection open for as long as its thread lives."""

    def __init__(self, connection: sqlite3.Connection, generation: int) -> None:
        self.connection = connection
        self.generation = generation

    def __del__(self) -> None:
        self.connection.close()


def _refuse_another_programs(path: Path) -> None:
    """A database without our mark that has tables is left alone; opening it for writing would fold its side file in."""
    with told(path):
        connection = sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True, timeout=_WAIT_FOR_OPENING)
        try:
            mark = connection.execute("PRAGMA application_id").fetchone()
            tables = connection.execute("SELECT count(*) FROM sqlite_master").fetchone()
        finally:
            connection.close()
    if mark != (APPLICATION_ID,) and tables != (0,):
        raise another_programs(path)


def _keep_side_file(connection: sqlite3.Connection) -> None:
    """Switch to a write-ahead log; SQLite does not wait here for another program that is doing the same."""
    until = time.monotonic() + _WAIT_FOR_OPENING
    while True:
        try:
            connection.execute("PRAGMA journal_mode = WAL")
        except sqlite3.OperationalError:
            if time.monotonic() > until:
                raise
            time.sleep(0.02)
        else:
            return


def _create(path: Path) -> None:
    """An empty file that only its owner can read, if none is there; SQLite gives its side files the same rights."""
    os.close(os.open(path, os.O_RDWR | os.O_CREAT, 0o600))


def _identity(path: Path | None) -> tuple[int, int] | None:
    """Which file lies at a path, or none."""
    try:
        found = path.stat() if path is not None else None
    except OSError:
        return None
    return (found.st_dev, found.st_ino) if found else None


def _kept_name(path: Path) -> Path:
    number = 1
    while (target := path.with_name(f"{path.stem} kept {number}{path.suffix}")).exists():
        number += 1
    return target


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
