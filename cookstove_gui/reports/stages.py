"""The stages of a fire, told from its log by rule: kindling, medium, full load with the air open, air shut down, coals.

The limits are common practice, no source; they only name stretches of a session, nothing is computed from them.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from enum import StrEnum

from cookstove_gui.stove.entries import Entry, Kind, fraction_open, wood_count, wood_mass

WIDE_OPEN = 0.8  # fraction of the air from which on it counts as wide open
SHUT_DOWN = 0.35  # fraction of the air up to which it counts as shut down
FULL_LOAD = 4.0  # kg in one go
FULL_COUNT = 4.0  # splits or logs in one go
COALS_AFTER = timedelta(minutes=75)  # without wood, with the air open
COALS_AFTER_SHUT = timedelta(minutes=150)  # without wood, with the air shut down
_USUAL_AIR = 0.5  # until the log says


class StageName(StrEnum):
    """What the fire was doing."""

    BEFORE = "before the fire"
    KINDLING = "kindling"
    MEDIUM = "medium fire"
    FULL = "full load, air open"
    SHUT = "air shut down"
    COALS = "coals"


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
    air: float = _USUAL_AIR
    is_full: bool = False
    is_coals: bool = False  # the cook said so

    def coals_at(self) -> datetime | None:
        """When the fire falls to coals if nothing more is put on."""
        begun = self.wood_at or self.lit_at
        if begun is None:
            return None
        return begun + (COALS_AFTER_SHUT if self.wood_at and self.air <= SHUT_DOWN else COALS_AFTER)

    def name(self) -> StageName:
        """The stage as long as the wood lasts."""
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
    for row, following in zip(rows, (*rows[1:], None), strict=True):
        fire = _after(fire, row)
        ends_at = following.at if following else row.at
        coals_at = fire.coals_at()
        if coals_at is None or fire.is_coals or coals_at >= ends_at:
            parts = [(fire.name(), row.at, ends_at)]
        else:
            turned = max(coals_at, row.at)
            parts = [(fire.name(), row.at, turned), (StageName.COALS, turned, ends_at)]
        for name, begins_at, part_ends_at in parts:
            _join(found, name, begins_at, part_ends_at)
    return tuple(found)


def stage_at(found: tuple[Stage, ...], at: datetime) -> StageName | None:
    """The name of the stage at a moment; none outside the session."""
    for place, stage in enumerate(found, start=1):
        if stage.holds(at, is_last=place == len(found)):
            return stage.name
    return None


def _join(found: list[Stage], name: StageName, begins_at: datetime, ends_at: datetime) -> None:
    """Add a stretch, making one of two of the same name; one that lasts no time gives way to what follows at once."""
    if found and found[-1].begins_at == found[-1].ends_at == begins_at:
        found.pop()
    if found and found[-1].name is name:
        found[-1] = replace(found[-1], ends_at=ends_at)
    else:
        found.append(Stage(name=name, begins_at=begins_at, ends_at=ends_at))


def _after(fire: _Fire, row: Entry) -> _Fire:
    match row.kind:
        case Kind.LIT:
            return _Fire(lit_at=row.at, air=fire.air)
        case Kind.AIR:
            return replace(fire, air=fraction_open(row))
        case Kind.WOOD if fire.lit_at is not None and not _is_kindling(row):
            return replace(fire, wood_at=row.at, is_full=_is_full(row), is_coals=False)
        case Kind.NOTE if fire.lit_at is not None and "coals" in row.note.lower().split():
            return replace(fire, is_coals=True)
    return fire


def _is_kindling(row: Entry) -> bool:
    return "kindling" in row.note.lower()


def _is_full(row: Entry) -> bool:
    mass, count = wood_mass(row), wood_count(row)
    return (
        "full" in row.note.lower().split()
        or (mass is not None and mass >= FULL_LOAD)
        or (count is not None and count >= FULL_COUNT)
    )
