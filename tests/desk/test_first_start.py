"""The three ways to begin are offered once, and the greeting follows the kitchen's clock."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.first_start import begin, greeting, is_first_start
from cookstove_gui.desk.log.burning import burning_since
from cookstove_gui.stove.entries import Kind
from tests.held_clock import HeldClock


def test_the_ways_to_begin_are_offered_until_one_is_chosen(held_desk: Desk) -> None:
    assert is_first_start(held_desk)
    begin(held_desk)
    assert not is_first_start(held_desk)


def test_they_are_not_offered_where_something_was_logged_or_first_fires_are_due(held_desk: Desk) -> None:
    held_desk.save_stove(replace(held_desk.stove, is_new=True))
    assert not is_first_start(held_desk)
    held_desk.save_stove(replace(held_desk.stove, is_new=False))
    assert is_first_start(held_desk)
    held_desk.do(Kind.LIT)
    assert not is_first_start(held_desk)
    again = Desk(held_desk.logbook, held_desk.clock)
    assert not is_first_start(again)


@pytest.mark.parametrize(
    ("hour", "part"),
    [
        (3, "evening"),
        (4, "morning"),
        (11, "morning"),
        (12, "afternoon"),
        (17, "afternoon"),
        (18, "evening"),
        (23, "evening"),
    ],
)
def test_the_greeting_is_by_the_clock_of_the_kitchen(
    held_desk: Desk, held_clock: HeldClock, hour: int, part: str
) -> None:
    held_clock.now = held_clock.now.replace(hour=hour) - timedelta(minutes=held_desk.offset_minutes)
    assert greeting(held_desk) == f"Good {part}. No fire is lit yet."


def test_a_fire_burns_from_the_latest_lighting_until_it_is_out(held_desk: Desk, held_clock: HeldClock) -> None:
    def after(minutes: float, kind: Kind) -> datetime | None:
        held_clock.pass_minutes(minutes)
        held_desk.do(kind)
        return burning_since(held_desk)

    assert burning_since(held_desk) is None
    assert after(0, Kind.WOOD) is None
    first = held_clock() + timedelta(minutes=5)
    assert after(5, Kind.LIT) == first
    assert after(5, Kind.WOOD) == first
    assert after(60, Kind.OUT) is None
    second = held_clock() + timedelta(minutes=30)
    assert after(30, Kind.LIT) == second
    held_clock.pass_minutes(24 * 60)
    assert burning_since(held_desk) is None
