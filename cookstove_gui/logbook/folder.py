"""A folder of logs: the past of the stove that its `stove.toml` describes."""

import re
from dataclasses import dataclass
from pathlib import Path

from cookstove_gui.errors import InputProblem, Problem
from cookstove_gui.logbook import stove_file
from cookstove_gui.logbook.log_file import LogReading, read_log
from cookstove_gui.logbook.stove_file import read_stove
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove, stove_with_default_spots, with_spots_named


@dataclass(frozen=True, slots=True, kw_only=True)
class PastLogs:
    """What a folder holds; `problems` are sentences about files and rows that could not be read."""

    stove: Stove | None  # none when the folder has no stove.toml
    sessions: tuple[Session, ...]  # by the clock of their first row; each is called as its file
    problems: tuple[str, ...]


def read_folder(folder: Path) -> PastLogs:
    """All logs of a folder; raises InputProblem when there is no such folder or its stove.toml cannot be read."""
    if not folder.is_dir():
        raise InputProblem(f"{folder} is not a folder; name the folder that holds the past logs.")
    stove = stove_beside(folder)
    problems: list[str] = []
    readings: list[tuple[Path, LogReading]] = []
    for path in sorted(folder.glob("*.csv")):
        try:
            reading = read_log(path)
        except Problem as problem:
            problems.append(problem.sentence)
            continue
        problems.extend(problem.sentence for problem in reading.unreadable)
        if reading.entries:
            readings.append((path, reading))
    readings.sort(key=lambda pair: min(row.at for row in pair[1].entries))
    name = stove.name if stove else folder.resolve().name
    sessions = tuple(
        Session(number=number, stove=name, title=path.stem, entries=reading.entries)
        for number, (path, reading) in enumerate(readings, start=1)
    )
    return PastLogs(stove=stove, sessions=sessions, problems=tuple(problems))


def title_of(log: Path | str) -> str:
    """A session's title from its log's name; a day in front is left out, since the log itself has it."""
    name = Path(log).stem
    words = re.sub(r"^\d{4}-\d{2}-\d{2}[_ ]+", "", name).replace("_", " ")
    return name if len(words) == len(name) else words.capitalize()


def stove_beside(folder: Path) -> Stove | None:
    """The stove that a folder's `stove.toml` describes, or none when it has no such file."""
    path = folder / stove_file.FILE_NAME
    return read_stove(path) if path.exists() else None


def stove_for(folder: Path, sessions: tuple[Session, ...], stove: Stove | None = None) -> Stove:
    """The stove described, or a plain one named after its folder, with every spot that the sessions read."""
    described = stove or stove_with_default_spots(folder.resolve().name or "stove")
    return with_spots_named(described, tuple(row.spot for session in sessions for row in session.entries))
