"""A desk in memory whose clock moves only when told, and the same with an hour of a fire behind it."""

from collections.abc import Iterator
from datetime import UTC, datetime

import pytest

from cookstove_gui.desk import Desk, Memory, work_out
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Kind
from tests.held_clock import HeldClock


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
    assert desk.show(work_out(desk.inputs(), Memory()))
    return desk
