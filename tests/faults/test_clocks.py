"""A typed time, and this computer's clock, where either can be wrong: asked or told, never silently taken."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.one_road import work_out
from cookstove_gui.phrases.clock import clock_words
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import came_twice, local_offset_minutes, parse_local_clock
from tests.held_clock import HeldClock

# Clocks in New York went back at 2:00 on 1 November 2026 and forward at 2:00 on 8 March 2026 (IANA time zone database).
NEW_YORK = ZoneInfo("America/New_York")


def _at(month: int, day: int, hour: int, minute: int, fold: int = 0) -> datetime:
    return datetime(2026, month, day, hour, minute, fold=fold, tzinfo=NEW_YORK).astimezone(UTC)


def test_a_time_typed_after_the_clocks_went_back_has_the_offset_of_its_own_hour() -> None:
    now = _at(11, 1, 3, 30)
    at = parse_local_clock("0:30", now, NEW_YORK)
    assert at == _at(11, 1, 0, 30)
    assert local_offset_minutes(at, NEW_YORK) == -240
    assert local_offset_minutes(now, NEW_YORK) == -300


def test_a_time_that_came_twice_is_the_later_one_that_has_passed() -> None:
    assert parse_local_clock("1:30", _at(11, 1, 3, 30), NEW_YORK) == _at(11, 1, 1, 30, fold=1)
    assert parse_local_clock("1:30", _at(11, 1, 1, 40), NEW_YORK) == _at(11, 1, 1, 30)
    assert came_twice(_at(11, 1, 1, 30), NEW_YORK)
    assert not came_twice(_at(11, 1, 2, 30), NEW_YORK)


def test_a_time_that_never_came_is_told() -> None:
    with pytest.raises(InputProblem, match="left out when the clocks went forward"):
        parse_local_clock("2:30", _at(3, 8, 4, 0), NEW_YORK)
    assert parse_local_clock("1:30", _at(3, 8, 4, 0), NEW_YORK) == _at(3, 8, 1, 30)
    assert parse_local_clock("3:30", _at(3, 8, 4, 0), NEW_YORK) == _at(3, 8, 3, 30)


def test_every_minute_of_a_year_is_typed_back_to_itself_or_its_twin() -> None:
    at = datetime(2026, 1, 1, 0, 7, tzinfo=UTC)
    while at.year == 2026:
        local = at.astimezone(NEW_YORK)
        found = parse_local_clock(f"{local.hour}:{local.minute:02d}", at + timedelta(minutes=3), NEW_YORK)
        assert found == at
        at += timedelta(minutes=37 * 60 + 11)


def test_a_time_that_came_twice_is_asked_about_when_it_is_entered() -> None:
    clock = HeldClock(_at(11, 1, 3, 30))
    desk = Desk(Logbook.in_memory(), clock, NEW_YORK)
    receipt = desk.read("250", spot="oven_centre", at_text="1:30")
    assert "came twice" in receipt.question
    assert receipt.entry.offset_minutes == -300
    assert desk.read("255", spot="oven_centre", at_text="2:40").question == ""


def test_no_reading_leaves_the_projection_when_the_clock_is_set_back() -> None:
    clock = HeldClock(_at(1, 5, 9, 0))
    desk = Desk(Logbook.in_memory(), clock, NEW_YORK)
    desk.do(Kind.LIT)
    for heat in range(100, 260, 10):
        clock.pass_minutes(4)
        desk.read(str(heat), spot="oven_centre")
    clock.pass_minutes(-60)
    standing = work_out(desk.inputs())
    assert standing.now == desk.entries[-1].at
    assert "If the clock was set back" in desk.clock_trouble()
    clock.pass_minutes(61)
    assert desk.clock_trouble() == ""


def test_a_session_of_a_mistyped_year_takes_no_entry_of_today() -> None:
    clock = HeldClock(datetime(2052, 1, 5, 12, 0, tzinfo=UTC))
    book = Logbook.in_memory()
    Desk(book, clock, NEW_YORK).read("250", spot="oven_centre")
    today = HeldClock(datetime(2026, 1, 5, 12, 0, tzinfo=UTC))
    desk = Desk(book, today, NEW_YORK)
    desk.read("300", spot="oven_centre")
    assert [one.entry_count for one in desk.sessions] == [1, 1]
    assert "has entries up to 5 January 2052" in desk.clock_trouble()


@pytest.mark.parametrize(
    ("now", "says"),
    [
        (datetime(2100, 1, 1, tzinfo=UTC), "set it right"),
        (datetime(1970, 1, 1, 12, tzinfo=UTC), "set it right"),
        (datetime(2026, 3, 1, 12, 0, tzinfo=UTC), ""),
        (datetime(2026, 3, 1, 11, 55, tzinfo=UTC), ""),
        (datetime(2026, 3, 1, 11, 50, tzinfo=UTC), "set back"),
    ],
)
def test_a_clock_that_cannot_be_right_is_told(now: datetime, says: str) -> None:
    words = clock_words(now, datetime(2026, 3, 1, 12, 0, tzinfo=UTC), None)
    assert says in words
    assert bool(words) is bool(says)


def test_after_a_sleep_of_an_hour_the_next_answer_is_of_the_hour_that_it_is() -> None:
    clock = HeldClock(_at(1, 5, 9, 0))
    desk = Desk(Logbook.in_memory(), clock, NEW_YORK)
    desk.do(Kind.LIT)
    desk.read("150", spot="oven_centre")
    before = work_out(desk.inputs())
    clock.pass_minutes(60)
    after = work_out(desk.inputs())
    assert after.now - before.now == timedelta(hours=1)
    assert desk.clock_trouble() == ""
