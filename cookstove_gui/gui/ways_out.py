"""What can be done at the start when the logbook cannot be opened, and what came of it in one sentence."""

import platform
from pathlib import Path

from cookstove_gui.errors import Problem, SurroundingsProblem
from cookstove_gui.logbook import backups
from cookstove_gui.phrases.edge import local_moment


def ways_out(logbook: Path) -> tuple[tuple[str, str], ...]:
    """Key and words of each way out: restoring where there is a backup, saving where there is a file."""
    ways = [("again", "Try again")]
    latest = latest_backup(logbook)
    if latest is not None:
        ways.append(("restore", f"Restore the backup of {local_moment(backups.taken_at(latest))}"))
    if logbook.is_file():
        ways.append(("save", "Save what can be read"))
    return (*ways, ("other", "Use another logbook"), ("copy", "Copy details"), ("quit", "Close"))


def restored(logbook: Path, backup: Path | None) -> str:
    """Put a backup in the logbook's place; raises SurroundingsProblem where it cannot be."""
    if backup is None:
        raise SurroundingsProblem(f"There is no backup of {logbook} that can be read; choose another logbook.")
    kept = backups.restore(backup, logbook)
    was = f" What was there before is kept as {kept}." if kept else ""
    return f"The backup of {local_moment(backups.taken_at(backup))} was restored.{was}"


def saved(logbook: Path) -> str:
    """Write what can be read into a new logbook; raises SurroundingsProblem when nothing can."""
    from cookstove_gui.logbook.salvage import salvage  # seldom wanted: not at every start

    found = salvage(logbook)
    lost = f" {' '.join(found.lost[:5])}" if found.lost else " Nothing is missing."
    return (
        f"{found.entries} entries of {found.sessions} sessions were saved.{lost} "
        f"The damaged file is kept as {found.damaged}."
    )


def details_of(logbook: Path, sentence: str) -> str:
    """What somebody who is to help needs to know."""
    size = logbook.stat().st_size if logbook.is_file() else None
    about = f"{logbook}: {f'{size} bytes' if size is not None else 'no such file'}"
    return f"{sentence}\n{about}\n{platform.platform()}, Python {platform.python_version()}"


def latest_backup(logbook: Path) -> Path | None:
    """The latest backup that can be read, or none."""
    for one in reversed(backups.dated(logbook)):
        try:
            backups.check_backup(one.path)
        except Problem:
            continue
        return one.path
    return None
