"""A stove an hour into a fire, as the Plan page is asked about it."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.stove import Stove
from tests.once import stood

NOW = datetime(2026, 3, 14, 15, 0, tzinfo=UTC)


@pytest.fixture(scope="session")
def stands() -> tuple[Stove, Standing]:
    """A stove that has been warming for an hour."""
    clock = [NOW]
    desk = Desk(Logbook.in_memory(), clock=lambda: clock[0])
    desk.do(Kind.LIT)
    for minutes in (2, 30, 60):
        clock[0] = NOW + timedelta(minutes=minutes)
        desk.read(str(80 + 4 * minutes), spot="oven_centre")
        for spot in desk.stove.spots[1:7]:
            desk.read(str(120 + 5 * minutes), spot=spot.name)
    standing = stood(desk.inputs())
    projection = standing.projection
    # A few futures are enough to meet every corner, and quicker.
    return desk.stove, replace(standing, projection=replace(projection, kelvin=projection.kelvin[::8]))
