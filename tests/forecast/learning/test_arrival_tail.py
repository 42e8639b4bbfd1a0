"""A stove's arrival windows leave out as much of the futures as its past windows have allowed."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.forecast.answers import ARRIVAL_MISSED
from cookstove_gui.forecast.futures.forecaster import Forecaster
from cookstove_gui.forecast.futures.outlook import arrivals, outlook, oven_ahead, window_levels
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.forecast.learning.arrival_tail import (
    MISSED,
    MISSED_RANGE,
    PACE,
    arrival_misses,
    next_arrival,
    next_missed,
)
from cookstove_gui.forecast.learning.hindsight import oven_past
from cookstove_gui.forecast.learning.learn import lessons
from cookstove_gui.forecast.model.character import Character
from tests.forecast.futures.made import BAND
from tests.forecast.logs import STOVE, sessions

LEAST, MOST = MISSED_RANGE


def test_misses_push_the_windows_out_and_hits_draw_them_in():
    assert next_missed((0.18, 0.18), ([True], [False])) == pytest.approx((0.18 - 0.8 * PACE, MOST))
    assert next_missed((0.1, 0.1), ([False], [True])) == pytest.approx((0.1 + 0.2 * PACE, LEAST))
    assert next_missed((0.1, 0.12), ([False, True, False, False, False],) * 2) == pytest.approx((0.1, 0.12))


def test_a_session_without_an_arrival_teaches_nothing():
    assert next_missed((0.1, 0.15), ([], [])) == (0.1, 0.15)


@pytest.mark.parametrize(("missed", "end"), [(True, LEAST), (False, MOST)])
def test_no_window_is_pushed_or_drawn_beyond_its_bounds(missed, end):
    shares = ARRIVAL_MISSED
    for _ in range(60):
        shares = next_missed(shares, ([missed], [missed]))
    assert shares == (end, end)


def test_a_stove_never_seen_begins_wider_on_its_first_rise_and_no_window_earns_more_than_eight_in_ten():
    assert ARRIVAL_MISSED[0] < ARRIVAL_MISSED[1]
    assert (ARRIVAL_MISSED[1], MOST, MISSED) == pytest.approx((0.2, 0.2, 0.2))


@pytest.mark.parametrize("spread", [0.6, 0.7, 0.8])
def test_in_the_long_run_eight_windows_in_ten_hold(spread):
    """Gibbs and Candès 2021, proposition 4.1: whatever comes, as long as no bound is met; ranks of a Beta here."""
    random, shares, missed = np.random.default_rng(5), ARRIVAL_MISSED, []
    for ranks in random.beta(spread, spread, (300, 60)):
        misses = (ranks < 0.5 * shares[0]) | (ranks > 1.0 - 0.5 * shares[0])
        missed.append(misses.mean())
        shares = next_missed(shares, (misses.tolist(), []))
    assert np.mean(missed) == pytest.approx(MISSED, abs=0.015)


@pytest.mark.parametrize(
    ("kelvin", "now", "wait"),
    [
        ([380.0, 390.0, 410.0], 0.0, 15.0),  # on its way, straight between readings
        ([380.0, 390.0, 410.0], 5.0, 10.0),  # asked between two of them
        ([440.0, 430.0, 410.0], 0.0, 15.0),  # from above
        ([380.0, 440.0, 430.0], 0.0, 20.0 / 6.0),  # rushes through between two readings
        ([380.0, 390.0, 370.0], 0.0, np.inf),  # ends below: nobody fires it for that heat any more
        ([410.0, 390.0, 410.0], 0.0, None),  # there now
        ([440.0, 450.0, 430.0], 0.0, None),  # ends above: it may come yet
        ([380.0, 390.0, 410.0], 20.0, None),  # nothing read later
    ],
)
def test_the_next_arrival_is_where_readings_joined_by_a_ruler_come_into_the_band(kelvin, now, wait):
    found = next_arrival(np.array([0.0, 10.0, 20.0]), np.array(kelvin), now, BAND)
    assert found == (None if wait is None else pytest.approx(wait))


def test_an_arrival_later_than_the_futures_reach_is_none_that_they_foretold():
    assert next_arrival(np.array([0.0, 179.0, 181.0]), np.array([380.0, 399.5, 400.5]), 0.0, BAND) == pytest.approx(180)
    assert next_arrival(np.array([0.0, 181.0, 183.0]), np.array([380.0, 399.5, 400.5]), 0.0, BAND) == np.inf


def test_the_windows_tried_are_those_told_before_the_oven_was_there():
    (session,), slip, shares = sessions(1), 5, (0.9, 0.04)  # nearly all of the futures left out, and hardly any
    blunder = [row for row in session.entries if row.spot == "oven_centre"][slip]
    typed = tuple(replace(row, value="590") if row is blunder else row for row in session.entries)
    session = replace(session, entries=typed)
    teller = Forecaster(STOVE, replace(Character.generic(STOVE), arrival_missed=shares))
    past = oven_past(STOVE, session)
    clock, kelvin = np.delete(past.minutes, slip), np.delete(past.kelvin, slip)
    expected = [], []
    for place in past.places:
        wait = next_arrival(clock, kelvin, past.minutes[place], past.aim)
        if wait is None:
            continue
        belief = teller.follow(session.entries, past.rows[place].at)
        ahead = oven_ahead(belief, band=past.aim)
        enters, _ = arrivals(ahead.minutes, ahead.kelvin[:, :, 0], past.aim)
        reached = int(max(point.p50 for point in belief.points) >= past.aim.low)
        first, last = window_levels(enters, shares[reached])
        expected[reached].append(not first <= np.mean(enters < wait) <= last)
    assert arrival_misses(teller, session, past) == expected
    assert any(expected[0])


@pytest.mark.parametrize(("pace", "missed"), [(0.15, True), (1.0, False)])
def test_an_oven_that_was_there_much_sooner_than_its_window_was_missed(pace, missed):
    session = sessions(1)[0]
    past = oven_past(STOVE, session)
    now = past.minutes[past.places[1]]
    clock = np.where(past.minutes > now, now + pace * (past.minutes - now), past.minutes)
    found = arrival_misses(Forecaster(STOVE), session, replace(past, minutes=clock, places=past.places[1:2]))
    assert found == ([missed], [])


def test_a_stoves_own_shares_are_learned_and_used():
    found = lessons(STOVE, sessions(1)).character
    assert found.arrival_missed[0] != ARRIVAL_MISSED[0]
    known = replace(found, arrival_missed=(0.02, 0.19))
    entries = sessions(1)[0].entries[:12]
    belief = Forecaster(STOVE, found).follow(entries, entries[-1].at)
    near, far = (outlook(replace(belief, character=one), BAND).band.enters_min for one in (found, known))
    assert near.p10 is not None
    assert far.p10 is not None
    assert far.p10 < near.p10
    reached = replace(BAND, low=280.0, high=290.0)
    assert project(replace(belief, character=known), band=reached).arrival_missed == 0.19
    assert Character.from_json(known.to_json()).arrival_missed == (0.02, 0.19)
