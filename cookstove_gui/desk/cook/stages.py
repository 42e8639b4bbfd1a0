"""The first fires on the Cook page: those done, the one under way with what its log must show, those to come."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from cookstove_gui.advice import waits_for_cold
from cookstove_gui.cooking.fires.logged_fires import Fire, fires
from cookstove_gui.phrases.my_stove.stages import (
    air_measure,
    heat_limit,
    heat_measure,
    loads_measure,
    minutes_measure,
    stage_state,
)
from cookstove_gui.stove.stove import USUAL_ROOM

if TYPE_CHECKING:
    from cookstove_gui.cooking.fires.first_fires import Stage
    from cookstove_gui.desk.desk import Desk


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """One thing that the log must show, and how much of it it shows."""

    wanted: str
    shown: str
    share: float  # 0 to 1 of what is wanted, or of a limit
    is_limit: bool = False  # not to be passed


@dataclass(frozen=True, slots=True, kw_only=True)
class StageRow:
    """One of the first fires."""

    title: str
    line: str
    is_done: bool
    is_next: bool
    state: str  # in words
    measures: tuple[Measure, ...]  # of the next one
    watch: str = ""  # of the next one: what to look for


def stage_rows(desk: Desk) -> tuple[StageRow, ...]:
    """All stages in order; none of a stove that needs none."""
    standing = desk.standing
    if standing is None or standing.first_fires.next is None:
        return ()
    found = standing.first_fires
    session = desk.session
    logged = list(fires(desk.stove, (session,))) if session is not None else []
    # A fire that has done its stage shows nothing of the next one.
    fire = logged[-1] if logged and not found.is_to_go_cold else None
    waits = waits_for_cold(standing)
    return tuple(
        StageRow(
            title=one.stage.title,
            line=one.stage.line,
            is_done=one.done,
            is_next=one is found.next,
            state=stage_state(one, found, is_lit=fire is not None, waits=waits),
            measures=_measures(one.stage, fire, desk.unit) if one is found.next else (),
            watch=one.stage.watch if one is found.next else "",
        )
        for one in found.stages
    )


def _measures(stage: Stage, fire: Fire | None, unit: str) -> tuple[Measure, ...]:
    minutes, loads = (fire.minutes, fire.loads) if fire else (0.0, 0)
    hottest = fire.hottest if fire else None
    rise = 0.0 if hottest is None else max(hottest - USUAL_ROOM, 0.0)
    found = [
        _measure(minutes_measure(stage.minutes, minutes), minutes / stage.minutes),
        _measure(heat_measure(stage.top_reaches, hottest, unit), rise / (stage.top_reaches - USUAL_ROOM)),
    ]
    if stage.top_at_most is not None:
        limit = heat_limit(stage.top_at_most, hottest, unit)
        found.append(_measure(limit, rise / (stage.top_at_most - USUAL_ROOM), is_limit=True))
    if stage.loads:
        found.append(_measure(loads_measure(stage.loads, loads), loads / stage.loads))
    if stage.air_open_then_shut:
        seen = bool(fire and fire.air_open_then_shut)
        found.append(_measure(air_measure(seen=seen), float(seen)))
    return tuple(found)


def _measure(words: tuple[str, str], share: float, *, is_limit: bool = False) -> Measure:
    return Measure(wanted=words[0], shown=words[1], share=min(share, 1.0), is_limit=is_limit)
