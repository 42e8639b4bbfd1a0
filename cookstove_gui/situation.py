"""How a stove stands at one moment: what is asked, what is answered, and what the answer says at a glance.

Records alone, without what works them out (`one_road.py`), so that the window can be shown before that is loaded.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from cookstove_gui.forecast.answers import AHEAD, LEAVE, TurnKind
from cookstove_gui.stove.entries import Kind

if TYPE_CHECKING:
    from datetime import datetime

    from cookstove_gui.cooking.baking.under_way import UnderWay
    from cookstove_gui.cooking.fires.first_fires import FirstFires
    from cookstove_gui.cooking.fires.steps import Alternative
    from cookstove_gui.cooking.fit.fit import TaskFit
    from cookstove_gui.cooking.safety.caution import Caution
    from cookstove_gui.forecast.answers import (
        Action,
        DoubtedReading,
        NextReading,
        Outlook,
        Projection,
        Trace,
        Turn,
        Zone,
    )
    from cookstove_gui.forecast.model.character import Character
    from cookstove_gui.forecast.tracking.belief import Belief
    from cookstove_gui.stove.entries import Entry, HeatBand, Session
    from cookstove_gui.stove.stove import Stove

SURE_OF_TURN = 0.6  # a turn of the fire is only spoken of from this chance on


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """A stove, its log, what was learned of it, what is wanted of it, and the moment asked about."""

    stove: Stove
    rows: tuple[Entry, ...]  # the raw log; what is later than `now` is not looked at
    now: datetime
    band: HeatBand
    character: Character | None = None  # learned from the sessions before; none for a stove never studied
    earlier: tuple[Session, ...] = ()  # the sessions before, for the first fires of a new stove
    baked: tuple[Session, ...] = ()  # those in which the same things were baked as now
    action: Action = LEAVE  # what-if beside the present course; LEAVE for none
    ahead: tuple[int, ...] = AHEAD
    serial: int = 0  # of the request; a newer one makes an older one's result stale


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """What the latest row told of the course to come. Its times do not move until something is read or done."""

    asked_at: datetime
    ahead: Projection = field(compare=False)  # the futures at that moment
    turns: tuple[Turn, ...]  # minutes from `asked_at`
    next_reading: NextReading | None  # likewise
    fits: tuple[TaskFit, ...] = ()  # likewise
    bakes: tuple[UnderWay, ...] = ()  # what is in the oven, the first that went in first
    hottest_top: float = 0.0  # K, of the cooktop as it was believed then
    tried: Mapping[Action, Projection] = field(default_factory=dict, compare=False)  # the oven after steps tried then


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """How a stove stands at one moment, and what is likely to come."""

    serial: int
    now: datetime
    stove: Stove  # with every spot that the log names
    band: HeatBand
    rows: tuple[Entry, ...]  # in force, in order of time
    belief: Belief
    first_fires: FirstFires
    cautions: tuple[Caution, ...]
    outlook: Outlook
    projection: Projection
    unfed: Projection | None  # while first fires run: if nothing more is put on
    trace: Trace  # as it is known now
    believed: Trace  # as it was believed at each moment
    zones: dict[str, Zone]
    fits: tuple[TaskFit, ...]
    course: Course
    turns: tuple[Turn, ...]  # those of the course, and what has turned already
    doubted: tuple[DoubtedReading, ...]  # without those that the cook says are right
    best_step: Alternative | None  # looked for only when the present course falls short of the band
    alternative: Alternative | None

    @property
    def next_reading(self) -> NextReading | None:
        """The reading worth taking; none before anything was read."""
        return self.course.next_reading

    @property
    def bakes(self) -> tuple[UnderWay, ...]:
        """What is in the oven and what becomes of it, by what the latest row told."""
        return self.course.bakes


def was_read(rows: Sequence[Entry]) -> bool:
    """Whether anything was read yet."""
    return any(row.kind is Kind.READING for row in rows)


def fire_is_out(found: Sequence[Turn]) -> bool:
    """Whether the fire is likely out; wood put on it would not burn then."""
    return any(turn.kind is TurnKind.FIRE_OUT and turn.chance >= SURE_OF_TURN for turn in found)
