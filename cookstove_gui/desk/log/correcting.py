"""What a row becomes when the cook types something else in its place, and what wood typed in words or by weight is."""

from dataclasses import dataclass, replace
from datetime import datetime
from typing import cast

from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.checking import checked
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.wood_text import MASS, typed_wood
from cookstove_gui.units import MassUnit, TemperatureUnit, parse_temperature, tidy

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
            put_in = MASS.fullmatch(typed)
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
