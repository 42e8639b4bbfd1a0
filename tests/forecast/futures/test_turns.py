"""A turn is told when it is likely enough and near enough, and in time for the cook to act on it."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.forecast.answers import TurnKind
from cookstove_gui.forecast.futures.turns import turns, turns_to_come
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.ensemble import Ensemble
from cookstove_gui.forecast.model.heat import Controls
from cookstove_gui.forecast.tracking.belief import Belief
from cookstove_gui.stove.entries import HeatBand, Kind
from cookstove_gui.stove.stove import SpotKind
from tests.following import track
from tests.forecast.futures.made import BAND, MINUTES, futures, lines, stove_with, usual_belief
from tests.forecast.logs import STOVE, Log, at, usual_morning

OVEN = stove_with(oven_centre=SpotKind.OVEN)
COLD = lines(390.0, -1.0)  # never in the band, and a fire of no use


def _told(oven: np.ndarray, belief: Belief | None = None, band: HeatBand = BAND):
    """The turns that are told, as {kind: (chance, in_min)}; a fire that is lit and burns unless a belief is given."""
    belief = belief or _burning()
    seen = replace(belief, stove=OVEN)
    found = (*turns(seen), *turns_to_come(seen, futures(oven_centre=oven), band))
    return {turn.kind: (turn.chance, turn.in_min) for turn in found}


def _burning(power: float = 5.0, **fields) -> Belief:
    """A belief with an empty firebox whose heat is what the log does not explain [kW], the same in every member."""
    belief = usual_belief()
    x = belief.ensemble.x.copy()
    x[heat.FUELS] = 0.0
    x[heat.EXTRA] = power
    defaults = {"controls": Controls(lit=True), "air_logged": 0.5, "last_load": None}
    return replace(belief, ensemble=Ensemble(x, belief.ensemble.remainder), **{**defaults, **fields})


# Reload


def test_wood_is_due_twenty_minutes_before_the_oven_falls_out_of_its_band():
    # 415 K less half a kelvin a minute is at 400 K after 30 min.
    assert _told(lines(415.0, -0.5))[TurnKind.RELOAD_DUE] == (1.0, 10)


def test_an_oven_about_to_fall_out_needs_wood_now_and_not_ten_minutes_ago():
    assert _told(lines(404.0, -0.4))[TurnKind.RELOAD_DUE] == (1.0, 0)


@pytest.mark.parametrize(("falls_at", "told"), [(109.0, (1.0, 89)), (110.0, (1.0, 90)), (111.0, None)])
def test_a_reload_is_foreseen_an_hour_and_a_half_ahead(falls_at, told):
    assert _told(lines(410.0, -10.0 / falls_at)).get(TurnKind.RELOAD_DUE) == told


def test_an_oven_below_its_band_that_will_not_reach_it_unfed_needs_wood_now():
    assert _told(lines(390.0, 0.0))[TurnKind.RELOAD_DUE] == (1.0, 0)


@pytest.mark.parametrize(("fed_ago", "due"), [(0, 15), (10, 5), (15, 0), (40, 0)])
def test_nobody_is_told_to_add_wood_to_wood_that_was_just_put_on(fed_ago, due):
    fed = _burning()
    fed = replace(fed, last_load=fed.now - timedelta(minutes=fed_ago))
    assert _told(lines(390.0, 0.0), fed)[TurnKind.RELOAD_DUE] == (1.0, due)


def test_an_oven_that_will_come_into_its_band_needs_wood_before_it_falls_out_again():
    # In the band from 10 min on, at its best after 40 min, and out again at 70 min: due at 50 min.
    there_and_back = 430.0 - np.abs(MINUTES - 40.0)
    assert _told(np.minimum(there_and_back, 415.0)[None, :])[TurnKind.RELOAD_DUE] == (1.0, 50)


def test_an_oven_above_its_band_that_cools_through_it_needs_wood_before_it_falls_out():
    # In the band after 20 min, out of it after 60 min.
    assert _told(lines(430.0, -0.5))[TurnKind.RELOAD_DUE] == (1.0, 40)


def test_an_oven_that_stays_above_its_band_needs_no_wood():
    assert TurnKind.RELOAD_DUE not in _told(lines(500.0, -0.1))


def test_an_oven_that_leaves_its_band_upward_needs_no_wood():
    assert TurnKind.RELOAD_DUE not in _told(lines(410.0, 0.5))


def test_an_oven_that_stays_in_its_band_needs_no_wood():
    assert TurnKind.RELOAD_DUE not in _told(lines(410.0, 0.0))


@pytest.mark.parametrize(("of_a_hundred", "told"), [(29, None), (30, (0.3, 10)), (60, (0.6, 10))])
def test_a_reload_is_told_from_a_chance_of_three_in_ten(of_a_hundred, told):
    falls = np.arange(100) < of_a_hundred
    oven = lines(np.where(falls, 415.0, 410.0), np.where(falls, -0.5, 0.0))
    assert _told(oven).get(TurnKind.RELOAD_DUE) == told


def test_when_is_the_middle_of_those_futures_in_which_it_is_due():
    slopes = -15.0 / np.array([30.0, 40.0, 80.0])
    oven = np.concatenate([lines(np.full(3, 415.0), slopes), lines(np.full(2, 410.0), np.zeros(2))])
    assert _told(oven)[TurnKind.RELOAD_DUE] == (0.6, 20)


def test_a_stove_that_is_not_lit_needs_no_wood():
    assert TurnKind.RELOAD_DUE not in _told(lines(415.0, -0.5), _burning(controls=Controls(lit=False)))


# Fire out


@pytest.mark.parametrize(("kilowatts", "told"), [(0.59, (1.0, 0)), (0.61, None), (5.0, None)])
def test_a_fire_of_less_than_six_hundred_watts_is_out(kilowatts, told):
    assert _told(COLD, _burning(kilowatts)).get(TurnKind.FIRE_OUT) == told


def test_chance_that_the_fire_is_out_is_the_share_of_members_in_which_it_is():
    belief = _burning()
    members = belief.ensemble.x.shape[1]
    belief.ensemble.x[heat.EXTRA, : members // 4 * 2] = 0.0
    assert _told(COLD, belief)[TurnKind.FIRE_OUT] == (0.5, 0)
    belief.ensemble.x[heat.EXTRA] = np.where(np.arange(members) < members // 5, 0.0, 5.0)
    assert TurnKind.FIRE_OUT not in _told(COLD, belief)


def test_burning_wood_is_no_fire_that_is_out():
    belief = _burning(0.0)
    assert TurnKind.FIRE_OUT in _told(COLD, belief)
    belief.ensemble.x[heat.FLAMING] = 1.0
    assert TurnKind.FIRE_OUT not in _told(COLD, belief)


def test_a_stove_never_lit_has_no_fire_to_go_out():
    assert TurnKind.FIRE_OUT not in _told(COLD, _burning(0.0, controls=Controls(lit=False)))


def test_a_fire_that_the_log_calls_out_is_out_whatever_the_readings():
    assert _told(COLD, _burning(5.0, controls=Controls(went_out=True)))[TurnKind.FIRE_OUT] == (1.0, 0)


def test_a_fire_just_lit_of_which_nothing_is_known_is_not_called_out():
    silent = _burning(0.0, loads=0, last_readings={})
    assert TurnKind.FIRE_OUT not in _told(COLD, silent)
    assert TurnKind.FIRE_OUT in _told(COLD, replace(silent, loads=1))
    assert TurnKind.FIRE_OUT in _told(COLD, replace(silent, last_readings=usual_belief().last_readings))


@pytest.mark.parametrize(("minutes", "is_out"), [(0.2, False), (4.9, False), (5.1, True)])
def test_kindling_that_was_lit_a_moment_ago_is_given_time_to_catch(minutes, is_out):
    silent = _burning(0.0)
    lit = replace(silent, lit_at=silent.now - timedelta(minutes=minutes))
    assert (TurnKind.FIRE_OUT in _told(COLD, lit)) is is_out


# Door and air


def test_an_oven_door_that_stands_open_is_told_now():
    assert _told(COLD, _burning(controls=Controls(lit=True, door_open=True)))[TurnKind.DOOR_OPEN] == (1.0, 0)
    assert TurnKind.DOOR_OPEN not in _told(COLD)


@pytest.mark.parametrize(("air", "told"), [(None, False), (0.84, False), (0.85, True), (1.0, True)])
def test_air_left_wide_open_is_told_when_the_oven_will_run_past_its_band(air, told):
    found = _told(lines(410.0, 0.25), _burning(air_logged=air))
    # Above 420 K after 40 min, seen at 45 min.
    assert found.get(TurnKind.AIR_OPEN) == ((1.0, 25) if told else None)


def test_air_is_not_told_while_the_oven_stays_in_its_band():
    assert TurnKind.AIR_OPEN not in _told(lines(410.0, 0.0), _burning(air_logged=1.0))


def test_an_oven_already_past_its_band_wants_its_air_shut_now():
    assert _told(lines(425.0, 0.1), _burning(air_logged=1.0))[TurnKind.AIR_OPEN] == (1.0, 0)


@pytest.mark.parametrize(("over_after", "told"), [(84.0, (1.0, 65)), (89.0, (1.0, 70)), (91.0, None)])
def test_air_is_judged_an_hour_and_a_half_ahead(over_after, told):
    oven = np.where(over_after < MINUTES, 421.0, 410.0)[None, :]
    assert _told(oven, _burning(air_logged=1.0)).get(TurnKind.AIR_OPEN) == told


@pytest.mark.parametrize(("of_a_hundred", "told"), [(29, None), (30, (0.3, 25))])
def test_air_is_told_from_a_chance_of_three_in_ten(of_a_hundred, told):
    runs_past = np.arange(100) < of_a_hundred
    oven = lines(np.full(100, 410.0), np.where(runs_past, 0.25, 0.0))
    assert _told(oven, _burning(air_logged=1.0)).get(TurnKind.AIR_OPEN) == told


# All together


def test_what_has_turned_comes_before_what_will():
    belief = _burning(0.0, controls=Controls(lit=True))
    kinds = list(_told(lines(415.0, -0.5), belief))
    assert kinds == [TurnKind.FIRE_OUT, TurnKind.RELOAD_DUE]


def test_an_oven_that_falls_with_its_door_open_needs_no_wood():
    told = _told(lines(415.0, -0.5), _burning(controls=Controls(lit=True, door_open=True)))
    assert list(told) == [TurnKind.DOOR_OPEN]


def test_a_door_left_open_in_a_log_is_a_turn():
    log = Log()
    log.entries = [*usual_morning()]
    log.add(71, Kind.OVEN_DOOR, value="open")
    belief = track(STOVE, log.entries, at(75))
    assert TurnKind.DOOR_OPEN in [turn.kind for turn in turns(belief)]


def test_a_fire_left_alone_for_hours_is_out_and_a_fresh_one_is_not():
    log = Log()
    log.entries = list(usual_morning())
    log.reads(300, "oven_centre", 110).reads(301, "top_front_left", 100)
    for belief, out in ((track(STOVE, log.entries, at(302)), True), (usual_belief(), False)):
        kinds = [turn.kind for turn in turns(belief)]
        assert (TurnKind.FIRE_OUT in kinds) is out
