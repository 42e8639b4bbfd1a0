"""While first fires run, the plot is about the hottest spot of the top and the limit of the stage, not about baking."""

from dataclasses import dataclass

import numpy as np

from cookstove_gui.cooking.fires.first_fires import Stage
from cookstove_gui.desk.cook.oven_lines import OvenFan, fan_of
from cookstove_gui.desk.desk import Desk
from cookstove_gui.situation import was_read
from cookstove_gui.stove.stove import SpotKind


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstFireCourse:
    """The hottest spot of the top now, where the hottest is going, and what the stage asks of it."""

    stage: Stage
    spot: str  # the hottest now
    kelvin: float
    p10: float  # K, of that spot now
    p90: float
    ahead: OvenFan | None  # of whichever is hottest; none before anything was read


def first_fire_course(desk: Desk) -> FirstFireCourse | None:
    """The course of the first fire that is next; none where no first fires run, or of a session that is over."""
    standing = desk.standing
    if standing is None or not desk.is_live or standing.first_fires.next is None:
        return None
    tops = [spot.name for spot in desk.stove.spots_of(SpotKind.TOP) if spot.name in standing.projection.spots]
    if not tops:
        return None
    spot = max(tops, key=lambda name: standing.zones[name].p50)
    zone = standing.zones[spot]
    futures = np.max([standing.projection.of(name) for name in tops], axis=0)
    return FirstFireCourse(
        stage=standing.first_fires.next.stage,
        spot=spot,
        kelvin=zone.p50,
        p10=zone.p10,
        p90=zone.p90,
        ahead=fan_of(standing.projection.minutes, futures) if was_read(desk.entries) else None,
    )
