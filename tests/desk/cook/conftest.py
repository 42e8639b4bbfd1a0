"""A desk whose oven goes a made-up way from now on."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.forecast.futures.outlook import outlook_of
from cookstove_gui.units import kelvin
from tests.desk.conftest import stand

Going = Callable[..., Desk]


@pytest.fixture
def going(burning_desk: Desk) -> Going:
    """The oven of every future goes straight through heats [°F] at minutes from now; `spread` °F to either side."""
    stand(burning_desk)

    def course(*points: tuple[float, float], spread: float = 0.0) -> Desk:
        standing = burning_desk.standing
        assert standing is not None
        projection = standing.projection
        minutes, heats = zip(*points, strict=True)
        line = np.interp(projection.minutes, minutes, heats)
        futures = projection.kelvin.copy()
        sides = np.linspace(-spread, spread, len(futures))[:, np.newaxis]
        futures[:, :, projection.spots.index("oven_centre")] = kelvin(line + sides, "F")
        projection = replace(projection, kelvin=futures)
        outlook = outlook_of(projection, burning_desk.stove, burning_desk.band)
        shown = replace(standing, projection=projection, outlook=outlook, serial=burning_desk.inputs().serial)
        assert burning_desk.show(shown)
        return burning_desk

    return course
