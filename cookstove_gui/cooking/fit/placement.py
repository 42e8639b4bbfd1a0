"""Which pot goes where when several are on the cooktop at once."""

from collections.abc import Iterable

import numpy as np

from cookstove_gui.cooking.fit.fit import TaskFit
from cookstove_gui.cooking.fit.tasks import Place
from cookstove_gui.forecast.answers import FloatArray

LEAST_CHANCE = 0.5  # of a pot being right where it is put; common practice, no source


def assign(gains: FloatArray) -> tuple[int | None, ...]:
    """The column for each row with the greatest sum of gains, one row to a column; None for rows left over.

    Linear sum assignment (Kuhn and Munkres), by scipy.
    """
    from scipy.optimize import linear_sum_assignment

    rows, columns = linear_sum_assignment(gains, maximize=True)
    chosen = dict(zip(rows.tolist(), columns.tolist(), strict=True))
    return tuple(chosen.get(row) for row in range(len(gains)))


def place_pots(task_fits: Iterable[TaskFit], chosen_keys: Iterable[str]) -> dict[str, str | None]:
    """A spot for each chosen task, one pot to a spot, with the greatest sum of chances now; the oven is shared.

    A chance below LEAST_CHANCE is no place. A task gets none if there are more pots than spots, if no spot will do for
    it, or if it is not among the fits.
    """
    by_key = {fit.task.key: fit for fit in task_fits}
    placed: dict[str, str | None] = dict.fromkeys(chosen_keys)
    pots = []
    for key in placed:
        fit = by_key.get(key)
        if fit is None:
            continue
        if fit.task.place is Place.OVEN:
            placed[key] = fit.spots[0].spot if fit.spots[0].chance_now >= LEAST_CHANCE else None
        else:
            pots.append(fit)
    names = tuple(dict.fromkeys(sorted(spot.spot for fit in pots for spot in fit.spots)))
    if not pots:
        return placed
    gains = np.zeros((len(pots), len(names)))
    for row, fit in enumerate(pots):
        for spot in fit.spots:
            gains[row, names.index(spot.spot)] = spot.chance_now if spot.chance_now >= LEAST_CHANCE else 0.0
    for row, column in enumerate(assign(gains)):
        if column is not None and gains[row, column] > 0:
            placed[pots[row].task.key] = names[column]
    return placed
