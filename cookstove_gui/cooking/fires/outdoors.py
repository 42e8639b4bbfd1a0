"""How cold it was outdoors at a firing, where its log says so: a reading named so, or a note such as `28 F outside`."""

import re
from collections.abc import Sequence

from cookstove_gui.cooking.fires.logged_fires import kelvin_or_none
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import kelvin

PLAUSIBLE = (kelvin(-60.0, "F"), kelvin(125.0, "F"))  # K
_NAMES = ("outdoors", "outside")
_NUMBER = r"(?P<sign>[-−–]|minus )?(?P<number>\d{1,3}(?:[.,]\d)?)\s*°?\s*(?P<unit>[FC])?\b"
_PLACE = r"\b(?:outside|outdoors?|out of doors)\b"
_SAID = tuple(
    re.compile(pattern, re.IGNORECASE)
    for pattern in (rf"{_PLACE}[^\d\-−–.;]{{0,12}}?{_NUMBER}", rf"{_NUMBER}[^\d.;]{{0,8}}{_PLACE}")
)


def outdoors_of(rows: Sequence[Entry]) -> float | None:
    """The first temperature of the air outdoors [K] that a session's rows tell; none where they tell none.

    A number without a unit is in that of the session's first reading; what cannot be the weather is passed over.
    """
    unit = next((row.unit for row in rows if row.kind is Kind.READING and row.unit in ("F", "C")), "")
    for row in rows:
        said = kelvin_or_none(row) if row.spot in _NAMES else outdoors_in(row.note, unit)
        if said is not None and PLAUSIBLE[0] <= said <= PLAUSIBLE[1]:
            return said
    return None


def outdoors_in(note: str, unit: str = "") -> float | None:
    """The temperature outdoors [K] that a note names; `unit` is what a bare number is in, empty to take none."""
    for pattern in _SAID:
        found = pattern.search(note)
        if found is None or not (found["unit"] or unit):
            continue
        number = float(found["number"].replace(",", "."))
        return kelvin(-number if found["sign"] else number, (found["unit"] or unit).upper())
    return None
