"""A standing says what the log implies: the oven on its way, the zones, the fit, and the words for them."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui import situation
from cookstove_gui.cooking.fit.fit import FitState
from cookstove_gui.forecast import Character
from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind, BandOutlook, Outlook, Quantiles, Turn, TurnKind
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.heading import detail, headline, question_about
from cookstove_gui.situation import Alternative, Inputs, Memory, at_moment, fire_is_out, left_warm, steps, work_out
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import kelvin
from tests.cooking.fires.cases import FULL, KINDLING, MEDIUM, NEW, made
from tests.cooking.made import STOVE
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
    standing = work_out(inputs((), 0))
    assert "Light the fire" in headline(standing, EDGE)
    assert standing.next_reading is None


def test_every_spot_has_a_zone_and_every_task_a_fit() -> None:
    standing = work_out(inputs(RISING, 47))
    assert {name: zone.spot for name, zone in standing.zones.items()} == {spot.name: spot.name for spot in STOVE.spots}
    assert len(standing.fits) > 20


def test_a_spot_that_only_the_log_names_is_a_spot_of_the_stove() -> None:
    shelf = rows_of((46, Kind.READING, "top_shelf", "200", "F"), first=len(RISING) + 1)
    standing = work_out(inputs((*RISING, *shelf), 47))
    assert standing.stove.spot("top_shelf") is not None
    assert standing.zones["top_shelf"].last_reading == pytest.approx(kelvin(200.0, "F"))


def test_oven_now_agrees_with_the_thermometer() -> None:
    standing = work_out(inputs(RISING, 46))
    oven = standing.outlook.oven.p50
    assert oven == pytest.approx(kelvin(290.0, "F"), abs=20.0)
    assert standing.trace.p50[-1] == pytest.approx(oven, abs=2.0)


def test_the_fan_and_the_arrival_are_of_the_same_futures() -> None:
    standing = work_out(inputs(RISING, 46))
    hour = standing.projection.of("oven_centre")[:, 12]
    assert standing.projection.minutes[12] == 60.0
    assert standing.outlook.ahead[-1].p50 == pytest.approx(float(np.median(hour)), abs=1e-6)


def test_the_oven_is_told_in_a_quarter_half_and_whole_hour_unless_others_are_asked_for() -> None:
    wood = Action(kind=ActionKind.WOOD, value=2.2)
    assert [step.minutes for step in work_out(inputs(RISING, 46)).outlook.ahead] == [15, 30, 60]
    asked = work_out(inputs(RISING, 46, wood, ahead=(20, 90)))
    assert asked.alternative is not None
    assert [step.minutes for step in asked.outlook.ahead] == [20, 90]
    assert [step.minutes for step in asked.alternative.outlook.ahead] == [20, 90]


def test_what_if_is_answered_beside_the_present_course() -> None:
    wood = Action(kind=ActionKind.WOOD, value=2.2)
    standing = work_out(inputs(RISING, 46, wood))
    assert standing.alternative is not None
    assert standing.alternative.action == wood
    more = standing.alternative.outlook.ahead[-1].p50
    assert more > standing.outlook.ahead[-1].p50
    drawn = standing.alternative.projection.of("oven_centre")[:, 12]  # an hour ahead
    assert more == pytest.approx(float(np.median(drawn)), abs=1e-6)
    assert work_out(inputs(RISING, 46)).alternative is None


def test_an_answer_bears_the_number_of_its_question_and_the_moment_asked_about() -> None:
    standing = work_out(replace(inputs(RISING, 48), serial=7))
    assert (standing.serial, standing.now) == (7, START + timedelta(minutes=48))


def test_rows_later_than_the_moment_are_not_looked_at() -> None:
    then = work_out(inputs(RISING, 30))
    assert then.rows == RISING[:6]
    assert then.outlook == work_out(inputs(RISING[:6], 30)).outlook
    assert then.course.asked_at == RISING[5].at
    assert work_out(inputs(RISING, 46)).course.asked_at == RISING[-1].at
    assert at_moment(inputs(RISING, 46), then.now) == inputs(RISING, 30)


@pytest.mark.parametrize(("seconds", "followed_to"), [(19, RISING[-1].at), (20, RISING[-1].at + timedelta(seconds=20))])
def test_just_after_a_row_the_stove_is_as_it_was_at_the_row(seconds, followed_to) -> None:
    assert work_out(inputs(RISING, 46 + seconds / 60)).belief.now == followed_to


def test_what_has_turned_stands_beside_what_is_to_turn() -> None:
    opened = rows_of((46, Kind.OVEN_DOOR, "", "open", ""), first=len(RISING) + 1)
    standing = work_out(inputs((*RISING, *opened), 60))
    assert TurnKind.DOOR_OPEN in {turn.kind for turn in standing.turns}
    assert set(standing.course.turns) <= set(standing.turns)


# What is remembered from one answer to the next


def test_same_inputs_give_same_standing_with_or_without_memory() -> None:
    memory = Memory()
    work_out(inputs(RISING[:5], 24), memory)
    grown = work_out(inputs(RISING, 46), memory)
    afresh = work_out(inputs(RISING, 46))
    assert grown.outlook == afresh.outlook


def test_a_tracker_is_kept_for_one_stove_and_what_was_learned_of_it() -> None:
    memory, learned = Memory(), Character()
    kept = memory.tracker(STOVE, learned)
    assert memory.tracker(STOVE, learned) is kept
    assert memory.tracker(NEW, learned) is not kept
    assert memory.tracker(STOVE, learned) is not memory.tracker(STOVE, None)


def test_a_course_is_kept_for_its_rows_its_band_and_its_stove() -> None:
    memory, cooler = Memory(), replace(BREAD, low=BREAD.low - 30.0)
    memory.tracker(STOVE, None)
    assert memory.course(RISING, BREAD) is None
    course = work_out(inputs(RISING, 46)).course
    memory.keep_course(RISING, BREAD, course)
    assert memory.course(RISING, BREAD) is course
    assert memory.course(RISING[:-1], BREAD) is None
    assert memory.course(RISING, cooler) is None
    memory.tracker(NEW, None)
    assert memory.course(RISING, BREAD) is None


# Slips


SLIPPED = (*RISING, *rows_of((48, Kind.READING, "oven_centre", "930", "F"), first=len(RISING) + 1))


def test_slip_in_the_latest_reading_is_questioned() -> None:
    standing = work_out(inputs(SLIPPED, 48))
    assert "930 typed where about" in question_about(standing, standing.rows[-1].number, EDGE)


def test_a_reading_that_the_cook_kept_is_not_questioned_again() -> None:
    kept = rows_of((49, Kind.KEPT, "", str(SLIPPED[-1].number), ""), first=len(SLIPPED) + 1)
    assert work_out(inputs((*SLIPPED, *kept), 48)).doubted  # not yet kept then
    assert not work_out(inputs((*SLIPPED, *kept), 49)).doubted


# First fires


def test_a_new_stove_smells_and_cooks_nothing_until_its_first_fires_are_done() -> None:
    new, seasoned = (work_out(inputs(RISING, 47, stove=NEW, earlier=past)) for past in ((), ALL_FIRST_FIRES))
    assert "first_fire_fumes" in {caution.key for caution in new.cautions}
    assert "first_fire_fumes" not in {caution.key for caution in seasoned.cautions}
    assert {fit.state for fit in new.fits if fit.task.key == "bread"} == {FitState.REFUSED}
    assert FitState.REFUSED not in {fit.state for fit in seasoned.fits}


def test_the_fire_on_the_table_counts_as_a_first_fire() -> None:
    through = rows_of(*KINDLING)
    found = work_out(inputs(through, 40, stove=NEW)).first_fires
    assert [stage.done for stage in found.stages] == [True, False, False]


# The step that helps


def coming(enters: float | None = 30.0, stays: float | None = 20.0, chance: float = 0.9) -> Outlook:
    """An oven that enters the band after some minutes and stays for some; None: not within three hours."""
    at, long = (Quantiles(p10=minutes, p50=minutes, p90=minutes) for minutes in (enters, stays))
    band = BandOutlook(
        low=BREAD.low, high=BREAD.high, chance_reached_3h=chance, enters_min=at, stays_min=long,
        line_enters_min=enters, line_leaves_min=None,
    )  # fmt: skip
    return Outlook(now=START, oven=Quantiles(p10=400.0, p50=400.0, p90=400.0), ahead=(), band=band)


WOOD = Action(kind=ActionKind.WOOD, value=2.2)
AIR_OPEN = Action(kind=ActionKind.AIR, value=1.0)
AIR_SHUT = Action(kind=ActionKind.AIR, value=0.1)


@pytest.fixture
def advised(monkeypatch):
    """The step advised beside a present course, when each step brings what is said of it, and the rest nothing."""

    def found(present: Outlook, brings: Mapping[Action, Outlook], band: HeatBand = BREAD) -> Action | None:
        def would_bring(belief, band, action, ahead):
            return Alternative(action=action, outlook=brings.get(action, present), projection=None)

        monkeypatch.setattr(situation, "_alternative", would_bring)
        step = situation._best_step(None, band, (), present)
        return None if step is None else step.action

    return found


def test_the_step_that_holds_the_band_longest_is_advised(advised):
    assert advised(coming(stays=20.0), {WOOD: coming(stays=60.0), AIR_SHUT: coming(stays=40.0)}) == WOOD
    assert advised(coming(stays=20.0), {WOOD: coming(stays=40.0), AIR_SHUT: coming(stays=60.0)}) == AIR_SHUT
    assert advised(coming(stays=20.0), {WOOD: coming(stays=10.0)}) is None


SOME = replace(BREAD, name="some")  # a heat that no bake is named for


@pytest.mark.parametrize(
    ("band", "stays", "step"), [(BREAD, 50.0, None), (BREAD, 49.0, WOOD), (SOME, 30.0, None), (SOME, 29.0, WOOD)]
)
def test_a_course_that_stays_for_a_bake_or_half_an_hour_wants_no_step(advised, band, stays, step):
    assert advised(coming(stays=stays), {WOOD: coming(stays=170.0)}, band) == step


def test_a_course_that_outlasts_the_horizon_wants_no_step(advised):
    assert advised(coming(stays=None, chance=0.5), {WOOD: coming(stays=None, chance=1.0)}) is None


def test_a_heat_that_likely_never_comes_wants_a_step_however_long_it_would_stay(advised):
    much = {WOOD: coming(stays=None)}
    assert advised(coming(stays=170.0, chance=0.49), much) == WOOD
    assert advised(coming(enters=None, stays=170.0, chance=0.6), much) == WOOD
    assert advised(coming(stays=170.0, chance=0.5), much) is None


def test_five_minutes_more_are_not_worth_a_step(advised):
    assert advised(coming(stays=20.0, chance=1.0), {WOOD: coming(stays=25.0, chance=1.0)}) is None
    assert advised(coming(stays=20.0, chance=1.0), {WOOD: coming(stays=26.0, chance=1.0)}) == WOOD


def test_a_stay_counts_by_its_chance_and_one_beyond_the_horizon_for_three_hours(advised):
    # 0.4 of 180 min is 72 min; 0.9 of 85 is 76.5 and of 90 is 81.
    present = coming(stays=None, chance=0.4)
    assert advised(present, {WOOD: coming(stays=85.0, chance=0.9)}) is None
    assert advised(present, {WOOD: coming(stays=90.0, chance=0.9)}) == WOOD


@pytest.mark.parametrize(
    ("present", "step", "is_advised"),
    [(30.0, 150.0, False), (30.0, None, False), (30.0, 46.0, False), (30.0, 45.0, True), (30.0, 10.0, True),
     (None, 150.0, True)],
)  # fmt: skip
def test_a_step_that_makes_the_heat_come_much_later_is_not_advised(advised, present, step, is_advised):
    found = advised(coming(enters=present), {WOOD: coming(enters=step, stays=170.0)})
    assert found == (WOOD if is_advised else None)


@pytest.mark.parametrize(
    ("air", "offered"),
    [
        ("1", [AIR_SHUT]), ("0.95", [AIR_SHUT]), ("0.94", [AIR_OPEN, AIR_SHUT]), ("0.16", [AIR_OPEN, AIR_SHUT]),
        ("0.15", [AIR_OPEN]), ("0.1", [AIR_OPEN]),
    ],
)  # fmt: skip
def test_steps_offer_two_splits_and_the_air_the_other_way(air, offered):
    rows = rows_of((0, Kind.AIR, "", "0.5", ""), (1, Kind.AIR, "", air, ""))
    assert steps(rows) == (WOOD, *offered)


def test_air_of_which_nothing_is_known_may_go_either_way():
    assert steps(()) == (WOOD, AIR_OPEN, AIR_SHUT)


@pytest.mark.parametrize(("bypass", "offered"), [("1", True), ("0.06", True), ("0.05", False), ("0", False)])
def test_steps_offer_to_close_an_open_bypass(bypass, offered):
    rows = rows_of((0, Kind.BYPASS, "", "0.5", ""), (1, Kind.BYPASS, "", bypass, ""))
    assert (Action(kind=ActionKind.BYPASS, value=0.0) in steps(rows)) is offered


@pytest.mark.parametrize(("chance", "out"), [(0.59, False), (0.6, True), (1.0, True)])
def test_a_fire_is_out_from_six_in_ten_on(chance, out):
    found = Turn(kind=TurnKind.FIRE_OUT, chance=chance, in_min=0)
    assert fire_is_out([Turn(kind=TurnKind.DOOR_OPEN, chance=1.0, in_min=0), found]) is out


def test_no_step_is_looked_for_before_a_reading_or_the_first_fires_or_on_a_fire_that_is_out(monkeypatch):
    looked_for = Alternative(action=WOOD, outlook=coming(), projection=None)
    monkeypatch.setattr(situation, "_best_step", lambda *_: looked_for)
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
    standing = work_out(inputs(GONE_COLD, 303))
    assert headline(standing, EDGE).startswith("The fire looks out")
    assert "wood" not in detail(standing, EDGE)
    assert "splits" not in detail(standing, EDGE)


def test_another_heat_wanted_has_a_course_of_its_own_whatever_is_remembered() -> None:
    memory = Memory()
    asked_for = inputs(RISING, 46)
    work_out(asked_for, memory)
    pie = replace(asked_for, band=HeatBand(name="pie", low=kelvin(275.0, "F"), high=kelvin(310.0, "F")))
    assert work_out(pie, memory).outlook == work_out(pie).outlook
    assert work_out(pie, memory).course.turns == work_out(pie).course.turns


def test_while_first_fires_run_the_stove_is_also_foretold_with_nothing_more_put_on() -> None:
    standing = work_out(inputs(RISING, 46, stove=replace(NEW, spots=STOVE.spots)))
    assert standing.unfed is not None
    fed = project(standing.belief).of("oven_centre")[:, -1]
    assert float(np.mean(standing.unfed.of("oven_centre")[:, -1])) < float(np.mean(fed)) - 5.0
    assert work_out(inputs(RISING, 46)).unfed is None


def test_a_stove_left_lately_still_holds_heat_and_one_left_for_days_none() -> None:
    assert left_warm(inputs(RISING, 60)) is not None
    assert left_warm(inputs(RISING, 3 * 24 * 60)) is None


def test_what_is_in_the_oven_is_done_by_the_boiling_point_of_the_place() -> None:
    """Water boils at about 90 °C at 3000 m (International Standard Atmosphere), so a core takes another time."""
    loaf = replace(RISING[0], number=99, at=RISING[-1].at, kind=Kind.OVEN_IN, note="loaf of bread")
    low = work_out(inputs((*RISING, loaf), 50)).bakes
    high = work_out(inputs((*RISING, loaf), 50, stove=replace(STOVE, altitude=3000.0))).bakes
    assert [one.inside for one in low] == [one.inside for one in high]
    assert [one.likely for one in low] != [one.likely for one in high]
