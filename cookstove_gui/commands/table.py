"""`table`: all entries of a folder's sessions as one table for other programs."""

from collections.abc import Callable

from cookstove_gui.commands.parsing import Request
from cookstove_gui.commands.question import folder_of_logs
from cookstove_gui.logbook.tables import check_ending, session_table, write_table


def table(request: Request, complain: Callable[[str], None]) -> int:
    """Write the table; returns the exit code, 2 when some rows could not be read and are missing."""
    folder, target = request.logs[0], request.target
    assert target is not None  # the parser asks for it
    check_ending(target)
    past, stove = folder_of_logs(folder, complain)
    write_table(target, session_table(stove, past.sessions))
    return 2 if past.problems else 0
