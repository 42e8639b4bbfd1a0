"""Fit: the chance that a spot is in a task's band now and stays there for as long as the task takes."""

from dataclasses import dataclass
from enum import StrEnum

from cookstove_gui.cooking.tasks import Task


class FitState(StrEnum):
    """Whether a task can be done, at its best spot."""

    NOW = "good now"
    LATER = "good later"
    NOT = "not with this fire"
    REFUSED = "first fires not done"  # no food before a new stove's first fires are done or waived


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotFit:
    """One task on one spot."""

    spot: str
    chance_now: float  # in the band now and for the task's duration
    in_min: float | None  # when it will most likely be good, 0 if now, None if not within three hours
    chance_then: float  # the chance at that moment


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskFit:
    """One task with its best spot first."""

    task: Task
    state: FitState
    spots: tuple[SpotFit, ...]  # best first, never empty
