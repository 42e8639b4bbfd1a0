"""Made-up tasks and ovens that the tests of fit share."""

import numpy as np

from cookstove_gui.cooking.fit.fit import TaskFit, fits
from cookstove_gui.cooking.fit.tasks import Place, Task
from cookstove_gui.forecast.answers import Projection
from tests.cooking.made import STOVE, fahrenheit, projection

TIMES = 37


def task(low: float, high: float, *, minutes: float = 30, place: Place = Place.OVEN, evenness: float = 500) -> Task:
    return Task(
        key="made_up",
        name="made up",
        place=place,
        low=fahrenheit(low),
        high=fahrenheit(high),
        minutes=minutes,
        evenness=evenness / 1.8,
    )


def fit_of(projected: Projection, wanted: Task) -> TaskFit:
    (found,) = fits(projected, STOVE, (wanted,))
    return found


def random_oven(seed: int) -> Projection:
    rng = np.random.default_rng(seed)
    heats = {
        name: rng.uniform(250, 480) + 20 * rng.standard_normal((20, 1)) + np.cumsum(rng.normal(0, 5, (20, 19)), axis=1)
        for name in ("oven_centre", "oven_left")
    }
    return projection(heats)
