"""`report`: one session as a page for someone else, HTML or PDF."""

from collections.abc import Callable

from cookstove_gui.commands.parsing import Request
from cookstove_gui.commands.question import Asker
from cookstove_gui.errors import InputProblem
from cookstove_gui.reports.session_report import session_report
from cookstove_gui.reports.writing import write_report


def report(request: Request, complain: Callable[[str], None]) -> int:
    """Write the report; returns the exit code, 2 when some rows of the log could not be read and are missing."""
    log, target = request.logs[0], request.target
    if target is None or target.suffix.lower() not in (".html", ".pdf"):
        raise InputProblem(f"{target} must end in .html or .pdf; give the report one of these endings.")
    asked = Asker(request, complain).ask(log)
    title = log.stem.replace("_", " ")
    write_report(target, session_report(asked.inputs, title, request.unit, one_page=request.one_page))
    return 0 if asked.is_whole else 2
