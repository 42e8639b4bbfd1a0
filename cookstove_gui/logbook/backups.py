"""Copies of the logbook: made by SQLite's online copy to a side name, opened and counted, only then given their name.

Restoring a backup deletes no other backup, and keeps the logbook it replaces.
"""

import os
import re
from collections.abc import Iterable, Iterator
from contextlib import closing, contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path

from cookstove_gui.errors import SurroundingsProblem
from cookstove_gui.logbook.database import Database

_DATED = re.compile(r"logbook (\d{4}-\d\d-\d\d \d{6})(?: \d+)?\.sqlite")
_STAMP = "%Y-%m-%d %H%M%S"  # UTC; no colons, which some file systems refuse
_KEEP_ALL = timedelta(days=2)
_KEEP_DAILY = timedelta(days=14)
_KEEP_WEEKLY = timedelta(weeks=10)


def folder_of(logbook: Path) -> Path:
    """Where the backups of a logbook file lie."""
    return logbook.parent / "backups"


def back_up(database: Database, folder: Path, name: str) -> Path:
    """A checked copy of the logbook as `folder/name.sqlite` (with a number behind it when that is taken)."""
    with _surroundings(folder):
        folder.mkdir(parents=True, exist_ok=True)
        side = folder / f"{name}.part"
        side.unlink(missing_ok=True)
        before = counts(database)
        database.copy_to(side)
        with closing(Database(side)) as copy:
            copied = counts(copy)
        if any(there < here for there, here in zip(copied, before, strict=True)):
            raise SurroundingsProblem(
                f"The backup {side} came out shorter than the logbook; check whether the disk is full."
            )
        target = _free_name(folder, name)
        os.replace(side, target)
        return target


def back_up_dated(database: Database, folder: Path, at: datetime) -> Path:
    """A backup named after its moment; then older dated ones are thinned."""
    target = back_up(database, folder, f"logbook {at.astimezone(UTC).strftime(_STAMP)}")
    for at_of_old in to_drop(dated(folder).values(), at):
        for path, taken_at in dated(folder).items():
            if taken_at == at_of_old and path != target:
                path.unlink(missing_ok=True)
    return target


def dated(folder: Path) -> dict[Path, datetime]:
    """The backups made on request, oldest first, with their moments."""
    found = {}
    for path in sorted(folder.glob("logbook *.sqlite")):
        match = _DATED.fullmatch(path.name)
        if match:
            found[path] = datetime.strptime(match[1], _STAMP).replace(tzinfo=UTC)
    return found


def to_drop(taken_at: Iterable[datetime], now: datetime) -> tuple[datetime, ...]:
    """Moments of backups that may go.

    All are kept for two days, then one a day for two weeks, one a week for ten weeks, one a month for good; of each
    period the last one stays.
    """
    keep: dict[object, datetime] = {}
    moments = sorted(set(taken_at))
    for at in moments:
        age = now - at
        if age <= _KEEP_ALL:
            period: object = at
        elif age <= _KEEP_DAILY:
            period = at.date()
        elif age <= _KEEP_WEEKLY:
            period = at.isocalendar()[:2]
        else:
            period = (at.year, "month", at.month)
        keep[period] = at
    return tuple(at for at in moments if at not in keep.values())


def restore(backup: Path, logbook: Path) -> Path | None:
    """Replace a closed logbook by a backup; returns where the old logbook is kept, if there was one."""
    with _surroundings(logbook.parent):
        side = logbook.with_name(f"{logbook.name}.part")
        side.unlink(missing_ok=True)
        if not backup.is_file():
            raise SurroundingsProblem(f"There is no backup {backup}; choose another one.")
        with closing(Database(backup)) as source:
            counts(source)
            source.copy_to(side)
        kept = None
        if logbook.exists():
            folder = folder_of(logbook)
            folder.mkdir(parents=True, exist_ok=True)
            kept = _free_name(folder, "replaced by a backup")
            # Together with its side files, which may hold what the main file does not have yet.
            for ending in ("-wal", "-shm", ""):
                part = logbook.with_name(logbook.name + ending)
                if part.exists():
                    os.replace(part, kept.with_name(kept.name + ending))
        os.replace(side, logbook)
        return kept


def counts(database: Database) -> tuple[int, int]:
    """Number of sessions and of entries; raises SurroundingsProblem for a damaged file or another kind of file."""
    check = database.row("PRAGMA quick_check(1)")
    if check != ("ok",):
        raise SurroundingsProblem(f"The logbook {database.path} is damaged; open a backup of it or another logbook.")
    row = database.row("SELECT (SELECT count(*) FROM session), (SELECT count(*) FROM entry)")
    return (int(row[0]), int(row[1])) if row else (0, 0)


def _free_name(folder: Path, name: str) -> Path:
    target, number = folder / f"{name}.sqlite", 2
    while target.exists():
        target, number = folder / f"{name} {number}.sqlite", number + 1
    return target


@contextmanager
def _surroundings(folder: Path) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        reason = error.strerror or str(error)
        raise SurroundingsProblem(
            f"The folder {folder} cannot take the copy ({reason}); check its permissions and free space."
        ) from error
