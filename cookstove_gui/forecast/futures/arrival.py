"""When the oven comes into the band, touches it and leaves it, as instants: what sentence, mark and page all say."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

import numpy as np

from cookstove_gui.forecast.answers import EVEN_CHANCE, Outlook, Projection, oven_spot

if TYPE_CHECKING:
    from cookstove_gui.stove.entries import HeatBand
    from cookstove_gui.stove.stove import Stove


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrival:
    """When the oven comes into the band: where the drawn middle line enters, and its window."""

    likely: datetime
    earliest: datetime
    latest: datetime | None  # none: perhaps not within the horizon


def arrival_of(outlook: Outlook) -> Arrival | None:
    """Where the drawn line enters the band, and the futures' window, which never leaves that moment out."""
    found = outlook.band
    if found.line_enters_min is None:
        return None
    likely = found.line_enters_min
    earliest = likely if found.enters_min.p10 is None else min(found.enters_min.p10, likely)
    latest = None if found.enters_min.p90 is None else max(found.enters_min.p90, likely)
    return Arrival(
        likely=outlook.now + timedelta(minutes=likely),
        earliest=outlook.now + timedelta(minutes=earliest),
        latest=None if latest is None else outlook.now + timedelta(minutes=latest),
    )


def touching_of(outlook: Outlook) -> datetime | None:
    """When half of the futures have been in the band, where the drawn line never enters: not at the same time."""
    found = outlook.band
    touched = found.enters_min.p50
    if found.line_enters_min is not None or touched is None or found.chance_reached_3h < EVEN_CHANCE:
        return None
    return outlook.now + timedelta(minutes=touched)


def leaving_of(outlook: Outlook) -> datetime | None:
    """When the drawn line leaves the band again; none beyond the horizon, or where it never enters."""
    leaves = outlook.band.line_leaves_min
    return None if leaves is None else outlook.now + timedelta(minutes=leaves)


def leaving_a_heat(projection: Projection, stove: Stove, heat: HeatBand) -> datetime | None:
    """As `leaving_of`, of another heat than the one that is wanted."""
    from cookstove_gui.forecast.futures.outlook import arrivals  # brings the heat model: only when asked
    from cookstove_gui.forecast.model.quantiles import middle

    line = middle(projection.of(oven_spot(stove, projection)).T)[None, :]
    enters, stays = arrivals(projection.minutes, line, heat)
    leaves = float(enters[0] + stays[0])
    return projection.now + timedelta(minutes=leaves) if np.isfinite(leaves) else None


def leaves_upward(outlook: Outlook, projection: Projection, stove: Stove) -> bool:
    """Whether the drawn line leaves the band at its upper end; of a line that stays, by where it ends."""
    from cookstove_gui.forecast.model.quantiles import middle  # brings the heat model: only when asked

    line = middle(projection.of(oven_spot(stove, projection)).T)
    leaves = outlook.band.line_leaves_min
    then = line[-1] if leaves is None else np.interp(leaves, projection.minutes, line)
    return bool(then > 0.5 * (outlook.band.low + outlook.band.high))
