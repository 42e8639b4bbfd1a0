"""A desk for practice: a folder of invented sessions in a logbook in memory, the last of them still to be played."""

import time
from collections.abc import Callable
from pathlib import Path

from cookstove_gui.desk import Desk
from cookstove_gui.desk.practice import Practice
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.folder import read_folder, stove_for, title_of
from cookstove_gui.logbook.logbook import Logbook


def practice_desk(folder: Path, pace: float, seconds: Callable[[], float] = time.monotonic) -> tuple[Desk, Practice]:
    """The desk and the session to be played; the folder's earlier sessions are the stove's past."""
    past = read_folder(folder)
    if not past.sessions:
        raise InputProblem(f"{folder} holds no log that can be read; name a folder with logs such as 2026-01-05.csv.")
    stove = stove_for(folder, past.sessions, past.stove)
    *earlier, played = past.sessions
    practice = Practice(played.entries, seconds, pace)
    logbook = Logbook.in_memory()
    logbook.save_stove(stove)
    for session in earlier:
        logbook.add_session(stove.name, title_of(session.title), session.entries)
    return Desk(logbook, practice.clock), practice
