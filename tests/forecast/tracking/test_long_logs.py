"""Logs of years and pauses of years: every heat stays one that can be, and what no longer matters costs nothing."""

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.tracking.tracker import BLOCK, COLD_AFTER_HOURS, MOST_FOLLOWED, worth_following
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.stove.stove import stove_with_default_spots
from tests.following import track

STOVE = stove_with_default_spots("Kitchen")
NOON = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)
_FLAME = 3300.0  # K


def _row(number: int, minute: float, value: str = "350") -> Entry:
    return Entry(
        number=number,
        at=NOON + timedelta(minutes=minute),
        offset_minutes=0,
        kind=Kind.READING,
        spot="oven_centre",
        value=value,
        unit="F",
    )


LIT = Entry(number=1, at=NOON, offset_minutes=0, kind=Kind.LIT)
FIRING = (LIT, *(_row(number, 10 * number, str(100 + 30 * number)) for number in range(2, 9)))


@settings(max_examples=8)
@given(st.floats(min_value=0.1, max_value=5_000_000.0))
def test_no_pause_makes_a_heat_that_cannot_be(hours: float) -> None:
    belief = track(STOVE, FIRING, FIRING[-1].at + timedelta(hours=hours))
    temperatures = belief.ensemble.x[heat.TEMPERATURES]
    assert np.isfinite(belief.ensemble.x).all()
    assert temperatures.min() > 200.0
    assert temperatures.max() < _FLAME


def test_after_a_long_pause_the_stove_is_at_a_room_s_heat() -> None:
    belief = track(STOVE, FIRING, FIRING[-1].at + timedelta(days=400))
    assert np.abs(np.mean(belief.ensemble.x[heat.AIR]) - 293.0) < 3.0
    assert np.ptp(belief.ensemble.x[heat.ROOM]) < 100.0


def test_what_came_before_a_pause_of_days_is_left_out() -> None:
    later = int(60 * COLD_AFTER_HOURS) + 100
    pause = (*FIRING, _row(20, later), _row(21, later + 5))
    assert worth_following(pause) == pause[-2:]
    short = (*FIRING, _row(20, later - 100))
    assert worth_following(short) == short


def test_of_a_long_log_the_latest_rows_and_what_was_last_set_are_followed() -> None:
    air = Entry(number=3, at=NOON + timedelta(minutes=3), offset_minutes=0, kind=Kind.AIR, value="0.3")
    rows = (LIT, Entry(number=2, at=NOON, offset_minutes=0, kind=Kind.AIR, value="1"), air)
    rows += tuple(_row(number, number) for number in range(4, MOST_FOLLOWED + 700))
    followed = worth_following(rows)
    assert followed[:2] == (LIT, air)
    assert followed[2:] == rows[-len(followed) + 2 :]
    assert MOST_FOLLOWED - BLOCK < len(followed) <= MOST_FOLLOWED + 2


@pytest.mark.parametrize("count", [MOST_FOLLOWED, MOST_FOLLOWED + 1, MOST_FOLLOWED + BLOCK])
def test_a_new_row_seldom_changes_where_the_following_begins(count: int) -> None:
    rows = tuple(_row(number, number) for number in range(1, count + 2))
    first, then = worth_following(rows[:count]), worth_following(rows)
    is_new_block = (count - MOST_FOLLOWED) % BLOCK == 0
    assert (first[0] == then[0]) is not is_new_block
