"""What pots on the cooktop draw: the tasks as they fit beside the others, and what all of them take from the oven.

Through the heat model, as a pan of the log draws. Those of the log are in the standing's futures already.
"""

from collections.abc import Iterable, Sequence

from cookstove_gui.cooking.fit.fit import FitState, TaskFit, fits
from cookstove_gui.cooking.fit.placement import Pot
from cookstove_gui.cooking.fit.promises import as_told
from cookstove_gui.cooking.fit.tasks import Place, task_of
from cookstove_gui.cooking.pans.shared_top import pans_counted
from cookstove_gui.forecast.answers import Projection
from cookstove_gui.one_road import with_pots
from cookstove_gui.situation import Standing
from cookstove_gui.stove.stove import SpotKind, Stove

_WITHIN_MIN = 90.0  # min in which the oven is at its coolest for them: it comes down late
_LONGEST = 180.0  # min that a pot is taken to stand
_WATER_MIN = 30.0  # min that a pan of water is taken to stand


def fits_together(standing: Standing, stove: Stove, pots: Sequence[Pot]) -> tuple[TaskFit, ...]:
    """The tasks of these pots beside the others: on a cooktop that those draw down, or in the oven beside it."""
    if not _shows_cooktop(standing, stove):
        return standing.fits
    coming = pots_to_come(standing, pots)
    minutes = _stay(coming)
    told = {fit.task.key: fit.task for fit in standing.fits}
    wanted = [told[key] for key in dict.fromkeys(pot.task for pot in pots) if key in told]
    groups = (
        (len(coming) - 1, [task for task in wanted if task.place is Place.TOP]),
        (len(coming), [task for task in wanted if task.place is Place.OVEN]),
    )
    asked = [(others, tasks) for others, tasks in groups if others > 0 and tasks]
    if not asked:
        return standing.fits
    may_cook = all(fit.state is not FitState.REFUSED for fit in standing.fits)
    found: dict[str, TaskFit] = {}
    for lowered, (_, tasks) in zip(with_pots(standing, [others for others, _ in asked], minutes), asked, strict=True):
        there = as_told(fits(lowered, stove, tasks, may_cook), standing.fits, 0.0)
        found |= {fit.task.key: fit for fit in there}
    return tuple(found.get(fit.task.key, fit) for fit in standing.fits)


def pots_to_come(standing: Standing, pots: Iterable[Pot]) -> list[Pot]:
    """Those for the cooktop that do not stand there by the log."""
    counted = pans_counted(standing.rows, standing.now)
    return [pot for pot in pots if _is_for_top(pot) and pot.spot not in counted]


def beside_pots(standing: Standing, stove: Stove, pots: Sequence[Pot]) -> tuple[Projection, float]:
    """The standing's futures beside those that are to come; and what a pan of water more takes from the oven [K]."""
    if not _shows_cooktop(standing, stove):
        return standing.projection, 0.0
    coming = pots_to_come(standing, pots)
    *beside, one_more = with_pots(
        standing, [*([len(coming)] if coming else []), len(coming) + 1], max(_stay(coming), _WATER_MIN)
    )
    found = beside[0] if beside else standing.projection
    return found, _cooler(one_more, found, stove)


def oven_cost(standing: Standing, stove: Stove, pots: Sequence[Pot]) -> float | None:
    """Kelvin by which the oven gets the cooler for these pots, at most; none where none stands on the cooktop.

    Those of the log count among them.
    """
    on_top = [pot for pot in pots if _is_for_top(pot)]
    if not on_top or not _shows_cooktop(standing, stove):
        return None
    coming = pots_to_come(standing, on_top)
    logged = len(on_top) - len(coming)
    without, beside = with_pots(standing, [-logged, len(coming)], _stay(on_top))
    return _cooler(beside, without, stove)


def _cooler(one: Projection, other: Projection, stove: Stove) -> float:
    """Kelvin by which the oven of one is the cooler at most."""
    if stove.oven_spot not in one.spots:
        return 0.0
    soon = one.minutes <= _WITHIN_MIN
    return float((other.of(stove.oven_spot) - one.of(stove.oven_spot)).mean(axis=0)[soon].max())


def _is_for_top(pot: Pot) -> bool:
    task = task_of(pot.task)
    return task is not None and task.place is Place.TOP


def _stay(pots: Sequence[Pot]) -> float:
    """Minutes for which they are taken to stand: as long as what takes longest."""
    return min(max((task.minutes for pot in pots if (task := task_of(pot.task))), default=0.0), _LONGEST)


def _shows_cooktop(standing: Standing, stove: Stove) -> bool:
    return any(spot.name in standing.projection.spots for spot in stove.spots_of(SpotKind.TOP))
