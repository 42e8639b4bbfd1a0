"""Measured burn times: from a load with the air shut down until the oven has fallen by a chosen amount."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise, zip_longest

from cookstove_gui.cooking.fires.logged_fires import (
    MOSTLY_SHUT,
    Fire,
    crossing,
    fires,
    fraction_or_none,
    minutes_between,
    readings_of,
)
from cookstove_gui.cooking.fires.rise_and_hold import Hold, typical_hold
from cookstove_gui.cooking.fires.wood_needs import kilograms_of
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import Stove

FALL = 50.0 / 1.8  # K, 50 °F: what a cook notices in a bake; common practice, no source
LOAD_WITHIN_MIN = 15.0  # wood rows this close together are one load; judgement
SHUT_WITHIN_MIN = 45.0  # the air is shut down this soon after a load that is meant to last; judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredBurn:
    """One load that burnt with the air shut down."""

    session: int
    loaded_at: datetime
    mass: float | None  # kg, where the log says
    air_open: float  # after it was shut down
    hottest: float  # K, of the oven after the load
    minutes: float  # from the load until the oven had fallen, or until its last reading
    fell: bool  # False: it burnt at least this long


@dataclass(frozen=True, slots=True, kw_only=True)
class BurnSummary:
    """A stove's measured burns together."""

    burns: int  # whose fall the log shows
    typical_min: float | None  # median of all, as `typical_hold` counts those whose fall is not seen
    longest_min: float | None  # of all, whether their fall is seen or not


def burn_times(stove: Stove, sessions: Iterable[Session], fall: float = FALL) -> tuple[MeasuredBurn, ...]:
    """All loads with the air shut down that a stove's logs can time, oldest first.

    `fall` [K] is how far the oven falls from its hottest after the load.
    """
    return tuple(burn for fire in fires(stove, sessions) for burn in burns_of(fire, stove.oven_spot, fall))


def summary(burns: Iterable[MeasuredBurn]) -> BurnSummary:
    """How many burns were seen to their end, how long they typically took, and the longest."""
    known = tuple(burns)
    return BurnSummary(
        burns=sum(burn.fell for burn in known),
        typical_min=typical_hold(Hold(minutes=burn.minutes, ended=burn.fell) for burn in known),
        longest_min=max((burn.minutes for burn in known), default=None),
    )


def burns_of(fire: Fire, oven: str, fall: float = FALL) -> list[MeasuredBurn]:
    """The loads with the air shut down of one fire."""
    loads = loads_of(fire)
    found = (
        _burn(fire, load, following[0].at if following else None, oven, fall)
        for load, following in zip_longest(loads, loads[1:])
    )
    return [burn for burn in found if burn is not None]


def loads_of(fire: Fire) -> list[list[Entry]]:
    """The loads of one fire, oldest first, each the rows of wood that went on together."""
    loads: list[list[Entry]] = []
    for row in fire.rows:
        if row.kind is not Kind.WOOD:
            continue
        if loads and minutes_between(loads[-1][-1].at, row.at) <= LOAD_WITHIN_MIN:
            loads[-1].append(row)
        else:
            loads.append([row])
    return loads


def _burn(fire: Fire, load: list[Entry], ends: datetime | None, oven: str, fall: float) -> MeasuredBurn | None:
    loaded = load[-1].at
    after = [row for row in fire.rows if row.at >= loaded and (ends is None or row.at < ends)]
    airs = [
        (row.at, fraction) for row in after if row.kind is Kind.AIR and (fraction := fraction_or_none(row)) is not None
    ]
    shut = next((pair for pair in airs if pair[1] <= MOSTLY_SHUT), None)
    if shut is None or minutes_between(loaded, shut[0]) > SHUT_WITHIN_MIN:
        return None
    opened = next((at for at, fraction in airs if at > shut[0] and fraction > MOSTLY_SHUT), None)
    readings = readings_of((row for row in after if opened is None or row.at < opened), oven, loaded)
    if len(readings) < 2:
        return None
    minutes, fell = time_to_fall(readings, fall)
    return MeasuredBurn(
        session=fire.session,
        loaded_at=loaded,
        mass=mass_of(load),
        air_open=shut[1],
        hottest=max(heat for _, heat in readings),
        minutes=minutes,
        fell=fell,
    )


def mass_of(load: Sequence[Entry]) -> float | None:
    """What a load weighed [kg]; none where a row of it does not say."""
    masses = [kilograms_of(row) for row in load]
    return None if any(mass is None for mass in masses) else sum(mass for mass in masses if mass is not None)


def time_to_fall(readings: Sequence[tuple[float, float]], fall: float) -> tuple[float, bool]:
    """When the oven had fallen so far [K] from its hottest, and true; or when it was last read, and false."""
    hottest = max(range(len(readings)), key=lambda place: readings[place][1])
    limit = readings[hottest][1] - fall
    for before, after in pairwise(readings[hottest:]):
        if after[1] <= limit:
            return crossing(before, after, limit), True
    return readings[-1][0], False
