"""What is read across the kitchen agrees with what the other views say."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from cookstove_gui.desk import Desk, Memory, work_out
from cookstove_gui.desk.heading import shown_rungs
from cookstove_gui.desk.large import AHEAD_MIN, BACK_MIN, large
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.phrases.figures import temperature_text
from cookstove_gui.stove.entries import Kind
from tests.held_clock import HeldClock

START = datetime(2026, 1, 5, 12, 2, tzinfo=UTC)


def fired(*ovens: int) -> tuple[Desk, HeldClock]:
    clock = HeldClock(START)
    desk = Desk(Logbook.in_memory(), clock)
    desk.do(Kind.LIT)
    desk.do(Kind.AIR, value="1")
    desk.do(Kind.WOOD, note="two splits")
    for oven in ovens:
        clock.pass_minutes(9)
        desk.read(str(oven), spot="oven_centre")
        desk.read(str(oven + 110), spot="top_front_left")
    assert desk.show(work_out(desk.inputs(), Memory()))
    return desk, clock


def test_before_anything_is_read_it_says_what_to_do() -> None:
    desk = Desk(Logbook.in_memory(), HeldClock(START))
    shown = large(desk)
    assert shown.oven == "–"
    assert shown.to_do == shown_rungs(desk)
    assert shown.ribbon == ()
    desk.logbook.close()


def test_the_oven_on_its_way() -> None:
    desk, _ = fired(120, 175, 240, 300)
    shown, standing = large(desk), desk.standing
    assert standing is not None
    assert standing.outlook.oven.p50 is not None
    assert shown.oven == temperature_text(standing.outlook.oven.p50, "F")
    assert shown.heat == "bread heat"
    minutes = [minute for minute, _ in shown.ribbon]
    assert minutes == sorted(minutes)
    assert minutes[-1] == AHEAD_MIN
    assert minutes[0] >= -BACK_MIN
    now = dict(shown.ribbon)[0.0]
    assert temperature_text(now, "F") == shown.oven
    if shown.arrival_min is not None:
        earliest, likely, latest = shown.arrival_min
        assert earliest <= likely <= latest
        assert likely == pytest.approx(standing.outlook.band.line_enters_min)
        assert desk.edge.clock(likely) in shown.likely
    desk.logbook.close()


def test_an_oven_at_its_heat_says_until_when() -> None:
    desk, _ = fired(190, 290, 370, 392)
    shown = large(desk)
    assert shown.window == "now"
    assert shown.arrival_min is None
    desk.logbook.close()


def test_no_heat_is_promised_while_first_fires_run() -> None:
    desk, _ = fired(190, 290, 370, 392)
    desk.save_stove(replace(desk.stove, is_new=True))
    assert desk.show(work_out(desk.inputs(), Memory()))
    assert (large(desk).heat, large(desk).window) == ("", "")
    desk.logbook.close()


def test_a_session_that_is_over_promises_nothing() -> None:
    desk, clock = fired(120, 175, 240, 300)
    assert desk.session is not None
    clock.pass_minutes(60 * 30)
    desk.open_session(desk.session.number)
    desk.show(work_out(desk.inputs(), Memory()))
    shown = large(desk)
    assert (shown.window, shown.likely, shown.arrival_min, shown.cautions) == ("", "", None, "")
    desk.logbook.close()


def test_a_present_danger_says_what_to_do_at_once_in_full() -> None:
    desk, clock = fired(120, 175, 240, 300)
    clock.pass_minutes(1)
    desk.read("640", spot="flue")
    assert desk.show(work_out(desk.inputs(), Memory()))
    shown = large(desk)
    assert shown.to_do == ("Flue pipe too hot.",)
    assert shown.then == "Shut the air down now and add no wood."
    assert "Flue pipe too hot" in shown.cautions
    desk.logbook.close()
