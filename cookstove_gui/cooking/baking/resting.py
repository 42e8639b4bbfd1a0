"""What a roast's core still rises by once it is out: the heat near its surface goes on inwards."""

import numpy as np

from cookstove_gui.cooking.baking.bodies import warmed
from cookstove_gui.cooking.baking.catalogue import Bake
from cookstove_gui.cooking.baking.doubts import Ensemble
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.stove.stove import USUAL_ROOM

REST_MIN = 20.0  # min that it is followed, on the table


def rise_while_resting(
    bake: Bake, ensemble: Ensemble, oven: FloatArray, taken: FloatArray, step: float, pressure: float
) -> float | None:
    """How much the core of the middle member rises [K] when it is taken out as it is done; none if that is never.

    `oven` (steps, members) [K], a moment every `step` seconds; `taken` [min from going in].
    """
    order = np.argsort(taken)
    middle = order[len(order) // 2]
    if not np.isfinite(taken[middle]):
        return None
    out = int(np.ceil(taken[middle] * 60.0 / step))
    air = np.full(out + 1 + int(REST_MIN * 60.0 / step), USUAL_ROOM)
    air[: out + 1] = oven[: out + 1, middle]
    core = warmed(bake, Ensemble(rows=ensemble.rows[[middle]]), air, step, pressure).core[:, 0]
    return float(core[out:].max() - core[out])
