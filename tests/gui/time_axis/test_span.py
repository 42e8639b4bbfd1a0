"""The stretch of time that is seen: now at its share of the width, moved by hand and returned."""

from datetime import UTC, datetime, timedelta

import pytest
from pytestqt.qtbot import QtBot

from cookstove_gui.gui.time_axis.span import AXIS_WIDTH, TimeSpan

BEGAN = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)


def span_at(minutes: float, *, is_live: bool = True, arrival: float | None = None, width: float = 764) -> TimeSpan:
    made = TimeSpan()
    made.set_width(width)
    made.show_session(
        BEGAN,
        BEGAN + timedelta(minutes=minutes),
        offset_minutes=0,
        is_live=is_live,
        arrival=None if arrival is None else BEGAN + timedelta(minutes=arrival),
    )
    return made


def test_now_stands_at_45_percent_of_the_plot_with_112_minutes_ahead() -> None:
    span = span_at(80)
    assert (span.x(80, 764) - AXIS_WIDTH) / (764 - AXIS_WIDTH) == pytest.approx(0.45)
    assert span.high - 80 == pytest.approx(112)
    assert 80 - span.low == pytest.approx(92, abs=1)


def test_a_wider_axis_looks_further_ahead_but_no_more_than_three_hours() -> None:
    assert 112 < span_at(80, width=1000).high - 80 < 180
    assert span_at(80, width=4000).high - 80 == pytest.approx(180)


def test_a_narrow_axis_looks_as_far_as_designed() -> None:
    assert span_at(80, width=400).high - 80 == pytest.approx(112)


def test_an_arrival_beyond_it_is_brought_into_sight() -> None:
    assert span_at(80, arrival=80 + 130).high == pytest.approx(80 + 150)
    assert span_at(80, arrival=80 + 175).high == pytest.approx(80 + 180)


def test_an_old_session_is_seen_whole_and_nothing_ahead_of_it() -> None:
    span = span_at(300, is_live=False)
    assert span.low < 0
    assert 300 < span.high < 320


def test_pixels_and_minutes_are_each_others_inverse() -> None:
    span = span_at(80)
    assert span.minute(span.x(61.5, 900), 900) == pytest.approx(61.5)


def test_it_slides_with_now_until_it_is_moved_by_hand(qtbot: QtBot) -> None:
    span = span_at(80)
    low = span.low
    span.show_session(BEGAN, BEGAN + timedelta(minutes=90), offset_minutes=0, is_live=True, arrival=None)
    assert span.low == pytest.approx(low + 10)
    with qtbot.waitSignal(span.followed) as told:
        span.move(-30)
    assert told.args == [False]
    moved = span.low
    span.show_session(BEGAN, BEGAN + timedelta(minutes=95), offset_minutes=0, is_live=True, arrival=None)
    assert span.low == moved
    span.return_to_now()
    assert span.follows
    assert (span.x(95, 764) - AXIS_WIDTH) / (764 - AXIS_WIDTH) == pytest.approx(0.45)


def test_it_is_never_moved_out_of_sight_of_all_there_is() -> None:
    span = span_at(80)
    span.move(-10_000)
    assert span.high > 0
    span.move(20_000)
    assert span.low < 80 + 180
