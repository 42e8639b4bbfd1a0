"""What is in the oven by the log: when it went in, what a probe showed, whether it was turned, when it came out.

An `oven_in` row names what went in. A later row belongs to what its note names, and without a name to what went in
last; of two with the same name, to the one that went in first.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from cookstove_gui.cooking.baking.catalogue import LARGEST, SMALLEST, Bake, bakes, mass_of, scaled
from cookstove_gui.cooking.baking.probing import Probe
from cookstove_gui.stove.entries import Entry, Kind, reading_kelvin, stated_mass

JUST_IN = timedelta(minutes=2)  # a probe this soon after it went in shows how warm it was to begin with
_ABOUT_FOOD = (Kind.PROBE, Kind.TURNED, Kind.DUE, Kind.OVEN_OUT)


@dataclass(frozen=True, slots=True, kw_only=True)
class InOven:
    """One thing that went into the oven."""

    number: int  # of its row
    name: str
    bake: Bake | None  # as heavy and as warm as the log says; none for a name that the catalogue does not have
    went_in: datetime
    probes: tuple[Probe, ...] = ()  # in order of time
    turned_at: datetime | None = None  # the latest
    due_at: datetime | None = None  # when the cook wants to look at it; none once it was looked at
    came_out: datetime | None = None


def in_oven(rows: Iterable[Entry]) -> tuple[InOven, ...]:
    """What is in the oven after these rows, in force and in order of time; the first that went in first."""
    return tuple(one for one in put_in(rows) if one.came_out is None)


def put_in(rows: Iterable[Entry]) -> tuple[InOven, ...]:
    """Everything that went into the oven, what came out again among it."""
    found: dict[int, InOven] = {}
    for row in rows:
        if row.kind is Kind.OVEN_IN:
            found[row.number] = InOven(number=row.number, name=row.note.strip(), bake=_bake(row), went_in=row.at)
        elif row.kind in _ABOUT_FOOD:
            meant = _meant(row, [one for one in found.values() if one.came_out is None])
            if meant is not None:
                found[meant.number] = _after(meant, row)
    return tuple(found.values())


def _meant(row: Entry, inside: list[InOven]) -> InOven | None:
    name = row.note.strip().casefold()
    called_so = [one for one in inside if one.name.casefold() == name]
    if called_so:
        return called_so[0]
    return inside[-1] if inside else None


def _after(one: InOven, row: Entry) -> InOven:
    if row.kind is Kind.PROBE:
        core = reading_kelvin(row)
        if row.at - one.went_in < JUST_IN:
            return replace(one, bake=replace(one.bake, start=core) if one.bake else None)
        return replace(one, probes=(*one.probes, Probe(at=row.at, core=core)), due_at=_still_due(one, row.at))
    if row.kind is Kind.TURNED:
        return replace(one, turned_at=row.at, due_at=_still_due(one, row.at))
    if row.kind is Kind.DUE:
        return replace(one, due_at=row.at + timedelta(minutes=float(row.value)))
    return replace(one, came_out=row.at)


def _still_due(one: InOven, at: datetime) -> datetime | None:
    return one.due_at if one.due_at is not None and one.due_at > at else None


def _bake(row: Entry) -> Bake | None:
    name = row.note.strip().casefold()
    bake = next((one for one in bakes() if name in (one.key, one.name.casefold())), None)
    mass = stated_mass(row)
    if bake is None or mass is None:
        return bake
    return scaled(bake, min(max(mass / mass_of(bake), SMALLEST), LARGEST))
