"""Pointing at the time axis: the oven as it was known, as it may be, and the chance that it is at the heat wanted."""

from datetime import timedelta

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.oven_at import curve_said, oven_at, oven_number, step_outcome
from cookstove_gui.forecast.answers import HORIZON_MINUTES, Action, ActionKind
from cookstove_gui.phrases.figures import estimate_text, temperature_text
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import kelvin
from tests.desk.conftest import Going, stand
from tests.held_clock import HeldClock

MINUTE = timedelta(minutes=1)


def at(desk: Desk, minutes: float):  # type: ignore[no-untyped-def]
    assert desk.standing is not None
    return oven_at(desk, desk.standing.now + minutes * MINUTE)


def test_a_moment_to_come_has_the_heat_drawn_there_and_a_chance(going: Going) -> None:
    desk = going((0, 300), (100, 500), spread=10)
    desk.choose_band("375-425")
    for minute, chance in ((7.5, 0.0), (50.0, 1.0), (62.5, 0.5)):
        found = at(desk, minute)
        assert found.p50 == pytest.approx(kelvin(300.0 + 2 * minute, "F"))
        assert (found.p10, found.p90) == pytest.approx((found.p50 - 8 / 1.8, found.p50 + 8 / 1.8), abs=0.1)
        assert found.in_band == pytest.approx(chance, abs=0.01)
        assert found.at == desk.standing.now + minute * MINUTE if desk.standing else False


def test_a_heat_at_the_very_edge_of_the_band_is_in_it(going: Going) -> None:
    desk = going((0, 400))
    for band, chance in (("400-450", 1.0), ("350-400", 1.0), ("401-450", 0.0)):
        desk.choose_band(band)
        assert at(desk, 30).in_band == chance


def test_a_moment_past_has_what_is_known_of_it_and_no_chance(burning_desk: Desk) -> None:
    standing = stand(burning_desk).standing
    assert standing is not None
    trace = standing.trace
    for place in (0, len(trace.at) // 2, len(trace.at) - 1):
        found = oven_at(burning_desk, trace.at[place])
        assert found is not None
        assert (found.p10, found.p50, found.p90) == (trace.p10[place], trace.p50[place], trace.p90[place])
        assert found.in_band is None
    between = trace.at[0] + (trace.at[1] - trace.at[0]) / 2
    found = oven_at(burning_desk, between)
    assert found is not None
    assert found.p50 == pytest.approx((trace.p50[0] + trace.p50[1]) / 2)


def test_before_the_log_and_beyond_the_futures_nothing_is_known(burning_desk: Desk, held_clock: HeldClock) -> None:
    assert oven_at(burning_desk, held_clock.now) is None
    standing = stand(burning_desk).standing
    assert standing is not None
    assert at(burning_desk, HORIZON_MINUTES) is not None
    assert at(burning_desk, HORIZON_MINUTES + 0.1) is None
    assert oven_at(burning_desk, standing.trace.at[0] - MINUTE) is None


def test_a_session_that_is_over_has_a_past_only(burning_desk: Desk, held_clock: HeldClock) -> None:
    stand(burning_desk)
    held_clock.pass_minutes(24 * 60)
    assert at(burning_desk, -10) is not None
    assert at(burning_desk, 10) is None


def test_the_oven_now_is_exact_while_it_was_just_read(burning_desk: Desk, held_clock: HeldClock) -> None:
    assert oven_number(burning_desk) is None
    stand(burning_desk)
    assert burning_desk.standing is not None
    oven = burning_desk.standing.outlook.oven.p50
    assert oven is not None
    assert oven_number(burning_desk) == temperature_text(oven, "F")
    held_clock.pass_minutes(5)
    stand(burning_desk)
    oven = burning_desk.standing.outlook.oven.p50
    assert oven is not None
    assert oven_number(burning_desk) == estimate_text(oven, "F")
    burning_desk.read("480", spot="top_front_left")  # of another spot
    stand(burning_desk)
    assert str(oven_number(burning_desk)).startswith("≈")


def test_a_number_in_question_makes_the_oven_no_more_exact(burning_desk: Desk, held_clock: HeldClock) -> None:
    held_clock.pass_minutes(10)
    burning_desk.read("38", spot="oven_centre")
    stand(burning_desk)
    assert len(burning_desk.questions) == 1
    assert str(oven_number(burning_desk)).startswith("≈")


def test_a_number_in_question_soon_after_a_reading_leaves_the_oven_about(
    burning_desk: Desk, held_clock: HeldClock
) -> None:
    held_clock.pass_minutes(1)
    stand(burning_desk)
    assert not str(oven_number(burning_desk)).startswith("≈")
    burning_desk.read("38", spot="oven_centre")
    stand(burning_desk)
    assert len(burning_desk.questions) == 1
    assert str(oven_number(burning_desk)).startswith("≈")  # as the spot itself


def test_the_curve_is_said_in_two_sentences(going: Going) -> None:
    desk = going((0, 300), (60, 450), (180, 350))
    standing, edge = desk.standing, desk.edge
    assert standing is not None
    trace = standing.trace
    said = curve_said(desk)
    assert said == (
        f"The oven was about {edge.heat(trace.p50[0])} at {edge.at(trace.at[0])} and is about "
        f"{edge.heat(trace.p50[-1])} now. With this fire it is highest about {edge.clock(60)} at 450 °F, then comes to "
        f"about 350 °F at {edge.clock(HORIZON_MINUTES)}."
    )


@pytest.mark.parametrize("end", [200, 500])
def test_a_curve_that_only_rises_or_falls_has_no_top(going: Going, end: int) -> None:
    said = curve_said(going((0, 300), (180, end)))
    assert "highest" not in said
    assert f"comes to about {end} °F" in said


def test_of_a_session_that_is_over_only_the_past_is_said(burning_desk: Desk, held_clock: HeldClock) -> None:
    assert curve_said(burning_desk) == ""
    stand(burning_desk)
    assert "With this fire" in curve_said(burning_desk)
    held_clock.pass_minutes(24 * 60)
    assert curve_said(burning_desk).endswith("now.")


def test_nothing_is_said_of_a_curve_before_a_reading(held_desk: Desk) -> None:
    held_desk.do(Kind.LIT)
    stand(held_desk)
    assert curve_said(held_desk) == ""
    assert oven_number(held_desk) is None


def test_the_step_asked_about_is_said_while_it_is_asked(burning_desk: Desk, held_clock: HeldClock) -> None:
    assert step_outcome(stand(burning_desk)) == ""
    burning_desk.choose_action(Action(kind=ActionKind.WOOD, value=2.2))
    assert step_outcome(burning_desk) == ""  # not worked out yet
    stand(burning_desk)
    standing = burning_desk.standing
    assert standing is not None
    assert standing.alternative is not None
    said = step_outcome(burning_desk)
    assert "bread heat" in said
    enters = standing.alternative.outlook.band.line_enters_min
    assert (burning_desk.edge.clock(enters) if enters is not None else "not likely") in said
    burning_desk.choose_action(Action(kind=ActionKind.AIR, value=1.0))
    assert step_outcome(burning_desk) == ""
    burning_desk.choose_action(standing.alternative.action)
    held_clock.pass_minutes(24 * 60)
    assert step_outcome(burning_desk) == ""
