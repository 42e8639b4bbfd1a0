"""`report`: one session as a page for someone else, HTML or PDF."""

from collections.abc import Callable

from cookstove_gui.commands.parsing import Request
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.folder import stove_beside, stove_for
from cookstove_gui.logbook.log_file import in_one_sentence, read_log
from cookstove_gui.reports.session_report import session_report
from cookstove_gui.reports.writing import write_report
from cookstove_gui.stove.entries import Session


def report(request: Request, complain: Callable[[str], None]) -> int:
    """Write the report; returns the exit code, 2 when some rows of the log could not be read and are missing."""
    log, target = request.logs[0], request.target
    if target is None or target.suffix.lower() not in (".html", ".pdf"):
        raise InputProblem(f"{target} must end in .html or .pdf; give the report one of these endings.")
    described = stove_beside(log.parent)
    reading = read_log(log)
    if reading.unreadable:
        complain(in_one_sentence(reading.unreadable))
    if not reading.entries:
        raise InputProblem(f"{log} holds no row that can be reported.")
    session = Session(number=0, stove="", title=log.stem.replace("_", " "), entries=reading.entries)
    stove = stove_for(log.parent, (session,), described)
    write_report(target, session_report(stove, session, request.unit))
    return 2 if reading.unreadable else 0
