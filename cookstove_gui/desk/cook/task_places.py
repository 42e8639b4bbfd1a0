"""Where on the cooktop a task may be done now: each spot's chance, or what keeps it from it."""

from dataclasses import dataclass

from cookstove_gui.cooking.fit.fit import FitState, SpotFit
from cookstove_gui.cooking.fit.placement import LEAST_CHANCE
from cookstove_gui.cooking.fit.tasks import Place, Task
from cookstove_gui.desk.desk import Desk
from cookstove_gui.phrases.plan.pots import pot_chance


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskPlace:
    """One spot for one task."""

    will_do: bool
    words: str  # `8 in 10`, or why not


def task_places(desk: Desk, key: str) -> dict[str, TaskPlace]:
    """By spot; empty for a task of the oven, one that is refused, or none."""
    standing = desk.standing
    fit = next((fit for fit in standing.fits if fit.task.key == key), None) if standing is not None else None
    if standing is None or fit is None or fit.task.place is not Place.TOP or fit.state is FitState.REFUSED:
        return {}
    return {
        spot.spot: TaskPlace(will_do=True, words=pot_chance(spot.chance_now))
        if spot.chance_now >= LEAST_CHANCE
        else TaskPlace(will_do=False, words=_why_not(fit.task, spot, standing.zones[spot.spot].p50))
        for spot in fit.spots
        if spot.spot in standing.zones
    }


def _why_not(task: Task, spot: SpotFit, heat: float) -> str:
    if heat > task.high:
        return "too hot"
    if heat < task.low:
        return "too cool"
    return "too uneven" if spot.uneven_now >= LEAST_CHANCE else "not steady"
