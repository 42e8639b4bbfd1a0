"""The step that helps: the one that brings most minutes in the band, without putting the heat off."""

from collections.abc import Mapping
from dataclasses import replace

import pytest

from cookstove_gui.cooking.fires import best_step as module
from cookstove_gui.cooking.fires.best_step import best_step
from cookstove_gui.cooking.fires.steps import Alternative, relighting, steps
from cookstove_gui.cooking.safety.flue_rules import COALS_AIR, NEARLY_SHUT
from cookstove_gui.forecast.answers import Action, ActionKind, BandOutlook, Outlook, Quantiles
from cookstove_gui.stove.entries import HeatBand, Kind
from cookstove_gui.units import kelvin
from tests.rows import START, rows_of

BREAD = HeatBand(name="bread", low=kelvin(375.0, "F"), high=kelvin(425.0, "F"))


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
AIR_DOWN = Action(kind=ActionKind.AIR, value=0.3)


@pytest.fixture
def advised(monkeypatch):
    """The step advised beside a present course, when each step brings what is said of it, and the rest nothing."""

    def found(present: Outlook, brings: Mapping[Action, Outlook], band: HeatBand = BREAD) -> Action | None:
        def would_bring(belief, band, actions, known):
            outlooks = {action: brings.get(action, present) for action in actions}
            return [Alternative(action=action, outlook=of, projection=None) for action, of in outlooks.items()]

        monkeypatch.setattr(module, "what_if", would_bring)
        step = best_step(None, band, (), present)
        return None if step is None else step.action

    return found


def test_the_step_that_holds_the_band_longest_is_advised(advised):
    assert advised(coming(stays=20.0), {WOOD: coming(stays=60.0), AIR_DOWN: coming(stays=40.0)}) == WOOD
    assert advised(coming(stays=20.0), {WOOD: coming(stays=40.0), AIR_DOWN: coming(stays=60.0)}) == AIR_DOWN
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
        ("1", [AIR_DOWN]), ("0.95", [AIR_DOWN]), ("0.94", [AIR_OPEN, AIR_DOWN]), ("0.36", [AIR_OPEN, AIR_DOWN]),
        ("0.35", [AIR_OPEN]), ("0.1", [AIR_OPEN]),
    ],
)  # fmt: skip
def test_steps_offer_two_splits_and_the_air_the_other_way(air, offered):
    rows = rows_of((0, Kind.AIR, "", "0.5", ""), (1, Kind.AIR, "", air, ""))
    assert steps(rows) == (WOOD, *offered)


def test_air_is_not_turned_down_as_far_as_a_caution_warns_of():
    assert max(NEARLY_SHUT, COALS_AIR) < AIR_DOWN.value


def test_air_of_which_nothing_is_known_may_go_either_way():
    assert steps(()) == (WOOD, AIR_OPEN, AIR_DOWN)


@pytest.mark.parametrize(("bypass", "offered"), [("1", True), ("0.06", True), ("0.05", False), ("0", False)])
def test_steps_offer_to_close_an_open_bypass(bypass, offered):
    rows = rows_of((0, Kind.BYPASS, "", "0.5", ""), (1, Kind.BYPASS, "", bypass, ""))
    assert (Action(kind=ActionKind.BYPASS, value=0.0) in steps(rows)) is offered


def test_a_fire_that_looks_out_is_offered_kindling_and_splits_alone_only_while_coals_may_be_left():
    believed = relighting(rows_of((0, Kind.OUT, "", "", ""), (5, Kind.LIT, "", "", "")))
    assert [action.kind for action in believed] == [ActionKind.KINDLING, ActionKind.WOOD]
    told = relighting(rows_of((0, Kind.LIT, "", "", ""), (60, Kind.OUT, "", "", ""), (65, Kind.AIR, "", "1", "")))
    assert [action.kind for action in told] == [ActionKind.KINDLING]
