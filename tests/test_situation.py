"""A standing says what the log implies: the oven on its way, the zones, the fit, and the words for them."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui import one_road
from cookstove_gui.cooking.fires.steps import steps
from cookstove_gui.cooking.fit.fit import FitState
from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind, Turn, TurnKind
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.forecast.model.character import Character
from cookstove_gui.one_road import Memory, at_moment, left_warm, work_out
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.heading import detail, headline, question_about
from cookstove_gui.situation import Inputs, fire_is_out
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import kelvin
from tests.cooking.fires.cases import FULL, KINDLING, MEDIUM, NEW, made
from tests.cooking.made import STOVE
from tests.once import stood
from tests.rows import RISING, START, rows_of

EDGE = Edge(unit="F", now=START, offset_minutes=-300)
BREAD = HeatBand(name="bread", low=kelvin(375.0, "F"), high=kelvin(425.0, "F"))
ALL_FIRST_FIRES = tuple(made(KINDLING, MEDIUM, FULL))


def inputs(
    rows: tuple[Entry, ...],
    minutes: float,
    action: Action = LEAVE,
    stove: Stove = STOVE,
    earlier: tuple[Session, ...] = (),
    **others: tuple[int, ...],
) -> Inputs:
    return Inputs(
        serial=1, stove=stove, rows=rows, now=START + timedelta(minutes=minutes), band=BREAD, action=action,
        earlier=earlier, **others,
    )  # fmt: skip


def test_without_readings_the_line_says_what_to_do_first() -> None:
    standing = stood(inputs((), 0))
    assert "Light the fire" in headline(standing, EDGE)
    assert standing.next_reading is None


def test_every_spot_has_a_zone_and_every_task_a_fit() -> None:
    standing = stood(inputs(RISING, 47))
    assert {name: zone.spot for name, zone in standing.zones.items()} == {spot.name: spot.name for spot in STOVE.spots}
    assert len(standing.fits) > 20


def test_a_spot_that_only_the_log_names_is_a_spot_of_the_stove() -> None:
    shelf = rows_of((46, Kind.READING, "top_shelf", "200", "F"), first=len(RISING) + 1)
    standing = stood(inputs((*RISING, *shelf), 47))
    assert standing.stove.spot("top_shelf") is not None
    assert standing.zones["top_shelf"].last_reading == pytest.approx(kelvin(200.0, "F"))


def test_oven_now_agrees_with_the_thermometer() -> None:
    standing = stood(inputs(RISING, 46))
    oven = standing.outlook.oven.p50
    assert oven == pytest.approx(kelvin(290.0, "F"), abs=20.0)
    assert standing.trace.p50[-1] == pytest.approx(oven, abs=2.0)


def test_the_fan_and_the_arrival_are_of_the_same_futures() -> None:
    standing = stood(inputs(RISING, 46))
    hour = standing.projection.of("oven_centre")[:, 12]
    assert standing.projection.minutes[12] == 60.0
    assert standing.outlook.ahead[-1].p50 == pytest.approx(float(np.median(hour)), abs=1e-6)


def test_the_oven_is_told_in_a_quarter_half_and_whole_hour_unless_others_are_asked_for() -> None:
    wood = Action(kind=ActionKind.WOOD, value=2.2)
    assert [step.minutes for step in stood(inputs(RISING, 46)).outlook.ahead] == [15, 30, 60]
    asked = stood(inputs(RISING, 46, wood, ahead=(20, 90)))
    assert asked.alternative is not None
    assert [step.minutes for step in asked.outlook.ahead] == [20, 90]
    assert [step.minutes for step in asked.alternative.outlook.ahead] == [20, 90]


def test_what_if_is_answered_beside_the_present_course() -> None:
    wood = Action(kind=ActionKind.WOOD, value=2.2)
    standing = stood(inputs(RISING, 46, wood))
    assert standing.alternative is not None
    assert standing.alternative.action == wood
    more = standing.alternative.outlook.ahead[-1].p50
    assert more > standing.outlook.ahead[-1].p50
    drawn = standing.alternative.projection.of("oven_centre")[:, 12]  # an hour ahead
    assert more == pytest.approx(float(np.median(drawn)), abs=1e-6)
    assert stood(inputs(RISING, 46)).alternative is None


def test_an_answer_bears_the_number_of_its_question_and_the_moment_asked_about() -> None:
    standing = stood(replace(inputs(RISING, 48), serial=7))
    assert (standing.serial, standing.now) == (7, START + timedelta(minutes=48))


def test_rows_later_than_the_moment_are_not_looked_at() -> None:
    then = stood(inputs(RISING, 30))
    assert then.rows == RISING[:6]
    assert then.outlook == stood(inputs(RISING[:6], 30)).outlook
    assert then.course.asked_at == RISING[5].at
    assert stood(inputs(RISING, 46)).course.asked_at == RISING[-1].at
    assert at_moment(inputs(RISING, 46), then.now) == inputs(RISING, 30)


@pytest.mark.parametrize(("seconds", "followed_to"), [(19, RISING[-1].at), (20, RISING[-1].at + timedelta(seconds=20))])
def test_just_after_a_row_the_stove_is_as_it_was_at_the_row(seconds, followed_to) -> None:
    assert stood(inputs(RISING, 46 + seconds / 60)).belief.now == followed_to


def test_what_has_turned_stands_beside_what_is_to_turn() -> None:
    opened = rows_of((46, Kind.OVEN_DOOR, "", "open", ""), first=len(RISING) + 1)
    standing = stood(inputs((*RISING, *opened), 60))
    assert TurnKind.DOOR_OPEN in {turn.kind for turn in standing.turns}
    assert set(standing.course.turns) <= set(standing.turns)


# What is remembered from one answer to the next


def test_same_inputs_give_same_standing_with_or_without_memory() -> None:
    memory = Memory()
    work_out(inputs(RISING[:5], 24), memory)
    grown = work_out(inputs(RISING, 46), memory)
    afresh = stood(inputs(RISING, 46))
    assert grown.outlook == afresh.outlook


def test_steps_tried_along_with_the_course_come_out_as_they_would_alone() -> None:
    cooler = replace(BREAD, low=BREAD.low - 20.0, high=BREAD.high - 20.0)
    memory = Memory()
    before = work_out(replace(inputs(RISING[:-1], 44), band=cooler), memory)
    asked = replace(inputs(RISING, 46), band=cooler, action=Action(kind=ActionKind.WOOD, value=1.0))
    grown, afresh = work_out(asked, memory), stood(asked)
    assert not before.course.tried
    assert afresh.course.tried.keys() == {asked.action}
    assert {asked.action, *steps(grown.rows)} == set(grown.course.tried)
    assert grown.best_step is not None
    assert afresh.best_step is not None
    assert grown.best_step.outlook == afresh.best_step.outlook
    assert grown.alternative is not None
    assert afresh.alternative is not None
    assert grown.alternative.outlook == afresh.alternative.outlook != grown.outlook


def test_a_forecaster_is_kept_for_one_stove_and_what_was_learned_of_it() -> None:
    memory, learned = Memory(), Character()
    kept = memory.forecaster(STOVE, learned)
    assert memory.forecaster(STOVE, learned) is kept
    assert memory.forecaster(NEW, learned) is not kept
    assert memory.forecaster(STOVE, learned) is not memory.forecaster(STOVE, None)


def test_a_course_is_kept_for_its_rows_its_band_and_its_stove() -> None:
    memory, cooler = Memory(), replace(BREAD, low=BREAD.low - 30.0)
    memory.forecaster(STOVE, None)
    assert memory.course(RISING, BREAD) is None
    course = stood(inputs(RISING, 46)).course
    memory.keep_course(RISING, BREAD, course)
    assert memory.course(RISING, BREAD) is course
    assert memory.course(RISING[:-1], BREAD) is None
    assert memory.course(RISING, cooler) is None
    memory.forecaster(NEW, None)
    assert memory.course(RISING, BREAD) is None


# Slips


SLIPPED = (*RISING, *rows_of((48, Kind.READING, "oven_centre", "930", "F"), first=len(RISING) + 1))


def test_slip_in_the_latest_reading_is_questioned() -> None:
    standing = stood(inputs(SLIPPED, 48))
    assert "930 typed where about" in question_about(standing, standing.rows[-1].number, EDGE)


def test_a_reading_that_the_cook_kept_is_not_questioned_again() -> None:
    kept = rows_of((49, Kind.KEPT, "", str(SLIPPED[-1].number), ""), first=len(SLIPPED) + 1)
    assert stood(inputs((*SLIPPED, *kept), 48)).doubted  # not yet kept then
    assert not stood(inputs((*SLIPPED, *kept), 49)).doubted


# First fires


def test_a_new_stove_smells_and_cooks_nothing_until_its_first_fires_are_done() -> None:
    new, seasoned = (stood(inputs(RISING, 47, stove=NEW, earlier=past)) for past in ((), ALL_FIRST_FIRES))
    assert "first_fire_fumes" in {caution.key for caution in new.cautions}
    assert "first_fire_fumes" not in {caution.key for caution in seasoned.cautions}
    assert {fit.state for fit in new.fits if fit.task.key == "bread"} == {FitState.REFUSED}
    assert FitState.REFUSED not in {fit.state for fit in seasoned.fits}


def test_the_fire_on_the_table_counts_as_a_first_fire() -> None:
    through = rows_of(*KINDLING)
    found = stood(inputs(through, 40, stove=NEW)).first_fires
    assert [stage.done for stage in found.stages] == [True, False, False]


# When a step is looked for


@pytest.mark.parametrize(("chance", "out"), [(0.59, False), (0.6, True), (1.0, True)])
def test_a_fire_is_out_from_six_in_ten_on(chance, out):
    found = Turn(kind=TurnKind.FIRE_OUT, chance=chance, in_min=0)
    assert fire_is_out([Turn(kind=TurnKind.DOOR_OPEN, chance=1.0, in_min=0), found]) is out


def test_no_step_is_looked_for_before_a_reading_or_the_first_fires_or_on_a_fire_that_is_out(monkeypatch):
    looked_for = work_out(inputs(RISING, 46, action=Action(kind=ActionKind.WOOD, value=2.2))).alternative
    assert looked_for is not None
    monkeypatch.setattr(one_road, "best_step", lambda *_: looked_for)
    unread = tuple(row for row in RISING if row.kind is not Kind.READING)
    assert work_out(inputs(RISING, 46)).best_step is looked_for
    assert work_out(inputs(unread, 46)).best_step is None
    assert work_out(inputs(RISING, 46, stove=NEW)).best_step is None
    assert work_out(inputs(RISING, 46, stove=NEW, earlier=ALL_FIRST_FIRES)).best_step is looked_for
    assert work_out(inputs(GONE_COLD, 303)).best_step is None


GONE_COLD = (
    *RISING,
    *rows_of(
        (300, Kind.READING, "oven_centre", "150", "F"),
        (301, Kind.READING, "top_back_right", "110", "F"),
        (302, Kind.READING, "top_front_left", "115", "F"),
        first=len(RISING) + 1,
    ),
)


def test_no_wood_is_advised_onto_a_fire_that_is_out() -> None:
    standing = stood(inputs(GONE_COLD, 303))
    assert headline(standing, EDGE).startswith("The fire looks out")
    assert "wood" not in detail(standing, EDGE)
    assert "splits" not in detail(standing, EDGE)


def test_another_heat_wanted_has_a_course_of_its_own_whatever_is_remembered() -> None:
    memory = Memory()
    asked_for = inputs(RISING, 46)
    work_out(asked_for, memory)
    pie = replace(asked_for, band=HeatBand(name="pie", low=kelvin(275.0, "F"), high=kelvin(310.0, "F")))
    assert work_out(pie, memory).outlook == stood(pie).outlook
    assert work_out(pie, memory).course.turns == stood(pie).course.turns


def test_while_first_fires_run_the_stove_is_also_foretold_with_nothing_more_put_on() -> None:
    standing = stood(inputs(RISING, 46, stove=replace(NEW, spots=STOVE.spots)))
    assert standing.unfed is not None
    fed = project(standing.belief).of("oven_centre")[:, -1]
    assert float(np.mean(standing.unfed.of("oven_centre")[:, -1])) < float(np.mean(fed)) - 5.0
    assert stood(inputs(RISING, 46)).unfed is None


def test_a_stove_left_lately_still_holds_heat_and_one_left_for_days_none() -> None:
    assert left_warm(inputs(RISING, 60)) is not None
    assert left_warm(inputs(RISING, 3 * 24 * 60)) is None


def test_what_is_in_the_oven_is_done_by_the_boiling_point_of_the_place() -> None:
    """Water boils at about 90 °C at 3000 m (International Standard Atmosphere), so a core takes another time."""
    loaf = replace(RISING[0], number=99, at=RISING[-1].at, kind=Kind.OVEN_IN, note="loaf of bread")
    low = stood(inputs((*RISING, loaf), 50)).bakes
    high = stood(inputs((*RISING, loaf), 50, stove=replace(STOVE, altitude=3000.0))).bakes
    assert [one.inside for one in low] == [one.inside for one in high]
    assert [one.likely for one in low] != [one.likely for one in high]
