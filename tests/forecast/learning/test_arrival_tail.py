"""A stove's arrival windows reach as far out as its past arrivals have asked for."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.forecast.answers import ARRIVAL_TAIL
from cookstove_gui.forecast.futures.forecaster import Forecaster
from cookstove_gui.forecast.futures.outlook import outlook, outlook_of
from cookstove_gui.forecast.futures.projection import project
from cookstove_gui.forecast.learning.arrival_tail import MISSED, PACE, TAILS, arrival_ranks, next_tail
from cookstove_gui.forecast.learning.hindsight import oven_past
from cookstove_gui.forecast.learning.learn import learn, lessons
from cookstove_gui.forecast.learning.track_record import arrival
from cookstove_gui.forecast.model.character import Character
from tests.forecast.futures.made import BAND, MINUTES, futures
from tests.forecast.logs import STOVE, sessions


def test_misses_push_the_windows_out_and_hits_draw_them_in():
    assert next_tail(0.12, [0.02]) == pytest.approx(0.12 + PACE * (MISSED - 1.0))
    assert next_tail(0.12, [0.98]) == next_tail(0.12, [0.02])
    assert next_tail(0.12, [0.5]) == pytest.approx(0.12 + PACE * MISSED)
    assert next_tail(0.12, [0.5, 0.98, 0.4, 0.6, 0.3]) == pytest.approx(0.12)


def test_a_session_without_an_arrival_teaches_nothing():
    assert next_tail(0.1, []) == 0.1


def test_the_edge_of_a_window_belongs_to_it():
    assert next_tail(0.125, [0.125]) == next_tail(0.125, [0.875]) > 0.125


@pytest.mark.parametrize(("rank", "end"), [(0.0, TAILS[0]), (0.5, TAILS[1])])
def test_no_window_is_pushed_or_drawn_beyond_its_bounds(rank, end):
    tail = ARRIVAL_TAIL
    for _ in range(60):
        tail = next_tail(tail, [rank])
    assert tail == end


@pytest.mark.parametrize("spread", [0.7, 0.8, 1.0])
def test_in_the_long_run_eight_windows_in_ten_hold(spread):
    """Gibbs and Candès 2021, proposition 4.1: whatever comes, as long as no bound is met; ranks of a Beta here."""
    random, tail, missed = np.random.default_rng(5), ARRIVAL_TAIL, []
    for ranks in random.beta(spread, spread, (300, 60)):
        missed.append(np.mean((ranks < tail) | (ranks > 1.0 - tail)))
        tail = next_tail(tail, ranks.tolist())
    assert np.mean(missed) == pytest.approx(MISSED, abs=0.015)


def test_the_window_leaves_out_just_that_share_of_the_arrivals():
    starts = np.linspace(0.0, 60.0, 201)
    oven = BAND.low - 30.0 + np.maximum(MINUTES - starts[:, None], 0.0) * 1.0  # there half an hour after starting
    for tail in (0.05, 0.2):
        enters = outlook_of(replace(futures(oven_centre=oven), arrival_tail=tail), STOVE, BAND).band.enters_min
        assert (enters.p10, enters.p50, enters.p90) == pytest.approx((30 + 60 * tail, 60.0, 90 - 60 * tail), abs=0.01)


def test_ranks_are_of_the_moments_before_the_oven_was_there():
    character = learn(STOVE, sessions(2))
    session = sessions(3)[2]
    teller, past = Forecaster(STOVE, character), oven_past(STOVE, session)
    ranks = arrival_ranks(teller, session, past)
    came = arrival(past.minutes, past.kelvin, past.aim.low)
    before = [place for place in past.places if past.minutes[place] < came]
    assert len(ranks) == len(before) > 0
    for rank, place in zip(ranks, before, strict=True):
        told = outlook(teller.follow(session.entries, past.rows[place].at), past.aim).band.enters_min
        waited = came - past.minutes[place]
        assert (rank > 1.0 - character.arrival_tail) == (told.p90 is not None and waited > told.p90)
        assert (rank < character.arrival_tail) == (waited < told.p10)


def test_a_stoves_own_tail_is_learned_and_used():
    found = lessons(STOVE, sessions(2)).character
    assert TAILS[0] <= found.arrival_tail <= ARRIVAL_TAIL
    known = replace(found, arrival_tail=0.05)
    entries = sessions(1)[0].entries[:12]
    belief = Forecaster(STOVE, found).follow(entries, entries[-1].at)
    near, far = (outlook(replace(belief, character=one), BAND).band.enters_min for one in (found, known))
    assert near.p10 is not None
    assert far.p10 is not None
    assert far.p10 < near.p10
    reached = replace(BAND, low=280.0, high=290.0)
    assert project(replace(belief, character=known), band=reached).arrival_tail == ARRIVAL_TAIL
    found = known
    assert Character.from_json(found.to_json()).arrival_tail == found.arrival_tail
