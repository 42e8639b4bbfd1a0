"""Thermometer checks as notes in the log, so that they are kept, dated and voided like everything else.

A note reads `thermometer check: oven dial, boil, 210.5 F, 98500 Pa`; the row's clock is the check's day.
"""

import re
from collections.abc import Iterable
from datetime import timedelta

from cookstove_gui.cooking.fires import standing_rows
from cookstove_gui.cooking.thermometers import Check, CheckPoint, error_of
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import TemperatureUnit, degrees, kelvin, tidy

_NOTE = re.compile(
    r"\s*thermometer check:\s*(?P<name>[^,]+?)\s*,\s*(?P<point>ice|boil)\s*,\s*(?P<shown>-?\d+(?:\.\d+)?)\s*°?\s*"
    r"(?P<unit>[FC])\s*,\s*(?P<pressure>\d+(?:\.\d+)?)\s*Pa\s*",
    re.IGNORECASE,
)


def check_note(check: Check, unit: TemperatureUnit) -> str:
    """The note that keeps a check, in the unit that the cook reads.

    Raises
    ------
    InputProblem
        If the instrument's name has a comma, or the check is too far off to be one.
    """
    if "," in check.instrument or not check.instrument.strip():
        raise InputProblem(f"The thermometer's name “{check.instrument}” must be there and have no comma; rename it.")
    error_of(check)
    shown = f"{tidy(degrees(check.shown, unit))} {unit}"
    return f"thermometer check: {check.instrument}, {check.point}, {shown}, {tidy(check.pressure, 0)} Pa"


def check_in(entry: Entry) -> Check | None:
    """The check that a note row keeps; None for any other row, and for one too far off to be a check."""
    match = _NOTE.fullmatch(entry.note) if entry.kind is Kind.NOTE else None
    if match is None:
        return None
    check = Check(
        instrument=match["name"],
        point=CheckPoint(match["point"].lower()),
        shown=kelvin(float(match["shown"]), match["unit"].upper()),
        on=(entry.at + timedelta(minutes=entry.offset_minutes)).date(),
        pressure=float(match["pressure"]),
    )
    try:
        error_of(check)
    except (InputProblem, ValueError):  # typed by hand and out of reach: it says nothing of the instrument
        return None
    return check


def checks_in(stove: Stove, sessions: Iterable[Session]) -> tuple[Check, ...]:
    """All checks that a stove's sessions keep, oldest first."""
    found = [
        check
        for session in sessions
        if session.stove == stove.name
        for row in standing_rows(session.entries)
        if (check := check_in(row)) is not None
    ]
    return tuple(sorted(found, key=lambda check: check.on))
