"""While first fires run, the plot is about the hottest spot of the top and the limit of the stage, not about baking."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from cookstove_gui.advice import waits_for_cold
from cookstove_gui.desk.cook.oven_lines import OvenFan, fan_of
from cookstove_gui.desk.cook.spot_heats import spot_heats
from cookstove_gui.phrases.my_stove.stages import limit_rungs
from cookstove_gui.situation import was_read
from cookstove_gui.stove.stove import SpotKind

if TYPE_CHECKING:
    from cookstove_gui.cooking.fires.first_fires import Stage
    from cookstove_gui.desk.desk import Desk


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstFireCourse:
    """The hottest spot of the top now, where it is going if nothing more is put on, and what its stage asks."""

    stage: Stage
    spot: str  # the hottest now
    kelvin: float
    p10: float  # K, of that spot now
    p90: float
    ahead: OvenFan | None  # of whichever is hottest; none before anything was read


def first_fire_course(desk: Desk) -> FirstFireCourse | None:
    """The course of the first fire that burns, goes cold or is next; none if none runs or the session is over."""
    standing = desk.standing
    if standing is None or not desk.is_live or standing.first_fires.next is None:
        return None
    unfed = standing.unfed or standing.projection
    tops = [spot.name for spot in desk.stove.spots_of(SpotKind.TOP) if spot.name in unfed.spots]
    if not tops:
        return None
    heats = spot_heats(desk)
    spot = max(tops, key=lambda name: heats[name].kelvin or 0.0)
    zone = standing.zones[spot]
    futures = np.max([unfed.of(name) for name in tops], axis=0)
    done = standing.first_fires.just_done if waits_for_cold(standing) else None
    return FirstFireCourse(
        stage=(done or standing.first_fires.next).stage,
        spot=spot,
        kelvin=heats[spot].kelvin or zone.p50,
        p10=zone.p10,
        p90=zone.p90,
        ahead=fan_of(unfed.minutes, futures) if was_read(desk.entries) else None,
    )


def limit_said(desk: Desk) -> tuple[str, ...]:
    """What stands in the place of the heat wanted while first fires run, from long to short; empty otherwise."""
    course = first_fire_course(desk)
    return limit_rungs(course.stage, desk.unit) if course else ()
