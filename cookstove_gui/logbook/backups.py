"""Copies of the logbook: made by SQLite's online copy to a side name, every row read back, only then given their name.

A dated backup bears its logbook's name, so that several logbooks can share a folder. Restoring a backup deletes no
other backup, and keeps the logbook it replaces.
"""

import os
import re
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from cookstove_gui.errors import SurroundingsProblem
from cookstove_gui.logbook.checksum import summed_tables
from cookstove_gui.logbook.damage import check_pages, damaged_rows
from cookstove_gui.logbook.database import Database

_DATED = re.compile(r"(.+?) (?:(\d{4,}) )?(\d{4}-\d\d-\d\d \d{6})(?: \d+)?\.sqlite")
_USUAL = "logbook"  # the name of the usual logbook, and once of every backup
_STAMP = "%Y-%m-%d %H%M%S"  # UTC; no colons, which some file systems refuse
_KEEP_ALL = 30  # the latest by the order in which they were made
_KEEP_WEEKLY = 30  # of those before, one for each of so many weeks; then one a month for good
_SIDE_ENDINGS = ("-wal", "-shm", "")


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Backup:
    """A dated copy of the logbook; `serial` counts them, since a computer's clock may have been wrong."""

    serial: int
    taken_at: datetime
    path: Path


def folder_of(logbook: Path) -> Path:
    """Where the backups of a logbook file lie."""
    return logbook.parent / "backups"


def back_up(database: Database, folder: Path, name: str) -> Path:
    """A checked copy of the logbook as `folder/name.sqlite` (with a number behind it when that is taken)."""
    with _surroundings(folder):
        folder.mkdir(parents=True, exist_ok=True)
        side = folder / f"{name} {os.getpid()}.part"  # another window may be making the same backup
        side.unlink(missing_ok=True)
        before, damage = counts(database), _damage(database)
        database.copy_to(side)
        with closing(Database(side, read_only=True)) as copy:
            if any(there < here for there, here in zip(counts(copy), before, strict=True)) or _damage(copy) != damage:
                raise SurroundingsProblem(
                    f"The backup {side} does not hold what the logbook holds; check whether the disk is full."
                )
        target = _free_name(folder, name)
        os.replace(side, target)
        return target


def back_up_dated(database: Database, folder: Path, at: datetime, logbook: Path | None = None) -> Path:
    """A backup named after its logbook, its number and its moment; then older ones of that logbook are thinned."""
    name = _name_of(logbook)
    serial = max((one.serial for one in _named(folder, name)), default=0) + 1
    target = back_up(database, folder, f"{name} {serial:04d} {at.astimezone(UTC).strftime(_STAMP)}")
    for old in to_drop(_named(folder, name)):
        old.path.unlink(missing_ok=True)
    return target


def dated(logbook: Path) -> tuple[Backup, ...]:
    """The dated backups of a logbook in the order in which they were made.

    Backups were once all named alike: those belong to the usual logbook, and to another that lies alone in its folder.
    """
    own = _named(folder_of(logbook), _name_of(logbook))
    if _name_of(logbook) == _USUAL or any(other != logbook for other in logbook.parent.glob("*.sqlite")):
        return own
    return (*_named(folder_of(logbook), _USUAL), *own)


def _named(folder: Path, name: str) -> tuple[Backup, ...]:
    found = []
    for path in folder.glob("*.sqlite"):
        match = _DATED.fullmatch(path.name)
        if match and match[1] == name:
            found.append(Backup(serial=int(match[2] or 0), taken_at=taken_at(path), path=path))
    return tuple(sorted(found))


def _name_of(logbook: Path | None) -> str:
    return logbook.name.removesuffix(".sqlite") if logbook is not None else _USUAL


def taken_at(backup: Path) -> datetime:
    """When a backup was made: by its name, or by the file's own date if it was renamed."""
    match = _DATED.fullmatch(backup.name)
    if match:
        return datetime.fromisoformat(match[3]).replace(tzinfo=UTC)
    return datetime.fromtimestamp(backup.stat().st_mtime, UTC)


def to_drop(made: Sequence[Backup]) -> tuple[Backup, ...]:
    """Backups, given in the order in which they were made, that may go.

    The latest thirty stay whatever their dates say; of those before, the last of each of thirty weeks, and the last of
    each month. No age is asked of the clock: it may stand at 2100 today and be right again tomorrow.
    """
    older = made[: max(0, len(made) - _KEEP_ALL)]
    last_of_week = {one.taken_at.isocalendar()[:2]: one for one in older}
    last_of_month = {(one.taken_at.year, one.taken_at.month): one for one in older}
    keep = {*list(last_of_week.values())[-_KEEP_WEEKLY:], *last_of_month.values()}
    return tuple(one for one in older if one not in keep)


def check_backup(backup: Path) -> tuple[int, int]:
    """Number of sessions and entries of a backup; raises SurroundingsProblem when it cannot be used."""
    if not backup.is_file():
        raise SurroundingsProblem(f"There is no backup {backup}; choose another one.")
    with closing(Database(backup, read_only=True)) as source:
        return counts(source)


def restore(backup: Path, logbook: Path) -> Path | None:
    """Replace a closed logbook by a copy of a backup; returns where the old logbook is kept, if there was one.

    The side files of the old logbook are folded into the kept file where SQLite can read it, and lie beside it where
    it cannot; none is left that could be taken for the backup's.
    """
    with _surroundings(logbook.parent):
        check_backup(backup)
        side = logbook.with_name(f"{logbook.name}.part")
        side.unlink(missing_ok=True)
        with closing(Database(backup, read_only=True)) as source:
            source.copy_to(side)
        kept = set_aside(logbook, "replaced by a backup")
        os.replace(side, logbook)
        return kept


def set_aside(logbook: Path, name: str) -> Path | None:
    """Move a closed logbook and its side files into its folder of backups; returns where it lies, if there was one."""
    if not any(logbook.with_name(logbook.name + ending).exists() for ending in _SIDE_ENDINGS):
        return None
    folder = folder_of(logbook)
    with _surroundings(folder):
        folder.mkdir(parents=True, exist_ok=True)
        kept = _free_name(folder, name)
        for ending in _SIDE_ENDINGS:
            part = logbook.with_name(logbook.name + ending)
            if part.exists():
                os.replace(part, kept.with_name(kept.name + ending))
        try:
            with closing(Database(kept)) as closed:
                closed.fold_in()
        except SurroundingsProblem:
            pass  # too damaged to be opened; it is kept as it was
        return kept


def counts(database: Database) -> tuple[int, int]:
    """Number of sessions and of entries; raises SurroundingsProblem for a damaged file or another kind of file."""
    check_pages(database)
    row = database.row("SELECT (SELECT count(*) FROM session), (SELECT count(*) FROM entry)")
    return (int(row[0]), int(row[1])) if row else (0, 0)


def _damage(database: Database) -> object:
    version = database.row("PRAGMA user_version") or (0,)
    return damaged_rows(database) if summed_tables(version[0]) else ()


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
