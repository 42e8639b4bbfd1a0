"""The planned supper out of the program: a calendar file, and a page to print."""

from datetime import datetime
from pathlib import Path

from cookstove_gui.cooking.supper.plan import Plan
from cookstove_gui.desk.desk import Desk
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.whole_file import write_whole
from cookstove_gui.phrases.plan.supper_sheet import calendar_steps, supper_sheet
from cookstove_gui.units import local_offset_minutes


def write_calendar(desk: Desk, path: Path) -> None:
    """Write every step still to come as an .ics file. Raises InputProblem where nothing is planned."""
    from cookstove_gui.reports.calendar_file import calendar_bytes

    if path.suffix.lower() != ".ics":
        raise InputProblem(f"{path} must end in .ics; give the calendar file this ending.")
    plan = _plan(desk)
    write_whole(path, calendar_bytes(calendar_steps(plan, desk.stove, desk.edge), plan.table_at, plan.made_at))


def write_sheet(desk: Desk, path: Path) -> None:
    """Write the page to print, .pdf or .html. Raises InputProblem where nothing is planned, or for another ending."""
    from cookstove_gui.reports.writing import write_page

    plan, here = _plan(desk), desk.offset_minutes - local_offset_minutes(desk.clock())

    def offset_at(at: datetime) -> int:
        return local_offset_minutes(at) + here

    write_page(path, "supper", supper_sheet(plan, desk.stove, desk.edge, offset_at))


def _plan(desk: Desk) -> Plan:
    plan = desk.supper.plan
    if plan is None:
        raise InputProblem("No supper is planned yet; type when you want to eat and add a dish first.")
    return plan
