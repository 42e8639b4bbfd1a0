"""What a row becomes when the cook types something else in its place, and what wood typed in words or by weight is."""

import re
from dataclasses import dataclass, replace
from datetime import datetime
from typing import cast

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.checking import checked
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import MassUnit, TemperatureUnit, parse_temperature, tidy

_MASS = re.compile(r"(\d*[.,]?\d+)\s*(kg|lb)?s?", re.IGNORECASE)
# `5 splits`, `half a split`, `an armful of birch`
_COUNTED = re.compile(
    r"(\d*[.,]?\d+)?[^\d]*(split|log|piece|stick|chunk|round|twig|brick|load|full|armful|handful|kindling|bark)[^\d]*",
    re.IGNORECASE,
)
_AT_A_SPOT = (Kind.READING, Kind.PAN)


@dataclass(frozen=True, slots=True, kw_only=True)
class Correction:
    """What the cook typed in the place of a row; what is left empty stays as it was."""

    text: str = ""
    spot: str = ""
    at: datetime | None = None


def corrected_row(old: Entry, new: Correction, mass_unit: MassUnit) -> Entry:
    """The row with what was typed in its place; raises InputProblem for what has no meaning there.

    Wood takes a mass, `4.5` or `2 kg`, or words such as `two splits`; where splits were counted, a bare number is
    their new count. A note takes words.
    """
    if new.spot and new.spot != old.spot and old.kind not in _AT_A_SPOT:
        raise InputProblem("Only a reading or a pan has a spot; take this entry back with Delete and enter it again.")
    text = new.text.strip()
    retyped = _retyped(old, text, mass_unit) if text and text != text_of(old) else old
    return checked(replace(retyped, spot=new.spot or old.spot, at=new.at or old.at))


def typed_wood(text: str, mass_unit: MassUnit) -> tuple[str, str, str]:
    """Value, unit and note of any amount of wood as typed: `4.5`, `2 kg`, `5 splits`, `half a split`, `an armful`."""
    typed = text.strip()
    mass = _MASS.fullmatch(typed)
    if mass is not None:
        return mass[1].replace(",", "."), (mass[2] or mass_unit).lower(), ""
    if _COUNTED.fullmatch(typed):
        return "", "", typed
    raise InputProblem(f"“{typed}” isn't an amount of wood; type 4.5 for its weight in {mass_unit}, or 5 splits.")


def _retyped(old: Entry, typed: str, mass_unit: MassUnit) -> Entry:
    match old.kind:
        case Kind.READING | Kind.PROBE | Kind.CARRIED:
            value, unit = parse_temperature(typed, cast(TemperatureUnit, old.unit))
            return replace(old, value=tidy(value, 2), unit=unit)
        case Kind.WOOD:
            if not old.value and typed.isdecimal():
                return replace(old, note=f"{typed} {'split' if typed == '1' else 'splits'}")
            mass, unit_of_mass, note = typed_wood(typed, cast(MassUnit, old.unit or mass_unit))
            return replace(old, value=mass, unit=unit_of_mass, note=note)
        case Kind.OVEN_IN:
            put_in = _MASS.fullmatch(typed)
            if put_in is None:
                return replace(old, note=typed)
            return replace(old, value=put_in[1].replace(",", "."), unit=(put_in[2] or old.unit or mass_unit).lower())
        case Kind.NOTE:
            return replace(old, note=typed)
        case Kind.LIT | Kind.OUT | Kind.TURNED | Kind.OVEN_OUT:
            raise InputProblem("This row has no number to correct; change its time, or take it back with Delete.")
        case _:
            return replace(old, value=typed)


def text_of(row: Entry) -> str:
    """What stands in the field while a row is corrected: the text that would leave it as it is."""
    match row.kind:
        case Kind.WOOD | Kind.OVEN_IN:
            return f"{row.value} {row.unit}".strip() if row.value else row.note
        case Kind.NOTE:
            return row.note
        case Kind.LIT | Kind.OUT | Kind.TURNED | Kind.OVEN_OUT:
            return ""
        case _:
            return row.value
