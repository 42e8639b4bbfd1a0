"""When to turn what is in the oven, from the difference between the oven's walls."""

from dataclasses import dataclass

import numpy as np

from cookstove_gui.cooking.fit.evenness import oven_sides
from cookstove_gui.forecast.answers import Projection
from cookstove_gui.stove.stove import OVEN_CENTRE, Stove

TURN_FROM = 25.0 / 1.8  # K, 25 °F from wall to wall: less browns evenly enough; common practice, no source
TURN_AT = 0.5  # of the bake; common practice, no source


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnReminder:
    """Turn the pan once: which wall is hotter, by how much, and when."""

    hotter: str  # spot
    cooler: str  # spot
    difference: float  # K, between the two over the next hour, middle of the futures
    least: float  # K, tenth percentile of the difference
    most: float  # K, ninetieth
    chance: float  # that the difference is at least `TURN_FROM`
    in_min: float  # from now; below 0 it was due before


def turn_reminder(projection: Projection, stove: Stove, elapsed_min: float, whole_min: float) -> TurnReminder | None:
    """Whether a bake should be turned, and when; None where fewer than two walls are known or they differ too little.

    `elapsed_min` and `whole_min` say how long it has been in, and will have been when done [min].
    """
    walls = [name for name in oven_sides(stove, projection) if name != OVEN_CENTRE]
    if len(walls) < 2:
        return None
    soon = projection.minutes <= 60.0
    means = np.stack([projection.of(wall)[:, soon].mean(axis=1) for wall in walls])  # (walls, futures)
    typical = np.median(means, axis=1)
    hot, cool = int(np.argmax(typical)), int(np.argmin(typical))
    apart = means[hot] - means[cool]
    least, difference, most = (float(value) for value in np.quantile(apart, [0.1, 0.5, 0.9]))
    if difference < TURN_FROM:
        return None
    return TurnReminder(
        hotter=walls[hot],
        cooler=walls[cool],
        difference=difference,
        least=least,
        most=most,
        chance=float(np.mean(apart >= TURN_FROM)),
        in_min=TURN_AT * whole_min - elapsed_min,
    )
