"""A new session on a hot stove starts from what is believed of it, and what was open is open after a restart."""

from dataclasses import replace
from pathlib import Path

import pytest

from cookstove_gui.commands.parsing import Request
from cookstove_gui.commands.question import Asker
from cookstove_gui.desk import Desk
from cookstove_gui.logbook.log_file import write_log
from cookstove_gui.logbook.stove_file import write_stove
from cookstove_gui.one_road import work_out
from cookstove_gui.stove.entries import Kind
from tests.desk.conftest import stand
from tests.held_clock import HeldClock


def number_of(desk: Desk) -> int:
    return desk.session.number if desk.session else 0


def oven(desk: Desk) -> float:
    standing = stand(desk).standing
    assert standing is not None
    assert standing.outlook.oven.p50 is not None
    return standing.outlook.oven.p50


def test_on_a_cold_stove_nothing_is_asked(burning_desk: Desk, held_clock: HeldClock) -> None:
    before = number_of(burning_desk)
    held_clock.pass_minutes(30 * 60)
    burning_desk.ask_new_session()
    assert burning_desk.warm_start is None
    assert number_of(burning_desk) != before
    assert burning_desk.rows == ()


def test_on_a_warm_stove_it_is_asked_and_nothing_begins_before_the_answer(
    burning_desk: Desk, held_clock: HeldClock
) -> None:
    before = number_of(burning_desk)
    held_clock.pass_minutes(40)
    burning_desk.ask_new_session()
    assert burning_desk.warm_start is not None
    assert burning_desk.warm_start.session.number == before
    assert number_of(burning_desk) == before
    burning_desk.leave_warm_start()
    assert burning_desk.warm_start is None
    assert number_of(burning_desk) == before


def test_a_warm_session_starts_from_what_is_believed(burning_desk: Desk, held_clock: HeldClock) -> None:
    held_clock.pass_minutes(60)
    before = oven(burning_desk)
    burning_desk.ask_new_session()
    burning_desk.start_warm()
    assert [row.kind for row in burning_desk.rows] == [Kind.CARRIED]
    assert oven(burning_desk) == pytest.approx(before, abs=10.0)


def test_a_stove_that_was_cold_starts_without_that_heat(burning_desk: Desk, held_clock: HeldClock) -> None:
    held_clock.pass_minutes(60)
    burning_desk.ask_new_session()
    burning_desk.start_session()
    assert burning_desk.rows == ()
    assert burning_desk.warm_start is None
    burning_desk.do(Kind.LIT)
    assert oven(burning_desk) < 330.0


def test_the_last_session_is_carried_on(burning_desk: Desk, held_clock: HeldClock) -> None:
    before, rows = number_of(burning_desk), len(burning_desk.rows)
    held_clock.pass_minutes(60)
    burning_desk.ask_new_session()
    burning_desk.carry_on()
    assert (number_of(burning_desk), len(burning_desk.rows)) == (before, rows)


def test_a_session_carried_on_after_hours_is_live_again(burning_desk: Desk, held_clock: HeldClock) -> None:
    before = number_of(burning_desk)
    held_clock.pass_minutes(6 * 60 + 10)
    burning_desk.ask_new_session()
    assert burning_desk.warm_start is not None
    burning_desk.carry_on()
    burning_desk.read("180", spot="oven_centre")
    assert number_of(burning_desk) == before
    assert burning_desk.is_live


def test_a_number_typed_after_hours_begins_a_session_as_warm_as_the_stove_is(
    burning_desk: Desk, held_clock: HeldClock
) -> None:
    before = number_of(burning_desk)
    held_clock.pass_minutes(6 * 60 + 10)
    burning_desk.do(Kind.LIT)
    assert number_of(burning_desk) != before
    assert [row.kind for row in burning_desk.rows] == [Kind.CARRIED, Kind.LIT]


def test_window_and_commands_agree_from_the_log_alone(
    burning_desk: Desk, held_clock: HeldClock, tmp_path: Path
) -> None:
    held_clock.pass_minutes(60)
    burning_desk.ask_new_session()
    burning_desk.start_warm()
    held_clock.pass_minutes(5)
    burning_desk.do(Kind.WOOD, note="two splits")
    write_log(tmp_path / "log.csv", burning_desk.rows)
    write_stove(tmp_path / "stove.toml", burning_desk.stove)
    request = Request(command="outlook", logs=(tmp_path / "log.csv",))
    asked = Asker(request, pytest.fail).ask(tmp_path / "log.csv").inputs
    commanded, windowed = work_out(asked), work_out(burning_desk.inputs())
    assert commanded.outlook.oven == windowed.outlook.oven
    assert commanded.outlook.band == windowed.outlook.band
    assert windowed.outlook.oven.p50 == pytest.approx(oven(burning_desk))


def again(desk: Desk) -> Desk:
    return Desk(desk.logbook, desk.clock)


def test_a_session_just_begun_is_open_after_a_restart(burning_desk: Desk, held_clock: HeldClock) -> None:
    burning_desk.start_session("Supper")
    found = again(burning_desk).session
    assert found is not None
    assert found.title == "Supper"


def test_an_old_session_that_was_looked_at_is_open_after_a_restart(burning_desk: Desk, held_clock: HeldClock) -> None:
    old = number_of(burning_desk)
    held_clock.pass_minutes(30 * 60)
    burning_desk.do(Kind.LIT)
    burning_desk.open_session(old)
    assert number_of(again(burning_desk)) == old


def test_a_session_that_went_cold_meanwhile_is_not_open_the_next_day(burning_desk: Desk, held_clock: HeldClock) -> None:
    held_clock.pass_minutes(24 * 60)
    assert again(burning_desk).session is None


def test_another_stoves_session_is_not_taken_up(burning_desk: Desk) -> None:
    burning_desk.save_stove(replace(burning_desk.stove, name="Cabin"))
    assert number_of(again(burning_desk)) == number_of(burning_desk)
