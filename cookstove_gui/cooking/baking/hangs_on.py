"""Which doubt a done time hangs on most."""

from dataclasses import dataclass

import numpy as np

from cookstove_gui.cooking.baking.doubts import SOURCE_OF, Doubt, Ensemble, Source
from cookstove_gui.forecast.answers import NORMAL_P90, FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class Hang:
    """How long the window would be if this alone were in doubt; together they are less than their sum."""

    source: Source
    window_min: float


def hangs_on(ensemble: Ensemble, taken: FloatArray) -> tuple[Hang, ...]:
    """The doubts behind the times at which the members are done [min], the greatest first; none where many never are.

    First-order shares by a linear fit of the times on the members' rows; the few that take very long, in an oven that
    goes out, are no part of the window and do not stretch it.
    """
    ever = np.isfinite(taken)
    if ever.mean() < 0.9:
        return ()
    rows = ensemble.rows[ever]
    apart = rows - rows.mean(axis=0)
    times = np.clip(taken[ever], *np.quantile(taken[ever], (0.05, 0.95)))
    slopes, *_ = np.linalg.lstsq(apart, times - times.mean(), rcond=None)
    found = []
    for source in Source:
        of_it = [doubt for doubt in Doubt if SOURCE_OF[doubt] is source]
        spread = float((apart[:, of_it] @ slopes[of_it]).std())
        found.append(Hang(source=source, window_min=2 * NORMAL_P90 * spread))
    return tuple(sorted(found, key=lambda one: -one.window_min))
