"""The stages of a fire, told from its log by rule: kindling, medium, full load with the air open, air shut down, coals.

The limits are common practice, no source; they only name stretches of a session, nothing is computed from them.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from enum import StrEnum

from cookstove_gui.forecast.model.heat import USUAL_INLET
from cookstove_gui.stove.entries import Entry, Kind, fraction_open, reading_kelvin, stated_mass, wood_count
from cookstove_gui.stove.stove import SpotKind, spot_kind_from_name
from cookstove_gui.units import kelvin

WIDE_OPEN = 0.8  # fraction of the air from which on it counts as wide open
SHUT_DOWN = 0.35  # fraction of the air up to which it counts as shut down
FULL_LOAD = 4.0  # kg in one go
FULL_COUNT = 4.0  # splits or logs in one go
FULL_HEAT = kelvin(480.0, "F")  # K, a cooktop this hot with the air wide open has a full load under it
LIGHT_LOAD = 0.8  # kg; less than this on a young fire is kindling still
COALS_AFTER = timedelta(minutes=75)  # without wood, with the air open
COALS_AFTER_SHUT = timedelta(minutes=150)  # without wood, with the air shut down
FRESH = timedelta(minutes=30)  # what was put on burns so long at least, whatever is noted of the coals beneath it
SHORTEST = timedelta(minutes=5)  # what lasts less belongs to the stretch before it; fresh wood never to the coals


class StageName(StrEnum):
    """What the fire was doing."""

    BEFORE = "before the fire"
    KINDLING = "kindling"
    MEDIUM = "medium fire"
    FULL = "full load, air open"
    SHUT = "air shut down"
    COALS = "coals"
    OUT = "fire out"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """One stretch of a session; the last one ends with the last row."""

    name: StageName
    begins_at: datetime
    ends_at: datetime

    def holds(self, at: datetime, is_last: bool = False) -> bool:
        """Whether a moment lies in the stage; its end belongs to the next one, if there is a next one."""
        return self.begins_at <= at < self.ends_at or (is_last and at == self.ends_at)


@dataclass(frozen=True, slots=True)
class _Fire:
    """What the log has said so far."""

    lit_at: datetime | None = None
    wood_at: datetime | None = None  # the latest load that was more than kindling
    air: float = USUAL_INLET  # until the log says
    is_full: bool = False
    is_coals: bool = False  # the cook said so
    is_warm: bool = False  # from a fire before this session
    is_out: bool = False

    def coals_at(self) -> datetime | None:
        """When the fire falls to coals if nothing more is put on."""
        begun = self.wood_at or self.lit_at
        if begun is None or self.is_out:
            return None
        return begun + (COALS_AFTER_SHUT if self.wood_at and self.air <= SHUT_DOWN else COALS_AFTER)

    def name(self) -> StageName:
        """The stage as long as the wood lasts."""
        if self.is_out:
            return StageName.OUT
        if self.lit_at is None:
            return StageName.BEFORE
        if self.is_coals:
            return StageName.COALS
        if self.wood_at is None:
            return StageName.KINDLING
        if self.air <= SHUT_DOWN:
            return StageName.SHUT
        return StageName.FULL if self.is_full and self.air >= WIDE_OPEN else StageName.MEDIUM


def stages(standing: Iterable[Entry]) -> tuple[Stage, ...]:
    """The stages of a session, without gaps, from its first row to its last; `standing` as `fold` gives it."""
    rows = tuple(standing)
    found: list[Stage] = []
    fire = _Fire()
    for place, row in enumerate(rows, start=1):
        fire = _after(fire, row)
        ends_at = rows[place].at if place < len(rows) else row.at
        coals_at = fire.coals_at()
        if coals_at is None or fire.is_coals or coals_at >= ends_at:
            parts = [(fire.name(), row.at, ends_at)]
        else:
            turned = max(coals_at, row.at)
            parts = [(fire.name(), row.at, turned), (StageName.COALS, turned, ends_at)]
        for name, begins_at, part_ends_at in parts:
            _join(found, name, begins_at, part_ends_at)
    return _without_short_ones(found)


def stage_at(found: tuple[Stage, ...], at: datetime) -> StageName | None:
    """The name of the stage at a moment; none outside the session."""
    for place, stage in enumerate(found, start=1):
        if stage.holds(at, is_last=place == len(found)):
            return stage.name
    return None


def _join(found: list[Stage], name: StageName, begins_at: datetime, ends_at: datetime) -> None:
    """Add a stretch, making one of two of the same name."""
    if found and found[-1].name is name:
        found[-1] = replace(found[-1], ends_at=ends_at)
    else:
        found.append(Stage(name=name, begins_at=begins_at, ends_at=ends_at))


def _without_short_ones(found: list[Stage]) -> tuple[Stage, ...]:
    """Stretches shorter than SHORTEST joined to the one before; the first of all and one after coals to the next."""
    kept: list[Stage] = []
    for stage in found:
        begins_at = stage.begins_at
        waits = len(kept) == 1 or (len(kept) > 1 and kept[-2].name is StageName.COALS)
        if waits and kept[-1].ends_at - kept[-1].begins_at < SHORTEST:
            begins_at = kept.pop().begins_at
        after_coals = bool(kept) and kept[-1].name is StageName.COALS
        if kept and not after_coals and stage.ends_at - begins_at < SHORTEST:
            kept[-1] = replace(kept[-1], ends_at=stage.ends_at)
        else:
            _join(kept, stage.name, begins_at, stage.ends_at)
    return tuple(kept)


def _after(fire: _Fire, row: Entry) -> _Fire:
    match row.kind:
        case Kind.CARRIED:
            return replace(fire, is_warm=True)
        case Kind.LIT:
            return _Fire(lit_at=row.at, air=fire.air)
        case Kind.OUT:
            return _Fire(air=fire.air, is_out=True)
        case Kind.WOOD if fire.is_warm and fire.lit_at is None:  # on coals that were left
            return replace(fire, lit_at=row.at, wood_at=row.at, is_full=_is_full(row))
        case Kind.AIR:
            return replace(fire, air=fraction_open(row))
        case Kind.WOOD if fire.lit_at is not None and not _is_kindling(row, fire):
            return replace(fire, wood_at=row.at, is_full=_is_full(row) or fire.is_full, is_coals=False)
        case Kind.NOTE if fire.lit_at is not None and _speaks_of_coals(row) and not _has_fresh_wood(fire, row.at):
            return replace(fire, is_coals=True)
        case Kind.READING if fire.air >= WIDE_OPEN and fire.wood_at is not None and _is_hot_top(row):
            return replace(fire, is_full=True)
    return fire


def _speaks_of_coals(row: Entry) -> bool:
    return "coals" in row.note.lower().split()


def _has_fresh_wood(fire: _Fire, at: datetime) -> bool:
    return fire.wood_at is not None and at - fire.wood_at < FRESH


def _is_kindling(row: Entry, fire: _Fire) -> bool:
    mass = stated_mass(row)
    return "kindling" in row.note.lower() or (fire.wood_at is None and mass is not None and mass < LIGHT_LOAD)


def _is_hot_top(row: Entry) -> bool:
    return spot_kind_from_name(row.spot) is SpotKind.TOP and reading_kelvin(row) >= FULL_HEAT


def _is_full(row: Entry) -> bool:
    mass, count = stated_mass(row), wood_count(row)
    return (
        "full" in row.note.lower().split()
        or (mass is not None and mass >= FULL_LOAD)
        or (count is not None and count >= FULL_COUNT)
    )
