"""What stands over the pages is live only while the session is, and says what a new stove waits for."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta, timezone

import pytest

from cookstove_gui.cooking.supper.plan import FireStep, Margin, Plan, PlannedStep, StepKind
from cookstove_gui.desk import Desk
from cookstove_gui.desk.first_start import begin, greeting, is_first_start
from cookstove_gui.desk.heading import (
    first_fires_words,
    shown_cautions,
    shown_clock,
    shown_detail,
    shown_detail_rungs,
    shown_headline,
    shown_rungs,
)
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.phrases.heading import detail, detail_rungs, headline, rungs
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import clock_text, local_offset_minutes
from tests.cooking.supper.made import USUAL
from tests.desk.conftest import stand
from tests.held_clock import HeldClock


def test_a_session_that_is_over_gives_no_orders_and_no_cautions(burning_desk: Desk, held_clock: HeldClock) -> None:
    burning_desk.read("620", spot="flue")
    live = stand(burning_desk)
    assert shown_cautions(live)
    assert "over" not in shown_headline(live)
    assert live.standing is not None
    assert shown_headline(live) == headline(live.standing, live.edge)
    assert shown_detail(live) == detail(live.standing, live.edge)
    assert shown_rungs(live) == rungs(live.standing, live.edge)
    assert shown_detail_rungs(live) == detail_rungs(live.standing, live.edge)
    number = burning_desk.session.number if burning_desk.session else 0
    held_clock.pass_minutes(7 * 60)
    burning_desk.open_session(number)
    stand(burning_desk)
    assert not burning_desk.is_live
    assert shown_headline(burning_desk).startswith("This session is over.")
    assert shown_rungs(burning_desk)[0].startswith("This session is over.")
    assert shown_detail(burning_desk) == ""
    assert shown_detail_rungs(burning_desk) == ()
    assert shown_cautions(burning_desk) == ()


def test_a_caution_stands_while_a_changed_stove_is_worked_out_and_not_over_another_session(burning_desk: Desk) -> None:
    burning_desk.read("620", spot="flue")
    told = shown_cautions(stand(burning_desk))
    burning_desk.save_stove(replace(burning_desk.stove, has_lids=not burning_desk.stove.has_lids))
    assert burning_desk.standing is None
    assert shown_cautions(burning_desk) == told != ()
    assert shown_cautions(stand(burning_desk))
    burning_desk.start_session("Another")
    assert shown_cautions(burning_desk) == ()


def test_a_new_stove_waits_for_its_first_fires_and_then_for_the_cold(burning_desk: Desk) -> None:
    assert first_fires_words(burning_desk) == ""
    burning_desk.save_stove(replace(burning_desk.stove, is_new=True))
    assert first_fires_words(burning_desk).startswith("First fire 1")
    stand(burning_desk)
    assert first_fires_words(burning_desk) == shown_headline(burning_desk)


def test_an_empty_logbook_greets_and_offers_three_ways_to_begin(held_desk: Desk, held_clock: HeldClock) -> None:
    said = greeting(held_desk)
    assert shown_headline(held_desk) == said
    assert shown_rungs(held_desk)[0] == said
    assert shown_rungs(held_desk)[-1] == "No fire is lit yet."
    assert shown_detail_rungs(held_desk)[-1] == "Three ways to begin."
    begin(held_desk)
    assert shown_headline(held_desk).startswith("Light the fire")
    assert shown_rungs(held_desk)[-1] == "Light the fire, then read as you go."
    assert shown_detail_rungs(held_desk) == ()
    assert not is_first_start(Desk(held_desk.logbook, held_clock))


def test_behind_a_planned_meal_without_a_fire_stands_the_plan(held_desk: Desk, held_clock: HeldClock) -> None:
    now = held_clock.now
    step = PlannedStep(key="fire/light", kind=StepKind.FIRE, what=FireStep.LIGHT, begin=now, end=now)
    held_desk.supper.set_table(now + timedelta(hours=2))
    held_desk.supper.add(USUAL["apple_pie"])
    supper = held_desk.supper.supper
    assert supper is not None
    plan = Plan(
        table_at=supper.table_at, made_at=now, margin=Margin.USUAL, dishes=supper.dishes, steps=(step,), chance=None
    )  # fmt: skip
    assert held_desk.supper.take(supper, plan)
    said = shown_detail_rungs(held_desk)
    assert "apple pie" in said[0]
    assert all(clock_text(supper.table_at, local_offset_minutes(now)) in one for one in said)
    assert not any("Three ways" in one for one in said)


def test_what_was_ever_logged_or_begun_is_no_first_start(held_desk: Desk) -> None:
    assert is_first_start(held_desk)
    held_desk.save_stove(replace(held_desk.stove, is_new=True))
    assert not is_first_start(held_desk)
    held_desk.save_stove(replace(held_desk.stove, is_new=False))
    assert is_first_start(held_desk)
    held_desk.do(Kind.LIT)
    assert not is_first_start(held_desk)
    held_desk.undo()
    assert not is_first_start(held_desk)


@pytest.mark.parametrize(
    ("hour", "offset", "part"),
    [
        (4, 0, "morning"), (3, 0, "evening"), (11, 0, "morning"), (12, 0, "afternoon"), (17, 0, "afternoon"),
        (18, 0, "evening"), (3, 60, "morning"), (2, -300, "evening"), (23, 300, "morning"), (17, 60, "evening"),
    ],
)  # fmt: skip
def test_the_greeting_goes_by_the_kitchens_clock(hour: int, offset: int, part: str) -> None:
    now = datetime(2026, 3, 14, hour, 30, tzinfo=UTC)
    zone = timezone(timedelta(minutes=offset))
    desk = Desk(Logbook.in_memory(), HeldClock(now), zone)
    assert greeting(desk) == f"Good {part}. No fire is lit yet."


def test_the_clock_over_an_old_session_is_this_computers(burning_desk: Desk, held_clock: HeldClock) -> None:
    far = replace(burning_desk.entries[-1], number=0, offset_minutes=-300, kind=Kind.NOTE, note="x", value="")
    burning_desk.play((far,))
    assert shown_clock(burning_desk) == clock_text(held_clock.now, -300)
    held_clock.pass_minutes(24 * 60)
    assert shown_clock(burning_desk) == clock_text(held_clock.now, local_offset_minutes(held_clock.now))


def test_while_the_first_answer_is_worked_out_nobody_is_told_to_light_a_fire_that_burns(
    burning_desk: Desk,
) -> None:
    assert burning_desk.standing is None
    assert shown_rungs(burning_desk)[0] == shown_headline(burning_desk)
    assert all(said.startswith("Working out how the stove stands") for said in shown_rungs(burning_desk))
