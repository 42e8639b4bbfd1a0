"""Measured burn times: from a load with the air shut down until the oven has fallen by a chosen amount."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

import numpy as np

from cookstove_gui.cooking.fires.fires import MOSTLY_SHUT, Fire, fires, fraction_or_none, kelvin_or_none
from cookstove_gui.cooking.fires.wood_needs import kilograms_of
from cookstove_gui.stove.entries import Entry, Kind, Session
from cookstove_gui.stove.stove import OVEN_CENTRE, Stove

FALL = 50.0 / 1.8  # K, 50 °F: what a cook notices in a bake; common practice, no source
LOAD_WITHIN_MIN = 15.0  # wood rows so close together are one load
SHUT_WITHIN_MIN = 45.0  # the air is shut down so soon after a load that is to last


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredBurn:
    """One load with the air shut down, as the log shows it."""

    session: int
    loaded_at: datetime
    mass: float | None  # kg, where the log says
    air_open: float  # after it was shut down
    hottest: float  # K, of the oven after the load
    minutes: float  # from the load until the oven had fallen, or until the log knows no more of it
    fell: bool  # False: it burnt at least this long


@dataclass(frozen=True, slots=True, kw_only=True)
class BurnSummary:
    """What a stove's measured burns say together."""

    burns: int  # of which the fall was seen
    typical_min: float | None  # median of those
    longest_min: float | None  # of all, seen to the end or not


def burn_times(stove: Stove, sessions: Iterable[Session], fall: float = FALL) -> tuple[MeasuredBurn, ...]:
    """All loads with the air shut down that a stove's logs can time.

    Parameters
    ----------
    stove : Stove
    sessions : sessions
    fall : float
        By how much the oven's centre falls from its hottest after the load [K].

    Returns
    -------
    tuple of MeasuredBurn
        Oldest first.
    """
    return tuple(burn for fire in fires(stove, sessions) for burn in _burns(fire, fall))


def summary(burns: Iterable[MeasuredBurn]) -> BurnSummary:
    """The measured burns in three numbers."""
    known = tuple(burns)
    seen = [burn.minutes for burn in known if burn.fell]
    return BurnSummary(
        burns=len(seen),
        typical_min=float(np.median(seen)) if seen else None,
        longest_min=max((burn.minutes for burn in known), default=None),
    )


def _burns(fire: Fire, fall: float) -> list[MeasuredBurn]:
    found = []
    loads = _loads(fire)
    for place, load in enumerate(loads):
        ends = loads[place + 1][0].at if place + 1 < len(loads) else None
        burn = _burn(fire, load, ends, fall)
        if burn is not None:
            found.append(burn)
    return found


def _loads(fire: Fire) -> list[list[Entry]]:
    loads: list[list[Entry]] = []
    for row in fire.rows:
        if row.kind is not Kind.WOOD:
            continue
        if loads and (row.at - loads[-1][-1].at).total_seconds() / 60.0 <= LOAD_WITHIN_MIN:
            loads[-1].append(row)
        else:
            loads.append([row])
    return loads


def _burn(fire: Fire, load: list[Entry], ends: datetime | None, fall: float) -> MeasuredBurn | None:
    loaded = load[-1].at
    after = [row for row in fire.rows if row.at >= loaded and (ends is None or row.at < ends)]
    airs = [
        (row.at, fraction) for row in after if row.kind is Kind.AIR and (fraction := fraction_or_none(row)) is not None
    ]
    shut = next((pair for pair in airs if pair[1] <= MOSTLY_SHUT), None)
    if shut is None or (shut[0] - loaded).total_seconds() / 60.0 > SHUT_WITHIN_MIN:
        return None
    opened = next((at for at, fraction in airs if at > shut[0] and fraction > MOSTLY_SHUT), None)
    readings = [
        ((row.at - loaded).total_seconds() / 60.0, heat)
        for row in after
        if row.spot == OVEN_CENTRE and (opened is None or row.at < opened) and (heat := kelvin_or_none(row)) is not None
    ]
    if len(readings) < 2:
        return None
    masses = [kilograms_of(row) for row in load]
    minutes, fell = _fall(readings, fall)
    return MeasuredBurn(
        session=fire.session,
        loaded_at=loaded,
        mass=None if any(mass is None for mass in masses) else sum(mass for mass in masses if mass is not None),
        air_open=shut[1],
        hottest=max(heat for _, heat in readings),
        minutes=minutes,
        fell=fell,
    )


def _fall(readings: list[tuple[float, float]], fall: float) -> tuple[float, bool]:
    """When the oven had fallen from its hottest, straight between readings; else the last time, and not fallen."""
    hottest = max(range(len(readings)), key=lambda place: readings[place][1])
    limit = readings[hottest][1] - fall
    for (before, warm), (after, cool) in zip(readings[hottest:], readings[hottest + 1 :], strict=False):
        if cool <= limit:
            return before + (warm - limit) / (warm - cool) * (after - before), True
    return readings[-1][0], False
