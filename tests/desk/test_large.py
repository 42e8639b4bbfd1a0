"""What is read across the kitchen agrees with what the other views say."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from cookstove_gui.advice import advise
from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.cooking.supper.dish_text import usual_dishes
from cookstove_gui.cooking.supper.plan import Margin, Plan, PlannedStep, StepKind
from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.oven_at import oven_number
from cookstove_gui.desk.heading import shown_clock, shown_rungs
from cookstove_gui.desk.large import AHEAD_MIN, BACK_MIN, Large, large
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.phrases.heading import arrival_figure
from cookstove_gui.phrases.ladder import prepare_words, step_rungs, then_read
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import kelvin
from tests.desk.conftest import Going
from tests.held_clock import HeldClock
from tests.once import stood

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
    assert desk.show(stood(desk.inputs()))
    return desk, clock


def test_before_anything_is_read_it_says_what_to_do() -> None:
    desk = Desk(Logbook.in_memory(), HeldClock(START))
    shown = large(desk)
    assert shown.oven == "–"
    assert shown.to_do == shown_rungs(desk)
    assert shown == Large(clock=shown_clock(desk), oven="–", to_do=shown_rungs(desk))
    desk.logbook.close()


def test_the_oven_on_its_way(burning_desk: Desk, going: Going) -> None:
    burning_desk.choose_band("375-425")
    desk = going((0, 300), (50, 400), (180, 660), spread=10)
    shown, edge = large(desk), desk.edge
    assert (shown.oven, shown.doubt, shown.heat) == ("300", "±8", "375–425 °F")
    earliest, likely, latest = 32.5 + 1, 37.5, 42.5 - 1  # eight in ten futures lie within 8 °F, at 2 °F a minute
    assert shown.arrival_min == pytest.approx((earliest, likely, latest), abs=0.6)
    assert shown.leaves_min == pytest.approx(62.5, abs=0.5)
    assert shown.likely == f"likely {edge.clock(likely)}"
    assert shown.window == arrival_figure(desk.standing, edge) if desk.standing else False


def test_the_oven_is_rounded_as_on_the_cook_page_once_its_reading_is_old() -> None:
    desk, clock = fired(120, 210, 296)
    clock.pass_minutes(17)
    assert desk.show(stood(desk.inputs()))
    assert str(oven_number(desk)) == f"≈{large(desk).oven}"
    desk.logbook.close()


def test_the_ribbon_is_the_drawn_line_every_five_minutes(going: Going) -> None:
    desk = going((0, 300), (50, 400), (180, 660))
    standing = desk.standing
    assert standing is not None
    began = (standing.trace.at[0] - standing.now).total_seconds() / 60
    ribbon = dict(large(desk).ribbon)
    assert list(ribbon) == [minute for minute in range(-BACK_MIN, AHEAD_MIN + 1, 5) if minute >= began]
    assert ribbon[0.0] == pytest.approx(kelvin(300.0, "F"))
    assert ribbon[25.0] == pytest.approx(kelvin(350.0, "F"))
    assert ribbon[120.0] == pytest.approx(kelvin(540.0, "F"))
    times = [(at - standing.now).total_seconds() / 60 for at in standing.trace.at]
    assert ribbon[-10.0] == pytest.approx(np.interp(-10.0, times, standing.trace.p50), abs=1.0)


def test_while_the_heat_comes_it_is_time_for_the_dough_and_then_for_a_reading(going: Going) -> None:
    desk = going((0, 300), (50, 400), (180, 400))
    standing = desk.standing
    assert standing is not None
    advice = advise(standing)
    assert advice.prepares
    shown = large(desk)
    assert shown.to_do == (prepare_words(advice, standing),)
    far = going((0, 200), (100, 400), (180, 400))
    assert far.standing is not None
    assert not then_read(advise(far.standing), far.standing, far.edge)
    assert large(far).to_do == shown_rungs(far)
    assert large(far).then == step_rungs(advise(far.standing), far.standing, far.edge) != ()


def test_a_step_gives_way_to_a_reading_that_is_worth_taking(going: Going, monkeypatch: pytest.MonkeyPatch) -> None:
    desk = going((0, 200), (100, 400), (180, 400))
    monkeypatch.setattr("cookstove_gui.desk.large.then_read", lambda *_: "Read the flue now.")
    assert large(desk).to_do == ("Read the flue now.",)
    assert large(desk).then == ()


def test_what_a_planned_meal_calls_for_goes_before_the_dough_of_the_heat_wanted(going: Going) -> None:
    desk = going((0, 300), (50, 400), (180, 400))
    now, dish = desk.clock(), usual_dishes()[0]
    desk.supper.set_table(now + timedelta(hours=3))
    desk.supper.add(dish)
    step = PlannedStep(
        key=f"{dish.key}/0",
        kind=StepKind.HANDS,
        what="grease",
        dish=dish.key,
        begin=now,
        end=now + timedelta(minutes=5),
    )
    plan = Plan(
        table_at=now + timedelta(hours=3), made_at=now, margin=Margin.USUAL, dishes=(dish,), steps=(step,), chance=None
    )
    supper = desk.supper.supper
    assert supper is not None
    assert desk.supper.take(supper, plan)
    assert large(desk).to_do[0] == f"{dish.name}: grease."
    assert large(desk).to_do[0] in shown_rungs(desk)
    assert desk.supper.take(supper, replace(plan, steps=(replace(step, done=True),)))
    assert large(desk).to_do[0] != f"{dish.name}: grease."


def test_a_late_arrival_is_drawn_to_the_end_of_the_ribbon(going: Going) -> None:
    desk = going((0, 300), (180, 390), spread=40)
    shown = large(desk)
    assert shown.arrival_min is not None
    assert shown.arrival_min[2] == max(AHEAD_MIN, shown.arrival_min[1])
    assert shown.leaves_min is None


@pytest.mark.parametrize(("count", "said"), [(0, ""), (1, "A"), (2, "A, B"), (3, "A and 2 more")])
def test_cautions_are_named_up_to_two(going: Going, count: int, said: str) -> None:
    desk = going((0, 300), (50, 400), (180, 400))
    standing = desk.standing
    assert standing is not None
    due = tuple(Caution(key=title, title=title, text=title, urgent=False) for title in "ABC"[:count])
    assert desk.show(replace(standing, cautions=due, serial=desk.inputs().serial))
    assert large(desk).cautions == said


def test_an_oven_at_its_heat_says_until_when() -> None:
    desk, _ = fired(190, 290, 370, 392)
    shown = large(desk)
    standing = desk.standing
    assert standing is not None
    leaves = standing.outlook.band.line_leaves_min
    assert leaves is not None
    assert (shown.window, shown.heat) == ("now", "bread heat")
    assert shown.likely == f"until about {desk.edge.clock(leaves)}"
    assert (shown.arrival_min, shown.leaves_min) == (None, None)
    desk.logbook.close()


def test_no_heat_is_promised_while_first_fires_run() -> None:
    desk, _ = fired(190, 290, 370, 392)
    desk.save_stove(replace(desk.stove, is_new=True))
    assert desk.show(stood(desk.inputs()))
    assert (large(desk).heat, large(desk).window) == ("", "")
    desk.logbook.close()


def test_a_session_that_is_over_promises_nothing() -> None:
    desk, clock = fired(120, 175, 240, 300)
    assert desk.session is not None
    clock.pass_minutes(60 * 30)
    desk.open_session(desk.session.number)
    desk.show(stood(desk.inputs()))
    shown = large(desk)
    assert (shown.window, shown.likely, shown.arrival_min, shown.cautions) == ("", "", None, "")
    assert shown.ended == START + timedelta(minutes=36)
    assert shown.ribbon[-1][0] == 0
    desk.logbook.close()


def test_a_present_danger_says_what_to_do_at_once_in_full() -> None:
    desk, clock = fired(120, 175, 240, 300)
    clock.pass_minutes(1)
    desk.read("640", spot="flue")
    assert desk.show(stood(desk.inputs()))
    shown = large(desk)
    assert shown.to_do == ("Flue pipe too hot.",)
    assert shown.then == ("Shut the air down now and add no wood.",)
    assert "Flue pipe too hot" in shown.cautions
    desk.logbook.close()
