"""The cook of each future feeds by habit, sooner and more when the oven is low, and stops when the firing is done."""

import math
from dataclasses import replace
from datetime import timedelta
from statistics import NormalDist

import numpy as np
import pytest

from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind
from cookstove_gui.forecast.futures.cook import Cook, Doing, minutes_since_reached, openings_per_minute
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.ensemble import MEMBERS, Ensemble
from cookstove_gui.forecast.model.habits import KINDLING_WAIT, Habits
from cookstove_gui.forecast.model.heat import Controls
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.forecast.tracking.lookback import TracePoint
from cookstove_gui.stove.entries import HeatBand
from tests.forecast.futures.made import BAND, usual_belief

HALF = 22.0  # K: half the band and the margin of what counts as well off
# Loads of 1.2 kg thirty minutes apart, as regular as clockwork, in a firing that goes on all day.
CLOCKWORK = Habits(
    interval_log=math.log(30.0), interval_deviation=1e-3, intervals_seen=1e9, mass_log=math.log(1.2),
    mass_deviation=1e-9, goes_on=1.0, tending_log=math.log(2000.0), tending_deviation=1e-3,
)  # fmt: skip


def _belief(oven: float = 410.0, fed_ago: float = 0.0, habits: Habits = CLOCKWORK, **fields) -> Belief:
    """Every member alike: an oven [K] in a kitchen of 294 K, half-open air, fed so many minutes ago."""
    belief = usual_belief()
    x = belief.ensemble.x.copy()
    x[heat.FUELS] = 0.0
    x[heat.ROOM], x[heat.SINCE_FED], x[heat.INLET], x[heat.BYPASS] = 294.0, fed_ago, 0.5, 0.0
    x[heat.AIR] = x[heat.DIAL] = oven
    defaults = {
        "ensemble": Ensemble(x, belief.ensemble.remainder), "habits": habits, "controls": Controls(lit=True),
        "loads": 2, "last_load": belief.now - timedelta(minutes=fed_ago), "lit_at": belief.now - timedelta(hours=2),
        "lit_first": belief.now - timedelta(hours=2), "points": (), "air_logged": 0.5, "door_openings": 0,
    }  # fmt: skip
    return replace(belief, **{**defaults, **fields})


def _tend(
    belief: Belief,
    minutes: float,
    action: Action = LEAVE,
    band: HeatBand | None = None,
    rise: float | list[float] = 0.0,
    unfed: bool = False,
):
    """States (steps, rows, members) under a cook's hands alone: no fire, the oven rising by `rise` [K/min]."""
    cook, state = Cook(belief, [Doing(action=action, unfed=unfed)], band), belief.ensemble.x[: heat.STATE_ROWS].copy()
    states = []
    for warming in np.broadcast_to(rise, round(minutes / 2.5)):
        state[heat.DIAL] += 2.5 * warming
        cook.tend(state[:, None], 2.5)
        states.append(state.copy())
    return np.array(states)


def _loads(states: np.ndarray) -> np.ndarray:
    """How many loads (steps,) have gone in, in the middle member."""
    return np.median(states[:, heat.FRESH], axis=1) / 1.2


def _first_load(states: np.ndarray) -> float:
    """Minutes until the middle member is fed."""
    fed = np.flatnonzero(np.median(states[:, heat.FRESH], axis=1) > 1e-6)
    return 2.5 * (fed[0] + 1) if len(fed) else math.inf


# By habit


def test_loads_come_by_habit_until_the_horizon():
    loads = _loads(_tend(_belief(), 120.0))
    assert loads[[10, 13, 22, 25, 47]] == pytest.approx([0.0, 1.0, 1.0, 2.0, 3.0], abs=1e-6)


def test_the_wait_since_the_last_load_counts():
    assert _first_load(_tend(_belief(fed_ago=20.0), 60.0)) == pytest.approx(10.0, abs=2.5)


def test_the_first_load_follows_the_kindling_in_half_the_time():
    just_lit = _belief(loads=0, last_load=None)
    just_lit = replace(just_lit, lit_at=just_lit.now)
    assert _first_load(_tend(just_lit, 60.0)) == pytest.approx(15.0, abs=2.5)
    assert _first_load(_tend(replace(just_lit, loads=1), 60.0)) == pytest.approx(30.0, abs=2.5)


def test_a_fire_of_which_no_load_is_known_was_fed_a_quarter_of_an_hour_ago():
    unknown = _belief(loads=1, last_load=None, lit_at=None)
    assert _first_load(_tend(unknown, 60.0)) == pytest.approx(15.0, abs=2.5)


def test_by_habit_alone_some_loads_are_the_last():
    states = _tend(_belief(habits=replace(CLOCKWORK, goes_on=0.75)), 100.0)
    counts = np.round(states[-1, heat.FRESH] / 1.2)
    # Geometric: a quarter stop at each of the three loads that come due.
    shares = [np.mean(counts == number) for number in range(4)]
    assert shares == pytest.approx([0.25, 0.1875, 0.1406, 0.4219], abs=0.06)


def test_wood_put_in_now_is_in_at_once_and_starts_the_wait_anew():
    states = _tend(_belief(fed_ago=20.0), 60.0, Action(kind=ActionKind.WOOD, value=2.0))
    assert states[0, heat.FRESH] == pytest.approx(2.0)
    assert states[10, heat.FRESH] == pytest.approx(2.0)
    assert np.median(states[13, heat.FRESH]) == pytest.approx(3.2)


def test_wood_of_less_than_nothing_is_none():
    assert _tend(_belief(), 5.0, Action(kind=ActionKind.WOOD, value=-1.0))[0, heat.FRESH] == pytest.approx(0.0)


@pytest.mark.parametrize(("fed_ago", "fed"), [(239.0, True), (240.0, False)])
def test_a_fire_not_fed_for_four_hours_is_not_expected_to_be_fed_again(fed_ago, fed):
    long_lit = _belief(fed_ago=fed_ago)
    long_lit = replace(long_lit, lit_at=long_lit.now - timedelta(hours=5))
    assert bool(_tend(long_lit, 60.0)[-1, heat.FRESH].max() > 0.0) is fed


def test_a_stove_that_is_not_lit_is_not_fed_unless_wood_is_put_in_now():
    unlit = _belief(controls=Controls(lit=False))
    assert _tend(unlit, 60.0)[-1, heat.FRESH].max() == 0.0
    assert _loads(_tend(unlit, 60.0, Action(kind=ActionKind.WOOD, value=1.2)))[-1] > 1.5


def test_a_fire_relit_on_kindling_burns_and_gets_its_first_load_sooner_than_after_wood():
    unlit = _belief(controls=Controls(lit=False))
    on_kindling, on_wood = (
        _tend(unlit, 60.0, Action(kind=kind, value=0.9)) for kind in (ActionKind.KINDLING, ActionKind.WOOD)
    )
    assert on_kindling[0, heat.FRESH] == pytest.approx(0.9)
    after_kindling, after_wood = (_first_load(states - 0.9) for states in (on_kindling, on_wood))
    assert after_wood > 20.0
    assert after_kindling == pytest.approx(KINDLING_WAIT * after_wood, abs=2.5)


def test_a_cook_who_goes_away_feeds_and_sets_nothing():
    states = _tend(_belief(oven=350.0), 120.0, band=BAND, unfed=True)
    assert states[:, heat.FRESH].max() == 0.0
    assert np.all(states[:, heat.INLET] == 0.5)


# By where the oven is wanted


@pytest.mark.parametrize(
    ("half_widths", "minutes"),
    [(0.0, 40.0), (-1.0, 24.0), (-2.0, 30.0 / 1.75), (-5.0, 30.0 / 1.75), (0.5, 60.0), (1.0, 120.0), (5.0, 120.0)],
)
def test_the_lower_the_oven_the_sooner_the_next_load(half_widths, minutes):
    # At three quarters of the usual pace in mid-band, faster by half for each half-width below, never below a quarter.
    states = _tend(_belief(oven=410.0 + half_widths * HALF), 140.0, band=BAND)
    assert _first_load(states) == pytest.approx(minutes, abs=2.6)


@pytest.mark.parametrize(
    ("half_widths", "share"), [(-1.0, 1.0), (0.0, 1.0), (0.5, 0.8187), (1.0, 0.6703), (2.0, 0.4493)]
)
def test_the_hotter_the_oven_the_smaller_the_load(half_widths, share):
    states = _tend(_belief(oven=410.0 + half_widths * HALF), 125.0, band=BAND)
    masses = states[:, heat.FRESH].T
    first = np.array([path[path > 0.0][0] for path in masses if path.max() > 0.0])
    assert np.median(first) == pytest.approx(1.2 * share, rel=0.01)


def test_an_oven_that_warms_is_judged_by_where_it_will_be():
    # Half a kelvin a minute for 25 min ahead is 12.5 K, more than half of a half-width.
    still, warming = (_first_load(_tend(_belief(oven=405.0), 90.0, band=BAND, rise=rise)) for rise in (0.0, 0.5))
    cooling = _first_load(_tend(_belief(oven=405.0), 90.0, band=BAND, rise=-0.5))
    assert cooling + 5.0 < still < warming - 10.0


def test_a_trend_is_seen_as_a_first_order_lag_of_eight_minutes_sees_it():
    # Half a kelvin a minute for 7.5 min; the load that comes due then is cut for the heat foreseen 25 min on.
    states = _tend(_belief(oven=410.0, fed_ago=26.0), 7.5, band=BAND, rise=0.5)
    assert np.all(states[1, heat.FRESH] == 0.0)
    foreseen = 410.0 + 0.5 * 7.5 + 25.0 * 0.5 * (1.0 - math.exp(-7.5 / 8.0))
    assert np.median(states[2, heat.FRESH]) == pytest.approx(1.2 * math.exp(-0.4 * (foreseen - 410.0) / HALF), rel=2e-3)


def test_with_a_band_no_load_is_the_last_by_mere_luck():
    belief = _belief(habits=replace(CLOCKWORK, goes_on=0.0))
    assert _loads(_tend(belief, 100.0, band=BAND))[-1] == pytest.approx(2.0)
    assert _loads(_tend(belief, 100.0))[-1] == 0.0


def test_the_fire_is_let_die_when_the_firing_has_lasted_as_this_cooks_do():
    # Lit two hours ago; firings of this cook are tended for 150 min. An oven this cold would want wood and air.
    ends = replace(CLOCKWORK, tending_log=math.log(150.0))
    states = _tend(_belief(oven=350.0, habits=ends), 100.0, band=BAND)
    loads, air = _loads(states), states[:, heat.INLET]
    assert loads[11] == pytest.approx(1.0)
    assert loads[-1] == loads[13]
    assert np.mean(np.isclose(air[10], 0.1)) < 0.05
    assert np.mean(np.isclose(air[13], 0.1)) == pytest.approx(0.85, abs=0.05)  # those who set the air at all
    assert np.array_equal(air[13], air[-1])


def test_a_band_just_reached_is_held_for_a_bake():
    # The usual firing would end in a quarter of an hour; of all bakes 66 % outlast the 35 min to the next load.
    belief = _belief(oven=395.0, habits=replace(CLOCKWORK, tending_log=math.log(135.0)))
    never, comes = (_tend(belief, 50.0, band=BAND, rise=[rise] * 3 + [0.0] * 17) for rise in (0.0, 1.0))
    assert np.mean(never[-1, heat.FRESH] > 0.0) == 0.0
    assert np.mean(comes[-1, heat.FRESH] > 0.0) == pytest.approx(0.66, abs=0.08)


@pytest.mark.parametrize("reached", [0.0, 20.0])
def test_an_oven_at_heat_is_tended_for_what_is_left_of_the_bake(reached):
    # Of all bakes half take over 50 min, a sixth less than 22 min and a sixth over 111: lognormal, 0.8 wide.
    belief = _belief(oven=410.0, habits=replace(CLOCKWORK, tending_log=math.log(60.0)))
    point = TracePoint(belief.now - timedelta(minutes=reached), 405.0, 410.0, 415.0)
    air = _tend(replace(belief, points=(point,)), 100.0, band=BAND)[:, heat.INLET]
    over = NormalDist(math.log(50.0), 0.8)
    gone = over.cdf(math.log(reached)) if reached else 0.0
    for minutes in (22.5, 50.0, 90.0):
        let_die = np.mean(np.isclose(air[round(minutes / 2.5) - 1], 0.1)) / 0.85  # of those who set the air at all
        assert let_die == pytest.approx((over.cdf(math.log(reached + minutes)) - gone) / (1.0 - gone), abs=0.08)


def _still_feed(belief: Belief, action: Action = LEAVE) -> float:
    """Share of cooks who are not done with the fire yet."""
    states = _tend(belief, 60.0, action, band=BAND)
    return float(np.mean(states[-1, heat.FRESH] > 0.0))


LOOSE = replace(CLOCKWORK, interval_deviation=0.5, tending_log=math.log(130.0), tending_deviation=0.5)


def test_a_wait_that_is_long_for_this_cook_speaks_for_being_done():
    # By a minute under an hour and a half nearly everyone with half-hour intervals has fed, or is done.
    shares = [_still_feed(_belief(oven=350.0, habits=LOOSE, fed_ago=ago)) for ago in (5.0, 45.0, 90.0)]
    assert shares[0] > shares[1] + 0.1 > shares[2] + 0.2


def test_an_air_that_is_nearly_shut_speaks_for_being_done():
    usual, shut, nearly = (
        _still_feed(_belief(oven=350.0, habits=LOOSE, fed_ago=40.0, air_logged=air)) for air in (0.5, 0.2, 0.21)
    )
    assert shut < usual - 0.1
    assert nearly == usual
    assert _still_feed(_belief(oven=350.0, habits=LOOSE, fed_ago=40.0, air_logged=None)) == usual


def test_who_puts_wood_in_now_is_not_done():
    belief = _belief(oven=350.0, habits=LOOSE, fed_ago=90.0)
    assert _still_feed(belief, Action(kind=ActionKind.WOOD, value=0.5)) == 1.0


def test_a_band_reached_a_while_ago_may_be_done_with():
    # A firing that usually ends by now goes on for the bake: half of all bakes are over 50 min after the band was met.
    habits = replace(CLOCKWORK, tending_log=math.log(60.0))
    shares = []
    for reached in (5.0, 110.0):
        belief = _belief(oven=410.0, habits=habits, fed_ago=25.0)
        point = TracePoint(belief.now - timedelta(minutes=reached), 405.0, 410.0, 415.0)
        shares.append(float(np.mean(_tend(replace(belief, points=(point,)), 20.0, band=BAND)[-1, heat.FRESH] > 0.0)))
    assert shares[0] > shares[1] + 0.2


# Bypass and door


def test_a_bypass_opened_for_lighting_is_shut_in_passing():
    belief = _belief()
    belief.ensemble.x[heat.BYPASS] = 1.0
    open_still = _tend(belief, 18.0, band=BAND)[-1, heat.BYPASS].mean()
    assert open_still == pytest.approx(math.exp(-1.0), abs=0.06)
    assert np.all(_tend(belief, 18.0)[-1, heat.BYPASS] == 1.0)
    assert np.all(_tend(belief, 18.0, Action(kind=ActionKind.BYPASS, value=1.0), BAND)[-1, heat.BYPASS] == 1.0)
    assert _tend(belief, 18.0, Action(kind=ActionKind.AIR, value=1.0), BAND)[-1, heat.BYPASS].mean() < 0.5


def test_door_openings_follow_from_those_seen_and_the_hours_the_oven_was_hot():
    # A rate with a gamma prior of 0.6 openings in an hour.
    belief = _belief()
    assert openings_per_minute(belief, None) == pytest.approx(0.6 / 60.0)
    assert openings_per_minute(replace(belief, door_openings=3), 30.0) == pytest.approx(3.6 / 90.0)


def test_an_oven_that_bakes_is_opened_and_loses_a_share_of_its_excess():
    belief = _belief()
    point = TracePoint(belief.now - timedelta(minutes=30.0), 405.0, 410.0, 415.0)
    baking = replace(belief, points=(point,), door_openings=3)
    first = _tend(baking, 2.5, band=BAND)[0, heat.AIR]
    dips = (410.0 - first) / (410.0 - 294.0)
    opened = dips > 0.0
    assert opened.mean() == pytest.approx(3.6 / 90.0 * 2.5, abs=0.03)
    assert dips[opened].min() >= 0.08
    assert dips[opened].max() <= 0.45
    assert dips[opened].mean() == pytest.approx(0.265, abs=0.05)
    assert np.all(
        _tend(replace(belief, door_openings=3), 2.5, band=HeatBand(name="hot", low=450.0, high=480.0))[0, heat.AIR]
        == 410.0
    )
    assert np.all(_tend(baking, 2.5)[0, heat.AIR] == 410.0)


def test_an_oven_colder_than_the_kitchen_is_not_warmed_by_its_door():
    cold = HeatBand(name="proving", low=280.0, high=300.0)
    belief = _belief(oven=290.0, door_openings=60)
    point = TracePoint(belief.now, 290.0, 290.0, 290.0)
    assert np.all(_tend(replace(belief, points=(point,)), 2.5, band=cold)[0, heat.AIR] == 290.0)


def test_a_band_was_reached_when_the_middle_of_the_oven_first_was_at_its_lower_end():
    belief = _belief()
    heats = ((50.0, 390.0), (40.0, 399.9), (30.0, 400.0), (20.0, 380.0), (10.0, 430.0))
    points = tuple(TracePoint(belief.now - timedelta(minutes=ago), 300.0, p50, 500.0) for ago, p50 in heats)
    assert minutes_since_reached(replace(belief, points=points), BAND) == 30.0
    assert minutes_since_reached(replace(belief, points=points[:2]), BAND) is None


# Air


def _air(half_widths: float, minutes: float = 20.0, **habits: float) -> np.ndarray:
    belief = _belief(oven=410.0 + half_widths * HALF, habits=replace(CLOCKWORK, **habits))
    return _tend(belief, minutes, band=BAND)[:, heat.INLET]


def test_most_cooks_set_the_air_by_where_the_oven_is_and_some_never_do():
    busy = _air(2.0, 60.0, air_turns=400.0, air_minutes=400.0)
    assert np.mean(busy[-1] == 0.5) == pytest.approx(0.15, abs=0.04)
    assert np.all(_tend(_belief(oven=500.0), 60.0)[:, heat.INLET] == 0.5)
    held = _tend(_belief(oven=500.0), 60.0, Action(kind=ActionKind.AIR, value=0.5), BAND)[:, heat.INLET]
    assert np.all(held == 0.5)


def test_looks_come_at_the_pace_learned_and_twice_as_often_far_off():
    # Sixteen turns in 160 min are 0.16 looks a minute, in 2.5 min 0.4 of the 85 % who steer; nearly all looks turn it.
    moved = {off: float(np.mean(_air(off, 2.5, air_turns=4.0, air_minutes=160.0)[0] != 0.5)) for off in (1.3, 1.5)}
    rate = 1.6 * 4.0 / 160.0 * 2.5 * math.exp(0.6**2 / 2.0) * 0.85
    assert moved[1.3] == pytest.approx(rate * 0.94, abs=0.03)
    assert moved[1.5] == pytest.approx(2.0 * rate * 0.97, abs=0.04)


@pytest.mark.parametrize(("half_widths", "shut"), [(0.6, 0.5), (0.85, 0.73), (1.35, 0.95)])
def test_the_further_off_the_surer_the_air_is_turned(half_widths, shut):
    # Logistic about 0.6 half-widths, 0.25 soft; every look is made within these 2.5 min.
    first = _air(half_widths, 2.5, air_turns=4e4, air_minutes=400.0)[0]
    steers = 0.85
    assert np.mean(first < 0.5) == pytest.approx(steers * shut, abs=0.06)
    assert np.mean(_air(-half_widths, 2.5, air_turns=4e4, air_minutes=400.0)[0] > 0.5) == pytest.approx(
        steers * shut, abs=0.06
    )


def test_a_turn_of_the_air_is_a_tenth_to_two_fifths():
    first = _air(2.0, 2.5, air_turns=4e4, air_minutes=400.0)[0]
    turns = 0.5 - first[first < 0.5]
    assert 0.1 <= turns.min() < 0.12
    assert 0.38 < turns.max() <= 0.4
    assert turns.mean() == pytest.approx(0.25, abs=0.02)


def test_nobody_who_tends_a_fire_shuts_the_air_altogether():
    air = _air(2.0, 60.0, air_turns=4e3, air_minutes=400.0)
    assert air.min() == pytest.approx(0.05)
    assert _air(-2.0, 60.0, air_turns=4e3, air_minutes=400.0).max() == 1.0


def test_as_many_members_as_the_ensemble_are_tended():
    assert _tend(_belief(), 2.5).shape[2] == MEMBERS
