"""Which session lies on the table after a restart, and what a row becomes there: its clock, its place, its question."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.entries import Kind
from tests.held_clock import HeldClock
from tests.rows import rows_of

HOUR = 60.0


def restarted(desk: Desk) -> Desk:
    return Desk(desk.logbook, desk.clock)


def number(desk: Desk) -> int | None:
    return desk.session.number if desk.session else None


@pytest.fixture
def old_and_new(held_desk: Desk, held_clock: HeldClock) -> tuple[int, int]:
    """A session of three days ago, and one that is being written."""
    rows = rows_of((0, "lit", "", "", ""), start=held_clock() - timedelta(days=3))
    held_desk.do(Kind.LIT)
    live = number(held_desk)
    assert live is not None
    return held_desk.logbook.add_session(held_desk.stove.name, "Old", rows).number, live


def test_an_old_session_looked_at_is_still_there_after_a_restart(held_desk: Desk, old_and_new: tuple[int, int]) -> None:
    old, _ = old_and_new
    held_desk.open_session(old)
    assert number(restarted(held_desk)) == old


def test_one_that_was_being_written_is_not_once_it_went_cold(
    held_desk: Desk, held_clock: HeldClock, old_and_new: tuple[int, int]
) -> None:
    _, live = old_and_new
    assert number(restarted(held_desk)) == live
    held_clock.pass_minutes(6 * HOUR)
    assert number(restarted(held_desk)) == live
    held_clock.pass_minutes(1)
    assert number(restarted(held_desk)) is None


def test_an_empty_session_just_begun_is_there_after_a_restart(held_desk: Desk, old_and_new: tuple[int, int]) -> None:
    held_desk.start_session("Evening")
    assert number(restarted(held_desk)) == number(held_desk)


def test_the_warm_session_is_taken_up_whatever_was_brought_in_after_it(
    held_desk: Desk, held_clock: HeldClock, old_and_new: tuple[int, int]
) -> None:
    old, live = old_and_new
    assert old > live
    held_desk.choose_stove(held_desk.stove.name)
    assert number(held_desk) == live


def test_a_session_that_is_gone_from_the_logbook_is_not_looked_for(
    held_desk: Desk, old_and_new: tuple[int, int]
) -> None:
    _, live = old_and_new
    for kept in ("99 old", "none", ""):
        held_desk.set_setting("session on the table", kept)
        assert number(restarted(held_desk)) == live


def test_a_log_far_ahead_of_the_clock_is_not_being_written(held_desk: Desk, held_clock: HeldClock) -> None:
    held_desk.do(Kind.LIT)
    held_clock.pass_minutes(-6 * HOUR)
    assert held_desk.is_live
    assert held_desk.inputs().now == held_clock() + timedelta(hours=6)  # so that no reading drops out
    held_clock.pass_minutes(-1)
    assert not held_desk.is_live


def test_a_typed_time_is_of_the_kitchens_zone() -> None:
    clock = HeldClock(datetime(2026, 7, 1, 18, 0, tzinfo=UTC))  # 14:00 by the clock of that zone
    desk = Desk(Logbook.in_memory(), clock, ZoneInfo("America/New_York"))
    desk.do(Kind.LIT, at_text="13:30")
    (row,) = desk.rows
    assert (row.at, row.offset_minutes) == (clock() - timedelta(minutes=30), -240)


@pytest.mark.parametrize(
    ("hour", "typed", "asks"),
    # In that zone the clocks of 2026-11-01 went from 2:00 back to 1:00, at 6:00 by UTC (IANA time zone database).
    [(7, "1:30", True), (7, "0:30", False), (7, "", False), (6, "", False), (6, "-30", True)],
)
def test_a_clock_that_came_twice_is_asked_about_where_it_was_typed(hour: int, typed: str, asks: bool) -> None:
    clock = HeldClock(datetime(2026, 11, 1, hour, 45, tzinfo=UTC))
    desk = Desk(Logbook.in_memory(), clock, ZoneInfo("America/New_York"))
    receipt = desk.do(Kind.LIT, at_text=typed)
    assert receipt.question.endswith("came twice as the clocks went back; this is the later one.") is asks


def test_a_correction_that_is_unlikely_is_kept_and_questioned(held_desk: Desk) -> None:
    held_desk.read("300", spot="oven_centre")
    receipt = held_desk.correct(1, "2200")
    assert held_desk.entries[-1].value == "2200"
    assert receipt.question
    assert held_desk.correct(receipt.entry.number, "310").question == ""


def test_what_stands_on_no_spot_of_the_cooktop_is_refused(held_desk: Desk) -> None:
    for spot in ("", "oven_centre"):
        with pytest.raises(InputProblem):
            held_desk.do(Kind.PAN, spot=spot, value="on")
    assert held_desk.rows == ()


def test_with_nothing_entered_there_is_nothing_to_correct(held_desk: Desk) -> None:
    for act in (held_desk.undo, held_desk.redo, lambda: held_desk.take_back(1), lambda: held_desk.correct(1, "2")):
        with pytest.raises(InputProblem) as refused:
            act()
        assert refused.value.sentence == "No session is open yet; enter something first."


def test_a_session_without_a_title_is_named_for_its_day(held_desk: Desk) -> None:
    held_desk.start_session("")
    assert held_desk.session is not None
    day = held_desk.clock().astimezone()
    assert held_desk.session.title.startswith(f"{day:%A} {day.day} ")
    with pytest.raises(InputProblem) as refused:
        held_desk.rename_session(held_desk.session.number, "  ")
    assert refused.value.sentence == "The session has no title; type one, such as Sunday bread."
    held_desk.rename_session(held_desk.session.number, " Sunday bread ")
    assert held_desk.session.title == "Sunday bread"
