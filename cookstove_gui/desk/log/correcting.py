"""What a row becomes when the cook types something else in its place."""

import re
from dataclasses import replace
from typing import cast

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.checking import checked
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import MassUnit, TemperatureUnit, parse_temperature, tidy

_MASS = re.compile(r"(\d+(?:[.,]\d+)?)\s*(kg|lb)?", re.IGNORECASE)


def corrected_row(old: Entry, text: str, mass_unit: MassUnit) -> Entry:
    """The row with what was typed in the place of its value; raises InputProblem for a text of no meaning there.

    Wood takes a mass, `4.5` or `2 kg`, or words such as `two splits`; where splits were counted, a bare number is
    their new count. A note takes words.
    """
    return checked(_retyped(old, text.strip(), mass_unit))


def _retyped(old: Entry, typed: str, mass_unit: MassUnit) -> Entry:
    match old.kind:
        case Kind.READING:
            value, unit = parse_temperature(typed, cast(TemperatureUnit, old.unit))
            return replace(old, value=tidy(value, 2), unit=unit)
        case Kind.WOOD:
            mass = _MASS.fullmatch(typed)
            if mass is None:
                return replace(old, value="", unit="", note=typed)
            if not old.value and mass[2] is None:
                return replace(old, note=f"{typed} {'split' if typed == '1' else 'splits'}")
            unit_of_mass = (mass[2] or old.unit or mass_unit).lower()
            return replace(old, value=mass[1].replace(",", "."), unit=unit_of_mass, note="")
        case Kind.NOTE:
            if not typed:
                raise InputProblem("The note would be empty; type what it should say, or take it back with Delete.")
            return replace(old, note=typed)
        case Kind.LIT | Kind.OUT:
            raise InputProblem(
                "Lighting and going out have no number to correct; change the time, or take it back with Delete."
            )
        case _:
            return replace(old, value=typed)


def text_of(row: Entry) -> str:
    """What stands in the field while a row is corrected: the text that would leave it as it is."""
    match row.kind:
        case Kind.WOOD:
            return f"{row.value} {row.unit}".strip() if row.value else row.note
        case Kind.NOTE:
            return row.note
        case Kind.LIT | Kind.OUT:
            return ""
        case _:
            return row.value
