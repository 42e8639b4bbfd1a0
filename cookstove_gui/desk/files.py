"""Importing and exporting logs. An import is all-or-ask: an offer says what is wrong before anything is kept."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from cookstove_gui.desk.changes import Changed
from cookstove_gui.desk.desk import Desk
from cookstove_gui.errors import InputProblem, Problem
from cookstove_gui.logbook.folder import stove_beside, title_of
from cookstove_gui.logbook.log_file import LogReading, looks_like_log, read_log, write_log
from cookstove_gui.logbook.package_tables import ENDING as PACKAGE_ENDING
from cookstove_gui.logbook.stove_file import FILE_NAME, write_stove
from cookstove_gui.phrases.logbook.imports import import_question
from cookstove_gui.stove.entries import ABOUT_A_ROW, Entry, Session
from cookstove_gui.stove.stove import Stove, with_spots_named


@dataclass(frozen=True, slots=True, kw_only=True)
class FileOffer:
    """One log file as read, not yet kept."""

    path: Path
    title: str  # of the session it becomes
    stove: Stove
    reading: LogReading


@dataclass(frozen=True, slots=True, kw_only=True)
class ImportOffer:
    """What an import would bring; `problems` are sentences about what it would not, or only doubtfully."""

    files: tuple[FileOffer, ...]
    problems: tuple[str, ...]

    @property
    def sessions(self) -> int:
        """How many would be added."""
        return len(self.files)

    @property
    def rows(self) -> int:
        """How many entries would be added."""
        return sum(len(file.reading.entries) for file in self.files)

    @property
    def stoves(self) -> tuple[str, ...]:
        """Names of the stoves that the sessions are of."""
        return tuple(dict.fromkeys(file.stove.name for file in self.files))

    @property
    def question(self) -> str:
        """What the person must decide about."""
        return import_question(len(self.problems), self.rows, self.sessions)

    @property
    def needs_answer(self) -> bool:
        """Whether something is wrong, so that the person must decide."""
        return bool(self.problems)


def is_other_table(paths: Sequence[Path]) -> bool:
    """Whether one file is chosen that is no log of this program: somebody must say what its columns mean."""
    if len(paths) != 1 or paths[0].is_dir() or paths[0].suffix.lower() == PACKAGE_ENDING:
        return False
    return not looks_like_log(paths[0])


def offer_import(desk: Desk, paths: Sequence[Path]) -> ImportOffer:
    """Read log files (or whole folders of them) and say what an import would bring. Nothing is kept yet."""
    files: list[FileOffer] = []
    problems: list[str] = []
    for path in _log_files(paths):
        try:
            stove = stove_beside(path.parent) or desk.stove
            reading = read_log(path, stove)
        except Problem as problem:
            problems.append(problem.sentence)
            continue
        problems.extend(problem.sentence for problem in reading.problems)
        if not reading.entries:
            problems.append(f"{path.name} has no readable row; nothing of it would be kept.")
        elif is_known(desk, stove.name, reading.with_repeats()):
            problems.append(f"{path.name} is in the logbook already, row for row; it would not be kept twice.")
        else:
            files.append(FileOffer(path=path, title=title_of(path), stove=stove, reading=reading))
    return ImportOffer(files=tuple(files), problems=tuple(problems))


def accept_import(desk: Desk, offer: ImportOffer) -> int:
    """Keep all that an offer holds, or nothing; returns how many sessions were added. The stove in use stays."""
    known = {stove.name for stove in desk.stoves}
    new: dict[str, Stove] = {}
    for file in offer.files:
        if file.stove.name not in known:
            spots = tuple(row.spot for row in file.reading.entries)
            new[file.stove.name] = with_spots_named(new.get(file.stove.name, file.stove), spots)
    desk.logbook.add_sessions(
        [
            Session(number=0, stove=file.stove.name, title=file.title, entries=file.reading.with_repeats())
            for file in offer.files
        ],
        new.values(),
    )
    desk.announce(Changed(session=True, stove=True, study=True))
    return len(offer.files)


def export_log(desk: Desk, number: int, path: Path) -> None:
    """Write a session's log as a CSV file, and the stove's description beside it if there is none yet."""
    session = desk.logbook.session(number)
    if not session.entries:
        raise InputProblem(f"“{session.title}” has no entries yet; there is nothing to write.")
    write_log(path, session.entries)
    beside = path.parent / FILE_NAME
    if not beside.exists():
        write_stove(beside, desk.logbook.stove(session.stove))


def write_table(desk: Desk, number: int, path: Path) -> None:
    """Write a session's entries in force as a table, all sessions' of its stove for 0; may run in a thread."""
    from cookstove_gui.logbook.tables import session_table
    from cookstove_gui.logbook.tables import write_table as write

    sessions = (desk.logbook.session(number),) if number else desk.logbook.past_sessions(desk.stove.name)
    if not any(session.entries for session in sessions):
        raise InputProblem("There are no entries yet; there is nothing to write.")
    write(path, session_table(desk.logbook.stove(sessions[0].stove), sessions))


def _log_files(paths: Sequence[Path]) -> list[Path]:
    found: list[Path] = []
    for path in paths:
        found.extend(sorted(path.glob("*.csv")) if path.is_dir() else [path])
    if not found:
        raise InputProblem("There is no CSV file there; choose a log, or a folder that holds logs.")
    return found


def is_known(desk: Desk, stove: str, rows: Sequence[Entry], *, with_bin: bool = False) -> bool:
    """Whether a session of the stove, or one in the bin, holds just these rows."""
    logbook = desk.logbook
    there = [*logbook.sessions(stove), *(one.summary for one in logbook.keeping.binned(stove) if with_bin)]
    return any(
        summary.entry_count == len(rows) and _essence(logbook.session(summary.number).entries) == _essence(rows)
        for summary in there
    )


def _essence(entries: Sequence[Entry]) -> tuple[tuple[object, ...], ...]:
    return tuple(
        sorted(
            (row.at, str(row.kind), row.spot, row.value, row.unit, row.note)
            for row in entries
            if row.kind not in ABOUT_A_ROW
        )
    )
