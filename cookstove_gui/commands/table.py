"""`table`: all entries of a folder's sessions as one table for other programs."""

from collections.abc import Callable

from cookstove_gui.commands.parsing import Request
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.folder import read_folder, stove_for
from cookstove_gui.logbook.tables import check_ending, session_table, write_table


def table(request: Request, complain: Callable[[str], None]) -> int:
    """Write the table; returns the exit code, 2 when some rows could not be read and are missing."""
    folder, target = request.logs[0], request.target
    assert target is not None  # the parser asks for it
    check_ending(target)
    past = read_folder(folder)
    if not past.sessions:
        why = f": {past.problems[0]}" if past.problems else "; put the sessions' CSV files there."
        raise InputProblem(f"{folder} holds no log that can be read{why}")
    write_table(target, session_table(stove_for(folder, past.sessions, past.stove), past.sessions))
    if past.problems:
        more = len(past.problems) - 1
        complain(f"{past.problems[0]}{f' (and {more} more like this)' if more else ''}")
    return 2 if past.problems else 0
