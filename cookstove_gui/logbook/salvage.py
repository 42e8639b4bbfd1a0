"""What can be read of a damaged logbook goes into a new one, row by row; what is missing is listed by session."""

import os
from collections.abc import Iterator, Sequence
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from cookstove_gui.errors import Problem, SurroundingsProblem
from cookstove_gui.logbook import backups, migrations
from cookstove_gui.logbook.checksum import KEYS, SUMMED, is_sound
from cookstove_gui.logbook.database import Database, Row

_MISSES = 100  # numbers in a row that cannot be read, after which a session or table is taken to be over
_TABLES = ("stove", "session", "thermometer_check", "weather", "setting", "dish", "supper")
_OF_SESSIONS = ("tag", "bin")  # only as the newest file that gives them has them: they may be taken off again
_COLUMNS = SUMMED | {name: ("stove", *SUMMED[name]) for name in ("thermometer_check", "weather", "supper")}


@dataclass(frozen=True, slots=True, kw_only=True)
class Salvage:
    """What came of it; `lost` has a sentence for each session that lacks rows."""

    sessions: int
    entries: int
    lost: tuple[str, ...]
    damaged: Path  # where the damaged file lies now


def salvage(logbook: Path) -> Salvage:
    """Write what can be read of a closed, damaged logbook into a new one in its place.

    What the damaged file does not give is taken from the latest backup that has it. Raises SurroundingsProblem when no
    entry can be read, leaving everything as it was.
    """
    side = logbook.with_name(f"{logbook.name}.part")
    for ending in ("", "-wal", "-shm"):
        side.with_name(side.name + ending).unlink(missing_ok=True)
    sources = [logbook, *(one.path for one in reversed(backups.dated(logbook)))]
    expected: dict[int, int] = {}
    told = False  # whether a file gave tags and bin
    with closing(Database(side)) as saved:
        migrations.migrate(saved, lambda _: None)
        for source in sources:
            try:
                with closing(Database(source)) as database:
                    _copy(database, saved, expected)
                    told = told or _copy_marks(database, saved)
            except Problem:
                continue  # a file that is not even a database gives nothing
        sessions, entries = backups.counts(saved)
        lost = tuple(_gaps(saved, expected))
        saved.fold_in()
    if not entries:
        side.unlink(missing_ok=True)
        raise SurroundingsProblem(
            f"No entry can be read in the logbook {logbook} or in a backup of it; look for a copy on another disk."
        )
    damaged = backups.set_aside(logbook, "damaged")
    os.replace(side, logbook)
    return Salvage(sessions=sessions, entries=entries, lost=lost, damaged=damaged or logbook)


def _copy(source: Database, saved: Database, expected: dict[int, int]) -> None:
    """Take over every sound row that is not there yet."""
    for table in _TABLES:
        _insert(saved, table, _sound(table, _readable(source, table)))
    for (number,) in saved.rows("SELECT number FROM session"):
        rows = list(_sound("entry", _readable_entries(source, number)))
        expected[number] = max([expected.get(number, 0), *(row[1] for row in rows), _told_count(source, number)])
        _insert(saved, "entry", iter(rows))


def _copy_marks(source: Database, saved: Database) -> bool:
    """Take over tags and bin of the sessions that were saved; whether the file gives them."""
    try:
        for table in _OF_SESSIONS:
            columns = ", ".join(_COLUMNS[table])
            rows = source.rows(f"SELECT {columns}, checksum FROM {table}")
            known = {number for (number,) in saved.rows("SELECT number FROM session")}
            _insert(saved, table, (row for row in _sound(table, iter(rows)) if row[0] in known))
    except Problem:
        return False
    return True


def _readable(source: Database, table: str) -> Iterator[Row]:
    """The rows of a table; where one cannot be read, the others one by one."""
    query = f"SELECT {', '.join(_COLUMNS[table])}, checksum FROM {table}"
    try:
        yield from source.rows(query)
        return
    except Problem:
        pass
    misses, number = 0, 0
    while misses < _MISSES and table in ("stove", "session", "setting"):
        number += 1
        row = _try_row(source, f"{query} WHERE rowid = ?", (number,))
        misses = 0 if row else misses + 1
        if row:
            yield row


def _readable_entries(source: Database, session: int) -> Iterator[Row]:
    query = f"SELECT {', '.join(_COLUMNS['entry'])}, checksum FROM entry WHERE session = ?"
    try:
        yield from source.rows(query, (session,))
        return
    except Problem:
        pass
    misses, number = 0, 0
    while misses < _MISSES:
        number += 1
        row = _try_row(source, f"{query} AND number = ?", (session, number))
        misses = 0 if row else misses + 1
        if row:
            yield row


def _try_row(source: Database, query: str, values: Sequence[int]) -> Row | None:
    try:
        return source.row(query, values)
    except Problem:
        return None


def _sound(table: str, rows: Iterator[Row]) -> Iterator[Row]:
    """The rows as they were written, without their checksums; a damaged file may give anything, of any type."""
    skipped = len(_COLUMNS[table]) - len(SUMMED[table])  # the stove's name may change and is not in the checksum
    return (row[:-1] for row in rows if is_sound(row[skipped:]))


def _insert(saved: Database, table: str, rows: Iterator[Row]) -> None:
    columns = _COLUMNS[table]
    keys = KEYS[table]
    is_there = f"SELECT 1 FROM {table} WHERE " + " AND ".join(f"{key} = ?" for key in keys)
    known = {name for (name,) in saved.rows("SELECT name FROM stove")}
    with saved.transaction() as connection:
        for row in rows:
            if connection.execute(is_there, row[: len(keys)]).fetchone():
                continue
            named = row[columns.index("stove")] if "stove" in columns else None
            if named is not None and named not in known:
                connection.execute("INSERT INTO stove (name, description) VALUES (?, '')", (named,))
                known.add(named)
            marks = ", ".join("?" * len(columns))
            connection.execute(f"INSERT INTO {table} ({', '.join(columns)}) VALUES ({marks})", row)


def _told_count(source: Database, session: int) -> int:
    row = _try_row(source, "SELECT entry_count FROM session WHERE number = ?", (session,))
    return int(row[0]) if row and isinstance(row[0], int) and 0 <= row[0] < 1_000_000 else 0


def _gaps(saved: Database, expected: dict[int, int]) -> Iterator[str]:
    for number, title in saved.rows("SELECT number, title FROM session ORDER BY number"):
        there = {row for (row,) in saved.rows("SELECT number FROM entry WHERE session = ?", (number,))}
        missing = [row for row in range(1, expected.get(number, 0) + 1) if row not in there]
        if missing:
            rows = ", ".join(map(str, missing[:20])) + (f" and {len(missing) - 20} more" if len(missing) > 20 else "")
            yield f"Session {number}, {title}: row{'s' if len(missing) > 1 else ''} {rows} could not be read."
