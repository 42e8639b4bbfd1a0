"""Desks in memory with a held clock: empty, with a fire behind it, with an oven that goes a made-up way."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.forecast.futures.outlook import outlook_of
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import kelvin
from tests.held_clock import HeldClock
from tests.once import stood

Going = Callable[..., Desk]


@pytest.fixture
def held_clock() -> HeldClock:
    return HeldClock(datetime(2026, 3, 14, 15, 0, tzinfo=UTC))


@pytest.fixture
def held_desk(held_clock: HeldClock) -> Iterator[Desk]:
    logbook = Logbook.in_memory()
    yield Desk(logbook, held_clock)
    logbook.close()


@pytest.fixture
def burning_desk(held_desk: Desk, held_clock: HeldClock) -> Desk:
    """Forty minutes of a fire, every part of the stove read, nothing worked out yet."""
    held_desk.do(Kind.LIT)
    held_desk.do(Kind.AIR, value="1")
    held_desk.do(Kind.WOOD, note="two splits")
    for oven, top, side, glass, flue in (
        (120, 230, 95, 180, 150),
        (240, 410, 150, 300, 290),
        (300, 470, 190, 380, 330),
    ):
        held_clock.pass_minutes(13)
        for spot, heat in (
            ("oven_centre", oven), ("top_front_left", top), ("side_left", side), ("door_glass", glass), ("flue", flue),
            ("room", 70),
        ):  # fmt: skip
            held_desk.read(str(heat), spot=spot)
    return held_desk


def stand(desk: Desk) -> Desk:
    """Work out how the stove stands."""
    assert desk.show(stood(desk.inputs()))
    return desk


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
        asked = burning_desk.inputs()
        shown = replace(standing, projection=projection, outlook=outlook, band=asked.band, serial=asked.serial)
        assert burning_desk.show(shown)
        return burning_desk

    return course
