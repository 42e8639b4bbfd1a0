"""Which pot goes where when several are on the cooktop at once, and when one is worth moving.

The sum of the chances of being right is made greatest over all pots. A pot that stands somewhere stays there unless the
move, for each pot that has to move, gains at least `WORTH_MOVING`; only where it has no place any more it makes way.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from cookstove_gui.cooking.fit.fit import TaskFit
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.forecast.answers import FloatArray

LEAST_CHANCE = 0.5  # of a pot being right where it is put; common practice, no source
WORTH_MOVING = 0.1  # of chance, for each pot that is moved; judgement
_ROUNDING = 1e-9
_PINNED = 1000.0  # more than all other pots together can gain


@dataclass(frozen=True, slots=True, kw_only=True)
class Pot:
    """One pot: what is done in it, where it stands, and where it should be moved."""

    task: str  # key
    spot: str = ""  # empty while it has no place
    to: str = ""  # empty where it stands well
    is_own: bool = False  # the cook chose the spot; it is not moved

    @property
    def takes(self) -> tuple[str, ...]:
        """The spots that it keeps from others: where it stands, or where it should go."""
        return (self.to or self.spot,) if self.to or self.spot else ()


def assign(gains: FloatArray) -> tuple[int | None, ...]:
    """The column for each row with the greatest sum of gains, one row to a column; None for rows left over.

    Linear sum assignment (Kuhn and Munkres), by scipy.
    """
    from scipy.optimize import linear_sum_assignment

    rows, columns = linear_sum_assignment(gains, maximize=True)
    chosen = dict(zip(rows.tolist(), columns.tolist(), strict=True))
    return tuple(chosen.get(row) for row in range(len(gains)))


def chance_at(fit: TaskFit, spot: str) -> float:
    """The chance that a task is right on a spot now; 0 where it cannot be done."""
    return next((one.chance_now for one in fit.spots if one.spot == spot), 0.0)


def place_pots(task_fits: Iterable[TaskFit], pots: Sequence[Pot], *, may_move: bool = True) -> tuple[Pot, ...]:
    """The pots with a place for each that has none and can have one, and with the moves that are worth it.

    A chance below LEAST_CHANCE is no place. The oven is shared. With `may_move` false those that stand stay, and what
    was to be moved is still to be moved.
    """
    fits = {fit.task.key: fit for fit in task_fits}
    placed = list(pots)
    on_top = [place for place, pot in enumerate(pots) if pot.task in fits and fits[pot.task].task.place is Place.TOP]
    for place, pot in enumerate(pots):
        fit = fits.get(pot.task)
        if fit is not None and fit.task.place is Place.OVEN:
            best = fit.spots[0]
            placed[place] = replace(pot, spot=best.spot if best.chance_now >= LEAST_CHANCE else "", to="")
    names = tuple(sorted({spot.spot for place in on_top for spot in fits[pots[place].task].spots}))
    if not on_top or not names:
        return tuple(placed)
    pinned = {place for place in on_top if pots[place].is_own or not may_move}
    while True:
        gains = np.array([_gains(fits[pots[place].task], pots[place], names, place in pinned) for place in on_top])
        found = {
            place: names[column] if column is not None and gains[row, column] > 0.0 else ""
            for row, (place, column) in enumerate(zip(on_top, assign(gains), strict=True))
        }
        # What stands well is not taken off for another one: it stays unless it has a place to go to.
        stand_well = {place for place in on_top if chance_at(fits[pots[place].task], pots[place].spot) >= LEAST_CHANCE}
        put_out = {place for place in stand_well if not found[place]} - pinned
        if not put_out:
            break
        pinned |= put_out
    for place, name in found.items():
        pot = pots[place]
        if not pot.spot:
            placed[place] = replace(pot, spot=name, to="")
        elif may_move:
            placed[place] = replace(pot, spot=pot.spot if name else "", to=name if name != pot.spot else "")
    return tuple(placed)


def _gains(fit: TaskFit, pot: Pot, names: Sequence[str], is_pinned: bool) -> list[float]:
    """What each spot is worth to a pot: its chance there, and something more where it stands already."""
    if is_pinned and pot.takes:
        return [_PINNED if name in pot.takes else 0.0 for name in names]
    chances = [chance_at(fit, name) for name in names]
    return [
        chance + WORTH_MOVING - _ROUNDING if name == pot.spot else chance if chance >= LEAST_CHANCE else 0.0
        for name, chance in zip(names, chances, strict=True)
    ]


def total_chance(task_fits: Iterable[TaskFit], pots: Iterable[Pot]) -> float:
    """The sum of the chances of the pots, each where it stands or should go."""
    fits = {fit.task.key: fit for fit in task_fits}
    return sum(chance_at(fits[pot.task], spot) for pot in pots if pot.task in fits for spot in pot.takes)
